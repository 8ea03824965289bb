import type { PastWords, ReplayWords } from './desk-past.ts'
import type { Words } from './words.ts'

export function enPast(words: Words): PastWords {
  const { times } = words
  return {
    waiting: 'Looking through the record…',
    none: 'No day is on record yet.',
    noContact: 'The server could not be reached. Try again when there is contact.',
    notReady: 'The days are being made from the record; this goes on by itself.',
    older: 'Earlier days',
    columns: {
      day: 'day',
      missed: 'missed',
      left: 'left at close',
      onTime: 'there at opening',
      dozens: 'dozens a crew hour',
      unexplained: 'unexplained',
    },
    open: 'still open',
    notKnown: '–',
    plots: { left: 'Left at close', unexplained: 'Unexplained', missed: 'Missed' },
    plotSpoken: (name, values) => `${name} by day, oldest first: ${values.join(', ')}`,
    look: (label) => `Look at ${times.date(label)}`,
    replay: replay(words),
  }
}

function replay({ times, line }: Words): ReplayWords {
  return {
    title: (label) => times.date(label),
    back: 'All days',
    loading: 'Fetching the day…',
    unknown: 'The shop has no such day.',
    otherForm: 'The server speaks a newer form than this page. Load the page anew.',
    nothingHappened: 'Nothing happened on this day.',
    ruler: 'Instant of the day',
    at: (atMs) => `The shop ${times.at(atMs)}`,
    play: 'Play',
    stop: 'Stop',
    pace: 'A minute passes in',
    minuteBack: 'a minute back',
    minuteOn: 'a minute on',
    lanes: 'What was in the oven, shelf by shelf',
    gapsTitle: 'What ran out',
    noGaps: 'Nothing ran out while the shop was open.',
    gap: (name, fromMs, toMs) => `${name}: none ${times.clock(fromMs)}–${times.clock(toMs)}`,
    load: (shelf, fromMs, toMs, contents) =>
      `${shelf}, ${times.clock(fromMs)}${toMs === null ? '' : `–${times.clock(toMs)}`}: ${contents}`,
    oven: 'In the oven',
    line: 'On the line',
    rods: 'For sale',
    empty: 'empty',
    nothingOnLine: 'Nothing stands before the oven.',
    noRods: 'Nothing was for sale.',
    phase: { 'first-side': 'first side', 'second-side': 'second side' },
    stage: (stage) => line.stageTitle(stage),
    last: 'Last act',
    hint: 'Drag along the lanes, or use the arrow keys on the ruler: one minute each, page keys a quarter of an hour.',
  }
}

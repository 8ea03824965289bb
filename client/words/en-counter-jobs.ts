import type { CloseWords, CounterJobWords, DayOldWords, FoundWords, LeftFate, SweepWords } from './counter-jobs.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function enCounterJobs(words: Words): CounterJobWords {
  return {
    sweep: sweep(words),
    found: FOUND,
    dayOld: DAY_OLD,
    newestNote: (text, atMs) => `${joined('note', words.times.clock(atMs))}: ${text}`,
    notes: 'Notes',
    noteCount: (count) => (count === 0 ? 'none' : `${count} ${count === 1 ? 'note' : 'notes'}`),
    close: close(words),
    more: { title: 'More' },
  }
}

function sweep({ times }: Words): SweepWords {
  return {
    title: 'Count rods',
    ask: (rods) => `Count ${rods} ${rods === 1 ? 'rod' : 'rods'}`,
    byHand: 'Count rods',
    dueSince: (atMs) => joined('due', times.since(atMs)),
    nextAt: (atMs) => joined('next', times.at(atMs)),
    place: (rod, of) => `rod ${rod} of ${of}`,
    thought: (number) => `thought to be ${number}`,
    none: 'none',
    dozens: (halves) => `${dozens(halves)} dz`,
    spokenDozens: (pieces, halves) => `about ${pieces}: ${dozens(halves)} dozen`,
    exact: 'Exact number',
    inHalves: 'By half-dozens',
    next: 'Next',
    skip: 'Skip this rod',
    later: 'Later',
    skipped: 'skipped',
    done: (rods) => `Done: ${rods} counted`,
    nothingCounted: 'nothing counted yet',
    allCounted: 'All are through. Touch a rod above to put it right.',
    about: (pieces) => `about ${pieces}`,
  }
}

/** @example dozens(3) // "1½" */
function dozens(halves: number): string {
  const whole = Math.floor(halves / 2)
  return `${whole === 0 ? '' : whole}${halves % 2 === 0 ? '' : '½'}`
}

const FOUND: FoundWords = {
  asKnown: 'Counted as known, nothing is missing',
  fewer: (pieces) => `${pieces} fewer than known, kept as unexplained`,
  more: (pieces) => `${pieces} more than known, kept as unexplained`,
  several: (fewer, more) => {
    const parts = [
      ...(fewer.length === 0 ? [] : [`fewer than known: ${fewer.map(named).join(', ')}`]),
      ...(more.length === 0 ? [] : [`more than known: ${more.map(named).join(', ')}`]),
    ]
    return `${capitalized(parts.join('; '))}; kept as unexplained`
  },
  named: (name, text) => `${name}: ${text}`,
  good: 'Good',
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function named({ name, pieces }: { readonly name: string; readonly pieces: number }): string {
  return `${name} ${pieces}`
}

const DAY_OLD: DayOldWords = {
  title: 'Day-old',
  putOut: (pieces) => `Day-old: put out ${pieces}`,
  summary: (out, toPut) => {
    const parts = [...(out > 0 ? [`${out} out`] : []), ...(toPut > 0 ? [`${toPut} to put out`] : [])]
    return parts.length === 0 ? 'none' : parts.join(', ')
  },
  nothing: 'No day-old pieces are out.',
  sold: (pieces) => `Sold ${pieces}`,
  soldSpoken: (pieces, name) => `sold ${pieces} day-old ${name}`,
  kitchen: 'Kitchen used',
  wasted: 'Wasted',
  given: 'Given away',
  fateOf: (name, fate) => `${name}: ${fate}`,
}

const FATES: { readonly [fate in LeftFate]: string } = { dayOld: 'day-old', given: 'given away', wasted: 'wasted' }

function close({ times }: Words): CloseWords {
  return {
    title: 'Close the day',
    of: (label) => `Close ${times.date(label)}`,
    count: (rods) => `Count what is left: ${rods} ${rods === 1 ? 'rod' : 'rods'}`,
    detail: 'count, fates, close',
    nothingLeft: 'Nothing is left.',
    fate: FATES,
    all: { dayOld: 'All day-old', given: 'All given away', wasted: 'All wasted' },
    touchToChange: 'Touch a rod to change what becomes of it.',
    crew: 'Crew hours, all together',
    crewUnsaid: 'not said',
    hours: (hours) => `${hours} h`,
    close: 'Close the day',
    summary: (parts) => parts.map(({ fate, pieces }) => `${pieces} ${FATES[fate]}`).join(', '),
    closed: (label) => `${times.date(label)} is closed`,
    reopen: (label) => `Reopen ${times.date(label)}`,
    reopenDetail: 'closed by mistake',
    opensItself: 'The first act of the morning opens the next day.',
    lessHours: (hours) => `${hours} hours less`,
    moreHours: (hours) => `${hours} hours more`,
    least: 'least',
    most: 'most',
  }
}

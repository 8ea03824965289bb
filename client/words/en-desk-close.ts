import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { ClosedWords, CloseWords, CountWords, CrewWords, FatesWords, LastWords } from './desk-close.ts'
import type { Words } from './words.ts'

export function enClose(words: Words): CloseWords {
  const { times } = words
  return {
    lead: 'From top to bottom, as the work goes. Each part can be left as it is: a close asks for nothing.',
    late: (label) => `${times.date(label)} is still open`,
    lateHint:
      'Nobody closed it. Closed here it ends now, with what is counted now; otherwise the first act of the new morning closes it by itself, as of its last tap.',
    neverOne: 'No day has been closed yet.',
    steps: {
      orders: 'Orders still open',
      count: 'Count what is left',
      fates: 'What becomes of it',
      account: 'Where every piece went',
      figures: 'The day in five figures',
      crew: 'Crew hours',
      notes: 'Notes for tomorrow',
      close: 'Close the day',
    },
    orders: {
      none: 'Every order of the day is settled.',
      hint: 'What is not said here ends with the close as if nobody had come; what is kept for it is day-old then, as all that is left.',
      due: (clock) => `due ${clock}`,
      handedOver: 'Handed over',
      nobodyCame: 'Nobody came',
      actOf: (act, mark) => `${act}: ${mark}`,
    },
    count: COUNT,
    fates: FATES,
    account: {
      explained:
        'Unexplained is what a count found other than the board knew: + when pieces had gone that nobody tapped (sold, eaten, dropped), − when more were there than known. It is booked as it is, never spread.',
      gaps: 'All gaps of the day, whichever way',
      unexplained: 'Unexplained today',
    },
    crew: CREW,
    notes: {
      hint: 'They stand on the wall at the start of the next shift, until somebody clears them.',
      none: 'No notes wait.',
    },
    close: last(words),
    closed: closed(words),
    pieces: {
      less: (name, step) => `${name}: ${step} fewer`,
      more: (name, step) => `${name}: ${step} more`,
    },
  }
}

const COUNT: CountWords = {
  hint: 'Only what is in doubt. What is known well enough is not asked for.',
  allKnown: 'All is known well enough: nothing needs counting.',
  thinks: (pieces) => `the board thinks ${pieces}`,
  field: (name) => `Pieces of ${name} that are there`,
  counted: (pieces) => `Counted ${pieces}`,
  say: 'Counted',
  noneLeft: 'None left',
}

const FATES: FatesWords = {
  hint: 'Say what is given away and what is thrown; the rest stays as day-old.',
  nothing: 'Nothing is left for sale.',
  columns: { variety: 'variety', left: 'left', given: 'given away', wasted: 'wasted', dayOld: 'stays as day-old' },
  given: (name) => `${name}, given away`,
  wasted: (name) => `${name}, wasted`,
  allGiven: 'All given away',
  allWasted: 'All wasted',
  allStay: 'All stay as day-old',
  book: (given, wasted) =>
    `Book: ${[given > 0 ? `${given} given away` : '', wasted > 0 ? `${wasted} wasted` : ''].filter((part) => part !== '').join(', ')}`,
  nothingToBook: 'Nothing to book',
  earlier: (name) => `${name}, day-old already`,
}

const CREW: CrewWords = {
  field: 'Hours worked, all of the crew together',
  hint: 'Three people for six hours are 18. It may be left empty.',
  hours: (text) => `${text} hours`,
  wrong: 'Hours are a number from 0 to 200, such as 17.5.',
}

const STAGES: { readonly [stage in BatchStage]: string } = {
  proof: 'proofing',
  chill: 'in the cooler',
  rack: 'on the rack',
  kettle: 'in the kettle',
  boards: 'on boards',
  oven: 'in the oven',
}

function last({ line }: Words): LastWords {
  return {
    kept: (pieces) => `${line.pieces(pieces)} kept for somebody: they stay kept.`,
    onTheLine: (pieces) =>
      `${line.pieces(pieces)} still in the kettle, on boards or in the oven: the close asks about them.`,
    standing: (pieces) => `${line.pieces(pieces)} proofing, chilled or on the rack: carried into tomorrow’s account.`,
    openSteps: (steps) =>
      `${steps} ${steps === 1 ? 'step' : 'steps'} of the changeover ${steps === 1 ? 'is' : 'are'} not said to be done.`,
    uncounted: (names) => `Not counted: ${line.list(names)}.`,
    stage: (stage) => STAGES[stage],
    stays: (pieces) =>
      pieces === 0
        ? 'Nothing stays as day-old.'
        : `${line.pieces(pieces)} ${pieces === 1 ? 'stays' : 'stay'} as day-old.`,
    closeIt: 'Close the day',
    allDone: 'Nothing stands in the way.',
  }
}

function closed({ times }: Words): ClosedWords {
  return {
    title: (label) => `${times.date(label)} is closed`,
    at: (atMs) => `Closed ${times.at(atMs)}.`,
    reopen: 'Reopen the day',
    reopenHint:
      'As if it had not been closed: what was left is for sale again, and the account goes on. Until the next day begins.',
    noReopen: 'The next day has begun: this one stays closed.',
    openNext: 'Open the next day',
    replay: 'Look at the day again',
  }
}

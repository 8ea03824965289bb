import type { Why } from '../../shared-core/plan/why.ts'
import type { ComingWords, ReasonOf } from './desk-coming.ts'
import { money } from './money.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

export function enComing({ line }: Words): ComingWords {
  return {
    waiting: 'Reckoning the day…',
    notYet: 'The forecast is being made from past sales. It comes in a moment.',
    noContact: 'No contact with the server: nothing can be advised now.',
    datesName: 'Days to come',
    today: 'today',
    unknown: 'unknown',
    closed: (date) => `Nothing is advised for ${date}: the shop does not open, or has closed the day.`,
    noDoughs: 'There are no varieties in the set-up yet, so nothing can be advised.',
    onlyGuesses:
      'These are guesses: no sales are known yet. Type pieces of a usual day in the set-up, bring past sales in, or tap on: within two weeks the numbers are the shop’s own.',
    unknownOf: (doughs) =>
      `Nothing is known yet of ${line.list(doughs)}, so nothing is advised: no sales, no typed guess. Type pieces of a usual day, bring past sales in, or tap on: the first day teaches.`,
    toUsual: 'Type a usual day',
    decideBy: (names, day, clock) => `Decide ${line.list(names)} by ${clock}, ${day}.`,
    decideLate: 'That hour is past.',
    dough: {
      title: (date) => `Dough for ${date}`,
      hint: 'All varieties of a dough together, as they are chosen at the kettle. Too much is carried over in the cooler, too little is sales lost.',
    },
    bake: {
      title: (date) => `To bake on ${date}`,
      hint: 'By variety, decided on the day. Too much is day-old, of which only a few sell.',
      expects: (left, lost) => `About ${left} left at the close, ${lost} asked for in vain.`,
    },
    columns: {
      dough: 'dough',
      variety: 'variety',
      likely: 'likely',
      careful: 'careful',
      plenty: 'plenty',
      advised: 'advised',
      yours: 'yours',
      orders: 'orders',
      there: 'there already',
      toMake: 'to make',
      bake: 'to bake',
    },
    ordered: (board, typed) => `${board} on the board, ${typed} besides`,
    toOrders: 'The orders of that day',
    legend:
      'Likely is enough on one day in two, careful on eight of ten, plenty on nine of ten. All are for the counter; orders come on top.',
    basis: {
      nothing: 'nothing known yet',
      guess: 'a guess, no sales yet',
      few: 'from a few days of sales',
      many: 'from many days of sales',
    },
    why: 'Why',
    hideWhy: 'Hide',
    whyOf: (name) => `Why so many of ${name}`,
    reason: (why, of) => reason(why, of, line.list),
    sum: (pieces, what) => `= ${pieces} ${what === 'toMake' ? 'to make, as advised' : 'to bake'}`,
    signed: (pieces) => (pieces < 0 ? `−${-pieces}` : `+${pieces}`),
    yoursOf: (dough) => `${dough}: pieces for the counter`,
    unreadable: 'A marked field is no number of pieces.',
    take: (date) => `Take over for ${date}`,
    takeAndPlan: 'Take over and plan the mixes',
    toMixes: 'To its mixes',
    asAdvised: 'All as advised',
    differs: (count) => `${count} ${count === 1 ? 'number differs' : 'numbers differ'} from the advice.`,
    stands: 'This is what is wanted for that day.',
    notTaken: 'Nothing is wanted for that day yet.',
    changedBefore: 'How near earlier numbers of yours came',
  }
}

function reason(why: Why, { weekday, named, unit }: ReasonOf, list: (names: readonly string[]) => string): string {
  switch (why.code) {
    case 'usual':
      return 'usual day'
    case 'weekday':
      return `${WEEKDAYS[weekday - 1]}: × ${why.factor.toFixed(2)}`
    case 'special':
      return `${named.length === 0 ? 'what is special' : list(named)}: × ${why.factor.toFixed(2)}`
    case 'sure':
      return sure(why)
    case 'orders':
      return 'orders'
    case 'carried':
      return 'in the cooler or mixed, and still good that day'
    case 'unit':
      return unit === 'tray' ? `in whole trays of ${why.unit}` : `in whole boards of ${why.unit}`
    case 'rest':
      return 'still asked for today'
    case 'there':
      return 'there already'
    case 'onTheWay':
      return 'on the way'
    case 'dough':
      return 'no more dough is there'
  }
}

function sure({ underCents, overCents, coveredPercent, isAssumed }: Extract<Why, { code: 'sure' }>): string {
  const costs = `one too few costs ${money(underCents)}, one too many ${money(Math.max(0, overCents))}`
  const assumed = isAssumed ? ' (a price or cost is not known, so it is assumed)' : ''
  return `${costs}${assumed}: enough on ${coveredPercent} of 100 such days`
}

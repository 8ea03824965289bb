import type { BakingSetUpWords } from './set-up-baking.ts'
import type { SetUpFields } from './set-up-fields.ts'

export const EN_BAKING_FIELDS: Pick<SetUpFields, 'baking'> = {
  baking: {
    advice: 'Advise which loads when',
    changeGainCents: 'Change the next load for no less than',
    stalePercentPerHour: 'A piece loses in an hour, % of its price',
    carryPercent: 'Left chilled, worth tomorrow, % of its cost',
    boardWaitMs: 'Longest on boards before the oven',
    unitPieces: 'Boarded by',
    toleranceMs: 'Bakes in one load may differ by',
    door: 'At the oven’s door',
    turnMs: 'From one shelf at the door to the next',
    people: 'People at work',
    showUntilMinute: 'On show until',
    contactCents: 'Baked before an allergen for up to, a piece',
  },
}

export const EN_BAKING: BakingSetUpWords = {
  does: {
    advice: 'Off: the loads are those of your own list, and the board adds none.',
    changeGainCents:
      'A plan that is a little better is not worth turning round for. The next load stays as it was unless another one gains so much.',
    stalePercentPerHour:
      'What an hour between the cooling rack and the customer costs. More means smaller loads, more often.',
    carryPercent:
      'A piece that is not boiled today is not lost while its window lasts. More means boiling less at the end of the day.',
    boardWaitMs:
      'Pieces that wait longer dry on top and stick below. The first dip of a load is no earlier than this before it goes in.',
    unitPieces:
      'Pieces that are always boarded together: a half-dozen, or 1 where boards hold no whole number of them.',
    toleranceMs:
      'Varieties that bake for about as long may share a shelf. More means fuller shelves and a less even bake.',
    door: 'What one pair of hands needs for one load. With all three at 0, hands are no limit.',
    contactCents:
      'Varieties that should not meet an allergen are boiled before it, as long as that costs no more than this for each piece.',
  },
  heads: {
    change: 'Advice',
    fresh: 'Freshness',
    line: 'On the line',
    hands: 'Hands at the door',
    people: 'People at work',
    show: 'On show',
    contact: 'Allergens',
  },
  door: { loadMs: 'Load', flipMs: 'Flip', outMs: 'Take out' },
  people: {
    from: 'From',
    count: 'People',
    add: 'Add a time',
    remove: (clock) => `Remove ${clock}`,
    none: 'Nobody has said: people are no limit to the plan.',
    hint: 'How many can work at the line from when on, until the next time in the list.',
    line: (people, clock) => `${people} from ${clock}`,
  },
  showHint:
    'Pieces that should be there at the opening, and until the hour of “On show until” where one is said, however few are likely to be asked for.',
  avoidsHint: 'Planned before these touch water, boards, trays, peel or stone, where that can be. It is no promise.',
  avoidsItself: (allergens) => `It contains ${allergens} itself: there this changes nothing.`,
  emptyByHint: 'Where this shelf is given to the second menu before the others.',
  emptyByLate: 'The whole oven is empty of bagels by then: this time changes nothing.',
  sums: { on: 'advised', off: 'not advised: the shop’s own list' },
}

export const EN_BAKING_MISFITS: Readonly<Record<string, string>> = {
  'baking/people': 'Times in order, each of them once.',
  'baking/showUntilMinute': 'A time after the shop opens and before it closes.',
  'shelf/emptyByMinute': 'A time after the oven is ready. A shelf that never bakes is retired.',
}

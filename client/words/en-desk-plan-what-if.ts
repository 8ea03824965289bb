import type { DeskWords } from './desk.ts'
import type { WhatIfWords } from './desk-plan.ts'
import { costText } from './en-desk-plan.ts'

/** What another shop would do with the same day. */
export function enWhatIf({ times }: DeskWords): WhatIfWords {
  return {
    title: 'What if',
    hint: 'The same day with one thing another way, planned anew. Nothing in the shop changes by asking.',
    changes: {
      shelf: 'One more shelf',
      kettle: 'A faster kettle',
      boards: 'More boards',
      opening: 'Opening earlier',
      changeover: 'Changeover at another time',
      order: 'One more order',
      people: 'Fewer people',
    },
    amounts: {
      shelf: null,
      kettle: 'seconds a dip',
      boards: 'boards more',
      opening: 'minutes earlier',
      changeover: 'minutes later (− earlier)',
      people: 'people fewer',
    },
    orderOf: 'Of',
    orderPieces: 'Pieces',
    orderAt: 'For',
    ask: 'Reckon',
    asking: 'Reckoning…',
    failed: 'It could not be reckoned. Try again when there is contact.',
    columns: { figure: '', before: 'as it is', after: 'with it', difference: 'difference' },
    rows: {
      profit: 'expected money',
      lost: 'asked for in vain',
      missing: 'missing in orders',
      left: 'left at the close',
      firstDip: 'first dip',
      crew: 'hours of the crew',
      age: 'age when sold',
    },
    unreadable: 'Type a number that makes sense for this.',
    answer: costText,
    hours: (minutes) => times.span(minutes * 60_000),
    minutes: (minutes) => `${minutes} min`,
  }
}

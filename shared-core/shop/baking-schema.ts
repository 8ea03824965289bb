import { DEFAULT_BAKING } from './default-rules.ts'
import { spanObject } from './human-time.ts'
import { clock, flag, list, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { span } from './time-fields.ts'

/** How loads are planned, as the set-up file says it. */

const atTheDoor = (what: string) => span(what, 0, limits.DOOR_MS_MAX / 1_000).default({ seconds: 0 })

const doorFile = record({
  load: atTheDoor('Loading one shelf'),
  flip: atTheDoor('Flipping one load'),
  out: atTheDoor('Taking one load out'),
})
  .prefault({})
  .meta({ description: 'What one pair of hands needs at the one door of the oven; all 0: hands are no limit.' })

const personsFile = record({
  from: clock(),
  people: whole(0, limits.PEOPLE_MAX),
})

export const bakingFile = record({
  advice: flag().default(DEFAULT_BAKING.advice).meta({ description: 'Loads are advised; false: people set them.' }),
  changeGainCents: whole(0, limits.CENTS_MAX)
    .default(DEFAULT_BAKING.changeGainCents)
    .meta({ description: 'The next load is changed only where that gains so much.' }),
  stalePercentPerHour: whole(0, 100)
    .default(DEFAULT_BAKING.stalePercentPerHour)
    .meta({ description: 'What a piece loses in an hour between ready and sold, in % of its price.' }),
  carryPercent: whole(0, 100)
    .default(DEFAULT_BAKING.carryPercent)
    .meta({ description: 'What a chilled piece that is left is worth tomorrow, in % of its cost.' }),
  boardWait: span('How long pieces may stand on boards before the oven', 0, limits.BOARD_WAIT_MS_MAX / 1_000).default(
    spanObject(DEFAULT_BAKING.boardWaitMs),
  ),
  unit: whole(1, limits.UNIT_PIECES_MAX)
    .optional()
    .meta({ description: 'Pieces are boarded by so many; left out: 6, or 1 where boards hold no half-dozen.' }),
  tolerance: span('By how much the bakes of one load may differ', 0, limits.TOLERANCE_MS_MAX / 1_000).default(
    spanObject(DEFAULT_BAKING.toleranceMs),
  ),
  door: doorFile,
  turn: span('From one shelf of a rotating oven to the next at the door', 0, limits.DOOR_MS_MAX / 1_000).default({
    seconds: 0,
  }),
  people: list(personsFile, 'times', 0, limits.PEOPLE_ROWS_MAX)
    .default([])
    .meta({
      description: 'Who is there from when on, in order; none: nobody has said, and people are no limit.',
      examples: [[{ from: '04:00', people: 2 }]],
    }),
  showUntil: clock()
    .nullable()
    .default(null)
    .meta({ description: 'Until then the least of each variety should be on show; null: at the opening only.' }),
  contactCents: whole(0, limits.CENTS_MAX)
    .default(DEFAULT_BAKING.contactCents)
    .meta({ description: 'What it may cost, for each piece, to bake it before an allergen that it should not meet.' }),
}).prefault({})

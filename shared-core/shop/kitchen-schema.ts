import { retired, temperature } from './equipment-schema.ts'
import { contains } from './formula-schema.ts'
import { flag, id, list, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { span } from './time-fields.ts'

/** What is made to order, as the set-up file says it: stations of the kitchen, portions, the menu. */

export const kitchenStationFile = record({
  id: id(),
  name: name(limits.NAME_MAX.kitchenStation),
  hands: whole(1, limits.HANDS_MAX).default(1).meta({ description: 'How many can be made there at once by hand.' }),
  retired: retired(),
})

export const portionFile = record({
  id: id(),
  name: name(limits.NAME_MAX.portion),
  contains: contains(),
  pull: span('How long before the changeover it is taken out of the cooler', 0, limits.PULL_MS_MAX / 1_000)
    .nullable()
    .default(null)
    .meta({ description: 'It is taken out of the cooler so long before the changeover; null: it needs no pull.' }),
  trayPortions: whole(1, limits.TRAY_PORTIONS_MAX)
    .default(12)
    .meta({ description: 'Portions of a tray, by which it is pulled.' }),
  retired: retired(),
})

const turnFile = record({
  after: span('Since it went in', limits.TAKES_MS_MIN / 1_000, limits.TAKES_MS_MAX / 1_000),
  what: oneOf(['turn', 'move']),
})

const ovenStepFile = record({
  slots: whole(1, limits.SLOTS_MAX).default(1).meta({ description: 'Places of a shelf that it takes.' }),
  at: temperature().default(null).meta({ description: 'What it bakes at; null: as the second menu does.' }),
  turns: list(turnFile, 'turns', 0, limits.TURNS_MAX)
    .default([])
    .meta({ description: 'What is to be done meanwhile: turned, or moved to another place.' }),
})

const stepFile = record({
  station: id().meta({ description: 'Id of the kitchen station where it is done.' }),
  takes: span('How long it takes, by hand or in the oven', limits.TAKES_MS_MIN / 1_000, limits.TAKES_MS_MAX / 1_000),
  oven: ovenStepFile.nullable().default(null).meta({ description: 'What the oven does to it; null: made by hand.' }),
})

export const menuItemFile = record({
  id: id(),
  name: name(limits.NAME_MAX.menuItem),
  priceCents: whole(0, limits.CENTS_MAX).default(0).meta({ description: 'Its price; 0 when not known.' }),
  onBagel: flag().default(false).meta({ description: 'Made with a bagel, which it uses up.' }),
  canToast: flag().default(false),
  portions: list(
    record({ portion: id(), portions: whole(1, limits.PORTIONS_EACH_MAX) }),
    'portions',
    0,
    limits.PORTIONS_OF_MAX,
  )
    .default([])
    .meta({ description: 'Portions that go into it, by their id.' }),
  steps: list(stepFile, 'steps', 0, limits.ITEM_STEPS_MAX)
    .default([])
    .meta({ description: 'How it is made, one after the other; none: it is handed over as it is.' }),
  retired: retired(),
})

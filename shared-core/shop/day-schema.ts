import { retired } from './equipment-schema.ts'
import { clock, id, name, oneOf, record, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { span } from './time-fields.ts'

/** The shop's day, as the set-up file says it: hours, weekdays, people, the lists' steps, the counter. */

export const hoursFile = record({
  ovenReady: clock().meta({ description: 'When the first load can go in.' }),
  open: clock(),
  changeover: record({ from: clock(), to: clock() })
    .optional()
    .meta({ description: 'When the oven is emptied and changed over; left out: the oven bakes until close.' }),
  close: clock(),
  secondMenu: name(limits.NAME_MAX.secondMenu)
    .optional()
    .meta({ description: 'What the oven is for after the changeover.', examples: ['Flatbreads'] }),
})

/** The weekdays as the file calls them, in the order of ISO 8601, Monday first. */
export const WEEKDAY_NAMES = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const
export type WeekdayName = (typeof WEEKDAY_NAMES)[number]

const ownHours = () => hoursFile.nullable().optional()

export const weekdaysFile = record({
  monday: ownHours(),
  tuesday: ownHours(),
  wednesday: ownHours(),
  thursday: ownHours(),
  friday: ownHours(),
  saturday: ownHours(),
  sunday: ownHours(),
} satisfies Record<WeekdayName, unknown>)
  .prefault({})
  .meta({ description: 'Weekdays with hours of their own; null: closed. Left out: the usual hours.' })

export const counterFile = record({
  salesFrom: oneOf(['taps', 'till', 'sweeps'])
    .default('taps')
    .meta({ description: 'The one source of sales that changes what is left; "sweeps": only counts do.' }),
  sweepEvery: span('From one sweep to the next', limits.SWEEP_MS_MIN / 1_000, limits.SWEEP_MS_MAX / 1_000).default({
    minutes: 90,
  }),
  dayOldPercent: whole(0, 100).default(50).meta({ description: 'Price of a day-old piece, in % of the fresh one’s.' }),
}).prefault({})

export const personFile = record({ id: id(), name: name(limits.NAME_MAX.person), retired: retired() })

const offset = (what: string) => span(what, 0, limits.STEP_OFFSET_MS_MAX / 1_000).optional()

export const stepFile = record({
  id: id(),
  name: name(limits.NAME_MAX.step),
  list: oneOf(['opening', 'changeover']).meta({
    description: '"opening" counts from the first load in, "changeover" from the oven being empty.',
  }),
  before: offset('How long before that it should be done'),
  after: offset('How long after that it should be done'),
  kind: oneOf(['plain', 'float-test'])
    .default('plain')
    .meta({ description: '"float-test": one line for each dough that proofs.' }),
  retired: retired(),
}).superRefine(({ before, after }, ctx) => {
  if (before === undefined || after === undefined) return
  const [message, wrong] = ['One of the two, or neither.', 'Both "before" and "after" are given.']
  ctx.addIssue({ code: 'custom', path: ['after'], message, params: { wrong } })
})

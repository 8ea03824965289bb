import { z } from 'zod'
import { retired } from './equipment-schema.ts'
import { date, id, list, name, oneOf, record, region, whole } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { SPECIAL_KINDS } from './stages.ts'

/** What demand is reckoned from beside sales, as the set-up file says it: what pieces are worth, special days. */

export const demandFile = record({
  region: region()
    .nullable()
    .default(null)
    .meta({ description: 'Whose public holidays count, as ISO 3166 writes it.', examples: ['US-IL'] }),
  disappointCents: whole(0, limits.CENTS_MAX)
    .default(50)
    .meta({ description: 'What it costs beside the sale when somebody asks for a piece and there is none.' }),
  takeAnotherPercent: whole(0, 100)
    .default(50)
    .meta({ description: 'How many of these take a piece of another variety instead, in %.' }),
  dayOldSells: whole(0, limits.DAY_OLD_SELLS_MAX)
    .default(24)
    .meta({ description: 'Day-old pieces that a day sells, all varieties together.' }),
}).prefault({})

const dateOrSpan = () =>
  z.union(
    [date(), record({ from: date(), to: date() })],
    'A date as YYYY-MM-DD, or { "from": …, "to": … }, both included.',
  )

export const specialDayFile = record({
  id: id(),
  name: name(limits.NAME_MAX.specialDay),
  kind: oneOf(SPECIAL_KINDS).meta({ description: 'On a "closure" the shop does not open.' }),
  dates: list(dateOrSpan(), 'dates', 0, limits.SPANS_MAX)
    .default([])
    .meta({
      description: 'Past and to come, in order: single days, and spans with their first and last day.',
      examples: [['2026-11-26', { from: '2026-12-21', to: '2027-01-03' }]],
    }),
  retired: retired(),
})

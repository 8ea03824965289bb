import * as z from 'zod'
import { date, instant } from '../../shared-core/day/command-fields.ts'
import { forbid, LOADS_MAX, plannedLoad } from '../../shared-core/day/command-schema.ts'
import { list, record, whole } from '../../shared-core/shop/set-up-fields.ts'
import { BOARDS_MAX } from '../../shared-core/shop/set-up-limits.ts'
import type { DurationMs } from '../../shared-core/units.ts'
import { durationMs } from '../../shared-core/units.ts'

/** What comes in about which loads go when. The same schemas read it and describe it. */

const FORBIDS_MAX = 50
const HOURS_12_MS = 12 * 3_600_000
const CYCLE_MS_MAX = 3_600_000
const PEOPLE_MAX = 20

const span = (least: number, most: number) => whole(least, most).transform((ms): DurationMs => durationMs(ms))

const change = z.discriminatedUnion(
  'kind',
  [
    record({ kind: z.literal('shelf') }),
    record({ kind: z.literal('kettle'), cycleMs: span(1_000, CYCLE_MS_MAX) }),
    record({ kind: z.literal('boards'), more: whole(1, BOARDS_MAX) }),
    record({ kind: z.literal('opening'), earlierMs: span(0, HOURS_12_MS) }),
    record({ kind: z.literal('changeover'), byMs: whole(-HOURS_12_MS, HOURS_12_MS) }),
    record({ kind: z.literal('order'), dueAtMs: instant(), lines: plannedLoad.shape.lines }),
    record({ kind: z.literal('people'), fewer: whole(1, PEOPLE_MAX) }),
  ],
  'What would be another way, of the "kind" "shelf", "kettle", "boards", "opening", "changeover", "order" or "people".',
)

export const whatIfSchema = record({ date: date().optional(), change })

export const planTrySchema = record({
  date: date().optional(),
  loads: list(plannedLoad, 'loads', 0, LOADS_MAX),
  forbids: list(forbid, 'forbidden spans', 0, FORBIDS_MAX),
})

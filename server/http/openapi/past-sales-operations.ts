import * as z from 'zod'
import type { HistoryOfDayJson, SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import type { TrustJson } from '../../../shared-core/live/trust.ts'
import { HISTORY_DAYS_MAX, TRUST_DAYS_MAX } from '../past-sales.ts'
import type { Operation, Parameter } from './operation.ts'

const date = z.iso.date()
const pieces = z.number().min(0)
const factor = z.number().min(0)
const weekday = z.int().min(1).max(7)
const ids = z.array(z.string())
const basis = z.enum(['guess', 'few', 'many'])

const said = z.object({ q10: z.int(), q50: z.int(), q90: z.int() }).nullable()

const salesHistory: z.ZodType<SalesHistoryJson> = z.object({
  of: z.string(),
  known: z.object({ from: date, to: date, days: z.int() }).nullable(),
  days: z.array(z.object({ date, sold: pieces, lost: pieces, soldOut: z.int(), specials: ids, said })),
  weekdays: z.array(z.object({ weekday, days: z.int(), sold: pieces, lost: pieces })),
  hours: z.object({ fromHour: z.int(), weekdays: z.array(z.array(pieces).nullable()), untimed: z.number() }),
  learnt: z
    .object({
      basis,
      level: pieces,
      weekdays: z.array(factor.nullable()),
      specials: z.array(z.object({ id: z.string(), factor, days: z.int() })),
    })
    .nullable(),
})

const salesOfDay: z.ZodType<HistoryOfDayJson> = z.object({
  date,
  openMinute: z.number(),
  closeMinute: z.number(),
  specials: ids,
  isRecorded: z.boolean(),
  items: z.array(
    z.object({
      varietyId: z.string(),
      sold: pieces,
      lost: pieces,
      gone: z.array(z.object({ fromMinute: z.number(), toMinute: z.number() })),
      said,
    }),
  ),
})

const off = z.object({ rows: z.int(), asked: pieces, board: pieces, lastWeek: pieces, lastFour: pieces }).nullable()
const share = z.object({ hits: z.int(), of: z.int(), expected: pieces, low: z.number(), high: z.number() })
const accuracy = {
  rows: z.int(),
  estimated: z.int(),
  asked: pieces,
  off,
  offNotSoldOut: off,
  wape: z.number().nullable(),
  mase: z.number().nullable(),
  pinball: z.number().nullable(),
  held: z.object({ inside: share, likely: share, careful: share, plenty: share }).nullable(),
}
const accuracies = z.array(z.object({ id: z.string(), ...accuracy }))
const cost = z.object({ leftPieces: pieces, lostPieces: pieces, leftCents: z.int(), lostCents: z.int() })

const trust: z.ZodType<TrustJson> = z.object({
  from: date.nullable(),
  to: date.nullable(),
  days: z.int(),
  daysKnown: z.int(),
  basis: z.object({ guess: z.int(), few: z.int(), many: z.int() }),
  each: z.object(accuracy),
  shop: z.object(accuracy),
  varieties: accuracies,
  doughs: accuracies,
  weekdays: accuracies,
  rests: accuracies,
  cost: z.object({ days: z.int(), baked: cost.nullable(), advised: cost, lastWeek: cost, lastFour: cost }),
  overrides: z.object({
    changed: z.int(),
    nearer: z.int(),
    farther: z.int(),
    lines: z.array(
      z.object({
        ...{ date, doughId: z.string(), varietyId: z.string().nullable() },
        ...{ advised: z.number(), typed: z.number(), asked: pieces, isEstimated: z.boolean() },
      }),
    ),
  }),
})

export const PAST_SALES_ANSWERS = { SalesHistory: salesHistory, SalesOfDay: salesOfDay, Trust: trust } as const

const asked: readonly Parameter[] = [
  {
    name: 'of',
    in: 'query',
    description: 'All, one dough’s or one variety’s: "all", "dough:ID", "variety:ID".',
    schema: z.string(),
    example: 'variety:sesame',
  },
  { name: 'from', in: 'query', description: 'First date; left out, the first.', schema: date, example: '2026-09-01' },
  {
    name: 'to',
    in: 'query',
    description: `Last date; left out, the last. The newest ${HISTORY_DAYS_MAX} days at most.`,
    schema: date,
    example: '2026-11-30',
  },
]

export const PAST_SALES_OPERATIONS: readonly Operation[] = [
  {
    id: 'salesHistory',
    method: 'get',
    path: '/api/v1/history/sales',
    summary: 'Past sales by day, weekday and hour, with what was probably lost where there was none',
    parameters: asked,
    answer: {
      type: 'application/json',
      schema: 'SalesHistory',
      description: 'Days in order; a closed one is left out.',
    },
    problems: [404],
  },
  {
    id: 'salesHistoryCsv',
    method: 'get',
    path: '/api/v1/history/sales.csv',
    summary: 'The same by day, for a spreadsheet',
    parameters: asked,
    answer: { type: 'text/csv', schema: null, description: 'RFC 4180, with a header line.' },
    problems: [404],
  },
  {
    id: 'salesOfDay',
    method: 'get',
    path: '/api/v1/history/sales/{date}',
    summary: 'One past day’s sales by variety, with when it was gone and what had been forecast',
    parameters: [{ name: 'date', in: 'path', description: 'Its local date.', schema: date, example: '2026-11-24' }],
    answer: { type: 'application/json', schema: 'SalesOfDay', description: 'No items: nothing is known of that day.' },
    problems: [404],
  },
  {
    id: 'trust',
    method: 'get',
    path: '/api/v1/trust',
    summary: 'How far off the forecasts were, beside two simple ways, and what over- and under-baking cost',
    parameters: [
      {
        name: 'days',
        in: 'query',
        description: 'The newest days, at most so many.',
        schema: z.int().min(1).max(TRUST_DAYS_MAX),
        example: '84',
      },
    ],
    answer: { type: 'application/json', schema: 'Trust', description: 'Each day was forecast from those before it.' },
    problems: [404],
  },
]

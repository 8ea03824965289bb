import * as z from 'zod'
import type { Operation } from './operation.ts'

const instant = () => z.int().min(0)
const milliCelsius = () => z.int().meta({ description: 'Thousandths of a °C.' })
const span = () => z.int().min(0).meta({ description: 'Milliseconds.' })

const heat = z.object({
  readings: z.array(z.object({ atMs: instant(), milliCelsius: milliCelsius() })),
  basis: z.enum(['readings', 'past', 'kind']).meta({
    description: 'On what the answers rest: readings of this heat-up, this oven’s earlier ones, or ovens of its kind.',
  }),
  course: z
    .object({
      isHeating: z.boolean(),
      tauMinutes: z.int(),
      limitMilliCelsius: milliCelsius(),
      noiseMilliCelsius: z.int(),
      curve: z
        .array(z.tuple([instant(), z.int(), z.int()]))
        .meta({ description: 'Instant, mean, and the standard deviation of the mean.' }),
    })
    .nullable(),
  second: z
    .object({
      milliCelsius: milliCelsius(),
      fromMs: instant(),
      reached: z
        .object({ earliestMs: instant(), likelyMs: instant(), latestMs: instant() })
        .nullable()
        .meta({ description: 'With 10, 50 and 90 % chance by then; null: not under this setting.' }),
      wantedMs: instant(),
    })
    .nullable(),
  turnOn: z.object({ byMs: instant(), likelyMs: instant(), readyAtMs: instant() }).nullable(),
  next: z
    .object({ milliCelsius: milliCelsius(), wanted: milliCelsius(), waitUntilMs: instant().nullable() })
    .nullable(),
  heldBack: z
    .object({ heatUps: z.int(), readings: z.int(), milliCelsius: z.int(), minutes: z.number() })
    .nullable()
    .meta({ description: 'How far off earlier heat-ups would have been foretold from their first two thirds.' }),
})

const times = z.object({
  days: z.int(),
  times: z.array(
    z.object({
      what: z.enum(['boil', 'cycle', 'boarding', 'between', 'firstSide', 'bake']),
      varietyId: z.string().nullable(),
      taps: z.int(),
      days: z.int(),
      medianMs: span(),
      quarterMs: span(),
      threeQuartersMs: span(),
      setUpMs: span().nullable(),
      isOther: z.boolean().meta({ description: 'The set-up’s time lies outside what the taps leave open.' }),
    }),
  ),
})

export const OVEN_ANSWERS = { OvenHeat: heat, LearntTimes: times } as const

export const OVEN_OPERATIONS: readonly Operation[] = [
  {
    id: 'ovenHeat',
    method: 'get',
    path: '/api/v1/oven/heat',
    summary: 'What the oven’s readings say: when the second menu can bake, when to turn it on, whether a load waits',
    description: 'Advice: it is in no entry. Readings come by POST /api/v1/oven-readings or are typed.',
    answer: { type: 'application/json', schema: 'OvenHeat', description: 'With how sure it is.' },
  },
  {
    id: 'learntTimes',
    method: 'get',
    path: '/api/v1/learnt-times',
    summary: 'How long the line really takes, by the taps of the newest sixty days, beside the set-up',
    answer: { type: 'application/json', schema: 'LearntTimes', description: 'Medians with their quarters.' },
  },
]

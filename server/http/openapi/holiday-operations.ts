import * as z from 'zod'
import { region } from '../../../shared-core/shop/set-up-fields.ts'
import type { Operation } from './operation.ts'

const date = z.iso.date()
const span = z.object({ from: date, to: date })
const named = { code: region(), en: z.string(), es: z.string() }

export const HOLIDAY_ANSWERS = {
  HolidayRegions: z.array(z.object({ ...named, parts: z.array(z.object(named)) })),
  Holidays: z.object({
    region: region(),
    holidays: z.array(
      z.object({
        id: z.string(),
        en: z.string(),
        es: z.string(),
        isPublic: z.boolean(),
        spans: z.array(span),
      }),
    ),
  }),
} as const

export const HOLIDAY_OPERATIONS: readonly Operation[] = [
  {
    id: 'holidays',
    method: 'get',
    path: '/api/v1/holidays',
    summary: 'Public holidays and days that people keep, of a region',
    description: 'From date-holidays (CC BY 3.0). A part of a country that is not known by itself has its country’s.',
    parameters: [
      { name: 'region', in: 'query', description: 'As ISO 3166 writes it.', schema: region(), example: 'US-IL' },
      { name: 'from', in: 'query', description: 'First date.', schema: date, example: '2026-01-01' },
      {
        name: 'to',
        in: 'query',
        description: 'Last date, of the tenth year at most.',
        schema: date,
        example: '2026-12-31',
      },
    ],
    answer: {
      type: 'application/json',
      schema: 'Holidays',
      description: 'Those of one name together, each with the days that it fills.',
    },
    problems: [404],
  },
  {
    id: 'holidayRegions',
    method: 'get',
    path: '/api/v1/holidays/regions',
    summary: 'Regions whose holidays are known',
    answer: { type: 'application/json', schema: 'HolidayRegions', description: 'Countries with their parts.' },
  },
]

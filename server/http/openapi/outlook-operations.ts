import * as z from 'zod'
import type { Operation } from './operation.ts'

const pieces = () => z.int().min(0)
const percent = () => z.int().min(0).max(100)
const instant = () => z.int().min(0)
const basis = z.enum(['guess', 'few', 'many']).meta({ description: 'From typed guesses alone, few days, or many.' })
const range = z
  .object({ q10: pieces(), q50: pieces(), q90: pieces() })
  .meta({ description: 'Not more than that with 10, 50 and 90 % chance.' })
const varietyOutlook = z.object({
  varietyId: z.string(),
  basis,
  rest: range,
  gone: z.object({ t10Ms: instant().nullable(), t50Ms: instant().nullable(), t90Ms: instant().nullable() }),
  moreAtMs: instant().nullable(),
  shortAtMs: instant().nullable(),
  beforeMorePercent: percent().nullable(),
  beforeClosePercent: percent(),
  leftAtClose: pieces(),
  lost: pieces(),
  atChangeover: z.object({ left: range, lastsPercent: percent(), more: pieces() }).nullable(),
})

const outlook = z.object({
  date: z.iso.date(),
  atMs: instant(),
  closeAtMs: instant(),
  changeoverAtMs: instant().nullable(),
  lastLoadInAtMs: instant().nullable(),
  varieties: z.array(varietyOutlook),
})

export const OUTLOOK_ANSWERS = {
  OutlookTold: z.object({
    basedOnSeq: z.int().nullable(),
    engine: z.int().nullable(),
    outlook: outlook.nullable(),
  }),
} as const

export const OUTLOOK_OPERATIONS: readonly Operation[] = [
  {
    id: 'outlook',
    method: 'get',
    path: '/api/v1/outlook',
    summary: 'What the rest of today will probably bring, as the screens were told last',
    description: 'Advice: it is in no entry. "outlook" is null while no day is open, and until it was reckoned once.',
    answer: {
      type: 'application/json',
      schema: 'OutlookTold',
      description: 'By variety: what will be asked for, when it is gone, what is left at the changeover and the close.',
    },
  },
]

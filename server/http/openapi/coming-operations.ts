import * as z from 'zod'
import type { Operation } from './operation.ts'

const date = z.iso.date()
const pieces = z.int().min(0)
const basis = z.enum(['nothing', 'guess', 'few', 'many']).meta({
  description: 'From typed guesses alone, few days, or many; of nothing, only what is ordered is advised.',
})
const why = z.array(
  z
    .looseObject({ code: z.string(), pieces: z.int() })
    .meta({ description: 'Signed; all of them sum up to the number. Some carry a factor, costs in cents, or a unit.' }),
)
const likely = {
  likely: pieces.meta({ description: 'Enough on one day in two.' }),
  careful: pieces.meta({ description: 'Enough on eight of ten days.' }),
  plenty: pieces.meta({ description: 'Enough on nine of ten days.' }),
}

const coming = z.object({
  date,
  isClosed: z.boolean().meta({ description: 'The shop does not open, or has closed the day: nothing is advised.' }),
  doughs: z.array(
    z.object({
      doughId: z.string(),
      ...likely,
      basis,
      counter: pieces,
      ordered: pieces,
      carried: pieces,
      toMake: pieces,
      why,
      decideAtMs: z.int().nullable(),
      varieties: z.array(
        z.object({
          varietyId: z.string(),
          ...likely,
          basis,
          counter: pieces,
          ordered: pieces,
          bake: pieces,
          why,
          left: z.number().min(0),
          lost: z.number().min(0),
        }),
      ),
    }),
  ),
})

export const COMING_ANSWERS = { Coming: coming } as const

export const COMING_OPERATIONS: readonly Operation[] = [
  {
    id: 'coming',
    method: 'get',
    path: '/api/v1/coming',
    summary: 'How much dough and how many pieces are worth having on a day to come, and why',
    parameters: [
      {
        name: 'date',
        in: 'query',
        description: 'Today or one of the next 14 days, by the shop’s calendar; left out, tomorrow.',
        schema: date,
        example: '2026-11-25',
        isLeftOut: true,
      },
    ],
    answer: { type: 'application/json', schema: 'Coming', description: 'Nothing of it stands in the journal.' },
    problems: [404],
  },
]

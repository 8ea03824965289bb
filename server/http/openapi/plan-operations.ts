import * as z from 'zod'
import { bakePlanSchema } from '../../plan/bake-off-schema.ts'
import type { Operation } from './operation.ts'

const instant = () => z.int().min(0)
const pieces = z.int().min(0)
const cents = () => z.int().meta({ description: 'Hundredths of the shop’s money.' })
const expected = () => z.number().min(0).meta({ description: 'Pieces, expected.' })
const line = z.object({ varietyId: z.string(), pieces })
const curve = (values: number) =>
  `Instants, each with ${values === 1 ? 'pieces so far' : 'a 10 % bound, the mean and a 90 % bound'}.`

const load = z.object({
  id: z
    .string()
    .meta({ description: 'Begins with "advised." where the board advises it; a load command may carry it.' }),
  shelfId: z.string(),
  kettleAtMs: instant().nullable(),
  dips: z.int(),
  inAtMs: instant(),
  flipAtMs: instant().nullable(),
  outAtMs: instant(),
  readyAtMs: instant(),
  lines: z.array(line),
  isPinned: z.boolean().meta({ description: 'People set it.' }),
  isLast: z.boolean(),
  why: z.array(z.looseObject({ varietyId: z.string(), kind: z.string() })),
  contacts: z.array(
    z.object({ varietyId: z.string(), allergens: z.array(z.string()), where: z.array(z.string()) }).meta({
      description: 'Allergens that the variety should not meet and that have touched these places by then.',
    }),
  ),
})

const figures = z.object({
  profitCents: cents(),
  wavesProfitCents: cents().nullable().meta({ description: 'The same day baked in equal waves of 90 minutes.' }),
  baked: pieces,
  lost: expected(),
  missing: expected(),
  left: expected(),
  ageMinutes: z.number().min(0),
  firstKettleAtMs: instant().nullable(),
  lastOutAtMs: instant().nullable(),
  crewMinutes: z.number().min(0).nullable(),
  bottleneck: z.object({ of: z.string(), gainCents: cents() }).nullable(),
})

const plan = z.object({
  date: z.iso.date(),
  atMs: instant(),
  loads: z.array(load),
  pulls: z.array(
    z.object({
      atMs: instant(),
      doughId: z.string(),
      varietyId: z.string().nullable(),
      pieces,
      trays: z.int(),
      loadId: z.string(),
      latestAtMs: instant().nullable(),
    }),
  ),
  changed: z.looseObject({ atMs: instant(), next: z.boolean() }).nullable(),
  last: z
    .object({
      kettleByMs: instant(),
      inByMs: instant(),
      emptyByMs: instant(),
      loadIds: z.array(z.string()),
      slips: z.array(z.object({ byMs: z.int(), gainCents: z.int(), lostFewer: z.number(), leftFewer: z.number() })),
    })
    .nullable(),
  cannot: z.array(z.looseObject({ kind: z.string() })),
  supply: z.array(
    z.object({
      varietyId: z.string(),
      forSale: pieces,
      ready: z.array(z.array(z.number())).meta({ description: curve(1) }),
      asked: z.array(z.array(z.number())).meta({ description: curve(3) }),
      lost: expected(),
      left: expected(),
    }),
  ),
  figures,
})

export const PLAN_ANSWERS = {
  Plan: plan,
  PlanFigures: figures,
  PlanTold: z.object({ basedOnSeq: z.int().nullable(), engine: z.int().nullable(), plan: plan.nullable() }),
  PlanTried: z.object({ plan: plan.nullable(), free: figures.nullable() }),
  WhatIf: z.object({ before: figures, after: figures }).nullable(),
  BakePlan: bakePlanSchema,
} as const

/** A small shop of one shelf, whose plan is quickly made. */
const PROBLEM = {
  unit: 6,
  kettle: { pieces: 36, cycleMin: 1.5 },
  boards: { count: 24, pieces: 6, maxWaitMin: 8 },
  oven: {
    readyMin: 270,
    mustBeEmptyMin: 660,
    firstSideMin: 3.5,
    handlingMin: 1,
    shelves: [{ name: '1', pieces: 72 }],
  },
  coolMin: 15,
  bakeToleranceMin: 2,
  open: 360,
  close: 900,
  doughs: { plain: { pieces: 120 } },
  varieties: [
    {
      name: 'Sesame',
      dough: 'plain',
      bakeMin: 16,
      onShelf: 0,
      price: 1.6,
      cost: 0.45,
      salvage: 0.1,
      lostSale: 0.8,
      stalePerHour: 0.03,
      demand: {
        mean: 62,
        dispersion: 9,
        profile: [
          [360, 0],
          [480, 0.34],
          [600, 0.66],
          [900, 1],
        ],
      },
    },
  ],
  orders: [{ due: 495, lines: [['Sesame', 36]] }],
}

const DATE = 'Today or one of the next 14 days, by the shop’s calendar; left out, the day that is open, else today.'

export const PLAN_OPERATIONS: readonly Operation[] = [
  {
    id: 'plan',
    method: 'get',
    path: '/api/v1/plan',
    summary: 'Which loads when, as the screens were told last, or for a day to come',
    description:
      'Advice: it is in no entry. "plan" is null while no day is open, nothing is known of what will sell, or advice is switched off.',
    parameters: [
      { name: 'date', in: 'query', description: DATE, schema: z.iso.date(), example: '2026-11-25', isLeftOut: true },
    ],
    answer: { type: 'application/json', schema: 'PlanTold', description: 'Loads in the order of their kettle starts.' },
    problems: [404],
  },
  {
    id: 'planTry',
    method: 'post',
    path: '/api/v1/plan/try',
    summary: 'What the plan would be with these loads set and these forbidden, and what that costs',
    description:
      'Nothing is written. "loads" as in setLoadList, "forbids" as in forbidLoads; both replace what stands.',
    bodies: [{ type: 'application/json', schema: 'PlanTry', example: { loads: [], forbids: [] } }],
    answer: {
      type: 'application/json',
      schema: 'PlanTried',
      description: 'The plan, and the figures of the day with nothing set or forbidden; null where nothing is known.',
    },
    problems: [404, 422],
  },
  {
    id: 'whatIf',
    method: 'post',
    path: '/api/v1/plan/what-if',
    summary: 'The day’s figures as it is, and with one thing another way',
    description: 'Nothing is written. Null where nothing is known of what will be asked for.',
    bodies: [{ type: 'application/json', schema: 'WhatIfAsked', example: { change: { kind: 'boards', more: 10 } } }],
    answer: { type: 'application/json', schema: 'WhatIf', description: 'Figures of both.' },
    problems: [404, 422],
  },
  {
    id: 'bakeOff',
    method: 'post',
    path: '/api/v1/plan/bake-off',
    summary: 'Plans a problem that is given whole: kettle, boards, oven, doughs, demand and orders',
    description:
      'It has nothing to do with this shop. Minutes are after local midnight, money is in one unit, whichever; 60 varieties and 20 shelves at most. The same problem gives the same loads.',
    bodies: [{ type: 'application/json', schema: 'BakeOff', example: PROBLEM }],
    answer: { type: 'application/json', schema: 'BakePlan', description: 'Loads in the order of their kettle starts.' },
    problems: [422],
  },
]

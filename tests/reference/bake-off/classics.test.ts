import { describe, expect, it } from 'vitest'
import type { BakeLoad, BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { violationsOf } from './feasible.ts'
import { madeShop, madeVariety } from './made-shop.ts'
import { scorePlan } from './score.ts'

/**
 * Classic scheduling problems put as a bake-off without walk-ins: a job is an order that fills a shelf exactly, of a
 * variety of its own that shares a load with no other; its processing time is bake and handling, its deadline when it is
 * due, and lateness means that all its pieces are missing. Only filled orders bring anything, so that the best score is
 * the published optimum.
 */
interface Job {
  /** Minutes that it holds the shelf, handling included. */
  readonly processing: number
  /** Minutes after the oven is ready, by which it must be out. */
  readonly deadline: number
  /** What it costs when it is late. */
  readonly penalty: number
}

const PIECES = 60
const READY = 270
const HANDLING = 1

function shopOf(jobs: readonly Job[]): BakeOff {
  const named = jobs.map((job, n) => ({ ...job, name: `Job ${n + 1}`, dough: `dough ${n + 1}` }))
  return madeShop({
    kettle: { pieces: PIECES, cycleMin: 0.5 },
    boards: { count: 60, pieces: 6, maxWaitMin: 8 },
    oven: {
      readyMin: READY,
      mustBeEmptyMin: 660,
      firstSideMin: 2,
      handlingMin: HANDLING,
      shelves: [{ name: '1', pieces: PIECES }],
    },
    coolMin: 0,
    bakeToleranceMin: 0,
    doughs: Object.fromEntries(named.map(({ dough }) => [dough, { pieces: PIECES }])),
    // The piece that is missing costs its price, and is not sold either: half the penalty each. Baking costs nothing.
    varieties: named.map(({ name, dough, processing, penalty }) =>
      madeVariety({
        ...{ name, dough, bakeMin: processing - HANDLING, price: penalty / PIECES / 2 },
        ...{ cost: 0, salvage: 0, lostSale: 0, stalePerHour: 0 },
      }),
    ),
    orders: named.map(({ name, deadline }) => ({ due: READY + deadline, lines: [[name, PIECES]] })),
  })
}

/** Penalties of what is late in a plan: of the score without any loss, what is missing. */
function penaltyOf(given: BakeOff, loads: readonly BakeLoad[], jobs: readonly Job[]): number {
  expect(violationsOf(given, { loads })).toEqual([])
  const all = jobs.reduce((sum, { penalty }) => sum + penalty / 2, 0)
  return all - scorePlan(given, { loads }, { days: 1 }).profit
}

const unitJobs = (deadlines: readonly number[], penalties: readonly number[]): Job[] =>
  deadlines.map((deadline, n) => ({ processing: 20, deadline: deadline * 20, penalty: penalties[n] ?? 0 }))

const jobsOf = (processing: readonly number[], due: readonly number[], minutes: number): Job[] =>
  processing.map((p, n) => ({ processing: p * minutes, deadline: (due[n] ?? 0) * minutes, penalty: 60 }))

describe('one shelf', () => {
  // Cormen, Leiserson, Rivest, Stein: Introduction to Algorithms, section 16.5: the example and exercise 16.5-1; the third
  // by enumerating all orders. The least sum of penalties of late tasks.
  it.each([
    ['the text', [4, 2, 4, 3, 1, 4, 6], [70, 60, 50, 40, 30, 20, 10], 50],
    ['exercise 16.5-1', [4, 2, 4, 3, 1, 4, 6], [10, 20, 30, 40, 50, 60, 70], 30],
    ['eight tasks, all orders enumerated', [1, 1, 2, 2, 3, 3, 5, 5], [9, 4, 7, 8, 3, 6, 2, 5], 14],
  ])('unit tasks with deadlines and penalties: %s', (_source, deadlines, penalties, least) => {
    const jobs = unitJobs(deadlines, penalties)
    const given = shopOf(jobs)
    expect(penaltyOf(given, planBakeOff(given).loads, jobs)).toBeCloseTo(least, 6)
  })

  // Moore 1968 and Hodgson: fewest late jobs. The first set of jobs is Pinedo's (Scheduling, section 3.3, from memory), the
  // second from a worked example on the number of tardy jobs; both optima by enumerating all subsets.
  it.each([
    ['five jobs', [7, 8, 4, 6, 6], [9, 17, 18, 19, 21], 10, 2],
    ['ten jobs', [19, 23, 5, 31, 17, 8, 32, 41, 26, 18], [48, 75, 170, 215, 205, 240, 85, 67, 100, 95], 1.5, 2],
  ])('fewest late jobs: %s', (_source, processing, due, minutes, least) => {
    const jobs = jobsOf(processing, due, minutes)
    const given = shopOf(jobs)
    expect(penaltyOf(given, planBakeOff(given).loads, jobs) / 60).toBeCloseTo(least, 6)
  })

  it('earliest due date first: five jobs that are all on time in that order only just (Jackson 1955)', () => {
    const jobs = jobsOf([4, 2, 6, 5, 3], [8, 5, 17, 12, 20], 10)
    const given = shopOf(jobs)
    expect(penaltyOf(given, planBakeOff(given).loads, jobs)).toBeCloseTo(0, 6)
  })
})

describe('kettle, then two or three shelves', () => {
  // Kettle minutes and oven minutes of six jobs, each with the least time in which all are out of a no-wait hybrid flow
  // shop; optima by enumerating the orders, and proven with a time-indexed integer program. Here pieces may wait a little on
  // boards, so that these times can be kept.
  const KETTLE = [3, 4, 2, 5, 3, 4]
  const BAKE = [18, 16, 20, 15, 17, 19]
  const A_DIP = 12

  it.each([
    [1, 107],
    [2, 57],
    [3, 43],
  ])('%i shelves: all six jobs out within %i minutes', (shelves, minutes) => {
    const named = BAKE.map((bakeMin, n) => ({ name: `Job ${n + 1}`, bakeMin, pieces: (KETTLE[n] ?? 0) * A_DIP }))
    const begin = READY + 30
    const end = begin + minutes
    const given: BakeOff = {
      ...madeShop(),
      unit: A_DIP,
      kettle: { pieces: A_DIP, cycleMin: 1 },
      boards: { count: 60, pieces: A_DIP, maxWaitMin: 4 },
      now: begin,
      oven: {
        ...{ readyMin: READY, mustBeEmptyMin: end, firstSideMin: 2, handlingMin: 0 },
        shelves: Array.from({ length: shelves }, (_, n) => ({ name: String(n + 1), pieces: 60 })),
      },
      coolMin: 0,
      bakeToleranceMin: 0,
      doughs: { plain: { pieces: 252 } },
      varieties: named.map(({ name, bakeMin }) => madeVariety({ name, bakeMin, cost: 0, salvage: 0, stalePerHour: 0 })),
      orders: [{ due: end, lines: named.map(({ name, pieces }) => [name, pieces] as const) }],
    }
    const plan = planBakeOff(given)
    expect(violationsOf(given, plan)).toEqual([])
    expect(scorePlan(given, plan, { days: 1 }).missing).toBe(0)
  })
})

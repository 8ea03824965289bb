import { existsSync, readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it } from 'vitest'
import type { BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { violationsOf } from './feasible.ts'
import { scorePlan, scorePlans } from './score.ts'

/**
 * The public samples beside the checkout. Their references come from minutes of search by a program that shares no code
 * with the planner, on 4,000 days drawn there; published standard errors of these means: 0.67, 1.22, 3.01.
 */
const FOLDER_NAME = '../shared/data/plan'
const FOLDER = new URL('../../../../shared/data/plan/', import.meta.url)

describe('the public samples', () => {
  beforeEach(({ skip }) => {
    skip(!existsSync(FOLDER), `skipped: the samples are not there; they lie in ${FOLDER_NAME}, beside the checkout`)
  })

  // More days where a day is quickly simulated: the standard errors are 0.2, 0.1 and 0.15 % of the score.
  it.each([
    ['small', 344.44, 8_000],
    ['medium', 875.43, 4_000],
    ['large', 2628.48, 2_000],
  ])('%s: at least 0.99 of the published reference %d', (name, reference, days) => {
    const given = sample(name)
    const plan = planBakeOff(given)
    expect(violationsOf(given, plan)).toEqual([])
    expect(scorePlan(given, plan, { days }).profit).toBeGreaterThan(0.99 * reference)
  })

  it('ten times the work does not make a plan worse', () => {
    const given = sample('medium')
    const [usual, long] = scorePlans(given, [planBakeOff(given), planBakeOff(given, 10)], { days: 4_000, seed: 2 })
    // The search works on its own expectation, which is off by a few thousandths: a thousandth either way is no loss.
    expect(long?.profit).toBeGreaterThan(0.999 * (usual?.profit ?? Number.NaN))
  })
})

function sample(name: string): BakeOff {
  return JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8'))
}

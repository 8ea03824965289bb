import type { Teaching } from '../dough/mix.ts'
import type { DoughId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { exponential } from './exponential.ts'

/** A float or poke test of a dough. */
export interface DoughTest {
  readonly doughId: DoughId
  readonly atMs: EpochMs
  /** Fermented by then, in thousandths of what the set-up's window asks for. */
  readonly share: number
  readonly passed: boolean
}

/** The last tests that a dough's pace is read off: some weeks of mornings. */
export const TESTS_MAX = 20
/** The pace is within these: a dough that needs twice its window has the wrong window. */
export const PACE_LEAST = 600
export const PACE_MOST = 1_400

const STEP = 5
/** How far from its window a dough's pace may well be, before anything is known of it. */
const PRIOR_SPREAD = 150
/** Over how wide a span of fermenting a test passes sometimes. */
const TEST_SPREAD = 40
/** Of ten tests one is read, or tapped, wrongly (common practice, no source). */
const ODD = 0.1

/**
 * What tests have taught about a dough's pace with one more. A test is an interval: "not ready" says that the dough needs
 * more than it has fermented, "passed" that this was enough. The pace is the mean of what is then believed, from a belief
 * around 1000 (the set-up's own window), a test being odd once in ten: one odd test changes little, several the same way
 * do. A test that passed never makes the pace longer, one that did not never shorter.
 * @param before left out: nothing was known
 * @returns integers, the pace within `PACE_LEAST` and `PACE_MOST`
 */
export function taught(before: Teaching | undefined, test: DoughTest): Teaching {
  const { doughId, ...one } = test
  const tests = [...(before?.tests ?? []), one].sort((first, second) => first.atMs - second.atMs).slice(-TESTS_MAX)
  return { doughId, tests, pace: paceFrom(tests) }
}

/** The mean pace by these tests, in thousandths. @example paceFrom([]) // 1000 */
export function paceFrom(tests: readonly Pick<DoughTest, 'share' | 'passed'>[]): number {
  let weights = 0
  let sum = 0
  for (let pace = PACE_LEAST; pace <= PACE_MOST; pace += STEP) {
    const off = (pace - 1_000) / PRIOR_SPREAD
    const weight = tests.reduce((all, test) => all * likelihood(test, pace), exponential((-off * off) / 2))
    weights += weight
    sum += weight * pace
  }
  return Math.round(sum / weights)
}

/** How likely a test comes out so for a dough of that pace. */
function likelihood({ share, passed }: Pick<DoughTest, 'share' | 'passed'>, pace: number): number {
  const passes = 1 / (1 + exponential((pace - share) / TEST_SPREAD))
  return ODD + (1 - 2 * ODD) * (passed ? passes : 1 - passes)
}

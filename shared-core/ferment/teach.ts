import type { Teaching } from '../dough/mix.ts'
import type { DoughId } from '../ids.ts'
import type { EpochMs } from '../units.ts'

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

/** What one test moves the pace by at most: several the same way are believed, an odd one changes little. */
const PULL = 22

/**
 * What tests have taught about a dough's pace with one more. A test is an interval: "not ready" says that the dough needs
 * more than it has fermented, "passed" that this was enough. One that agrees with the pace teaches nothing: people test
 * when the board says so, and a pass then says no more than that the board was right.
 * @param before left out: nothing was known
 * @returns integers, the pace within `PACE_LEAST` and `PACE_MOST`
 */
export function taught(before: Teaching | undefined, test: DoughTest): Teaching {
  const { doughId, ...one } = test
  const tests = [...(before?.tests ?? []), one].sort((first, second) => first.atMs - second.atMs).slice(-TESTS_MAX)
  return { doughId, tests, pace: paceFrom(tests) }
}

/**
 * The pace by these tests, in thousandths: from the set-up's own 1000 as far as tests that it contradicts pull it.
 *
 *   (pace − 1000) / PULL = number of "not ready" at more than the pace − number of passes at less
 *
 * @example paceFrom([{ share: 1_000, passed: false }, { share: 1_100, passed: false }]) // 1022: one pulls, one agrees
 */
export function paceFrom(tests: readonly Pick<DoughTest, 'share' | 'passed'>[]): number {
  let low = PACE_LEAST
  let high = PACE_MOST
  // The pull falls as the pace rises: between the bounds lies where it is nothing.
  while (high - low > 0.25) {
    const middle = (low + high) / 2
    if (pullAt(tests, middle) > 0) low = middle
    else high = middle
  }
  return Math.round((low + high) / 2)
}

function pullAt(tests: readonly Pick<DoughTest, 'share' | 'passed'>[], pace: number): number {
  const contradicts = ({ share, passed }: Pick<DoughTest, 'share' | 'passed'>) => (passed ? share < pace : share > pace)
  const pulls = tests.filter(contradicts).map(({ passed }) => (passed ? -1 : 1))
  return (1_000 - pace) / PULL + pulls.reduce((sum, pull) => sum + pull, 0)
}

import type { SimGiven } from '../../shared-core/kitchen/simulate.ts'
import { OVEN, simulate } from '../../shared-core/kitchen/simulate.ts'
import { Chance } from '../../shared-core/plan/bake-off/chance.ts'

/**
 * Erlang's C: the share of customers who wait in M/M/c with `load` = λ/μ < c.
 *
 *   C = [a^c/c! · c/(c−a)] / [Σ_{k<c} a^k/k! + a^c/c! · c/(c−a)]
 */
export function erlangC(servers: number, load: number): number {
  let term = 1
  let sum = 0
  for (let k = 0; k < servers; k += 1) {
    sum += term
    term *= load / (k + 1)
  }
  const waiting = (term * servers) / (servers - load)
  return waiting / (sum + waiting)
}

export interface SteadyRun {
  readonly servers: number
  /** ρ = λ / cμ. */
  readonly busy: number
  readonly service: 'exponential' | 'fixed'
  /** By the kitchen's hands, or by places of the oven. */
  readonly by: 'hands' | 'oven'
  readonly seed: number
  readonly customers: number
}

export interface Steady {
  /** In mean service times, with the half width of its 99 % interval. */
  readonly wait: number
  readonly within: number
  readonly waits: readonly number[]
}

/** A mean service time: the simulator's instants are in ms. */
const SERVICE_MS = 1_000
const BATCHES = 30
/** Student's t, 29 degrees of freedom, 99.5 %. */
const T_29 = 2.756
/** The first tenth is left out: the kitchen begins empty. */
const WARM_UP = 0.1

/**
 * The kitchen's simulator as a queue: arrivals at random into one station, times drawn or fixed. The mean wait with an
 * interval by batch means (Law and Kelton, Simulation Modeling and Analysis, section 9.5.3).
 */
export function steadyRun({ servers, busy, service, by, seed, customers }: SteadyRun): Steady {
  const chance = new Chance(seed)
  const drawn = () => -Math.log(1 - chance.part())
  let atMs = 0
  const jobs = Array.from({ length: customers }, () => {
    atMs += (SERVICE_MS * drawn()) / (busy * servers)
    const takesMs = service === 'fixed' ? SERVICE_MS : SERVICE_MS * drawn()
    const station = by === 'oven' ? OVEN : 0
    return { readyMs: atMs, steps: [{ station, takesMs, slots: 1, fromMs: Number.NEGATIVE_INFINITY }] }
  })
  const free = Array<number>(servers).fill(0)
  const given: SimGiven = {
    hands: by === 'oven' ? [[]] : [free],
    shelves: by === 'oven' ? [free] : [],
    handlingMs: 0,
    jobs,
  }
  const { startMs } = simulate(given)
  const waits = jobs.map(({ readyMs }, at) => ((startMs[at]?.[0] ?? 0) - readyMs) / SERVICE_MS)
  return { ...batchMeans(waits.slice(Math.floor(WARM_UP * customers))), waits }
}

function batchMeans(waits: readonly number[]): { wait: number; within: number } {
  const size = Math.floor(waits.length / BATCHES)
  const means = Array.from({ length: BATCHES }, (_, at) => meanOf(waits.slice(at * size, (at + 1) * size)))
  const wait = meanOf(means)
  const variance = means.reduce((sum, mean) => sum + (mean - wait) ** 2, 0) / (BATCHES - 1)
  return { wait, within: T_29 * Math.sqrt(variance / BATCHES) }
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Mean wait in mean service times, by servers and ρ: M/M/c and M/D/c (Crommelin 1932), worked out with 1e-9. */
export const WAITS: readonly (readonly [servers: number, busy: number, exponential: number, fixed: number])[] = [
  [1, 0.5, 1, 0.5],
  [1, 0.7, 2.33333333, 1.16666667],
  [1, 0.8, 4, 2],
  [2, 0.5, 0.33333333, 0.17674106],
  [2, 0.7, 0.96078431, 0.49361046],
  [2, 0.8, 1.77777778, 0.90328388],
  [3, 0.5, 0.15789474, 0.08720173],
  [3, 0.7, 0.54704944, 0.28624672],
  [3, 0.8, 1.07865169, 0.55390023],
  [4, 0.7, 0.35721193, 0.18970769],
  [4, 0.8, 0.74554059, 0.38609493],
]

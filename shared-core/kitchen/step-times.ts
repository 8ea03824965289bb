import type { State } from '../day/state.ts'
import { makeKey } from '../orders/order.ts'

/** How long one part of an item takes: values with weights, the shortest first. */
export interface StepTimes {
  readonly ms: readonly number[]
  /** Sums of the weights so far; the last one is all. */
  readonly upTo: readonly number[]
}

/**
 * What the set-up says counts as much as so many times that were taken: it is left behind after a dozen or two. No
 * source.
 */
const SET_UP_WEIGHT = 4
/** Around what is set up, while nothing is learnt: work by hand varies, bakes are only taken out a little late. No source. */
const BY_HAND = [0.8, 0.87, 0.94, 1, 1.06, 1.14, 1.25, 1.45]
const IN_OVEN = [0.98, 1, 1, 1.01, 1.02, 1.04, 1.07, 1.12]
/** Somebody forgot to tap: a time so many times what is set up and usual teaches nothing. No source. */
const FORGOTTEN = 3

export interface TimedStep {
  readonly itemId: string
  /** Index among the item's parts. */
  readonly step: number
  readonly takesMs: number
  readonly isOven: boolean
}

/**
 * What a part really took, with the set-up's own time as some more of them: few taken times move little, many leave
 * little of the set-up's. The values themselves are kept, as waiting depends on how they spread.
 */
export function stepTimes({ makeTimes }: Pick<State, 'makeTimes'>, part: TimedStep): StepTimes {
  const { itemId, step, takesMs, isOven } = part
  const prior = (isOven ? IN_OVEN : BY_HAND).map((factor) => takesMs * factor)
  const all = makeTimes.get(makeKey(itemId, step))?.tookMs ?? []
  const usual = Math.max(takesMs, middleOf(all))
  const took: readonly number[] = all.filter((ms) => ms <= FORGOTTEN * usual)
  return weighted([
    ...took.map((ms) => [ms, 1] as const),
    ...prior.map((ms) => [ms, SET_UP_WEIGHT / prior.length] as const),
  ])
}

/** @param values each with its weight; at least one */
function weighted(values: readonly (readonly [number, number])[]): StepTimes {
  const sorted = [...values].sort(([one], [other]) => one - other)
  let sum = 0
  return {
    ms: sorted.map(([ms]) => ms),
    upTo: sorted.map(([, weight]) => {
      sum += weight
      return sum
    }),
  }
}

/** The time that a share of the others lie below. @param share 0 to 1 */
export function timeAt({ ms, upTo }: StepTimes, share: number): number {
  const all = upTo[upTo.length - 1] ?? 0
  const at = upTo.findIndex((sum) => sum >= share * all)
  return ms[at === -1 ? ms.length - 1 : at] ?? 0
}

/**
 * What is left of one that has taken so long already: only longer ones can still come true. Where none is longer it is
 * about to be done.
 */
export function timeLeftAt({ ms, upTo }: StepTimes, elapsedMs: number, share: number): number {
  const first = ms.findIndex((one) => one > elapsedMs)
  if (first === -1) return ABOUT_TO_MS
  const before = first === 0 ? 0 : (upTo[first - 1] ?? 0)
  const all = upTo[upTo.length - 1] ?? 0
  return timeAt({ ms, upTo }, (before + share * (all - before)) / all) - elapsedMs
}
const ABOUT_TO_MS = 15_000

/** 0 without values. */
export function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
}

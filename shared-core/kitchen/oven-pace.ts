import type { State } from '../day/state.ts'
import { stepNow } from '../orders/item-steps.ts'
import { makeKey } from '../orders/order.ts'
import { middleOf } from './step-times.ts'

/** The newest so many bakes of each thing tell how the oven is now. */
const NEWEST = 4
/** Fewer say nothing of the oven. */
const LEAST = 3
/** Further off it is not the oven: somebody forgot to tap. No source. */
const FASTEST = 0.8
const SLOWEST = 2.5

/**
 * How much longer bakes take now than they usually do: the median of the newest bakes over what is usual for each, with
 * bakes that are in already longer than that. One that was forgotten moves it little.
 * @returns a factor; 1: as usual, or too few to say
 */
export function ovenPace(state: Pick<State, 'shop' | 'orders' | 'makeTimes'>, nowMs: number): number {
  const ratios: number[] = []
  for (const { id, steps } of state.shop?.menu.values() ?? []) {
    steps.forEach(({ oven, takesMs }, step) => {
      const took = state.makeTimes.get(makeKey(id, step))?.tookMs ?? []
      if (oven === null || took.length === 0) return
      const usualMs = usualOf(took, takesMs)
      for (const ms of took.slice(-NEWEST)) ratios.push(ms / usualMs)
    })
  }
  for (const { items } of state.orders.values()) {
    for (const { itemId, steps } of items) {
      const at = stepNow({ steps })
      const step = at === null ? undefined : steps[at]
      if (at === null || step === undefined || step.oven === null || step.begunAtMs === null) continue
      const took = state.makeTimes.get(makeKey(itemId, at))?.tookMs ?? []
      const ratio = (nowMs - step.begunAtMs) / usualOf(took, step.takesMs)
      if (ratio > 1) ratios.push(ratio)
    }
  }
  return ratios.length < LEAST ? 1 : Math.min(SLOWEST, Math.max(FASTEST, middleOf(ratios)))
}

/** What the bakes before the newest took; the set-up's own while there are too few of them. */
function usualOf(took: readonly number[], takesMs: number): number {
  const before = took.slice(0, -NEWEST)
  return before.length < NEWEST ? takesMs : middleOf(before)
}

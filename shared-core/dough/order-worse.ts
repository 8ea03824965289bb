import type { State } from './order-layers.ts'
import { lateAtSoonest } from './order-layers.ts'
import type { Item } from './order-problem.ts'

/**
 * Whatever follows, the one comes out no less late than the other; both have the same mixes, and the same class last.
 *
 * The mixer goes on alike in both, so that all that follows is ready for the bench at the same times. Who waits in both
 * comes to the bench in the same order, in the other no later. What follows may be overtaken only by who is ready sooner in
 * the other: each loses at most the time that this one takes at the bench, and after both of them the bench is free no
 * later. All that holds of a bench that never lacks room for trays.
 * @param isStrictly no less is not enough, it must be later
 */
export function isWorse(one: State, other: State, isStrictly: boolean): boolean {
  const { waiting } = one.line
  const more = waiting.length - other.line.waiting.length
  let spareMs = one.line.latenessMs - other.line.latenessMs
  if (more < 0 || (more === 0 && (spareMs < 0 || one.benchMs < other.benchMs))) return false
  if (!isMixerNoSooner(one, other)) return false
  let benchMs = one.benchMs
  for (let place = 0; place < waiting.length; place += 1) {
    const mine = waiting[place]
    if (mine === undefined) return false
    const { item, readyMs } = mine
    let sinceMs = one.line.mixerFreeMs
    if (place < more) {
      // The other's bench has had it: as if it were ready at once.
      benchMs += item.task.benchMs
      spareMs += lateAtSoonest(item, readyMs)
    } else {
      const theirs = other.line.waiting[place - more]
      if (theirs?.item.kind !== item.kind || theirs.readyMs > readyMs) return false
      sinceMs = theirs.readyMs
    }
    if (sinceMs === readyMs) continue
    spareMs -= readyBetween(one, sinceMs, readyMs) * item.task.benchMs
    // What the first ones lose can be made up for only by the lateness of those that the other's bench has had.
    if (place >= more && spareMs < 0) return false
  }
  return benchMs >= other.benchMs && spareMs >= (isStrictly ? 1 : 0)
}

/** A mixer that is free sooner is surely no worse only where nobody can come to the bench in another order for it. */
function isMixerNoSooner({ at, line }: State, other: State): boolean {
  const isOrderSure = at.isEvenWait && line.waiting.length === 0 && other.line.waiting.length === 0
  const soonerMs = line.mixerFreeMs - other.line.mixerFreeMs
  return isOrderSure ? soonerMs >= 0 : soonerMs === 0
}

/** How many of those that are still to be mixed may be ready from a time on and before another. */
function readyBetween({ at, line: { mixerFreeMs } }: State, fromMs: number, untilMs: number): number {
  const lastMs = Math.max(mixerFreeMs, at.earliestMs) + at.mixerMs
  let count = 0
  for (const item of at.rest) if (item.isShaped && mayBeReady(item, mixerFreeMs, lastMs, fromMs, untilMs)) count += 1
  return count
}

function mayBeReady({ task }: Item, mixerFreeMs: number, lastMs: number, fromMs: number, untilMs: number): boolean {
  return mixerFreeMs + task.mixMs + task.waitMs < untilMs && lastMs + task.waitMs >= fromMs
}

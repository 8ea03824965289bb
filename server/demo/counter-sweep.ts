import type { Counted } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { nextSweepMs, sweepFor } from '../../shared-core/stock/sweep.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { expectedPieces, usualBusy } from './demo-demand.ts'
import { drawFor } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { comesUp, LOOK_AHEAD_MS, minuteOfDay } from './scene.ts'

/** One in so many customers is served in the rush without a tap: what counts find later. */
export const UNTAPPED_ONCE_IN = 5
/** How long after the board asks for a sweep somebody has a hand free. */
const HAND_FREE_MS = [10_000, 90_000] as const
const AGAIN_MS = 4 * 60_000
/** What left without a tap against what one would expect, from day to day and rod to rod. */
const MORE_OR_LESS = [0.4, 1.7] as const

/** The demo's counter counts the rods that the board asks for, in half-dozens, a little after it asks. */
export function sweepMoves(scene: Scene): readonly Move[] {
  const { state, seed, date, nowMs } = scene
  const nextMs = nextSweepMs(state)
  // Looked at every second of a day: which rods it would be is only asked when it is time.
  if (nextMs === null || nextMs > nowMs + LOOK_AHEAD_MS) return []
  const { dueAtMs, varietyIds } = sweepFor(state, nowMs)
  if (dueAtMs === null) return []
  // What was not worth it when it fell due is looked at again every few minutes.
  const slot = Math.max(0, Math.floor((nowMs - dueAtMs) / AGAIN_MS))
  const key = `sweep:${date}:${dueAtMs}:${slot}`
  const atMs = epochMs(dueAtMs + slot * AGAIN_MS + drawFor(seed, key).between(...HAND_FREE_MS))
  if (!comesUp(scene, atMs)) return []
  const counts = varietyIds.map(
    (varietyId): Counted => ({
      varietyId,
      pieces: Math.round(seenOn(scene, varietyId) / 6) * 6,
      within: 3,
    }),
  )
  return [{ key, who: 'counter', once: true, atMs, act: { type: 'sweep', counts } }]
}

/**
 * What somebody sees on a rod: what is on the books less those sold without a tap since it was last known. The demo has
 * no other truth than this; it is drawn by the rod and that moment, so that whoever looks twice sees the same.
 */
export function seenOn(scene: Scene, varietyId: VarietyId): number {
  const { state, shop, seed, nowMs } = scene
  const stock = state.stock.get(varietyId)
  if (stock === undefined) return 0
  const ready = stock.lots.reduce((sum, lot) => (lot.readyAtMs <= nowMs ? sum + lot.pieces : sum), 0)
  const sinceMs = stock.seen?.atMs ?? nowMs
  const span = {
    fromMinute: minuteOfDay(scene, sinceMs),
    toMinute: minuteOfDay(scene, nowMs),
    busy: usualBusy(scene.date),
  }
  const asked = expectedPieces(shop, must(shop.varieties, varietyId), span)
  const share = drawFor(seed, `untapped:${varietyId}:${sinceMs}`).between(...MORE_OR_LESS)
  return Math.max(0, ready - Math.round((asked * share) / UNTAPPED_ONCE_IN))
}

import type { Until } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { durationMs, later } from '../units.ts'
import type { DwellWindow, Shop, WindowStage } from './shop.ts'

/**
 * How long a stage should take for pieces of a dough or variety: the variety's own window, else its dough's, else the
 * shop's. Unknown ids count as saying nothing.
 * @param doughId what the pieces are made of
 * @param varietyId null while they are plain dough
 * @returns null where none of the three gives one
 */
export function windowOf(
  shop: Shop,
  stage: WindowStage,
  doughId: DoughId,
  varietyId: VarietyId | null,
): DwellWindow | null {
  const variety = varietyId === null ? undefined : shop.varieties.get(varietyId)
  const dough = shop.doughs.get(doughId)
  return variety?.windows[stage] ?? dough?.windows[stage] ?? shop.windows[stage] ?? null
}

/**
 * The instants that a window gives to a stage that began at `sinceMs`; null without a window.
 * @example untilFrom({ earliestMs: 30_000, targetMs: 40_000, latestMs: 45_000, unit: 's' }, 1_000_000)
 *          // { earliestAtMs: 1_030_000, targetAtMs: 1_040_000, latestAtMs: 1_045_000 }
 */
export function untilFrom(window: DwellWindow, sinceMs: EpochMs): Until
export function untilFrom(window: DwellWindow | null, sinceMs: EpochMs): Until | null
export function untilFrom(window: DwellWindow | null, sinceMs: EpochMs): Until | null {
  if (window === null) return null
  return {
    earliestAtMs: later(sinceMs, window.earliestMs),
    targetAtMs: later(sinceMs, window.targetMs),
    latestAtMs: later(sinceMs, window.latestMs),
  }
}

/**
 * One window for a load of several varieties, counted from the load tap (a bake includes the first side).
 *
 *   target = longest target     earliest = longest earliest     latest = shortest latest, never below the target
 *
 * Why: nothing may come out raw, so the slowest variety sets target and earliest; the quickest one burns first, so it
 * sets the latest. Where they contradict each other the target wins: a load that nobody may take out is no help.
 *
 * The first side counts only varieties that are flipped.
 * @returns null when no variety has a window, or when nothing is flipped
 * @example varieties with 15/18/25 and 16/20/22 min // 16/20/22 min
 */
export function loadWindow(
  shop: Shop,
  stage: 'firstSide' | 'bake',
  varietyIds: readonly VarietyId[],
): DwellWindow | null {
  const windows = varietyIds.flatMap((id) => {
    const variety = shop.varieties.get(id)
    if (variety === undefined || (stage === 'firstSide' && !variety.flip)) return []
    return windowOf(shop, stage, variety.doughId, id) ?? []
  })
  const [first] = windows
  if (first === undefined) return null
  const targetMs = Math.max(...windows.map((window) => window.targetMs))
  return {
    earliestMs: durationMs(Math.max(...windows.map((window) => window.earliestMs))),
    targetMs: durationMs(targetMs),
    latestMs: durationMs(Math.max(targetMs, Math.min(...windows.map((window) => window.latestMs)))),
    unit: first.unit,
  }
}

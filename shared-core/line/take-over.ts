import type { SetUpChange } from '../shop/set-up-change.ts'
import type { DwellWindow, Shop, WindowStage } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import { durationMs } from '../units.ts'
import type { LearntTime } from './learnt-times.ts'

/** Finer than this nobody sets a time. */
const STEP_MS = { boil: 1_000, cycle: 1_000, boarding: 6_000, between: 6_000, firstSide: 6_000, bake: 30_000 } as const

/**
 * The set-up with a learnt time in it: the target of a window, its earliest and latest moved only as far as they must be.
 * @returns null where the set-up has no such window, or its time is that already
 */
export function takenOver(shop: Shop, { what, varietyId, medianMs }: LearntTime): SetUpChange | null {
  const ms = durationMs(Math.max(STEP_MS[what], Math.round(medianMs / STEP_MS[what]) * STEP_MS[what]))
  if (what === 'cycle')
    return ms === shop.kettle.cycleMs ? null : { entity: 'kettle', value: { ...shop.kettle, cycleMs: ms } }
  if (what === 'between')
    return ms === shop.oven.handlingMs ? null : { entity: 'oven', value: { ...shop.oven, handlingMs: ms } }
  const stage = STAGES[what]
  const variety = varietyId === null ? undefined : shop.varieties.get(varietyId)
  const window =
    variety === undefined ? (shop.windows[stage] ?? null) : windowOf(shop, stage, variety.doughId, variety.id)
  if (window === null || window.targetMs === ms) return null
  const changed: DwellWindow = {
    ...window,
    earliestMs: durationMs(Math.min(window.earliestMs, ms)),
    targetMs: ms,
    latestMs: durationMs(Math.max(window.latestMs, ms)),
  }
  return variety === undefined
    ? { entity: 'windows', value: { ...shop.windows, [stage]: changed } }
    : { entity: 'variety', value: { ...variety, windows: { ...variety.windows, [stage]: changed } } }
}

const STAGES: { readonly [what in 'boil' | 'boarding' | 'firstSide' | 'bake']: WindowStage } = {
  boil: 'kettle',
  boarding: 'boards',
  firstSide: 'firstSide',
  bake: 'bake',
}

import type { DoughId, VarietyId } from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import type { DemoLoad } from './demo-load-list.ts'
import { demoLoadList } from './demo-load-list.ts'

/** A tray more than planned, of each: something always drops, and a count may find fewer. */
export const SPARE_TRAYS = 1

/** Dough as it is shaped: plain, or what the mixer or the shaper already made of it. */
export interface Shaped {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly trayPieces: number
  /** What a day needs of it, in whole trays. */
  readonly pieces: number
}

/**
 * The dough of a whole day by its list; reckoned once for each set-up, which never changes in place.
 * @param busy customers against a usual day's; left out: as many
 */
export function doughForDay(shop: Shop, busy = 1): readonly Shaped[] {
  const known = FOR_DAY.get(shop) ?? new Map<number, readonly Shaped[]>()
  FOR_DAY.set(shop, known)
  const reckoned = known.get(busy) ?? reckonDough(shop, busy)
  known.set(busy, reckoned)
  return reckoned
}

const FOR_DAY = new WeakMap<Shop, Map<number, readonly Shaped[]>>()

/** Where in the half-hour a day's waves will stand nobody knows the day before: enough for any of them. */
const WAVES_AT_MINUTES = [0, 5, 10, 15, 20, 25]

function reckonDough(shop: Shop, busy: number): readonly Shaped[] {
  const most = new Map<string, Shaped>()
  for (const minute of WAVES_AT_MINUTES) {
    for (const [key, one] of doughOf(shop, demoLoadList(shop, { dayStartMs: 0, waveAtMs: minute * 60_000, busy }))) {
      if (one.pieces > (most.get(key)?.pieces ?? 0)) most.set(key, one)
    }
  }
  return [...most.values()].map((one) => ({
    ...one,
    pieces: (Math.ceil(one.pieces / one.trayPieces) + SPARE_TRAYS) * one.trayPieces,
  }))
}

function doughOf(shop: Shop, loads: readonly DemoLoad[]): ReadonlyMap<string, Shaped> {
  const pieces = new Map<string, Shaped>()
  for (const line of loads.flatMap((load) => load.lines)) {
    const { doughId, decidedAt, id } = must(shop.varieties, line.varietyId)
    const varietyId = decidedAt === 'mixer' ? id : null
    const key = `${doughId} ${varietyId ?? ''}`
    const { trayPieces } = must(shop.doughs, doughId)
    const sum = (pieces.get(key)?.pieces ?? 0) + line.pieces
    pieces.set(key, { doughId, varietyId, trayPieces, pieces: sum })
  }
  return pieces
}

import type { DoughId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { beginOf } from './dates.ts'
import type { DaysAhead, Looked } from './plan-days.ts'

/** Trays that so many pieces fill; doughs do not share one. @example 46 on trays of 15 // 4 */
export function traysFor(shop: Shop, pieces: ReadonlyMap<DoughId, number>): number {
  let trays = 0
  for (const [id, some] of pieces) {
    const tray = shop.doughs.get(id)?.trayPieces ?? 0
    if (tray > 0) trays += Math.ceil(some / tray)
  }
  return trays
}

/**
 * Pieces in the cooler in the night after a date: mixed by then and boiled on a later day, or wanted by no day and still
 * inside their window the next morning. Of doughs that are chilled only.
 */
export function piecesOvernight(
  { shop, noonOf }: Omit<Looked, 'state'>,
  { flows, left }: DaysAhead,
  date: string,
  nextDate: string,
): ReadonlyMap<DoughId, number> {
  const pieces = new Map<DoughId, number>()
  const add = (id: DoughId, more: number) => {
    if (shop.doughs.get(id)?.route.includes('chill') === true) pieces.set(id, (pieces.get(id) ?? 0) + more)
  }
  const isMixed = (mixDate: string | null) => mixDate === null || mixDate <= date
  for (const flow of flows) if (isMixed(flow.mixDate) && flow.bakeDate > date) add(flow.doughId, flow.pieces)
  const morningMs: EpochMs = beginOf(noonOf, nextDate)
  for (const one of left) if (isMixed(one.mixDate) && one.untilMs >= morningMs) add(one.doughId, one.left)
  return pieces
}

import type { Kitchen } from './model.ts'

/** Orders of so long back tell how much is being ordered now. */
const LATELY_MS = 30 * 60_000

/**
 * Whether more is being ordered than can be made, as far as open orders show: at some station, or in the oven, the work
 * that was ordered in the last half hour is more than all its hands or places do in half an hour (ρ = λ / cμ ≥ 1, where
 * a queue has no steady state). What was ordered and handed over since is not known here, so that this is never said
 * too soon.
 */
export function isOverloaded({ shop, orders, nowMs, stations, shelves }: Kitchen): boolean {
  const work = new Map<number, number>()
  let placeMs = 0
  for (const { takenAtMs, items, way } of orders) {
    if (way !== 'here' || takenAtMs < nowMs - LATELY_MS) continue
    for (const { stationId, takesMs, oven } of items.flatMap(({ steps }) => steps)) {
      const station = stations.get(stationId) ?? -1
      if (oven === null) work.set(station, (work.get(station) ?? 0) + takesMs)
      else placeMs += oven.slots * (takesMs + shop.oven.handlingMs)
    }
  }
  const places = shelves.reduce((sum, { shelf }) => sum + shelf.slots, 0)
  if (placeMs > 0 && placeMs >= places * LATELY_MS) return true
  const hands = [...shop.kitchenStations.values()].map(({ hands: some }) => some)
  return [...work].some(([station, ms]) => ms >= (hands[station] ?? 0) * LATELY_MS)
}

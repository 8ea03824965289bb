import type { LineAct, Shop } from '../shop/shop.ts'

/** Acts that some station taps. The others are presumed from the next act that is tapped, and never called for. */
export function tappedActs(shop: Shop): ReadonlySet<LineAct> {
  const acts = new Set<LineAct>()
  for (const station of shop.stations.values()) if (!station.retired) for (const act of station.acts) acts.add(act)
  return acts
}

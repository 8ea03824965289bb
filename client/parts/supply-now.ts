import type { State } from '../../shared-core/day/state.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { SupplyAsked } from '../../shared-core/orders/promise.ts'
import { supplyAsked } from '../../shared-core/orders/supply-asked.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localDate } from '../live/clock-text.ts'
import type { LiveState } from '../live/shop-store.ts'

/** What a screen reckons promises and orders at risk from; null while the shop's clock is not known. */
export function supplyNow(
  { shopClock, outlook, plan }: Pick<LiveState, 'shopClock' | 'outlook' | 'plan'>,
  state: State,
  nowMs: EpochMs,
): SupplyAsked | null {
  if (shopClock === null) return null
  const date = localDate(shopClock, nowMs)
  return supplyAsked({ state, nowMs, localDate: date, noonOf: (isoDate) => noonOf(shopClock, isoDate), outlook, plan })
}

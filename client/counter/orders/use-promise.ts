import { useMemo } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import { beginOf } from '../../../shared-core/dough/dates.ts'
import type { Promised, SupplyAsked } from '../../../shared-core/orders/promise.ts'
import { promiseFor } from '../../../shared-core/orders/promise.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { supplyNow } from '../../parts/supply-now.ts'
import { orderLinesOf } from './asked.ts'
import type { OrdersProps } from './orders-parts.ts'
import type { Lacks, Taking } from './taking.ts'
import { dueOf, holds, lacksOf } from './taking.ts'

/** What can be said of an order while it is taken. */
export interface When {
  /** Null: nothing is asked for of what the oven brings, or the clock is not known. */
  readonly promised: Promised | null
  /** When it would be due; null: that is not said yet. */
  readonly dueAtMs: EpochMs | null
  /** It cannot be promised for then. */
  readonly isRisk: boolean
  readonly lacks: Lacks | null
  readonly supply: SupplyAsked | null
}

export function useWhen({ live, state, board }: OrdersProps, taking: Taking, shop: Shop): When {
  const { nowMs } = board.time
  const { asked, orderId } = taking
  const { plan, outlook, shopClock } = live
  // biome-ignore lint/correctness/useExhaustiveDependencies: of all that is live only this is looked at.
  const supply = useMemo(() => supplyNow(live, state, nowMs), [state, nowMs, plan, outlook, shopClock])
  const promised = useMemo(() => {
    if (supply === null || asked.length === 0) return null
    const lines = orderLinesOf(asked, shop.orders.dozenPieces)
    return promiseFor({ ...supply, lines, ...(orderId === null ? {} : { leaveOut: orderId }) })
  }, [supply, asked, orderId, shop])
  const dueAtMs = dueOf(taking, promised, nowMs, shop)
  const tomorrowMs = supply === null ? null : beginOf(supply.noonOf, dateAfter(supply.date, 1))
  const isRisk = dueAtMs !== null && tomorrowMs !== null && !holds(dueAtMs, promised, tomorrowMs)
  return { promised, dueAtMs, isRisk, lacks: lacksOf(taking, dueAtMs, shop), supply }
}

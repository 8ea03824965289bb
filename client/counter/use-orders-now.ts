import { useEffect, useMemo, useState } from 'preact/hooks'
import type { CounterParts } from './counter-screen.tsx'
import { fetchOrders } from './orders-later.tsx'
import type { RodTime } from './rod-text.ts'

/** What the rack's foot tells of orders. */
export interface OrdersNow {
  readonly open: number
  readonly atRisk: number
  /** Those at the counter who wait for something that is made, and those whose order is ready. */
  readonly waiting: number
  readonly ready: number
  /** What has to be known before the customer comes; "" where nothing has. */
  readonly line: string
}

/** A server that could not give the part is asked again after so long. */
const AGAIN_MS = 10_000

/** Reckoned by the part that is fetched later; until it is there, nothing is at risk that anybody could say. */
export function useOrdersNow(parts: CounterParts, time: RodTime): OrdersNow {
  const [part, setPart] = useState<{ readonly now: (parts: CounterParts, time: RodTime) => OrdersNow } | null>(null)
  const [tries, setTries] = useState(0)
  useEffect(() => {
    let isOpen = true
    let timer = 0
    fetchOrders().then(
      ({ ordersNow }) => isOpen && setPart({ now: ordersNow }),
      () => {
        timer = window.setTimeout(() => isOpen && setTries(tries + 1), AGAIN_MS)
      },
    )
    return () => {
      isOpen = false
      window.clearTimeout(timer)
    }
  }, [tries])
  const { state, live, words } = parts
  const { plan, outlook, shopClock } = live
  // biome-ignore lint/correctness/useExhaustiveDependencies: of all that is live only this is looked at.
  return useMemo(
    () => part?.now(parts, time) ?? { open: state.orders.size, atRisk: 0, waiting: 0, ready: 0, line: '' },
    [part, state, time.nowMs, time.closeMs, plan, outlook, shopClock, words],
  )
}

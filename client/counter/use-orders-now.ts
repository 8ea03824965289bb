import { useEffect, useRef, useState } from 'preact/hooks'
import type { AtRisk } from '../../shared-core/orders/at-risk.ts'
import { useFetched } from '../parts/use-fetched.ts'
import type { CounterParts } from './counter-screen.tsx'
import { fetchOrders } from './orders-later.tsx'
import type { RodTime } from './rod-text.ts'

/** What the rack's foot and the pages of orders tell of them. */
export interface OrdersNow {
  readonly open: number
  /** Soonest due first. */
  readonly risks: readonly AtRisk[]
  /** Those at the counter who wait for something that is made, and those whose order is ready. */
  readonly waiting: number
  readonly ready: number
  /** What has to be known before the customer comes, in ever fewer words; empty where nothing has. */
  readonly lines: readonly string[]
}

const NOTHING: Omit<OrdersNow, 'open'> = { risks: [], waiting: 0, ready: 0, lines: [] }

/** Of five hundred orders it takes a tenth of a second: it comes after the touch that changed something, not in it. */
const AFTER_TOUCH_MS = 250

/** Reckoned by the part that is fetched later; until it is there, nothing is at risk that anybody could say. */
export function useOrdersNow(parts: CounterParts, time: RodTime): OrdersNow {
  const part = useFetched(fetchOrders)
  const [now, setNow] = useState(NOTHING)
  const latest = useRef({ parts, time })
  latest.current = { parts, time }
  const timer = useRef<number | null>(null)
  const { state, live, words } = parts
  const { plan, outlook, shopClock } = live
  // biome-ignore lint/correctness/useExhaustiveDependencies: of all that is live only this is looked at.
  useEffect(() => {
    if (part === null || timer.current !== null) return
    timer.current = window.setTimeout(() => {
      timer.current = null
      setNow(part.ordersNow(latest.current.parts, latest.current.time))
    }, AFTER_TOUCH_MS)
  }, [part, state, time.nowMs, time.closeMs, plan, outlook, shopClock, words])
  useEffect(() => () => window.clearTimeout(timer.current ?? undefined), [])
  return { ...now, open: state.orders.size }
}

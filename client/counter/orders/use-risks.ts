import { useMemo } from 'preact/hooks'
import type { AtRisk } from '../../../shared-core/orders/at-risk.ts'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import type { SheetProps } from '../sheets.tsx'
import { supplyAsked } from './orders-parts.ts'

const NOTHING: readonly AtRisk[] = []

/** Open orders of today that cannot be met as things stand; reckoned anew when something changed, and every few seconds. */
export function useRisks({ live, state, board }: Pick<SheetProps, 'live' | 'state' | 'board'>): readonly AtRisk[] {
  const { shopClock, plan, outlook } = live
  const { nowMs, closeMs } = board.time
  // biome-ignore lint/correctness/useExhaustiveDependencies: of all that is live only this is looked at.
  return useMemo(() => {
    const asked = supplyAsked({ live, state }, { nowMs, closeMs })
    return asked === null || state.orders.size === 0 ? NOTHING : ordersAtRisk(asked)
  }, [state, nowMs, closeMs, shopClock, plan, outlook])
}

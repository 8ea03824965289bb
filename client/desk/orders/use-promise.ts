import { useMemo } from 'preact/hooks'
import type { OrderId } from '../../../shared-core/ids.ts'
import type { OrderLine } from '../../../shared-core/orders/order.ts'
import type { Promised } from '../../../shared-core/orders/promise.ts'
import { promiseFor } from '../../../shared-core/orders/promise.ts'
import { supplyNow } from '../../parts/supply-now.ts'
import type { LineDraft } from './asked-draft.ts'
import { askedLines, piecesOfLine } from './asked-draft.ts'
import type { OrderDraft } from './order-draft.ts'
import { dueAt } from './order-draft.ts'
import type { OrdersParts } from './parts.ts'

export interface PromiseNow extends Promised {
  /** It is due no earlier than it can be ready. */
  readonly holds: boolean
}

/**
 * What can be promised of the pieces of an order that is due today; what is baked for a later day is not reckoned here.
 * @param leaveOut the order that is being changed
 */
export function usePromise(parts: OrdersParts, draft: OrderDraft, leaveOut: OrderId | null): PromiseNow | null {
  const { state, live, shop, room } = parts
  const lines = orderLines(draft.lines, shop.orders.dozenPieces)
  const key = JSON.stringify(lines)
  // biome-ignore lint/correctness/useExhaustiveDependencies: reckoned anew with the lines, the state and each minute.
  const promised = useMemo(() => {
    if (lines.length === 0 || (draft.way !== 'here' && draft.date !== room.today)) return null
    const supply = supplyNow(live, state, room.minuteMs)
    return supply && promiseFor({ ...supply, lines, ...(leaveOut === null ? {} : { leaveOut }) })
  }, [key, state, room.minuteMs, draft.way, draft.date, live.plan, live.outlook])
  if (promised === null) return null
  const dueAtMs = draft.way === 'here' ? room.minuteMs + shop.orders.madeInMs : dueAt(draft, room)
  return { ...promised, holds: promised.atMs !== null && (dueAtMs === null || dueAtMs >= promised.atMs) }
}

/** As the order would have them. */
export function orderLines(lines: readonly LineDraft[], dozenPieces: number): readonly OrderLine[] {
  return askedLines(lines).map((line) => ({ ...line, pieces: piecesOfLine(line, dozenPieces) }))
}

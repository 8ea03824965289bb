import type { State } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { AtRisk } from '../../../shared-core/orders/at-risk.ts'
import type { OrdersAt } from '../../../shared-core/orders/due-on.ts'
import { dueOn } from '../../../shared-core/orders/due-on.ts'
import { itemIsMade } from '../../../shared-core/orders/item-steps.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { assigned, keptByOrder } from '../../../shared-core/orders/spoken-for.ts'
import { inOrder } from '../../../shared-core/shop/in-order.ts'
import type { OrderFilter } from '../../words/desk-orders.ts'

/** An order in the list of its day. */
export interface OrderRow {
  readonly order: Order
  /** It stands, and the order of that day is still to be made of it. */
  readonly isComing: boolean
  readonly details: OrderDetails | null
  readonly pieces: number
  /** Of these, what is kept for it and counts. */
  readonly kept: number
  /** Things made to order of which everything is made. */
  readonly made: number
  readonly risk: AtRisk | null
}

export interface RowsGiven {
  readonly risks: readonly AtRisk[]
  readonly detailsOf: (order: Order) => OrderDetails | null
}

/** Orders of a date by due time. */
export function orderRows(state: State, at: OrdersAt, { risks, detailsOf }: RowsGiven): readonly OrderRow[] {
  const kept = keptByOrder(state)
  const riskOf = new Map(risks.map((risk) => [risk.orderId, risk]))
  return dueOn(state, at).map((order) => ({
    order,
    isComing: !state.orders.has(order.id),
    details: detailsOf(order),
    pieces: piecesOf(order.lines),
    kept: piecesOf(assigned(order, kept.get(order.id) ?? []).flatMap((share) => share.kept)),
    made: order.items.filter(itemIsMade).length,
    risk: riskOf.get(order.id) ?? null,
  }))
}

/** What is looked for: by mark, name or phone, whatever the letters' size and accents. */
export interface Looked {
  readonly filter: OrderFilter
  readonly text: string
}

export function lookedFor(rows: readonly OrderRow[], { filter, text }: Looked): readonly OrderRow[] {
  const sought = plain(text)
  return rows.filter(
    ({ order, details, risk }) =>
      (filter === 'all' || (filter === 'risk' ? risk !== null || order.isRisk : order.way === filter)) &&
      (sought === '' || isFound(sought, [order.mark, details?.name, details?.phone])),
  )
}

/** @param sought as `plain` gives it */
export function isFound(sought: string, texts: readonly (string | undefined)[]): boolean {
  return texts.some((text) => text !== undefined && plain(text).includes(sought))
}

/** Without accents and the size of letters. @example plain(' Núria ') // 'nuria' */
export function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim()
}

export interface OrderedSum {
  /** Null: mixed, and nothing is kept for it yet. */
  readonly varietyId: VarietyId | null
  readonly ordered: number
  readonly kept: number
}

/** Pieces of a day's orders by variety, in the set-up's order, mixed ones last. A mixed piece that is kept is what it is. */
export function orderedSums(state: State, rows: readonly OrderRow[]): readonly OrderedSum[] {
  const keeps = keptByOrder(state)
  const sums = new Map<VarietyId | null, { ordered: number; kept: number }>()
  const add = (id: VarietyId | null, ordered: number, kept: number) => {
    const sum = sums.get(id) ?? { ordered: 0, kept: 0 }
    sums.set(id, { ordered: sum.ordered + ordered, kept: sum.kept + kept })
  }
  for (const { order } of rows) {
    for (const { line, kept } of assigned(order, keeps.get(order.id) ?? [])) {
      const keptPieces = piecesOf(kept)
      if (line.varietyId !== null) add(line.varietyId, line.pieces, keptPieces)
      else {
        for (const { varietyId, pieces } of kept) add(varietyId, pieces, pieces)
        add(null, line.pieces - keptPieces, 0)
      }
    }
  }
  const ids: readonly (VarietyId | null)[] = [...inOrder(state.shop?.varieties ?? new Map()).map(({ id }) => id), null]
  return ids.flatMap((varietyId) => {
    const sum = sums.get(varietyId)
    return sum === undefined || sum.ordered === 0 ? [] : [{ varietyId, ...sum }]
  })
}

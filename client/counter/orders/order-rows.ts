import type { State } from '../../../shared-core/day/state.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { AtRisk } from '../../../shared-core/orders/at-risk.ts'
import { itemIsMade } from '../../../shared-core/orders/item-steps.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { keptByOrder } from '../../../shared-core/orders/spoken-for.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** An open order as the list tells it. */
export interface OrderRow {
  readonly order: Order
  readonly pieces: number
  /** No more than were ordered. */
  readonly kept: number
  readonly items: number
  readonly made: number
  /** All pieces are kept and everything is made: it can be handed over. */
  readonly isReady: boolean
  /** `late`: its time is over and it is not ready; `due`: it is soon; `coming`: there is time. */
  readonly when: 'coming' | 'due' | 'late'
  /** What will be missing, and what would save it; null: it will be there. */
  readonly risk: AtRisk | null
}

/** What is fetched or driven should lie there so long before its time: people come early. Common practice, no source. */
const SOON_MS = 10 * 60_000

/** All open orders: those at risk first, then by due time. */
export function orderRows(state: State, nowMs: EpochMs, atRisk: readonly AtRisk[]): readonly OrderRow[] {
  const kept = keptByOrder(state)
  const risks = new Map(atRisk.map((risk) => [risk.orderId, risk]))
  return [...state.orders.values()]
    .map((order) => rowOf(order, piecesOf(kept.get(order.id) ?? []), { risk: risks.get(order.id) ?? null, nowMs }))
    .sort(
      (one, other) =>
        Number(other.risk !== null) - Number(one.risk !== null) ||
        one.order.dueAtMs - other.order.dueAtMs ||
        (one.order.id < other.order.id ? -1 : 1),
    )
}

function rowOf(
  order: Order,
  keptPieces: number,
  { risk, nowMs }: { readonly risk: AtRisk | null; readonly nowMs: EpochMs },
): OrderRow {
  const pieces = order.lines.reduce((sum, line) => sum + line.pieces, 0)
  const kept = Math.min(pieces, keptPieces)
  const made = order.items.filter(itemIsMade).length
  const isReady = kept === pieces && made === order.items.length
  const toGoMs = order.dueAtMs - nowMs
  // Whoever waits sees the kitchen work on it until its time is over.
  const soonMs = order.way === 'here' ? 0 : SOON_MS
  const when = isReady || toGoMs > soonMs ? 'coming' : toGoMs < 0 ? 'late' : 'due'
  return { order, pieces, kept, items: order.items.length, made, isReady, when, risk }
}

/**
 * The rows that somebody looks for: a mark that begins so, a name with a word that begins so, or four digits of a
 * phone number. Capitals and accents do not matter. Nothing typed finds all.
 */
export function found(
  rows: readonly OrderRow[],
  typed: string,
  detailsOf: (order: Order) => OrderDetails | null,
): readonly OrderRow[] {
  const wanted = plain(typed)
  if (wanted === '') return rows
  return rows.filter(({ order }) => {
    if (plain(order.mark).startsWith(wanted)) return true
    const details = detailsOf(order)
    if (details === null) return false
    const name = plain(details.name)
    return name.startsWith(wanted) || name.includes(` ${wanted}`) || hasDigits(details.phone, wanted)
  })
}

const DIGITS_LEAST = 4

function hasDigits(phone: string, wanted: string): boolean {
  const digits = wanted.replaceAll(/\D/g, '')
  return digits.length >= DIGITS_LEAST && phone.replaceAll(/\D/g, '').includes(digits)
}

function plain(text: string): string {
  return text.trim().toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '')
}

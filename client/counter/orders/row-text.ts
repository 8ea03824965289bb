import type { Order } from '../../../shared-core/orders/order.ts'
import { localDate } from '../../live/clock-text.ts'
import type { LiveState } from '../../live/shop-store.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import { firstInRoom } from '../foot-view.ts'
import type { OrderRow } from './order-rows.ts'

export interface RowText {
  /** When it is due: a clock time, with the date where that is another day's. */
  readonly due: string
  /** How far it is. @example "kept 9 of 26" */
  readonly state: string
  /** What it is, or what is wrong with it, in one line that fits. */
  readonly line: string
  readonly spoken: string
}

export interface RowRoom {
  readonly widthPx: number
  readonly fontPx: number
}

/** The words of one row. @param name of whoever ordered; "" where nobody knows */
export function rowText(
  row: OrderRow,
  name: string,
  { say, live, room }: { readonly say: CounterOrderWords; readonly live: LiveState; readonly room: RowRoom },
): RowText {
  const due = dueText(row, say, live)
  const state = stateText(row, say)
  const parts = row.risk === null ? whatParts(row, name, say) : riskParts(row, say)
  // Whatever is wrong is told in place of the rod: two lines.
  const line = firstInRoom(shorter(parts, say), { ...room, lines: row.risk === null ? 1 : 2 })
  return { due, state, line, spoken: [say.one.title(row.order.mark), due, state, ...parts].join(', ') }
}

/** All parts, then fewer of them with how many others there are. */
function shorter(parts: readonly string[], { counter }: CounterOrderWords): readonly string[] {
  return parts.map((_, less) => {
    const some = parts.slice(0, parts.length - less).join(', ')
    return less === 0 ? some : `${some}, ${counter.day.others(less)}`
  })
}

export function dueText(
  { order }: { readonly order: Pick<Order, 'dueAtMs'> },
  say: CounterOrderWords,
  live: LiveState,
): string {
  const { shopClock, nowMs } = live
  if (shopClock === null) return ''
  const date = localDate(shopClock, order.dueAtMs)
  return date === localDate(shopClock, nowMs) ? say.times.clock(order.dueAtMs) : say.list.onDay(date, order.dueAtMs)
}

function stateText({ risk, isReady, pieces, kept, items, made }: OrderRow, { list }: CounterOrderWords): string {
  if (risk !== null) return list.atRisk
  if (isReady) return list.ready
  const parts = [...(pieces > 0 ? [list.keptOf(kept, pieces)] : []), ...(items > 0 ? [list.madeOf(made, items)] : [])]
  return parts.join(' · ')
}

function riskParts({ risk }: OrderRow, { list, promise }: CounterOrderWords): readonly string[] {
  const [save] = risk?.saves ?? []
  return [list.missing(promise.short(risk?.missing ?? [])), ...(save === undefined ? [] : [promise.save(save)])]
}

function whatParts({ order }: OrderRow, name: string, { said, one, names }: CounterOrderWords): readonly string[] {
  const lines = order.lines.map(
    ({ varietyId, without, pieces }) =>
      `${pieces} ${varietyId === null ? said.mixedNo(without.map(names.variety)) : names.variety(varietyId)}`,
  )
  const counts = new Map<string, number>()
  for (const { itemId } of order.items) counts.set(itemId, (counts.get(itemId) ?? 0) + 1)
  const items = order.items.flatMap(({ itemId }) => {
    const times = counts.get(itemId)
    counts.delete(itemId)
    return times === undefined ? [] : [`${times} × ${names.menuItem(itemId)}`]
  })
  const how = order.way === 'here' ? [] : [one.way(order.way, order.runId), order.isPaid ? said.paid : said.notPaid]
  return [...(name === '' ? [] : [name]), ...how, ...lines, ...items]
}

import { dateAfter } from '../../../shared-core/day/label.ts'
import type { OrderId, RunId } from '../../../shared-core/ids.ts'
import { itemIsBegun } from '../../../shared-core/orders/item-steps.ts'
import type { Order, OrderWay } from '../../../shared-core/orders/order.ts'
import type { AskedItem, AskedOrder, OrderCommand, OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import type { Promised } from '../../../shared-core/orders/promise.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { Asked, Portioned } from './asked.ts'
import { allPieces, askedOf } from './asked.ts'
import type { Slip } from './slip.ts'
import { EMPTY_SLIP, lacksBagel } from './slip.ts'

/** An order while it is taken or changed. */
export interface Taking {
  /** The order that is changed; null: a new one. */
  readonly orderId: OrderId | null
  readonly asked: Asked
  /** Index of the line that keys change; -1: there is none. */
  readonly chosen: number
  /** What a touch of a variety adds. */
  readonly much: Portioned
  /** Touches of varieties take them out of the chosen mixed line. */
  readonly isLeavingOut: boolean
  readonly slip: Slip
  readonly way: OrderWay
  readonly runId: RunId | null
  readonly stop: number
  /** Null: as soon as it can be promised. */
  readonly dueAtMs: EpochMs | null
  readonly mark: string
  readonly details: OrderDetails
  readonly isPaid: boolean
}

export const NO_DETAILS: OrderDetails = { name: '', phone: '', note: '' }

export const NEW_TAKING: Taking = {
  orderId: null,
  asked: [],
  chosen: -1,
  much: 'dozen',
  isLeavingOut: false,
  slip: EMPTY_SLIP,
  way: 'pickUp',
  runId: null,
  stop: 0,
  dueAtMs: null,
  mark: '',
  details: NO_DETAILS,
  isPaid: false,
}

/** An order that stands, to be changed. */
export function takingOf(order: Order, details: OrderDetails | null, shop: Shop): Taking {
  const { id, lines, items, way, runId, stop, dueAtMs, mark, isPaid } = order
  return {
    ...NEW_TAKING,
    orderId: id,
    asked: askedOf(lines, shop.orders.dozenPieces),
    slip: { items: askedItems(items), chosen: -1 },
    way,
    runId,
    stop,
    dueAtMs,
    mark,
    details: details ?? NO_DETAILS,
    isPaid,
  }
}

/** Those that nothing is begun of: others stay as they are. The same ones in a row are so many of one. */
function askedItems(items: Order['items']): readonly AskedItem[] {
  const asked: AskedItem[] = []
  for (const { no: _no, steps, ...item } of items) {
    if (itemIsBegun({ steps })) continue
    const last = asked[asked.length - 1]
    const { times, ...like } = last ?? { times: 0 }
    if (last !== undefined && JSON.stringify(like) === JSON.stringify(item))
      asked[asked.length - 1] = { ...last, times: times + 1 }
    else asked.push({ ...item, times: 1 })
  }
  return asked
}

/** When it would be due. Null: that cannot be said yet. */
export function dueOf(
  { dueAtMs, slip, asked }: Taking,
  promised: Promised | null,
  nowMs: EpochMs,
  shop: Shop,
): EpochMs | null {
  if (dueAtMs !== null) return dueAtMs
  if (asked.length > 0) return promised?.atMs ?? promised?.nextDayAtMs ?? null
  return slip.items.length > 0 ? epochMs(nowMs + shop.orders.madeInMs) : null
}

/** Whether a time can be promised. Of another day, once its orders are still taken. */
export function holds(dueAtMs: EpochMs, promised: Promised | null, tomorrowMs: EpochMs): boolean {
  if (promised === null) return true
  if (dueAtMs >= tomorrowMs) return promised.nextDayAtMs !== null || dueAtMs >= tomorrowMs + DAY_MS
  return promised.atMs !== null && promised.atMs <= dueAtMs
}

const DAY_MS = 86_400_000

export type Lacks = 'pieces' | 'time' | 'bagel'

/** What is still missing before it can be taken; null: nothing. */
export function lacksOf(taking: Taking, dueAtMs: EpochMs | null, shop: Shop): Lacks | null {
  const { asked, slip } = taking
  if (allPieces(asked, shop.orders.dozenPieces) === 0 && slip.items.length === 0 && taking.orderId === null)
    return 'pieces'
  if (lacksBagel(slip, shop) !== null) return 'bagel'
  return dueAtMs === null ? 'time' : null
}

/** The command of what was touched and typed. @param isRisk it cannot be promised, and is taken all the same */
export function takingCommand(
  taking: Taking,
  dueAtMs: EpochMs,
  { isRisk, before }: { readonly isRisk: boolean; readonly before: OrderDetails | null },
): OrderCommand {
  const { orderId, asked, slip, way, runId, stop, isPaid } = taking
  const mark = taking.mark.trim()
  const order: AskedOrder = {
    mark: mark === '' ? null : mark,
    dueAtMs,
    way,
    runId: way === 'delivery' ? runId : null,
    stop: way === 'delivery' && runId !== null ? stop : 0,
    lines: asked,
    items: slip.items,
    isPaid,
    ...detailsToSay(taking.details, before),
  }
  if (orderId !== null) return { type: 'changeOrder', orderId, ...order }
  return { type: 'takeOrder', ...(isRisk ? { isRisk } : {}), ...order }
}

/** Left out where nothing was said, or it is as it was. */
function detailsToSay(typed: OrderDetails, before: OrderDetails | null): { readonly details?: OrderDetails } {
  const details = { name: typed.name.trim(), phone: typed.phone.trim(), note: typed.note.trim() }
  const was = before ?? NO_DETAILS
  const isSame = details.name === was.name && details.phone === was.phone && details.note === was.note
  return isSame ? {} : { details }
}

const MINUTE_MS = 60_000
/** Times are said to five minutes. */
const STEP_MS = 5 * MINUTE_MS

/** Another time: on the next five minutes that way, never before now. */
export function moved(atMs: EpochMs, minutes: number, nowMs: EpochMs): EpochMs {
  const to = atMs + minutes * MINUTE_MS
  const stepped = minutes < 0 ? Math.ceil(to / STEP_MS) * STEP_MS : Math.floor(to / STEP_MS) * STEP_MS
  return epochMs(Math.max(stepped, Math.ceil(nowMs / STEP_MS) * STEP_MS))
}

/** The same time on another day, by the clock on the wall. */
export function onAnotherDay(
  atMs: EpochMs,
  days: number,
  { dateOf, noonOf }: { readonly dateOf: (atMs: EpochMs) => string; readonly noonOf: (date: string) => EpochMs },
): EpochMs {
  const date = dateOf(atMs)
  return epochMs(atMs - noonOf(date) + noonOf(dateAfter(date, days)))
}

import type { MenuItemId, PortionId, VarietyId } from '../../../shared-core/ids.ts'
import type { Order, OrderItem } from '../../../shared-core/orders/order.ts'
import type { AskedItem, AskedOrder, OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import type { Allergen, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { AskedDraft, LineDraft } from './asked-draft.ts'
import { askedLines, detailsToSend, linesTyped, minuteOf, NEW_ASKED, timeText } from './asked-draft.ts'

/** An order while it is typed. */
export interface OrderDraft extends AskedDraft {
  /** YYYY-MM-DD; "" while none is typed. */
  readonly date: string
  readonly items: readonly ItemDraft[]
}

export interface ItemDraft {
  readonly itemId: MenuItemId
  readonly varietyId: VarietyId | null
  readonly toasted: boolean
  readonly without: readonly PortionId[]
  readonly more: readonly PortionId[]
  readonly allergies: readonly Allergen[]
  readonly times: number | null
}

/** What an order is read and written with. */
export interface DraftClock {
  readonly noonOf: (date: string) => EpochMs
  /** Local date and minute of an instant. */
  readonly dateOf: (atMs: EpochMs) => string
  readonly minuteOf: (atMs: EpochMs) => number
}

const MINUTE_MS = 60_000
const NOON_MINUTE = 720

export function newOrder(date: string): OrderDraft {
  return { ...NEW_ASKED, date, items: [] }
}

/** An order as it stands, to be changed. */
export function orderTyped(order: Order, dozenPieces: number, clock: DraftClock): OrderDraft {
  return {
    mark: order.mark,
    way: order.way,
    runId: order.runId,
    stop: order.stop === 0 ? null : order.stop,
    date: clock.dateOf(order.dueAtMs),
    time: timeText(clock.minuteOf(order.dueAtMs)),
    lines: linesTyped(order.lines, dozenPieces),
    items: itemsTyped(order.items),
    isPaid: order.isPaid,
  }
}

/** Alike ones are one line, as often as they come. */
export function itemsTyped(items: readonly OrderItem[]): readonly ItemDraft[] {
  const drafts = new Map<string, ItemDraft>()
  for (const { itemId, varietyId, toasted, without, more, allergies } of items) {
    const one = { itemId, varietyId, toasted, without, more, allergies }
    const key = JSON.stringify(one)
    drafts.set(key, { ...one, times: (drafts.get(key)?.times ?? 0) + 1 })
  }
  return [...drafts.values()]
}

/** What is still to be said before it can be taken. */
export type Missing = 'due' | 'pieces' | 'bagel'

export function missingIn(draft: OrderDraft, { menu }: Pick<Shop, 'menu'>): readonly Missing[] {
  const { date, time, way, lines, items } = draft
  const isDue = way === 'here' || (date !== '' && minuteOf(time) !== null)
  const asked = askedItems(items)
  const bagel = asked.some(({ itemId, varietyId }) => varietyId === null && menu.get(itemId)?.onBagel === true)
  return [
    ...(isDue ? [] : (['due'] as const)),
    ...(askedLines(lines).length + asked.length > 0 ? [] : (['pieces'] as const)),
    ...(bagel ? (['bagel'] as const) : []),
  ]
}

/** Who it is for, beside the rest of what is typed. */
export interface TypedDetails {
  readonly typed: OrderDetails | null
  readonly known: OrderDetails | null
}

/** The order as its command has it; nothing may be missing in it. */
export function askedOrder(draft: OrderDraft, clock: Pick<DraftClock, 'noonOf'>, of: TypedDetails): AskedOrder {
  const { mark, way, runId, stop, lines, items, isPaid } = draft
  const isOnRun = way === 'delivery' && runId !== null
  return {
    mark: mark.trim() === '' ? null : mark.trim(),
    dueAtMs: dueAt(draft, clock),
    way,
    runId: isOnRun ? runId : null,
    stop: isOnRun ? (stop ?? 0) : 0,
    lines: askedLines(lines),
    items: askedItems(items),
    isPaid,
    ...detailsToSend(of.typed, of.known),
  }
}

/** @returns null when somebody waits for it, or no time is typed */
export function dueAt({ way, date, time }: OrderDraft, clock: Pick<DraftClock, 'noonOf'>): EpochMs | null {
  const minute = minuteOf(time)
  if (way === 'here' || date === '' || minute === null) return null
  return epochMs(clock.noonOf(date) + (minute - NOON_MINUTE) * MINUTE_MS)
}

export function askedItems(items: readonly ItemDraft[]): readonly AskedItem[] {
  return items.flatMap((item) => ((item.times ?? 0) > 0 ? [{ ...item, times: item.times ?? 0 }] : []))
}

/** Whether what is made to order is asked for as it stands. */
export function keepsItems(draft: OrderDraft, order: Order): boolean {
  return JSON.stringify(askedItems(draft.items)) === JSON.stringify(askedItems(itemsTyped(order.items)))
}

/** The list with one of its lines another way, or without it (null). */
export function withAt<Thing>(things: readonly Thing[], at: number, thing: Thing | null): readonly Thing[] {
  return things.flatMap((one, index) => (index !== at ? [one] : thing === null ? [] : [thing]))
}

/** The list with a line more; an empty first one gives way. */
export function withLine(lines: readonly LineDraft[], line: LineDraft): readonly LineDraft[] {
  const isEmpty = ({ dozens, pieces, varietyId }: LineDraft) => dozens === null && pieces === null && varietyId === null
  return [...lines.filter((one) => !isEmpty(one)), line]
}

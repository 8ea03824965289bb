import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { OrderId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { durationMs } from '../units.ts'
import { itemIsBegun } from './item-steps.ts'
import type { ItemStep, MakeTimes, Order, OrderItem } from './order.ts'
import { MAKE_TIMES_MAX, makeKey } from './order.ts'
import type { ItemPart, OrderCommand } from './order-commands.ts'
import { takeUsed } from './used-up.ts'

type Of<Type extends OrderCommand['type']> = Case<Extract<OrderCommand, { type: Type }>>

interface Part {
  readonly asked: ItemPart
  readonly order: Order
  readonly item: OrderItem
  readonly step: ItemStep
}

/**
 * Parts of items begun, turned, made, or to be made again. Those that stand there already are left as they are: two
 * people who tap the same make one of it.
 */
export function decideMoveItems(oneCase: Of<'moveItems'>): Decision {
  const { command, shop, state } = oneCase
  const { to, shelfId } = command
  if (shelfId !== null && !shop.shelves.has(shelfId)) return refuse('unknown-shelf', { shelfId })
  const parts: Part[] = []
  for (const asked of eachOnce(command.parts)) {
    const order = state.orders.get(asked.orderId)
    const item = order?.items.find(({ no }) => no === asked.no)
    const step = item?.steps[asked.step]
    if (order === undefined || item === undefined || step === undefined) return refuse('unknown-order')
    if (moves(step, to)) parts.push({ asked, order, item, step })
  }
  const [first] = parts
  if (first === undefined) return refuse('already-moved', { stage: null })
  const since = parts.flatMap(({ order, step }) => [order.takenAtMs, step.begunAtMs ?? order.takenAtMs])
  const atMs = happenedAt(oneCase, ...since)
  const begins = to === 'begun' || to === 'made'
  if (begins)
    takeUsed(
      oneCase,
      [...new Set(parts.map(({ item }) => item))].filter((item) => !itemIsBegun(item)),
      atMs,
    )
  const orders = ordersAfter(parts, (part, item) => itemAfter(item, part.asked.step, { to, shelfId, atMs }))
  const times = to === 'made' ? timesAfter(oneCase, parts, atMs) : []
  happen(oneCase, atMs, { type: 'itemsMoved', orders, times })
  return take(oneCase, {
    mark: first.order.mark,
    menuItemId: first.item.itemId,
    pieces: parts.length,
    ...(shelfId === null ? {} : { shelfId }),
  })
}

function eachOnce(parts: readonly ItemPart[]): readonly ItemPart[] {
  return [...new Map(parts.map((part) => [`${part.orderId} ${part.no} ${part.step}`, part])).values()]
}

function moves({ begunAtMs, madeAtMs, oven, turned }: ItemStep, to: Of<'moveItems'>['command']['to']): boolean {
  if (to === 'waiting') return begunAtMs !== null || madeAtMs !== null
  if (madeAtMs !== null) return false
  if (to === 'begun') return begunAtMs === null
  return to === 'made' || (begunAtMs !== null && turned < (oven?.turns.length ?? 0))
}

function ordersAfter(parts: readonly Part[], change: (part: Part, item: OrderItem) => OrderItem): readonly Order[] {
  const orders = new Map<OrderId, Order>()
  for (const part of parts) {
    const order = orders.get(part.order.id) ?? part.order
    const items = order.items.map((item) => (item.no === part.item.no ? change(part, item) : item))
    orders.set(order.id, { ...order, items })
  }
  return [...orders.values()]
}

interface Moved {
  readonly to: Of<'moveItems'>['command']['to']
  readonly shelfId: ItemStep['shelfId']
  readonly atMs: EpochMs
}

/** Parts before it must have been made; what comes after a part that is made again waits as well. */
function itemAfter(item: OrderItem, at: number, { to, shelfId, atMs }: Moved): OrderItem {
  const steps = item.steps.map((step, index): ItemStep => {
    if (to === 'waiting')
      return index < at ? step : { ...step, begunAtMs: null, shelfId: null, turned: 0, madeAtMs: null }
    if (index < at) return step.madeAtMs === null ? { ...step, madeAtMs: atMs } : step
    if (index > at) return step
    if (to === 'begun') return { ...step, begunAtMs: atMs, shelfId: step.oven === null ? null : shelfId }
    if (to === 'turned') return { ...step, turned: step.turned + 1 }
    return { ...step, madeAtMs: atMs }
  })
  return { ...item, steps }
}

/** Only what was seen to begin teaches. */
function timesAfter({ state }: Case, parts: readonly Part[], atMs: EpochMs): readonly MakeTimes[] {
  const times = new Map<string, MakeTimes>()
  for (const { asked, item, step } of parts) {
    if (step.begunAtMs === null) continue
    const key = makeKey(item.itemId, asked.step)
    const tookMs = (times.get(key) ?? state.makeTimes.get(key))?.tookMs ?? []
    const took = durationMs(Math.max(0, atMs - step.begunAtMs))
    times.set(key, { key, tookMs: [...tookMs, took].slice(-MAKE_TIMES_MAX) })
  }
  return [...times.values()]
}

export function decideCountPortions(oneCase: Of<'countPortions'>): Decision {
  const { portionId, portions } = oneCase.command
  if (!oneCase.shop.portions.has(portionId)) return refuse('unknown-portion', { portionId })
  const atMs = happenedAt(oneCase)
  happen(oneCase, atMs, { type: 'portionsLeft', left: [{ portionId, portions, countedAtMs: atMs }] })
  return take(oneCase, { portionId, pieces: portions })
}

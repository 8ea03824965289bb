import type { ShelfId } from '../../shared-core/ids.ts'
import { kitchenHours } from '../../shared-core/kitchen/kitchen-hours.ts'
import { byDue, partKey, shelvesWithSlots } from '../../shared-core/kitchen/parts.ts'
import { itemIsMade, stepNow } from '../../shared-core/orders/item-steps.ts'
import type { ItemStep, Order, OrderItem } from '../../shared-core/orders/order.ts'
import type { ItemPart } from '../../shared-core/orders/order-commands.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { drawFor } from './draw.ts'
import { handedOver } from './order-moves.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, minuteOfDay } from './scene.ts'

const SECOND_MS = 1_000
const MINUTE_MS = 60_000
/** From one part of an item to somebody's hand at the next. */
const PICKED_UP_SECONDS = [3, 20] as const
/** By hand, against what the set-up says. */
const PACE = [0.75, 1.35] as const
/** Turned and taken out so long after the oven's time. */
const AT_OVEN_SECONDS = [-3, 14] as const
const CALLED_SECONDS = [8, 45] as const
/** Sooner nobody begins what somebody fetches later. */
const BEGUN_BEFORE_DUE_MS = 12 * MINUTE_MS

/** Those who make what was ordered, begin the day with portions and call out what is ready. */
export function kitchenWork(scene: Scene): readonly Move[] {
  if (scene.state.day === null) return []
  return [...making(scene), ...calling(scene), ...portions(scene)]
}

interface AtPart {
  readonly part: ItemPart
  readonly key: string
  readonly step: ItemStep
  /** Since when it could be begun. */
  readonly sinceMs: number
}

function making(scene: Scene): readonly Move[] {
  const parts = waitingOrders(scene).flatMap((order) => order.items.flatMap((item) => atPart(order, item) ?? []))
  const begun = parts.filter(({ step }) => step.begunAtMs !== null)
  return [...begun.map((one) => goOn(one, scene)), ...beginnings(parts, begun, scene)]
}

function waitingOrders({ state, nowMs }: Scene): readonly Order[] {
  return [...state.orders.values()]
    .filter(({ items, way, dueAtMs }) => items.length > 0 && (way === 'here' || dueAtMs <= nowMs + BEGUN_BEFORE_DUE_MS))
    .sort(byDue)
}

function atPart(order: Order, item: OrderItem): AtPart | null {
  const at = stepNow(item)
  const step = at === null ? undefined : item.steps[at]
  if (at === null || step === undefined) return null
  const part = { orderId: order.id, no: item.no, step: at }
  const sinceMs = item.steps[at - 1]?.madeAtMs ?? order.takenAtMs
  return { part, key: partKey(part), step, sinceMs }
}

/** What is begun is turned and made. */
function goOn({ part, key, step }: AtPart, { seed }: Scene): Move {
  const { begunAtMs, takesMs, oven, turned } = step
  const fromMs = begunAtMs ?? 0
  const next = oven?.turns[turned]
  const moved = { who: 'crew', act: { type: 'moveItems', parts: [part], shelfId: null } } as const
  if (next !== undefined) {
    const name = `turn:${key}:${turned}`
    const atMs = fromMs + next.afterMs + drawFor(seed, name).between(...AT_OVEN_SECONDS) * SECOND_MS
    return { key: name, who: 'crew', atMs, act: { ...moved.act, to: 'turned' } }
  }
  const name = `made:${key}`
  const draw = drawFor(seed, name)
  const tookMs =
    oven === null ? takesMs * draw.between(...PACE) : takesMs + draw.between(...AT_OVEN_SECONDS) * SECOND_MS
  return { key: name, who: 'crew', atMs: fromMs + tookMs, act: { ...moved.act, to: 'made' } }
}

/** As many as there are hands and places, the first due first. */
function beginnings(parts: readonly AtPart[], begun: readonly AtPart[], scene: Scene): readonly Move[] {
  const hands = new Map(inUse(scene.shop.kitchenStations).map(({ id, hands: all }) => [id, all]))
  for (const { step } of begun) if (step.oven === null) hands.set(step.stationId, (hands.get(step.stationId) ?? 0) - 1)
  const places = placesFree(begun, scene)
  return parts
    .filter(({ step }) => step.begunAtMs === null)
    .flatMap(({ part, key, step, sinceMs }): Move[] => {
      const name = `begin:${key}`
      const atMs = sinceMs + drawFor(scene.seed, name).between(...PICKED_UP_SECONDS) * SECOND_MS
      const begin = (shelfId: ShelfId | null): Move => {
        return { key: name, who: 'crew', atMs, act: { type: 'moveItems', parts: [part], to: 'begun', shelfId } }
      }
      if (step.oven === null) {
        const left = hands.get(step.stationId) ?? 0
        hands.set(step.stationId, left - 1)
        return left > 0 ? [begin(null)] : []
      }
      const { slots } = step.oven
      const [shelfId, left] = [...places].find(([, free]) => free >= slots) ?? [null, 0]
      if (shelfId === null) return []
      places.set(shelfId, left - slots)
      return [begin(shelfId)]
    })
}

/** Shelves that are the second menu's now: its time has come, and no bagels bake there any more. */
function placesFree(begun: readonly AtPart[], { state, shop, nowMs }: Scene): Map<ShelfId, number> {
  const { secondFromMs } = kitchenHours(state)
  if (secondFromMs === null || secondFromMs > nowMs) return new Map()
  const baking = new Set([...state.loads.values()].map(({ shelfId }) => shelfId))
  const places = new Map(
    shelvesWithSlots(shop)
      .filter(({ id }) => !baking.has(id))
      .map(({ id, slots }) => [id, slots]),
  )
  for (const { step } of begun) {
    const free = step.shelfId === null ? undefined : places.get(step.shelfId)
    if (step.shelfId !== null && free !== undefined) places.set(step.shelfId, free - (step.oven?.slots ?? 0))
  }
  return places
}

/** Called across the room, and handed over to who waits. */
function calling({ state, seed, nowMs }: Scene): readonly Move[] {
  return [...state.orders.values()]
    .filter(({ way, items }) => way === 'here' && items.every(itemIsMade))
    .map((order): Move => {
      const key = `call:${order.id}`
      const made = order.items.flatMap(({ steps }) => steps.map(({ madeAtMs }) => madeAtMs ?? 0))
      const readyMs = Math.max(order.takenAtMs, ...made)
      const atMs = readyMs + drawFor(seed, key).between(...CALLED_SECONDS) * SECOND_MS
      return { key, who: 'counter', atMs, act: handedOver(state, order, nowMs) }
    })
}

const COUNTED_MINUTE = 5 * 60 + 22
/** What the afternoon takes but for its last half hour: there is no more of the dough today. */
const PULLED_TRAYS = 9
const TRAYS_AT_OPEN = 2
const FEW = 4
/** What is nearly gone is brought from the cooler, but not for the last guests. */
const NONE_BROUGHT_BEFORE_CLOSE_MINUTES = 50

/** Portions are counted as the day begins, those of dough as they are pulled, and another tray is brought in time. */
function portions(scene: Scene): readonly Move[] {
  const { state, shop, date, dayStartMs, nowMs } = scene
  const { closeMinute, changeoverToMinute } = shop.hours
  const minute = minuteOfDay(scene, nowMs)
  return inUse(shop.portions).flatMap(({ id, pullMs, trayPortions }, n): Move[] => {
    const counted = state.portions.get(id)
    const count = (key: string, atMs: number, all: number): Move => {
      return { key, who: 'crew', atMs, act: { type: 'countPortions', portionId: id, portions: all } }
    }
    if (counted === undefined || counted.countedAtMs < dayStartMs) {
      const trays = pullMs === null ? TRAYS_AT_OPEN : PULLED_TRAYS
      const pulled = pullMs === null ? COUNTED_MINUTE : (changeoverToMinute ?? closeMinute) - pullMs / MINUTE_MS
      const atMs = atMinute(scene, pulled) + n * 9 * SECOND_MS
      return minute < pulled - 1 ? [] : [count(`portions:${date}:${id}`, atMs, trays * trayPortions)]
    }
    if (pullMs !== null || counted.portions > FEW || minute > closeMinute - NONE_BROUGHT_BEFORE_CLOSE_MINUTES) return []
    const key = `tray:${id}:${counted.countedAtMs}:${counted.portions}`
    return [count(key, nowMs, counted.portions + trayPortions)]
  })
}

import type { Act } from '../../shared-core/day/commands.ts'
import type { Line, State } from '../../shared-core/day/state.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import { pickOf } from '../../shared-core/orders/picks.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { demoStanding, placedOn } from './demo-orders.ts'
import { drawFor } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp } from './scene.ts'

const MINUTE_MS = 60_000
const DAY_MINUTES = 24 * 60
/** Whoever stands at the counter looks after a bag so long before it is fetched. */
const KEPT_BEFORE_MS = 25 * MINUTE_MS
/** People come so long before or after the time that was said. */
const FETCHED_MINUTES = [-6, 12] as const
/** One in so many never comes. */
const NO_SHOW_ONCE_IN = 40

/** Orders that people ring up for, as the counter takes, keeps and hands them over. */
export function orderMoves(scene: Scene): readonly Move[] {
  if (scene.state.day === null) return []
  return [...placing(scene), ...keeping(scene), ...fetching(scene)]
}

function placing(scene: Scene): readonly Move[] {
  const { shop, seed, date } = scene
  return placedOn(shop, seed, date).flatMap(({ key, minute, order, dueDate, dueMinute }): Move[] => {
    const atMs = atMinute(scene, minute)
    if (!comesUp(scene, atMs)) return []
    const dueAtMs = dueAt(scene, dueDate, dueMinute)
    return [{ key, who: 'counter', once: true, atMs, act: { ...order, dueAtMs } }]
  })
}

/** The demo's own zones never change their clocks. */
export function dueAt({ date, dayStartMs }: Pick<Scene, 'date' | 'dayStartMs'>, dueDate: string, minute: number) {
  const days = Math.round((Date.parse(dueDate) - Date.parse(date)) / (DAY_MINUTES * MINUTE_MS))
  return epochMs(dayStartMs + (days * DAY_MINUTES + minute) * MINUTE_MS)
}

/** What has not been put aside as it came out of the oven. */
function keeping(scene: Scene): readonly Move[] {
  const { state, nowMs } = scene
  return placed(state)
    .filter(({ dueAtMs }) => dueAtMs - KEPT_BEFORE_MS <= nowMs)
    .flatMap((order): Move[] => {
      const key = `keep:${order.id}`
      const wanted = order.lines.reduce((sum, { pieces }) => sum + pieces, 0)
      if (keptPieces(state, order) >= wanted) return []
      const { keep } = pickOf(state, order, nowMs)
      if (keep.length === 0) return []
      return [
        {
          key,
          who: 'counter',
          atMs: order.dueAtMs - KEPT_BEFORE_MS,
          act: { type: 'keep', lines: keep, orderId: order.id },
        },
      ]
    })
}

function fetching({ state, seed, nowMs }: Scene): readonly Move[] {
  return placed(state).flatMap((order): Move[] => {
    const atMs = fetchedAt(order, seed)
    if (atMs === null || atMs > nowMs + MINUTE_MS) return []
    return [{ key: `fetch:${order.id}`, who: 'counter', atMs, act: handedOver(state, order, nowMs) }]
  })
}

/** A van leaves when it should. Null: nobody comes. */
export function fetchedAt({ id, way, dueAtMs }: Order, seed: number): number | null {
  const draw = drawFor(seed, `fetched:${id}`)
  if (way === 'delivery') return dueAtMs - draw.between(0, 3) * MINUTE_MS
  return draw.oneIn(NO_SHOW_ONCE_IN) ? null : dueAtMs + draw.between(...FETCHED_MINUTES) * MINUTE_MS
}

/** As ordered where all of it is there; else what there is. */
export function handedOver(state: State, order: Order, nowMs: EpochMs): Act {
  const { kept, keep, missing } = pickOf(state, order, nowMs)
  const lines = missing === 0 ? null : together([...kept, ...keep])
  return { type: 'handOverOrder', orderId: order.id, lines }
}

function together(lines: readonly Line[]): readonly Line[] {
  const sums = new Map<Line['varietyId'], number>()
  for (const { varietyId, pieces } of lines) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}

function placed({ orders }: State): readonly Order[] {
  return [...orders.values()].filter(({ way }) => way !== 'here')
}

function keptPieces({ keeps }: State, { id }: Order): number {
  return [...keeps.values()].reduce((sum, keep) => (keep.orderId === id ? sum + piecesOf(keep.lines) : sum), 0)
}

/** Those that stand, as the desk types them on the first day. @returns null when it has them all */
export function nextStanding(state: State, shop: Shop, from: string): Act | null {
  const known = new Set([...state.standing.values()].map(({ mark }) => mark))
  return demoStanding(shop, from).find(({ mark }) => !known.has(mark)) ?? null
}

import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { kitchenHours } from '../../shared-core/kitchen/kitchen-hours.ts'
import { portionsOf } from '../../shared-core/kitchen/portions-now.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { AskedItem } from '../../shared-core/orders/order-commands.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { MenuItem } from '../../shared-core/shop/kitchen.ts'
import { poisson } from './crowd.ts'
import { likedOf } from './demo-demand.ts'
import type { TakeOrder } from './demo-orders.ts'
import type { Draw } from './draw.ts'
import { drawFor, pick } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp, minuteOfDay } from './scene.ts'

/** Orders an hour by the hour of the day: of what is made by hand, and out of the oven after the changeover. Invented. */
const BY_HAND_AN_HOUR: ReadonlyMap<number, number> = new Map([
  [6, 5],
  [7, 9],
  [8, 10],
  [9, 7],
  [10, 6],
  [11, 8],
  [12, 7],
  [13, 5],
  [14, 3],
])
const OUT_OF_OVEN_AN_HOUR: ReadonlyMap<number, number> = new Map([
  [12, 30],
  [13, 22],
  [14, 9],
])
/** Nobody begins one that could not be eaten before the door is locked. */
const LAST_BEFORE_CLOSE_MINUTES = 18
const WITH_ALLERGY_ONCE_IN = 14
const TAKES_BAGELS_ALONG_ONCE_IN = 5
/** Pieces of a rod that are left to who buys them as they are. */
const LEFT_PIECES = 2

/** Who comes to the counter for something that is made for them. */
export function kitchenCrowd(scene: Scene): readonly Move[] {
  const { state, shop } = scene
  const minute = Math.floor(minuteOfDay(scene, scene.nowMs))
  if (state.day === null || minute > shop.hours.closeMinute - LAST_BEFORE_CLOSE_MINUTES) return []
  return [minute, minute + 1].flatMap((at) => comersIn(scene, at))
}

function comersIn(scene: Scene, minute: number): readonly Move[] {
  const { openMinute } = scene.shop.hours
  if (minute < openMinute) return []
  const hour = Math.floor(minute / 60)
  const kinds = [
    { kind: 'hand', anHour: BY_HAND_AN_HOUR.get(hour) ?? 0 },
    { kind: 'oven', anHour: isOvenOver(scene) ? (OUT_OF_OVEN_AN_HOUR.get(hour) ?? 0) : 0 },
  ] as const
  return kinds.flatMap(({ kind, anHour }) => {
    const draw = drawFor(scene.seed, `${kind}:${scene.date}:${minute}`)
    return Array.from({ length: poisson(draw, anHour / 60) }, (_, n): Move[] => {
      const atMs = atMinute(scene, minute + draw.share())
      if (!comesUp(scene, atMs)) return []
      const key = `${kind}:${scene.date}:${minute}:${n}`
      const order = orderOf(scene, drawFor(scene.seed, key), kind)
      return order === null ? [] : [{ key, who: 'counter', once: true, atMs, act: order }]
    }).flat()
  })
}

function isOvenOver({ state, nowMs }: Scene): boolean {
  const { secondFromMs } = kitchenHours(state)
  return secondFromMs !== null && secondFromMs <= nowMs
}

function orderOf(scene: Scene, draw: Draw, kind: 'hand' | 'oven'): TakeOrder | null {
  const { shop } = scene
  const menu = inUse(shop.menu).filter(({ steps }) => steps.some(({ oven }) => oven !== null) === (kind === 'oven'))
  const bagels = bagelsThere(scene)
  const items: AskedItem[] = []
  for (let n = draw.whole(1, 3); n > 0; n -= draw.whole(1, 2)) {
    const item = itemOf(scene.state, draw, { menu, bagels })
    if (item !== null) items.push(item)
  }
  if (items.length === 0) return null
  const along = draw.oneIn(TAKES_BAGELS_ALONG_ONCE_IN) ? pick(draw, [...bagels], ([, left]) => left) : null
  const line = { without: [], dozens: 0, sliced: false, bagged: false }
  return {
    ...{ type: 'takeOrder', mark: null, dueAtMs: null, way: 'here', runId: null, stop: 0, isPaid: true },
    lines: along === null ? [] : [{ ...line, varietyId: along[0], pieces: Math.min(along[1], draw.whole(1, 3)) }],
    items,
  }
}

/** For sale, less what stays on the rod. */
function bagelsThere({ state, nowMs }: Scene): Map<VarietyId, number> {
  return new Map(
    [...state.stock.values()]
      .map(({ varietyId, lots }) => {
        return [varietyId, piecesOf(lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)) - LEFT_PIECES] as const
      })
      .filter(([, pieces]) => pieces > 0),
  )
}

interface Offered {
  readonly menu: readonly MenuItem[]
  readonly bagels: Map<VarietyId, number>
}

function itemOf(state: State, draw: Draw, { menu, bagels }: Offered): AskedItem | null {
  const item = pick(draw, menu, (one) => (isThere(state, one) ? 1 : 0))
  if (item === null) return null
  const bagel = item.onBagel ? pick(draw, [...bagels], ([id, left]) => (left > 0 ? likedOf(id) : 0)) : null
  if (item.onBagel && bagel === null) return null
  if (bagel !== null) bagels.set(bagel[0], bagel[1] - 1)
  return {
    itemId: item.id,
    varietyId: bagel?.[0] ?? null,
    toasted: item.canToast && draw.oneIn(2),
    without: [],
    more: [],
    allergies: draw.oneIn(WITH_ALLERGY_ONCE_IN) ? ['treeNuts'] : [],
    times: 1,
  }
}

/** What was never counted is there. One more than it needs: others may be in the queue for it. */
function isThere({ portions }: State, item: MenuItem): boolean {
  return [...portionsOf(item, { without: [], more: [] })].every(
    ([id, needed]) => (portions.get(id)?.portions ?? Number.POSITIVE_INFINITY) > needed,
  )
}

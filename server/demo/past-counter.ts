import type { Act } from '../../shared-core/day/commands.ts'
import type { Line, State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { UNTAPPED_ONCE_IN } from './counter-sweep.ts'
import { customersAnHour, likedOf, PURCHASES } from './demo-demand.ts'
import type { Draw } from './draw.ts'
import { drawFor, pick } from './draw.ts'
import type { Errand, PastDay } from './past-days.ts'

/** Customers, sweeps, boxes, sandwiches and what falls on the floor on a past day. */
export function pastCounter(day: PastDay): readonly Errand[] {
  return [...customers(day), ...EVERY.flatMap((one) => every(day, one))]
}

/** How much a variety is asked for on a day, against a usual one. */
const ASKED_FOR = [0.7, 1.4] as const
const SWEPT_AT_ONCE = 5

const at = ({ dayStartMs }: PastDay, minute: number) => dayStartMs + minute * 60_000

function customers(day: PastDay): readonly Errand[] {
  const { shop, seed, date, busy } = day
  const liked = new Map(
    inUse(shop.varieties).map(({ id }) => {
      return [id, likedOf(id) * drawFor(seed, `liked:${date}:${id}`).between(...ASKED_FOR)] as const
    }),
  )
  const errands: Errand[] = []
  for (let minute = shop.hours.openMinute; minute < shop.hours.closeMinute; minute += 1) {
    const draw = drawFor(seed, `customers:${date}:${minute}`)
    const came = Math.floor((customersAnHour(minute) / 60) * busy + draw.share())
    for (let one = 0; one < came; one += 1) {
      const atMs = at(day, minute + draw.share())
      const key = `customer:${date}:${minute}:${one}`
      errands.push({
        atMs,
        key,
        who: 'counter',
        act: (state, nowMs) => bought(state, { nowMs, liked, draw: drawFor(seed, key) }),
      })
    }
  }
  return errands
}

interface Buying {
  readonly nowMs: number
  readonly liked: ReadonlyMap<VarietyId, number>
  readonly draw: Draw
}

/** One kind for a few, several kinds for a box; nobody is sold what is not there. */
function bought(state: State, { nowMs, liked, draw }: Buying): Act | null {
  if (draw.oneIn(UNTAPPED_ONCE_IN)) return null
  const wants = pick(draw, PURCHASES, ({ weight }) => weight)?.pieces ?? 1
  const lines = new Map<VarietyId, number>()
  for (let left = wants; left > 0; ) {
    const kinds = [...liked.keys()]
    const id = pick(draw, kinds, (kind) =>
      readyOf(state, kind, nowMs) > (lines.get(kind) ?? 0) ? (liked.get(kind) ?? 0) : 0,
    )
    if (id === null) break
    const room = readyOf(state, id, nowMs) - (lines.get(id) ?? 0)
    const got = Math.min(left, room, wants < 6 ? wants : draw.whole(2, 4))
    lines.set(id, (lines.get(id) ?? 0) + got)
    left -= got
  }
  const all = [...lines].map(([varietyId, pieces]): Line => ({ varietyId, pieces }))
  return all.length === 0 ? null : { type: 'sell', lines: all }
}

function readyOf({ stock }: State, id: VarietyId, nowMs: number): number {
  return piecesOf((stock.get(id)?.lots ?? []).filter(({ readyAtMs }) => readyAtMs <= nowMs))
}

interface Every {
  readonly name: string
  readonly minutes: number
  readonly act: (state: State, at: { readonly shop: Shop; readonly nowMs: number; readonly draw: Draw }) => Act | null
}

const EVERY: readonly Every[] = [
  { name: 'sweep', minutes: 90, act: (state, { shop, nowMs, draw }) => swept(state, shop, nowMs, draw) },
  { name: 'sandwich', minutes: 20, act: (state, scene) => removed(state, scene, 'kitchen', scene.draw.whole(2, 4)) },
  { name: 'dropped', minutes: 60, act: (state, scene) => removed(state, scene, 'wasted', 1) },
  { name: 'taste', minutes: 200, act: (state, scene) => removed(state, scene, 'given', 2) },
  {
    name: 'box',
    minutes: 45,
    act: (state, { shop, nowMs, draw }) => {
      const [oldest] = state.keeps.values()
      if (oldest !== undefined) return { type: 'handOver', keepId: oldest.id }
      const varietyId = plentiful(state, shop, nowMs, draw)
      return varietyId === null ? null : { type: 'keep', lines: [{ varietyId, pieces: 6 }] }
    },
  },
]

function every(day: PastDay, { name, minutes, act }: Every): readonly Errand[] {
  const { openMinute, closeMinute } = day.shop.hours
  const errands: Errand[] = []
  for (let minute = openMinute + minutes / 2; minute < closeMinute - 10; minute += minutes) {
    const key = `${name}:${day.date}:${minute}`
    const draw = drawFor(day.seed, key)
    const atMs = at(day, minute + draw.between(0, minutes / 3))
    errands.push({ atMs, key, who: 'counter', act: (state, nowMs) => act(state, { shop: day.shop, nowMs, draw }) })
  }
  return errands
}

/** The lowest rods, of which a few pieces went over the counter untapped, more of a fuller one. */
function swept(state: State, shop: Shop, nowMs: number, draw: Draw): Act | null {
  const counts = inUse(shop.varieties)
    .map(({ id }) => ({ varietyId: id, pieces: readyOf(state, id, nowMs) }))
    .filter(({ pieces }) => pieces > 0)
    .sort((one, other) => one.pieces - other.pieces || (one.varietyId < other.varietyId ? -1 : 1))
    .slice(0, SWEPT_AT_ONCE)
    .map(({ varietyId, pieces }) => ({
      varietyId,
      pieces: Math.max(0, pieces - draw.whole(0, 2 + pieces / 3)),
      within: 0,
    }))
  return counts.length === 0 ? null : { type: 'sweep', counts }
}

function removed(
  state: State,
  { shop, nowMs, draw }: { readonly shop: Shop; readonly nowMs: number; readonly draw: Draw },
  fate: 'kitchen' | 'wasted' | 'given',
  pieces: number,
): Act | null {
  const varietyId = plentiful(state, shop, nowMs, draw)
  return varietyId === null ? null : { type: 'remove', varietyId, pieces, fate }
}

function plentiful(state: State, shop: Shop, nowMs: number, draw: Draw): VarietyId | null {
  const ids = inUse(shop.varieties).map(({ id }) => id)
  return pick(draw, ids, (id) => Math.max(0, readyOf(state, id, nowMs) - 9))
}

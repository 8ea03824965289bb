import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { UNTAPPED_ONCE_IN } from './counter-sweep.ts'
import type { Crowd } from './crowd.ts'
import { basketOf, customersIn } from './crowd.ts'
import type { Draw } from './draw.ts'
import { drawFor, pick } from './draw.ts'
import type { Errand, PastDay } from './past-days.ts'

/** Customers, sweeps, boxes, sandwiches and what falls on the floor on a past day. */
export function pastCounter(day: PastDay): readonly Errand[] {
  return [...customers(day), ...EVERY.flatMap((one) => every(day, one))]
}

const SWEPT_AT_ONCE = 5

const at = ({ dayStartMs }: PastDay, minute: number) => dayStartMs + minute * 60_000

function customers(day: PastDay): readonly Errand[] {
  const { crowd, seed, shop } = day
  const { openMinute, closeMinute } = shop.hours
  const all = Array.from({ length: closeMinute - openMinute }, (_, n) => customersIn(crowd, openMinute + n)).flat()
  return all.map(({ key, minute }) => ({
    atMs: at(day, minute),
    key,
    who: 'counter',
    act: (state, nowMs) => bought(state, { crowd, nowMs, draw: drawFor(seed, key) }),
  }))
}

interface Buying {
  readonly crowd: Crowd
  readonly nowMs: number
  readonly draw: Draw
}

function bought(state: State, { crowd, nowMs, draw }: Buying): Act | null {
  const there = new Map([...crowd.liked.keys()].map((id) => [id, readyOf(state, id, nowMs)] as const))
  const lines = basketOf(crowd, draw, there)
  return lines.length === 0 || draw.oneIn(UNTAPPED_ONCE_IN) ? null : { type: 'sell', lines }
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

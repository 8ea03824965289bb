import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { UNTAPPED_ONCE_IN } from './counter-sweep.ts'
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
    act: (state, nowMs) => bought(state, { day, nowMs, draw: drawFor(seed, key) }),
  }))
}

interface Buying {
  readonly day: PastDay
  readonly nowMs: number
  readonly draw: Draw
}

function bought(state: State, { day, nowMs, draw }: Buying): Act | null {
  const { crowd } = day
  const there = new Map([...crowd.liked.keys()].map((id) => [id, seenOn(day, state, id, nowMs)] as const))
  const lines = basketOf(crowd, draw, there)
  if (lines.length === 0) return null
  if (!draw.oneIn(UNTAPPED_ONCE_IN)) return { type: 'sell', lines }
  for (const { varietyId, pieces } of lines) day.untapped.set(varietyId, (day.untapped.get(varietyId) ?? 0) + pieces)
  return null
}

/** What somebody sees on a rod: what is on the books less what went over the counter untapped since it was counted. */
export function seenOn({ untapped }: PastDay, state: State, id: VarietyId, nowMs: number): number {
  return Math.max(0, readyOf(state, id, nowMs) - (untapped.get(id) ?? 0))
}

function readyOf({ stock }: State, id: VarietyId, nowMs: number): number {
  return piecesOf((stock.get(id)?.lots ?? []).filter(({ readyAtMs }) => readyAtMs <= nowMs))
}

interface Looking {
  readonly day: PastDay
  readonly nowMs: number
  readonly draw: Draw
}

interface Every {
  readonly name: string
  readonly minutes: number
  readonly act: (state: State, at: Looking) => Act | null
}

const EVERY: readonly Every[] = [
  { name: 'sweep', minutes: 90, act: (state, { day, nowMs }) => swept(state, day, nowMs) },
  { name: 'sandwich', minutes: 20, act: (state, scene) => removed(state, scene, 'kitchen', scene.draw.whole(2, 4)) },
  { name: 'dropped', minutes: 60, act: (state, scene) => removed(state, scene, 'wasted', 1) },
  { name: 'taste', minutes: 200, act: (state, scene) => removed(state, scene, 'given', 2) },
  {
    name: 'box',
    minutes: 45,
    act: (state, scene) => {
      const oldest = [...state.keeps.values()].find(({ orderId }) => orderId === undefined)
      if (oldest !== undefined) return { type: 'handOver', keepId: oldest.id }
      const varietyId = plentiful(state, scene)
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
    errands.push({ atMs, key, who: 'counter', act: (state, nowMs) => act(state, { day, nowMs, draw }) })
  }
  return errands
}

/** The lowest rods: what went untapped since they were last counted comes to light. */
function swept(state: State, day: PastDay, nowMs: number): Act | null {
  const counts = inUse(day.shop.varieties)
    .map(({ id }) => ({ varietyId: id, pieces: readyOf(state, id, nowMs) }))
    .filter(({ pieces }) => pieces > 0)
    .sort((one, other) => one.pieces - other.pieces || (one.varietyId < other.varietyId ? -1 : 1))
    .slice(0, SWEPT_AT_ONCE)
    .map(({ varietyId }) => ({ varietyId, pieces: seenOn(day, state, varietyId, nowMs), within: 0 }))
  for (const { varietyId } of counts) day.untapped.delete(varietyId)
  return counts.length === 0 ? null : { type: 'sweep', counts }
}

function removed(state: State, scene: Looking, fate: 'kitchen' | 'wasted' | 'given', pieces: number): Act | null {
  const varietyId = plentiful(state, scene)
  return varietyId === null ? null : { type: 'remove', varietyId, pieces, fate }
}

function plentiful(state: State, { day, nowMs, draw }: Looking): VarietyId | null {
  const ids = inUse(day.shop.varieties).map(({ id }) => id)
  return pick(draw, ids, (id) => Math.max(0, seenOn(day, state, id, nowMs) - 9))
}

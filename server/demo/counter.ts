import type { Act } from '../../shared-core/day/commands.ts'
import type { Stock } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { byVariety } from '../../shared-core/line/contents.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { seenOn, sweepMoves, UNTAPPED_ONCE_IN } from './counter-sweep.ts'
import type { Crowd } from './crowd.ts'
import { basketOf, crowdOn, customersIn } from './crowd.ts'
import { drawFor, pick } from './draw.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp, minuteOfDay } from './scene.ts'

/**
 * The counter and its customers. Who comes is drawn minute by minute from the morning's profile; what they take is what
 * they like of what is there. The counter keeps boxes for people who rang up, counts a rod now and then and sweeps when
 * the board asks for it, and says when the last one is gone. Some sales it does not tap, some without saying of what.
 */
export function counterMoves(scene: Scene): readonly Move[] {
  const { openMinute, closeMinute } = scene.shop.hours
  const minute = minuteOfDay(scene, scene.nowMs)
  if (minute < openMinute - 1 || minute >= closeMinute) return []
  return [
    ...customers(scene),
    ...handOvers(scene),
    ...lastOnes(scene),
    ...sweepMoves(scene),
    ...EVERY.flatMap((errand) => errandMoves(scene, errand)),
  ]
}

/** One in so many customers is rung up as so many pieces, without saying of what. */
const UNNAMED_ONCE_IN = 9
function customers(scene: Scene): readonly Move[] {
  const first = Math.floor(minuteOfDay(scene, scene.nowMs))
  const crowd = crowdOf(scene)
  return [first, first + 1]
    .flatMap((minute) => customersIn(crowd, minute))
    .map(({ key, minute }) => ({ key, atMs: atMinute(scene, minute) }))
    .filter(({ atMs }) => comesUp(scene, atMs))
    .flatMap(({ key, atMs }) => served(scene, crowd, { key, atMs }))
}

/** That of a day is the same all day long, and looked at every second. */
function crowdOf({ shop, seed, date }: Scene): Crowd {
  const known = OF_DAY.get(shop)
  if (known?.seed === seed && known.date === date) return known
  const crowd = crowdOn(shop, seed, date)
  OF_DAY.set(shop, crowd)
  return crowd
}

const OF_DAY = new WeakMap<Shop, Crowd>()

function served(
  scene: Scene,
  crowd: Crowd,
  { key, atMs }: { readonly key: string; readonly atMs: number },
): readonly Move[] {
  const draw = drawFor(scene.seed, key)
  const lines = basketOf(crowd, draw, forSale(scene, atMs))
  if (lines.length === 0 || draw.oneIn(UNTAPPED_ONCE_IN)) return []
  if (draw.oneIn(UNNAMED_ONCE_IN)) {
    return [{ key, who: 'counter', once: true, atMs, act: { type: 'sellUnnamed', pieces: piecesOf(lines) } }]
  }
  return [{ key, who: 'counter', once: true, atMs, act: { type: 'sell', lines } }]
}

function forSale({ state, shop }: Scene, atMs: number): Map<VarietyId, number> {
  const all = [...state.stock.values()].sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
  return new Map(all.map((stock) => [stock.varietyId, readyOf(stock, atMs)]))
}

function readyOf({ lots }: Stock, atMs: number): number {
  return piecesOf(lots.filter(({ readyAtMs }) => readyAtMs <= atMs))
}

/** Boxes are fetched an hour or so after the call, all of them before close. */
function handOvers(scene: Scene): readonly Move[] {
  const lastMs = atMinute(scene, scene.shop.hours.closeMinute - 5)
  // What is kept for an order goes with it.
  const own = [...scene.state.keeps.values()].filter(({ orderId }) => orderId === undefined)
  return own.map(({ id, keptAtMs }) => {
    const key = `fetched:${id}`
    const fetchedMs = keptAtMs + drawFor(scene.seed, key).between(40, 85) * 60_000
    const atMs = Math.min(fetchedMs, lastMs)
    return { key, who: 'counter', atMs, act: { type: 'handOver', keepId: id } }
  })
}

/** A rod that should hold one or two is looked at: often there is none. */
function lastOnes(scene: Scene): readonly Move[] {
  return [...forSale(scene, scene.nowMs)].flatMap(([varietyId, pieces]) => {
    if (pieces < 1 || pieces > 2) return []
    const key = `last:${scene.date}:${varietyId}:${scene.state.stock.get(varietyId)?.lots[0]?.id ?? ''}`
    const draw = drawFor(scene.seed, key)
    if (!draw.oneIn(3)) return []
    const atMs = scene.nowMs + draw.between(0, 15) * 1_000
    return [{ key, who: 'counter', once: true, atMs, act: { type: 'lastOneGone', varietyId } }]
  })
}

interface Errand {
  readonly name: string
  readonly everyMinutes: number
  readonly act: (varietyId: VarietyId, ready: number, scene: Scene) => Act | null
}

/** What happens at the counter besides selling, every so often: counts, a box kept, a piece dropped. */
const EVERY: readonly Errand[] = [
  {
    name: 'count',
    everyMinutes: 26,
    act: (varietyId, _ready, scene) => ({ type: 'count', varietyId, pieces: seenOn(scene, varietyId) }),
  },
  {
    name: 'dropped',
    everyMinutes: 38,
    act: (varietyId, ready) => (ready < 3 ? null : { type: 'remove', varietyId, pieces: 1, fate: 'wasted' }),
  },
  {
    name: 'taste',
    everyMinutes: 170,
    act: (varietyId, ready) => (ready < 6 ? null : { type: 'remove', varietyId, pieces: 2, fate: 'given' }),
  },
  {
    name: 'box',
    everyMinutes: 24,
    act: (varietyId, ready) => (ready < 10 ? null : { type: 'keep', lines: [{ varietyId, pieces: 6 }] }),
  },
]

function errandMoves(scene: Scene, { name, everyMinutes, act }: Errand): readonly Move[] {
  const { openMinute, closeMinute } = scene.shop.hours
  const slot = Math.floor((minuteOfDay(scene, scene.nowMs) - openMinute) / everyMinutes)
  return [slot, slot + 1].flatMap((at): readonly Move[] => {
    const key = `${name}:${scene.date}:${at}`
    const draw = drawFor(scene.seed, key)
    const minute = openMinute + (at + draw.share()) * everyMinutes
    const atMs = atMinute(scene, minute)
    if (at < 0 || minute >= closeMinute - 30 || !comesUp(scene, atMs)) return []
    const found = pick(draw, [...forSale(scene, atMs)], ([, pieces]) => pieces)
    const errand = found === null ? null : act(...found, scene)
    return errand === null ? [] : [{ key, who: 'counter', once: true, atMs, act: errand }]
  })
}

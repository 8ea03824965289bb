import type { Act } from '../../shared-core/day/commands.ts'
import type { Line, Stock } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { byVariety } from '../../shared-core/line/contents.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { seenOn, sweepMoves, UNTAPPED_ONCE_IN } from './counter-sweep.ts'
import { customersAnHour, likedOf, PURCHASES } from './demo-demand.ts'
import type { Draw } from './draw.ts'
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
/** How much a variety is asked for today, against a usual day: some always run short and some are left. */
const TODAY = [0.6, 1.55] as const

function customers(scene: Scene): readonly Move[] {
  const first = Math.floor(minuteOfDay(scene, scene.nowMs))
  return [first, first + 1].flatMap((minute) => {
    const { openMinute, closeMinute } = scene.shop.hours
    if (minute < openMinute || minute >= closeMinute) return []
    const draw = drawFor(scene.seed, `customers:${scene.date}:${minute}`)
    const came = customersIn(draw, customersAnHour(minute) / 60)
    return Array.from({ length: came }, (_, index) => {
      const atMs = atMinute(scene, minute + draw.share())
      return { key: `customer:${scene.date}:${minute}:${index}`, atMs }
    })
      .filter(({ atMs }) => comesUp(scene, atMs))
      .flatMap(({ key, atMs }) => served(scene, key, atMs))
  })
}

/** How many come in a minute: Poisson by inversion. Source: Devroye, Non-Uniform Random Variate Generation, X.3. */
function customersIn(draw: Draw, aMinute: number): number {
  const share = draw.share()
  let chance = Math.exp(-aMinute)
  let below = chance
  let came = 0
  while (share > below && came < CUSTOMERS_A_MINUTE_MAX) {
    came += 1
    chance *= aMinute / came
    below += chance
  }
  return came
}
const CUSTOMERS_A_MINUTE_MAX = 9

function served(scene: Scene, key: string, atMs: number): readonly Move[] {
  const draw = drawFor(scene.seed, key)
  const lines = basket(scene, draw, atMs)
  if (lines.length === 0 || draw.oneIn(UNTAPPED_ONCE_IN)) return []
  if (draw.oneIn(UNNAMED_ONCE_IN)) {
    return [{ key, who: 'counter', once: true, atMs, act: { type: 'sellUnnamed', pieces: piecesOf(lines) } }]
  }
  return [{ key, who: 'counter', once: true, atMs, act: { type: 'sell', lines } }]
}

/** A handful of one kind, or half a dozen and more of several. Nobody is sold what is not there. */
function basket(scene: Scene, draw: Draw, atMs: number): readonly Line[] {
  const wants = pick(draw, PURCHASES, ({ weight }) => weight)?.pieces ?? 1
  const there = forSale(scene, atMs)
  const bought = new Map<VarietyId, number>()
  let left = wants
  while (left > 0) {
    const kind = pick(draw, [...there], ([id, pieces]) => (pieces > 0 ? likedToday(scene, id) : 0))
    if (kind === null) break
    const [id, pieces] = kind
    const got = Math.min(left, pieces, wants < 6 ? wants : draw.whole(2, 4))
    bought.set(id, (bought.get(id) ?? 0) + got)
    there.set(id, pieces - got)
    left -= got
  }
  return [...bought]
    .map(([varietyId, pieces]) => ({ varietyId, pieces }))
    .sort((one, other) => byVariety(scene.shop, one.varietyId, other.varietyId))
}

function likedToday({ seed, date }: Scene, id: VarietyId): number {
  return likedOf(id) * drawFor(seed, `liked:${date}:${id}`).between(...TODAY)
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
  return [...scene.state.keeps.values()].map(({ id, keptAtMs }) => {
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
  readonly act: (varietyId: VarietyId, ready: number, draw: Draw, scene: Scene) => Act | null
}

/** What happens at the counter besides selling, every so often: counts, sandwiches, a box kept, a piece dropped. */
const EVERY: readonly Errand[] = [
  {
    name: 'count',
    everyMinutes: 26,
    act: (varietyId, _ready, _draw, scene) => ({ type: 'count', varietyId, pieces: seenOn(scene, varietyId) }),
  },
  {
    name: 'sandwich',
    everyMinutes: 14,
    act: (varietyId, ready, draw) =>
      ready < 4 ? null : { type: 'remove', varietyId, pieces: draw.whole(1, 3), fate: 'kitchen' },
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
    const errand = found === null ? null : act(...found, draw, scene)
    return errand === null ? [] : [{ key, who: 'counter', once: true, atMs, act: errand }]
  })
}

import type { Pieces } from '../demand/pieces.ts'
import { byMoments } from '../demand/pieces.ts'
import type { StockPoint } from '../demand/stock-now.ts'
import { assert } from '../support.ts'
import type { Worth } from './worth.ts'
import { worthOfOneMore } from './worth.ts'

/** How many pieces of one variety, asked for by a demand that is not known yet. */
export interface Asked {
  readonly demand: Pieces
  /** Pieces that are there already, by how likely each number is; the chances sum to 1. */
  readonly stock: readonly StockPoint[]
  /** What is asked for only after more pieces could be ready; null: all of `demand`. */
  readonly later: Pieces | null
  readonly worth: Worth
  /** Pieces are made in multiples of it, where they are that many; at least 1. */
  readonly unit: number
  /** Made in any case besides, for orders: the unit counts both. */
  readonly besides: number
}

/** Pieces of these come of the same dough, and no more of it is there. */
export interface Within<Id> {
  readonly ids: readonly Id[]
  readonly pieces: number
}

/** None is there yet. */
export const NONE_THERE: readonly StockPoint[] = [{ pieces: 0, chance: 1 }]

/** How many, and what it weighs. */
export interface Amount {
  readonly pieces: number
  /** The same before it was rounded to the unit. */
  readonly exact: number
  /** What one too few costs there, and one too many, in cents. */
  readonly underCents: number
  readonly overCents: number
  /** Chance that it is enough. */
  readonly covered: number
}

/** Nobody bakes more of one variety for a day; a wrong price must not count for ever. */
const PIECES_MAX = 100_000
/** What others leave is taken halfway between the last two rounds, so that it settles, mostly in three. */
const ROUNDS_MAX = 8
/** A chance that counts for no piece. */
const HARDLY = 1e-6
const NEARLY = 1e-9

/**
 * The newsvendor's answer for each variety: the fewest pieces of which one more would earn nothing.
 *
 *   one more earns   Σ (worth − worth of the next use)·P(part·D > n)  +  day-old·P(it is left and still sells)  −  cost
 *
 * With one use and no day-old pieces that is the smallest n with P(D ≤ n) ≥ under / (under + over), the critical ratio.
 * Day-old pieces of all varieties share the few that a day sells: a piece sells if fewer than that many are left, its own
 * variety's exactly, the others' by mean and variance (each by itself). Source: Hill, The Newsvendor Problem, for the
 * ratio; several uses are the same marginal argument.
 * @param dayOldSells day-old pieces that a day sells, of all varieties together
 * @param within what there is dough for: pieces that earn least are left out
 */
export function howMany<Id>(
  asked: ReadonlyMap<Id, Asked>,
  dayOldSells: number,
  within: readonly Within<Id>[] = [],
): ReadonlyMap<Id, Amount> {
  const { exact, sells } = settled(asked, dayOldSells)
  const earnsAt = (id: Id, one: Asked) => (n: number) => earns(one, n, sells.get(id) ?? [])
  const made = new Map([...asked].map(([id, one]) => [id, inUnits(one, exact.get(id) ?? 0, earnsAt(id, one))] as const))
  for (const limit of within) keepWithin(limit, asked, made, (id, one, n) => earnsAt(id, one)(n))
  return new Map(
    [...asked].map(([id, one]) => [
      id,
      { ...weighed(one, made.get(id) ?? 0, sells.get(id) ?? []), exact: exact.get(id) ?? 0 },
    ]),
  )
}

interface Settled<Id> {
  readonly exact: ReadonlyMap<Id, number>
  /** By variety, the chance that its (l + 1)-th left piece still sells as day-old. */
  readonly sells: ReadonlyMap<Id, readonly number[]>
}

/** What each is worth making hangs on what the others leave, and that on what is made of them: reckoned until it settles. */
function settled<Id>(asked: ReadonlyMap<Id, Asked>, dayOldSells: number): Settled<Id> {
  const all = [...asked].map(([id, one]) => {
    const exact = fewest((n) => earns(one, n, []), 0)
    const left = leftBy(one)
    return { id, one, exact, left, leaves: left(exact), sells: [] as readonly number[] }
  })
  for (let round = 0, isSettled = dayOldSells === 0; round < ROUNDS_MAX && !isSettled; round += 1) {
    const together = summed(all.map(({ leaves }) => leaves))
    isSettled = round > 0
    for (const each of all) {
      each.sells = stillSells(together, each.leaves, dayOldSells)
      const exact = fewest((n) => earns(each.one, n, each.sells), each.exact)
      isSettled = isSettled && exact === each.exact
      each.exact = exact
      each.leaves = halfway(each.leaves, each.left(exact))
    }
  }
  return {
    exact: new Map(all.map(({ id, exact }) => [id, exact])),
    sells: new Map(all.map(({ id, sells }) => [id, sells])),
  }
}

/** Takes away unit by unit what earns least, until there is dough for what remains. */
function keepWithin<Id>(
  { ids, pieces }: Within<Id>,
  asked: ReadonlyMap<Id, Asked>,
  made: Map<Id, number>,
  earnsAt: (id: Id, one: Asked, n: number) => number,
): void {
  // What the last unit of each earns; only that of the one that loses it changes.
  const last = new Map<Id, number>()
  const lookAt = (id: Id) => {
    const one = asked.get(id)
    const has = made.get(id) ?? 0
    if (one === undefined || has <= 0) last.delete(id)
    else last.set(id, earnsAt(id, one, Math.max(0, has - one.unit)))
  }
  for (const id of ids) lookAt(id)
  let over = ids.reduce((sum, id) => sum + (made.get(id) ?? 0), 0) - Math.max(0, pieces)
  while (over > 0 && last.size > 0) {
    const [id] = [...last].reduce((least, next) => (next[1] < least[1] ? next : least))
    const has = made.get(id) ?? 0
    const fewer = Math.min(has, over, asked.get(id)?.unit ?? 1)
    made.set(id, has - fewer)
    over -= fewer
    lookAt(id)
  }
}

/**
 * What one piece more than n would earn, in cents.
 * @param sells chance that the (l + 1)-th piece left of the variety still sells as day-old; beyond the last: none
 */
function earns(asked: Asked, n: number, sells: readonly number[]): number {
  const { worth } = asked
  return worthAt(asked, n) + worth.dayOldCents * dayOldAt(asked, n, sells) - worth.costCents
}

function worthAt({ demand, stock, later, worth }: Asked, n: number): number {
  return worthOfOneMore(worth, (part) => moreThan(demand, stock, later, n, part))
}

/**
 * P(part·D > what is there + n). Where some of D comes before more could be ready, also P(part·later > n), the smaller:
 * both must hold, and a busy morning makes a busy afternoon.
 */
function moreThan(demand: Pieces, stock: Asked['stock'], later: Pieces | null, n: number, part: number): number {
  let more = 0
  for (const { pieces, chance } of stock) more += chance * (1 - demand.cdf((pieces + n) / part + NEARLY))
  return later === null ? more : Math.min(more, 1 - later.cdf(n / part + NEARLY))
}

/** P(the piece after the n-th is left and sells as day-old). */
function dayOldAt({ demand, stock }: Asked, n: number, sells: readonly number[]): number {
  let sum = 0
  for (const { pieces, chance } of stock) {
    for (const [left, sold] of sells.entries()) {
      const there = pieces + n - left
      if (there < 0) break
      sum += chance * sold * (demand.cdf(there) - demand.cdf(there - 1))
    }
  }
  return sum
}

/**
 * The fewest whole pieces of which one more earns nothing; what one more earns never rises.
 * @param near where to begin to look
 */
export function fewest(earnsAt: (n: number) => number, near: number): number {
  const isWorth = (n: number) => n < 0 || earnsAt(n) > NEARLY
  let below = near - 1
  let high = near
  for (let step = 1; isWorth(high); step *= 2) {
    below = high
    high += step
    if (high > PIECES_MAX) return PIECES_MAX
  }
  for (let step = 1; !isWorth(below); step *= 2) {
    high = below
    below = Math.max(-1, below - step)
  }
  while (high - below > 1) {
    const middle = Math.floor((below + high) / 2)
    if (isWorth(middle)) below = middle
    else high = middle
  }
  return high
}

function inUnits({ unit, besides }: Asked, exact: number, earnsAt: (n: number) => number): number {
  // Fewer than are ordered are never made.
  return roundedToUnit(exact + besides, unit, (n) => (n < besides ? Infinity : earnsAt(n - besides))) - besides
}

function weighed(asked: Asked, pieces: number, sells: readonly number[]): Omit<Amount, 'exact'> {
  const { demand, stock, later, worth } = asked
  const short = moreThan(demand, stock, later, pieces, 1)
  const left = 1 - short
  const worthCents =
    short > NEARLY ? worthAt(asked, pieces) / short : (worth.uses[worth.uses.length - 1]?.worthCents ?? 0)
  const dayOldCents = left > NEARLY ? (worth.dayOldCents * dayOldAt(asked, pieces, sells)) / left : 0
  return {
    pieces,
    underCents: worthCents - worth.costCents,
    overCents: worth.costCents - dayOldCents,
    covered: left,
  }
}

/**
 * Down or up to a multiple, whichever earns more; less than one unit stays as it is, as half a board is baked too.
 * @example 74 in sixes // 72, or 78 where four more pieces earn more than they cost
 */
export function roundedToUnit(exact: number, unit: number, earnsAt: (n: number) => number): number {
  assert(unit >= 1, `pieces come in units of 1 or more: ${unit}`)
  const down = Math.floor(exact / unit) * unit
  if (down === exact || exact < unit) return exact
  let gain = 0
  for (let n = down; n < down + unit; n += 1) gain += earnsAt(n)
  return gain > 0 ? down + unit : down
}

/** Pieces left: their mean and variance. */
interface Left {
  readonly mean: number
  readonly variance: number
}
const NOTHING: Left = { mean: 0, variance: 0 }

/** E[left] = Σ F(n) and E[left²] = Σ (2·(q − n) − 1)·F(n), n from 0 to q − 1; the sums are kept as far as they are made. */
function leftBy({ demand, stock }: Asked): (made: number) => Left {
  const [sums, weighted] = [[0], [0]]
  const upTo = (q: number) => {
    for (let n = sums.length - 1; n < q; n += 1) {
      const part = demand.cdf(n)
      sums.push((sums[n] ?? 0) + part)
      weighted.push((weighted[n] ?? 0) + n * part)
    }
  }
  return (made) => {
    let [mean, squares] = [0, 0]
    for (const { pieces, chance } of stock) {
      const q = Math.max(0, Math.floor(pieces + made))
      upTo(q)
      mean += chance * (sums[q] ?? 0)
      squares += chance * ((2 * q - 1) * (sums[q] ?? 0) - 2 * (weighted[q] ?? 0))
    }
    return { mean, variance: Math.max(0, squares - mean * mean) }
  }
}

/** Chance that the (l + 1)-th left piece of one variety sells, by what the others leave. */
function stillSells(all: Left, own: Left, dayOldSells: number): number[] {
  const others = byMoments(Math.max(0, all.mean - own.mean), Math.max(0, all.variance - own.variance))
  const sells: number[] = []
  for (let left = 0; left < dayOldSells; left += 1) {
    const chance = others.cdf(dayOldSells - 1 - left)
    if (chance < HARDLY) break
    sells.push(chance)
  }
  return sells
}

function summed(lefts: readonly Left[]): Left {
  return lefts.reduce((sum, one) => ({ mean: sum.mean + one.mean, variance: sum.variance + one.variance }), NOTHING)
}

function halfway(one: Left, other: Left): Left {
  return { mean: (one.mean + other.mean) / 2, variance: (one.variance + other.variance) / 2 }
}

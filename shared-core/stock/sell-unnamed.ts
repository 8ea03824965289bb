import type { StockCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, take } from '../day/decision.ts'
import type { Line, State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { counts, takeOff } from './decide-stock.ts'

/** Pieces of which nobody said the variety: spread by what sells, over what is there. */
export function decideSellUnnamed(oneCase: Case<Extract<StockCommand, { type: 'sellUnnamed' }>>): Decision {
  const { command, shop, state } = oneCase
  const { pieces, from = 'tap' } = command
  const atMs = happenedAt(oneCase)
  if (!counts(shop, from)) happen(oneCase, atMs, { type: 'saleNoted', lines: [], unnamed: pieces, from })
  else
    for (const line of spreadUnnamed(state, shop, { pieces, atMs }))
      takeOff(oneCase, line, 'sold', { atMs, from, unnamed: true })
  return take(oneCase, { pieces })
}

/**
 * What counts have taught weighs against the day's sales by name as if so many pieces of each variety had been sold so;
 * what is there, where no count has taught anything, as fewer. A variety's share of a day is off from its usual one by
 * a quarter (a gamma of shape 16), from its share of what is there by a half (shape 4), in purchases of three pieces.
 * Common practice, no source.
 */
const TAUGHT_WEIGHS = 48
const THERE_WEIGHS = 12

/**
 * Pieces without a name, by variety. A variety's share is what was sold of it by name today, drawn towards what is
 * usual: what counts have shown to leave of it, on record or not, or else what there is of it. A count that finds a gap
 * so puts the shares right.
 *
 * Each piece takes its place on the line of shares by the golden section: the n-th of the day at the fraction of
 * n · 0.618…, so that any number of pieces in a row is spread evenly, singles too, and every screen spreads alike. Why
 * not the largest remainder: of a hundred singles each would go to the same variety. Why not what each lacks of its
 * share so far: a variety that was not there for an hour would then be charged with what nobody can have bought.
 *
 * Only rods that have something take part, as long as some rod has; then all do, as a sale is never blocked.
 * @returns lines in the set-up's order, together exactly `pieces`
 * Source: Weyl's equidistribution; Knuth, The Art of Computer Programming, vol. 3, section 6.4, theorem S.
 */
export function spreadUnnamed(
  state: State,
  shop: Shop,
  { pieces, atMs }: { readonly pieces: number; readonly atMs: EpochMs },
): readonly Line[] {
  const shares = sharesOf(state, shop, atMs)
  let spread = [...state.stock.values()].reduce((sum, { unnamedToday }) => sum + unnamedToday, 0)
  const given = new Map<VarietyId, number>()
  const givenOf = (id: VarietyId) => given.get(id) ?? 0
  let pool = poolOf(shares, givenOf)
  for (let n = 0; n < pieces; n += 1) {
    spread += 1
    const share = at(goldenFraction(spread), pool)
    if (share === null) break
    const so = givenOf(share.varietyId) + 1
    given.set(share.varietyId, so)
    // Who takes part changes only where a rod runs out: a thousand pieces are not a thousand looks at every rod.
    if (so === share.ready || so === share.out) pool = poolOf(shares, givenOf)
  }
  return shares.flatMap(({ varietyId }): readonly Line[] => {
    const some = given.get(varietyId) ?? 0
    return some === 0 ? [] : [{ varietyId, pieces: some }]
  })
}

interface Share {
  readonly varietyId: VarietyId
  readonly weight: number
  /** For sale, and out of the oven at all. */
  readonly ready: number
  readonly out: number
}

function sharesOf({ stock, habits }: State, shop: Shop, atMs: EpochMs): readonly Share[] {
  const all = inUse(shop.varieties).map(({ id }) => {
    const mine = stock.get(id)
    const lots = mine?.lots ?? []
    const habit = habits.get(id)
    return {
      varietyId: id,
      named: mine === undefined ? 0 : Math.max(0, mine.soldToday - mine.unnamedToday),
      leaves: habit === undefined ? null : Math.max(0, habit.sold + habit.missing) / Math.max(1, habit.usualMs),
      ready: piecesOf(lots.filter((lot) => lot.readyAtMs <= atMs)),
      out: piecesOf(lots),
    }
  })
  const taught = all.filter(({ leaves }) => leaves !== null)
  const leaves = taught.reduce((sum, one) => sum + (one.leaves ?? 0), 0)
  const there = all.reduce((sum, { out }) => sum + out, 0)
  // What counts have taught of some speaks for their part of all; the others share the rest by what there is of them.
  const taughtThere = taught.reduce((sum, { out }) => sum + out, 0)
  return all.map(({ varietyId, named, leaves: mine, ready, out }) => {
    const byOut = there === 0 ? 1 / all.length : out / there
    const part = there === 0 ? taught.length / all.length : taughtThere / there
    const usual = mine === null || leaves === 0 ? byOut : (part * mine) / leaves
    const weighs = (mine === null ? THERE_WEIGHS : TAUGHT_WEIGHS) * all.length
    return { varietyId, weight: named + weighs * usual + LEAST_WEIGHT, ready, out }
  })
}

/** So that a rod on which something lies is never left out for good. */
const LEAST_WEIGHT = 0.01

/** What is for sale, else what is out of the oven at all, else every rod. */
function poolOf(shares: readonly Share[], givenOf: (id: VarietyId) => number): readonly Share[] {
  const ready = shares.filter((share) => share.ready > givenOf(share.varietyId))
  if (ready.length > 0) return ready
  const out = shares.filter((share) => share.out > givenOf(share.varietyId))
  return out.length > 0 ? out : shares
}

function at(fraction: number, shares: readonly Share[]): Share | null {
  let rest = fraction * shares.reduce((sum, { weight }) => sum + weight, 0)
  for (const share of shares) {
    rest -= share.weight
    if (rest < 0) return share
  }
  return shares[shares.length - 1] ?? null
}

/** 2³² divided by the golden section, odd: its multiples modulo 2³² fill the line ever more evenly. */
const GOLDEN = 0x9e3779b9

function goldenFraction(n: number): number {
  return (Math.imul(n, GOLDEN) >>> 0) / 0x1_0000_0000
}

import type { VarietyId } from '../ids.ts'
import type { Shop, Variety } from '../shop/shop.ts'

/** What a part of demand makes of a piece. */
export interface Use {
  /** Of demand, above 0; the parts of all uses sum to 1. */
  readonly part: number
  /** What one piece more is worth to it where it would go without: what it brings, and what asking in vain costs. */
  readonly worthCents: number
}

/** What pieces of one kind are worth, in cents that may have a fraction. */
export interface Worth {
  /** Worth most first: where pieces are short, the last one goes without first. */
  readonly uses: readonly Use[]
  readonly costCents: number
  /** Of a piece that is left and sells as day-old. */
  readonly dayOldCents: number
  /** Price or cost is not known; the board assumed one. */
  readonly isAssumed: boolean
}

/**
 * What one piece more is worth, in cents: Σ (worth − worth of the next use)·P(the uses up to this one ask for it).
 * @param asksFor chance that a part of demand, its uses from the first on, asks for more than there is
 */
export function worthOfOneMore({ uses }: Worth, asksFor: (part: number) => number): number {
  let [part, cents] = [0, 0]
  for (const [i, use] of uses.entries()) {
    // Parts that sum to 1 but for the last digit are all of demand.
    part = i === uses.length - 1 ? 1 : part + use.part
    cents += (use.worthCents - (uses[i + 1]?.worthCents ?? 0)) * asksFor(part)
  }
  return cents
}

/** Cost of a piece in its price, where nobody has said what goes into it. Common practice, no source. */
const COST_OF_PRICE = 0.3
/** Where no variety has a price. Only ratios count then. */
const PRICE_UNKNOWN_CENTS = 100

/** What else there is to take for somebody who asks in vain: the mean of the others, by what is asked for. */
interface Others {
  readonly marginCents: number
  readonly costCents: number
  /** How many take another one: 0 to 1. */
  readonly take: number
}

export interface WorthGiven {
  /** Pieces expected of each variety: what others take instead, and which of a dough goes short, is by these. */
  readonly means: ReadonlyMap<VarietyId, number>
  /** Of a variety's demand, what the kitchen uses: 0 to 1. A variety left out: none. */
  readonly kitchen: ReadonlyMap<VarietyId, number>
}

/**
 * What a piece of a variety is worth, while the others are there.
 *
 *   walk-in:  cost + (1 − t)·(price − cost + disappointing) + t·max(0, margin − margin of the others)
 *   kitchen:  the same with what the kitchen makes of it
 *
 * t takes another variety instead and pays that one's price; that they pay more is never counted as a gain.
 */
export function worthOf(shop: Shop, variety: Variety, given: WorthGiven): Worth {
  const takes = shop.demand.takeAnotherPercent / 100
  return worthBeside(shop, variety, given, { ...meanOf(shop, given, (one) => one.id !== variety.id), take: takes })
}

/**
 * What a piece of a dough is worth that becomes whichever of these varieties is asked for: their uses side by side, each
 * with its own share. Who asks for a dough that is gone can only take one of another dough, so fewer do.
 * @param varieties at least one
 */
export function worthOfPool(shop: Shop, varieties: readonly Variety[], given: WorthGiven): Worth {
  const ids = new Set(varieties.map(({ id }) => id))
  const mean = (some: Iterable<VarietyId>) => [...some].reduce((sum, id) => sum + (given.means.get(id) ?? 0), 0)
  const [own, all] = [mean(ids), mean(given.means.keys())]
  const outside = all === 0 ? 0 : 1 - own / all
  const others = {
    ...meanOf(shop, given, (one) => !ids.has(one.id)),
    take: (shop.demand.takeAnotherPercent / 100) * outside,
  }
  const parts = varieties.map((variety) => ({
    part: own === 0 ? 1 / varieties.length : (given.means.get(variety.id) ?? 0) / own,
    worth: worthBeside(shop, variety, given, others),
  }))
  const costCents = parts.reduce((sum, { part, worth }) => sum + part * worth.costCents, 0)
  const uses = parts.flatMap(({ part, worth }) =>
    // What counts is what a piece brings over its own cost: toppings make the costs of one dough's varieties differ.
    worth.uses.map((use) => ({ part: use.part * part, worthCents: use.worthCents - worth.costCents + costCents })),
  )
  return {
    uses: inOrderOfWorth(uses),
    costCents,
    dayOldCents: parts.reduce((sum, { part, worth }) => sum + part * worth.dayOldCents, 0),
    isAssumed: parts.some(({ worth }) => worth.isAssumed),
  }
}

function worthBeside(shop: Shop, variety: Variety, { kitchen }: WorthGiven, others: Others): Worth {
  const { priceCents, costCents, isAssumed } = moneyOf(shop, variety)
  const lost = (bringsCents: number, otherBringsMarginCents: number) => {
    const margin = bringsCents - costCents
    const difference = Math.max(0, margin - otherBringsMarginCents)
    return costCents + (1 - others.take) * (margin + shop.demand.disappointCents) + others.take * difference
  }
  const share = variety.kitchenCents === null ? 0 : Math.min(1, Math.max(0, kitchen.get(variety.id) ?? 0))
  const walkIn = { part: 1 - share, worthCents: lost(priceCents, others.marginCents) }
  // A sandwich is made with another variety instead: it brings the same, only the piece in it costs otherwise.
  const inKitchen = {
    part: share,
    worthCents: lost(variety.kitchenCents ?? 0, (variety.kitchenCents ?? 0) - others.costCents),
  }
  return {
    uses: inOrderOfWorth([walkIn, inKitchen]),
    costCents,
    dayOldCents: (priceCents * shop.counter.dayOldPercent) / 100,
    isAssumed,
  }
}

function inOrderOfWorth(uses: readonly Use[]): Use[] {
  return uses.filter(({ part }) => part > 0).sort((one, other) => other.worthCents - one.worthCents)
}

/** Price and cost, with what is assumed where the set-up has 0 for "not known". */
export function moneyOf(
  shop: Shop,
  { priceCents, costCents }: Pick<Variety, 'priceCents' | 'costCents'>,
): { readonly priceCents: number; readonly costCents: number; readonly isAssumed: boolean } {
  const price = priceCents > 0 ? priceCents : usualPrice(shop)
  const cost = costCents > 0 ? costCents : price * COST_OF_PRICE
  return { priceCents: price, costCents: cost, isAssumed: priceCents === 0 || costCents === 0 }
}

function usualPrice({ varieties }: Shop): number {
  const known = [...varieties.values()].filter(({ retired, priceCents }) => !retired && priceCents > 0)
  if (known.length === 0) return PRICE_UNKNOWN_CENTS
  return known.reduce((sum, { priceCents }) => sum + priceCents, 0) / known.length
}

function meanOf(shop: Shop, { means }: WorthGiven, counts: (variety: Variety) => boolean): Omit<Others, 'take'> {
  let [weight, margin, cost] = [0, 0, 0]
  for (const variety of shop.varieties.values()) {
    const mean = means.get(variety.id) ?? 0
    if (variety.retired || mean <= 0 || !counts(variety)) continue
    const money = moneyOf(shop, variety)
    weight += mean
    margin += mean * (money.priceCents - money.costCents)
    cost += mean * money.costCents
  }
  return weight === 0 ? { marginCents: 0, costCents: 0 } : { marginCents: margin / weight, costCents: cost / weight }
}

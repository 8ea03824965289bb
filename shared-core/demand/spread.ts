/**
 * How far a day's pieces stray from what was expected of them:
 *
 *   variance = lump · mean + κ · mean²,   1 / k = κ + (lump − 1) / mean
 *
 * lump = E[s²] / E[s] of the pieces s of a purchase: where people buy by the dozen, pieces come twelve at a time, and the
 * fewer purchases a day, the wider it gets. κ is learnt from the errors of forecasts that were made, so that it holds what
 * the level and the weekday do not know as well, and shrunk to the shop's.
 */
export interface Spread {
  /** Decayed sums of (error² − lump · mean) / mean² and of its weights, in days. */
  excess: number
  weight: number
}

/** κ of a shop of which nothing is known: a day is off by 0.4 of the mean. Measured: 0.08 to 0.3 do alike. */
const USUAL = 0.15
const USUAL_WORTH_DAYS = 5
/** Days of the shop's κ that an item's own is shrunk by. Measured: 3 to 20 do alike. */
const SHOP_WORTH_DAYS = 10
const KEEP_DAYS = 0.5 ** (1 / 60)
const LEAST = 0.002
const MOST = 1
/** No single day says more than this: a big order or a typing error is not how an item usually strays. */
const EXCESS_MOST = 3

export function newSpread(): Spread {
  return { excess: 0, weight: 0 }
}

/** κ of an item. @param shop the shop's, as `usualKappa` gives it */
export function kappaOf({ excess, weight }: Spread, shop: number): number {
  return Math.min(MOST, Math.max(LEAST, (excess + SHOP_WORTH_DAYS * shop) / (weight + SHOP_WORTH_DAYS)))
}

/** The shop's κ: the geometric mean over its items by weight, so that a single erratic one does not widen all others. */
export function usualKappa(spreads: Iterable<Spread>): number {
  let logs = USUAL_WORTH_DAYS * Math.log(USUAL)
  let weights = USUAL_WORTH_DAYS
  for (const { excess, weight } of spreads) {
    const own = Math.max(0.005, (excess + USUAL_WORTH_DAYS * USUAL) / (weight + USUAL_WORTH_DAYS))
    logs += weight * Math.log(own)
    weights += weight
  }
  return Math.exp(logs / weights)
}

/**
 * Takes in how far off a forecast was. A small mean tells little of κ beside its own chance, so that a day's weight is
 * (mean·κ / (lump + mean·κ))², the inverse of its variance.
 * @param lump pieces by which sales come, E[s²] / E[s]
 * @param errorSquared what was asked for less `mean`, squared; where that is an estimate, and its variance
 * @param share how likely the item was on the menu, 0 to 1
 */
export function learnSpread(
  spread: Spread,
  { mean, lump, shopKappa }: { readonly mean: number; readonly lump: number; readonly shopKappa: number },
  errorSquared: number,
  share: number,
): void {
  if (mean <= 0) return
  const weight = share * ((mean * shopKappa) / (lump + mean * shopKappa)) ** 2
  const excess = Math.min(EXCESS_MOST, (errorSquared - lump * mean) / (mean * mean))
  spread.excess = spread.excess * KEEP_DAYS + weight * excess
  spread.weight = spread.weight * KEEP_DAYS + weight
}

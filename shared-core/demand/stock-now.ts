/** What is there now: expected pieces and their standard deviation. */
export interface StockNow {
  readonly mean: number
  readonly doubt: number
}

/** A number of pieces and how likely it is. */
export interface StockPoint {
  readonly pieces: number
  readonly chance: number
}

/** A doubt under half a piece is none; a normal distribution is cut at so many of its standard deviations. */
const SURE = 0.5
const FURTHEST = 2.5
/** So many points are enough: chances are smooth in the stock. */
const POINTS_MOST = 11

/**
 * The stock as whole pieces with their chances, normal around the mean and never below none.
 * @example stockPoints({ mean: 24.2, doubt: 0 }) // [{ pieces: 24, chance: 1 }]
 */
export function stockPoints({ mean, doubt }: StockNow): readonly StockPoint[] {
  if (!(doubt >= SURE)) return [{ pieces: Math.max(0, Math.round(mean)), chance: 1 }]
  const step = Math.max(1, Math.ceil((2 * FURTHEST * doubt) / (POINTS_MOST - 1)))
  const reach = Math.ceil((FURTHEST * doubt) / step)
  const chances = new Map<number, number>()
  let sum = 0
  for (let place = -reach; place <= reach; place += 1) {
    const pieces = Math.round(mean) + place * step
    const chance = Math.exp(-(((pieces - mean) / doubt) ** 2) / 2)
    const there = Math.max(0, pieces)
    chances.set(there, (chances.get(there) ?? 0) + chance)
    sum += chance
  }
  return [...chances].map(([pieces, chance]) => ({ pieces, chance: chance / sum }))
}

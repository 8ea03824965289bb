import type { RestDemand, RunOut } from './demand.ts'
import { partBy, profileFrom } from './exposure.ts'
import { expectedSold, negativeBinomial } from './pieces.ts'
import type { Coming } from './refilled.ts'
import { refilledCourse } from './refilled.ts'
import type { StockNow, StockPoint } from './stock-now.ts'
import { stockPoints } from './stock-now.ts'

/** How an item's stock goes until close. */
export interface Course {
  /** Chance that it was gone at some time up to a minute, now to close; never falls. */
  readonly goneBy: (minute: number) => number
  readonly goneAtClose: number
  /** Expected pieces left at close, and pieces asked for while there was none. */
  readonly left: number
  readonly lost: number
}

/** Minutes to which a time is found: finer than any screen shows. */
const FINENESS_MINUTES = 0.1

/**
 * When an item will be gone, and what will be left or lost by close. Gone by a minute t when the demand from now to t,
 * negative binomial of mean · part(t) with the same dispersion, is the stock or more; with more on the way, by the first
 * time that there is none. A larger stock is never gone earlier.
 * @param stock as an estimate: whole pieces around `mean` with the standard deviation `doubt`
 * @param more what becomes ready to sell, in order of time; what was ready by now counts as stock, what comes after close
 *   as nothing
 */
export function runOut(
  given: RestDemand,
  stock: StockNow,
  more: readonly Coming[],
  nowMinute: number,
  closeMinute: number,
): RunOut {
  const rest = restFrom(given, nowMinute)
  const ready = more.filter(({ minute }) => minute <= nowMinute).reduce((sum, { pieces }) => sum + pieces, 0)
  const coming = more.filter(({ minute, pieces }) => minute > nowMinute && minute < closeMinute && pieces > 0)
  const points = stockPoints({ mean: stock.mean + ready, doubt: stock.doubt })
  const [first] = coming
  const course = first === undefined ? steadyCourse(rest, points) : refilledCourse(rest, points, coming, nowMinute)
  const at = (chance: number) => minuteWhen(course.goneBy, chance, nowMinute, closeMinute)
  return {
    t10: at(0.1),
    t50: at(0.5),
    t90: at(0.9),
    beforeMore: first === undefined ? null : steadyCourse(rest, points).goneBy(first.minute),
    beforeClose: course.goneAtClose,
    left: course.left,
    lost: course.lost,
  }
}

/** The rest as of a later minute: what came meanwhile is not asked for any more. */
function restFrom(rest: RestDemand, nowMinute: number): RestDemand {
  const over = partBy(rest.profile, nowMinute)
  return over === 0 ? rest : { ...rest, mean: rest.mean * (1 - over), profile: profileFrom(rest.profile, nowMinute) }
}

/** With nothing on the way it is in closed form. */
function steadyCourse(rest: RestDemand, stock: readonly StockPoint[]): Course {
  const goneBy = (minute: number) => {
    const demand = negativeBinomial(rest.mean * partBy(rest.profile, minute), rest.dispersion)
    return stock.reduce((sum, { pieces, chance }) => sum + chance * (1 - demand.cdf(pieces - 1)), 0)
  }
  const demand = negativeBinomial(rest.mean, rest.dispersion)
  const sold = stock.reduce((sum, { pieces, chance }) => sum + chance * expectedSold(demand, pieces), 0)
  const there = stock.reduce((sum, { pieces, chance }) => sum + chance * pieces, 0)
  const goneAtClose = stock.reduce((sum, { pieces, chance }) => sum + chance * (1 - demand.cdf(pieces - 1)), 0)
  return { goneBy, goneAtClose, left: there - sold, lost: Math.max(0, rest.mean - sold) }
}

/** The first minute by which the chance is reached; null when not before close. */
function minuteWhen(goneBy: (minute: number) => number, chance: number, now: number, close: number): number | null {
  if (goneBy(now) >= chance) return now
  if (goneBy(close) < chance) return null
  let [early, late] = [now, close]
  while (late - early > FINENESS_MINUTES) {
    const middle = (early + late) / 2
    if (goneBy(middle) >= chance) late = middle
    else early = middle
  }
  return late
}

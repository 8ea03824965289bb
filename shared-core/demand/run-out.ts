import type { RestDemand, RunOut } from './demand.ts'
import { partBy } from './exposure.ts'
import { expectedSold, negativeBinomial } from './pieces.ts'

/** What is there now: expected pieces and their standard deviation. */
export interface StockNow {
  readonly mean: number
  readonly doubt: number
}

/** What becomes ready to sell later in the day, in order of time. */
export interface Coming {
  readonly minute: number
  readonly pieces: number
}

/** When an item will be gone, and what will be left or lost by close. */
export function runOut(
  rest: RestDemand,
  stock: StockNow,
  more: readonly Coming[],
  nowMinute: number,
  closeMinute: number,
): RunOut {
  const first = more[0]
  const there = Math.round(stock.mean)
  const goneBy = (minute: number) => {
    const pieces = more.filter((m) => m.minute <= minute).reduce((sum, m) => sum + m.pieces, there)
    return chanceOf(rest, partBy(rest.profile, minute), pieces)
  }
  const all = more.reduce((sum, m) => sum + m.pieces, there)
  const sold = expectedSold(negativeBinomial(rest.mean, rest.dispersion), all)
  const at = (chance: number) => minuteWhen(goneBy, chance, nowMinute, closeMinute)
  return {
    t10: at(0.1),
    t50: at(0.5),
    t90: at(0.9),
    beforeMore: first === undefined ? null : chanceOf(rest, partBy(rest.profile, first.minute), there),
    beforeClose: goneBy(closeMinute),
    left: all - sold,
    lost: rest.mean - sold,
  }
}

/** Chance that a part of the rest asks for that many pieces or more. */
function chanceOf(rest: RestDemand, part: number, pieces: number): number {
  return pieces <= 0 ? 1 : 1 - negativeBinomial(rest.mean * part, rest.dispersion).cdf(pieces - 1)
}

/** The first minute by which the chance is reached, to a tenth of a minute; null when not before close. */
function minuteWhen(goneBy: (minute: number) => number, chance: number, now: number, close: number): number | null {
  if (goneBy(close) < chance) return null
  let [early, late] = [now, close]
  while (late - early > 0.1) {
    const middle = (early + late) / 2
    if (goneBy(middle) >= chance) late = middle
    else early = middle
  }
  return late
}

import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { PlacedLoads } from './bake-off/place-loads.ts'
import { planBakeOff } from './bake-off/plan-bake-off.ts'
import { shownFirst } from './shown-first.ts'

/**
 * The planner's loads, beside what people set and without what they do not want. The planner counts on the pieces of
 * pinned loads but knows neither their place on the line nor hands: a load that stands in the way of these goes in as
 * soon as it can after that, in the planner's order; where there is no time for it any more it is left out. What must be
 * on show at the opening is there first.
 */
export function solved(given: BakeOff, effort = 1): readonly BakeLoad[] {
  if (given.oven.shelves.length === 0 || given.oven.mustBeEmptyMin <= (given.now ?? Number.NEGATIVE_INFINITY)) return []
  const loads = plainly(given, effort)
  const shown = shownFirst(given, loads)
  if (shown.loads.length === 0) return loads
  return [...shown.loads, ...plainly(shown.given, effort)].sort((one, other) => one.kettleStart - other.kettleStart)
}

function plainly(given: BakeOff, effort: number): readonly BakeLoad[] {
  const { pinned = [], running = [], ...rest } = given
  const known = { ...rest, running: [...running, ...pinned.map(onlySupply)] }
  return fitted(given, planBakeOff(known, effort).loads)
}

/** Loads as they are where they fit, and else as soon as they can. @param loads in any order */
export function fitted(given: BakeOff, loads: readonly BakeLoad[]): readonly BakeLoad[] {
  const placed = new PlacedLoads(given)
  const inTurn = [...loads].sort((one, other) => one.kettleStart - other.kettleStart || one.in - other.in)
  for (const load of inTurn) {
    if (placed.takes(load)) continue
    const own = placed.put({ shelf: load.shelf, lines: load.lines, inMin: load.in })
    if (own === null) placed.put({ shelf: null, lines: load.lines, inMin: load.in })
  }
  return placed.loads
}

/** Long before any day: it holds neither kettle nor boards nor a shelf. */
const LONG_AGO_MIN = -10_000

function onlySupply({ out, lines }: BakeLoad): BakeLoad {
  return { shelf: '', kettleStart: LONG_AGO_MIN, in: LONG_AGO_MIN, flip: LONG_AGO_MIN, out, lines }
}

import type { BakeLine, BakeLoad, BakeOff, VarietyGiven } from './bake-off/bake-off.ts'
import { bakeMinOf, boardsOf, coolMinOf, piecesIn } from './bake-off/load-parts.ts'
import { PlacedLoads } from './bake-off/place-loads.ts'
import { lessDough } from './less-dough.ts'

/** What stands first, and the problem with it in its place. */
interface ShownFirst {
  readonly loads: readonly BakeLoad[]
  readonly given: BakeOff
}

/**
 * Loads for varieties of which there would be fewer at the opening than must be on show: as late as they are ready by then,
 * before all others. None where nothing is wanted on show, where it is there, or where it is too late for it.
 * @param loads what would be baked without
 */
export function shownFirst(given: BakeOff, loads: readonly BakeLoad[]): ShownFirst {
  const lines = given.varieties.flatMap((variety): BakeLine[] => {
    const short = (variety.show?.atOpen ?? 0) - thereAtOpen(given, variety, loads)
    const dough = Math.floor((given.doughs[variety.dough]?.pieces ?? 0) / given.unit) * given.unit
    const pieces = Math.min(dough, Math.ceil(short / given.unit) * given.unit)
    return short > 0 && pieces > 0 ? [[variety.name, pieces]] : []
  })
  if (lines.length === 0 || (given.now ?? Number.NEGATIVE_INFINITY) >= given.open) return { loads: [], given }
  let now = given
  const placed: BakeLoad[] = []
  for (const load of cut(given, lines)) {
    const cool = Math.max(...given.varieties.map((variety) => coolMinOf(given, variety)))
    const outByMin = given.open - cool
    const inMin = Math.max(given.oven.readyMin, outByMin - bakeMinOf(given, load) - SPREAD_MIN)
    const put = new PlacedLoads(now).put({ shelf: null, lines: load, inMin, outByMin })
    if (put === null) continue
    placed.push(put)
    now = { ...now, doughs: lessDough(now, load), pinned: [...(now.pinned ?? []), put] }
  }
  return { loads: placed, given: now }
}

/** All loads for the opening go in within so much, as shelves and kettle come free. */
const SPREAD_MIN = 45

function thereAtOpen(given: BakeOff, variety: VarietyGiven, loads: readonly BakeLoad[]): number {
  const cool = coolMinOf(given, variety)
  return [...(given.running ?? []), ...(given.pinned ?? []), ...loads]
    .filter(({ out }) => out + cool <= given.open)
    .flatMap(({ lines }) => lines)
    .reduce((sum, [name, pieces]) => (name === variety.name ? sum + pieces : sum), variety.onShelf)
}

/** Lines into loads of one kettle-full that bake alike. */
function cut(given: BakeOff, lines: readonly BakeLine[]): BakeLine[][] {
  const bakeMin = (line: BakeLine) => bakeMinOf(given, [line])
  const loads: BakeLine[][] = []
  for (const line of [...lines].sort((one, other) => bakeMin(one) - bakeMin(other))) {
    const last = loads[loads.length - 1]
    const fits =
      last !== undefined &&
      piecesIn([...last, line]) <= given.kettle.pieces &&
      boardsOf(given, [...last, line]) <= given.boards.count &&
      last.every((other) => Math.abs(bakeMin(other) - bakeMin(line)) <= given.bakeToleranceMin)
    if (fits) last.push(line)
    else loads.push([line])
  }
  return loads
}

import type { Bottleneck } from '../live/plan.ts'
import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { boardsOf, dipsOf } from './bake-off/load-parts.ts'
import { lessDough } from './less-dough.ts'

/** A kettle that boils so much of some hour is not waited for elsewhere. Common practice, no source. */
const KETTLE_PART = 0.6
const HOUR_MIN = 60
/** Dough of which less than so much is left over is short. */
const DOUGH_PART = 0.1

/** What a plan uses up at some moment: more of anything else would gain nothing. People are always asked for. */
export function scarceIn(given: BakeOff, loads: readonly BakeLoad[]): ReadonlySet<Bottleneck> {
  const all = [...(given.running ?? []), ...(given.pinned ?? []), ...loads]
  const scarce: readonly (readonly [Bottleneck, boolean])[] = [
    ['kettle', all.some((load) => boiledFrom(given, all, load.kettleStart) > KETTLE_PART * HOUR_MIN)],
    ['boards', all.some((load) => boardsAt(given, all, load) + dipBoards(given) > given.boards.count)],
    ['shelves', all.some((load) => shelvesAt(given, all, load.in) >= given.oven.shelves.length)],
    ['dough', isDoughShort(given, loads)],
    ['people', true],
  ]
  return new Set(scarce.flatMap(([of, isScarce]) => (isScarce ? [of] : [])))
}

/** Minutes of boiling in the hour from then on. */
function boiledFrom(given: BakeOff, all: readonly BakeLoad[], from: number): number {
  return all.reduce((sum, { kettleStart, lines }) => {
    const end = kettleStart + dipsOf(given, lines) * given.kettle.cycleMin
    return sum + Math.max(0, Math.min(end, from + HOUR_MIN) - Math.max(kettleStart, from))
  }, 0)
}

function dipBoards({ kettle, boards }: BakeOff): number {
  return Math.ceil(kettle.pieces / boards.pieces)
}

/** Boards in use when a load's first dip is lifted, those that re-wet among them. */
function boardsAt(given: BakeOff, all: readonly BakeLoad[], { kettleStart }: BakeLoad): number {
  const { kettle, boards } = given
  const at = kettleStart + kettle.cycleMin
  return all
    .filter((load) => load.kettleStart + kettle.cycleMin <= at && load.flip + (boards.rewetMin ?? 0) > at)
    .reduce((sum, { lines }) => sum + boardsOf(given, lines), 0)
}

function shelvesAt({ oven }: BakeOff, all: readonly BakeLoad[], at: number): number {
  return new Set(all.filter((load) => load.in <= at && load.out + oven.handlingMin > at).map(({ shelf }) => shelf)).size
}

function isDoughShort(given: BakeOff, loads: readonly BakeLoad[]): boolean {
  const left = lessDough(
    given,
    loads.flatMap(({ lines }) => lines),
  )
  const isWanted = (key: string) => given.varieties.some(({ dough, demand }) => dough === key && demand.mean > 0)
  return Object.entries(given.doughs).some(([key, { pieces }]) => {
    const rest = left[key]?.pieces ?? 0
    return isWanted(key) && rest < Math.max(2 * given.unit, DOUGH_PART * pieces)
  })
}

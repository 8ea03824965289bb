import type { PlannedId } from '../ids.ts'
import type { LastLoads, PlanLoad } from '../live/plan.ts'
import type { EpochMs } from '../units.ts'
import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import type { Expected } from './bake-off/expected.ts'
import { expectedOf } from './bake-off/expected.ts'
import { bakeMinOf, dipsOf } from './bake-off/load-parts.ts'
import type { Problem } from './bake-off-of.ts'
import { bestOf } from './best-of.ts'
import { oneDecimal } from './figures.ts'
import { emptyByOf, hoursFor } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'
import { emptiedLater } from './what-if.ts'

const SLIP_MIN = 15

/**
 * When the last loads go in, and what a changeover a quarter of an hour later or earlier would do. The latest times are
 * those of the plan's last load; where none is planned, of one kettle-full of what bakes longest.
 * @param told the plan's loads, as screens are told of them
 * @returns null for a shop that bakes until it closes, or when no more is baked
 */
export function lastLoads(
  asked: PlanAsked,
  { given }: Problem,
  loads: readonly BakeLoad[],
  told: readonly PlanLoad[],
): LastLoads | null {
  const emptyBy = emptyByOf(asked)
  if (emptyBy === null || emptyBy >= hoursFor(asked).closeMinute || asked.line.isOver) return null
  if (given.now !== undefined && given.now >= emptyBy) return null
  const [last] = [...loads].sort((one, other) => other.in - one.in)
  const longest = Math.max(0, ...given.varieties.map(({ bakeMin }) => bakeMin))
  const inBy = emptyBy - (last === undefined ? longest : bakeMinOf(given, last.lines))
  const dips = last === undefined ? 1 : dipsOf(given, last.lines)
  return {
    kettleByMs: instantOf(asked, inBy - dips * given.kettle.cycleMin),
    inByMs: instantOf(asked, inBy),
    emptyByMs: instantOf(asked, emptyBy),
    loadIds: lastIds(told, instantOf(asked, emptyBy)),
    slips: slipsOf(given, loads, asked.effort ?? 1),
  }
}

/** A shelf that stays empty from early on has its last load then, but that carries nothing into the afternoon. */
const LAST_WITHIN_MS = 60 * 60_000

export function lastIds(told: readonly PlanLoad[], emptyByMs: EpochMs): readonly PlannedId[] {
  return told.filter(({ isLast, outAtMs }) => isLast && emptyByMs - outAtMs <= LAST_WITHIN_MS).map(({ id }) => id)
}

/** The last hour's loads a quarter of an hour later. */
function lastLater({ oven }: BakeOff, loads: readonly BakeLoad[]): readonly BakeLoad[] {
  const from = oven.mustBeEmptyMin - LAST_WITHIN_MS / 60_000
  return loads.map((load) => {
    if (load.in < from) return load
    const { kettleStart, in: into, flip, out } = load
    return {
      ...load,
      kettleStart: kettleStart + SLIP_MIN,
      in: into + SLIP_MIN,
      flip: flip + SLIP_MIN,
      out: out + SLIP_MIN,
    }
  })
}

/**
 * What fits into a shorter day fits into a longer one: each is at least as good as the ones before it. With the usual work,
 * as a plan made with less falls short by more than a quarter of an hour is worth.
 */
function slipsOf(given: BakeOff, loads: readonly BakeLoad[], effort: number): LastLoads['slips'] {
  const sooner = emptiedLater(given, -SLIP_MIN)
  const later = emptiedLater(given, SLIP_MIN)
  const soonerLoads = bestOf(sooner, [loads], effort)
  const baseLoads = bestOf(given, [loads, soonerLoads], effort)
  const base = expectedOf(given, baseLoads)
  const slip = (byMin: number, then: Expected) => ({
    byMs: byMin * 60_000,
    gainCents: Math.round(then.profit - base.profit),
    lostFewer: oneDecimal(base.lost - then.lost),
    leftFewer: oneDecimal(base.left - then.left),
  })
  return [
    slip(-SLIP_MIN, expectedOf(sooner, soonerLoads)),
    slip(SLIP_MIN, expectedOf(later, bestOf(later, [baseLoads, lastLater(given, baseLoads)], effort))),
  ]
}

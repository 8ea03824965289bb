import type { Plan, PlanLoad } from '../live/plan.ts'
import type { BakeLine, BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { contactCostOf } from './bake-off/contact.ts'
import { expectedOf } from './bake-off/expected.ts'
import { doughOf } from './bake-off/load-parts.ts'
import type { Problem } from './bake-off-of.ts'
import { joined } from './joined.ts'
import { lessDough } from './less-dough.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'
import { fitted, solved } from './solved.ts'
import { standingLoads } from './standing-loads.ts'

/** Of what a change of the next load must gain, a change further on must gain this part: nobody stands there yet. */
const LATER_PART = 0.5
/** A next load that goes in within so much of its time is the same to whoever loads it. */
const SAME_IN_MIN = 3
/** Of the usual work, for the rest of a plan whose next load stays. */
const REST_EFFORT = 0.6

export interface Steadied {
  readonly loads: readonly BakeLoad[]
  /** Expected against keeping the plan as it was, in cents; null: there was none. */
  readonly gainCents: number | null
  readonly isKept: boolean
}

/** The plan before, carried over to now, unless a new one gains enough. */
export function steadied(asked: PlanAsked, problem: Problem, before: Plan | null): Steadied {
  const { given } = problem
  const { effort = 1 } = asked
  if (before === null || before.date !== asked.date)
    return { loads: joined(given, solved(given, effort)), gainCents: null, isKept: false }
  return steadyLoads(given, carriedOver(asked, problem, before), asked.shop.baking.changeGainCents, effort)
}

/**
 * Loads that people count on, or new ones: the next load changes only for what the shop asks for that, later ones for a
 * part of it. Where a new plan gains too little for another next load, the rest may still change around the old one.
 * @param kept in the order of their kettle starts, feasible as they are
 */
export function steadyLoads(given: BakeOff, kept: readonly BakeLoad[], changeGainCents: number, effort = 1): Steadied {
  const fresh = joined(given, solved(given, effort))
  const worth = (loads: readonly BakeLoad[]) => expectedOf(given, loads).profit - contactCostOf(given, loads)
  const keptCents = worth(kept)
  const gains = worth(fresh) - keptCents
  const laterCents = LATER_PART * changeGainCents
  const [next] = kept
  const isSameNext = isSame(next, fresh[0])
  if (gains > 0 && gains >= (isSameNext ? laterCents : changeGainCents))
    return { loads: fresh, gainCents: Math.round(gains), isKept: false }
  // Around the old next load there is hardly more to be gained than without it.
  if (!isSameNext && next !== undefined && gains >= laterCents) {
    const rest = withPinned(given, next)
    const around = [next, ...joined(rest, solved(rest, REST_EFFORT * effort))]
    const more = worth(around) - keptCents
    if (more > 0 && more >= laterCents) return { loads: around, gainCents: Math.round(more), isKept: false }
  }
  return { loads: kept, gainCents: 0, isKept: true }
}

/** What is left of a plan: loads that nobody has begun, each as soon as it can where its time has gone. */
export function carriedOver(asked: PlanAsked, { given, started }: Problem, before: Plan): readonly BakeLoad[] {
  const begun = new Set([...started.begun, ...started.pinned].map(({ id }) => id))
  const doughs = new Map(Object.entries(given.doughs).map(([key, { pieces }]) => [key, pieces]))
  const loads = standingLoads(asked, before)
    .filter(({ id }) => !begun.has(id))
    .flatMap((load): BakeLoad[] => {
      const lines = withinDough(given, load, doughs)
      if (lines.length === 0) return []
      const [into, out] = [minuteOf(asked, load.inAtMs), minuteOf(asked, load.outAtMs)]
      const flip = into + given.oven.firstSideMin
      const kettleStart = load.kettleAtMs === null ? into : minuteOf(asked, load.kettleAtMs)
      return shelvesFor(given, load).map((shelf) => ({ shelf, kettleStart, in: into, flip, out, lines }))
    })
  return fitted(given, loads)
}

function withinDough(given: BakeOff, { lines }: PlanLoad, doughs: Map<string, number>): BakeLine[] {
  return lines.flatMap(({ varietyId, pieces }): BakeLine[] => {
    const key = doughOf(given, varietyId)
    const there = doughs.get(key) ?? 0
    const some = Math.min(pieces, Math.floor(there / given.unit) * given.unit)
    doughs.set(key, there - some)
    return some > 0 ? [[varietyId, some]] : []
  })
}

/** The shelf of a load, or the first part of a hearth's floor; none where it takes no bagels any more. */
function shelvesFor({ oven }: BakeOff, { shelfId }: PlanLoad): string[] {
  const shelf = oven.shelves.find(({ name }) => name === shelfId || name.startsWith(`${shelfId}#`))
  return shelf === undefined ? [] : [shelf.name]
}

export function isSame(one: BakeLoad | undefined, other: BakeLoad | undefined): boolean {
  if (one === undefined || other === undefined) return one === other
  const lines = (load: BakeLoad) =>
    load.lines
      .map(([name, pieces]) => `${name} ${pieces}`)
      .sort()
      .join()
  return one.shelf === other.shelf && Math.abs(one.in - other.in) <= SAME_IN_MIN && lines(one) === lines(other)
}

function withPinned(given: BakeOff, load: BakeLoad): BakeOff {
  return { ...given, doughs: lessDough(given, load.lines), pinned: [...(given.pinned ?? []), load] }
}

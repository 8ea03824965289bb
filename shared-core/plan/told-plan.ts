import type { PlannedId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import type { Plan, PlanLoad } from '../live/plan.ts'
import { loadWindow, windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import type { BakeLoad } from './bake-off/bake-off.ts'
import { dipsOf } from './bake-off/load-parts.ts'
import type { Problem } from './bake-off-of.ts'
import { cannotOf } from './cannot.ts'
import { contactsAlong } from './contacts-along.ts'
import { expectedToday, figuresOf } from './figures.ts'
import { emptyByOf, hoursFor, shelfOf } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'
import { pullsOf } from './pulls.ts'
import { Reasons } from './reasons.ts'
import { supplyOf } from './supply-of.ts'
import { withIds } from './with-ids.ts'

/** What a plan is told of. */
export interface Telling {
  readonly asked: PlanAsked
  readonly problem: Problem
  /** Null: none; ids are taken over from it. */
  readonly before: Plan | null
  readonly seq: number
}

/** A load that stands in the plan, begun, pinned or advised. */
export interface Named {
  readonly id: PlannedId
  readonly isPinned: boolean
  readonly load: BakeLoad
}

/** The planner's minutes as what screens show; what changed and the last loads are left to who asks. */
export function toldPlan(telling: Telling, loads: readonly BakeLoad[]): Plan {
  const { asked, problem, before } = telling
  const named = withIds(telling, loads)
  const reasons = new Reasons(asked, problem.given, named)
  const contacts = contactsAlong(asked, named)
  const last = lastOnShelves(asked, named)
  const expected = expectedToday(problem, loads)
  const told = named.map((one): PlanLoad => {
    return {
      ...timesOf(telling, one),
      isLast: last.has(one.id),
      why: reasons.of(one),
      contacts: contacts.get(one.id) ?? [],
    }
  })
  return {
    date: asked.date,
    atMs: asked.line.nowMs,
    loads: told,
    pulls: pullsOf(asked, told, before?.pulls),
    changed: null,
    last: null,
    cannot: cannotOf(telling, named),
    supply: supplyOf(asked, problem, loads, expected),
    figures: figuresOf(asked, problem, loads, expected),
  }
}

function timesOf(
  { asked, problem, before }: Telling,
  { id, isPinned, load }: Named,
): Omit<PlanLoad, 'isLast' | 'why' | 'contacts'> {
  const { shop } = asked
  const lines = load.lines.map(([name, pieces]) => ({ varietyId: varietyId(name), pieces }))
  const varieties = lines.flatMap((line) => shop.varieties.get(line.varietyId) ?? [])
  const isBoiled = varieties.some(({ doughId }) => shop.doughs.get(doughId)?.route.includes('kettle') === true)
  const firstSide = loadWindow(
    shop,
    'firstSide',
    varieties.map(({ id: of }) => of),
  )
  const cool = Math.max(0, ...varieties.map((one) => windowOf(shop, 'cool', one.doughId, one.id)?.targetMs ?? 0))
  const outAtMs = instantOf(asked, load.out)
  const was = before?.loads.find((one) => one.id === id)
  return {
    id,
    shelfId: shelfOf(load.shelf),
    kettleAtMs: isBoiled ? stillDue(asked, load.kettleStart, was?.kettleAtMs) : null,
    dips: isBoiled ? dipsOf(problem.given, load.lines) : 0,
    inAtMs: stillDue(asked, load.in, was?.inAtMs),
    flipAtMs: firstSide === null ? null : instantOf(asked, load.in + firstSide.targetMs / 60_000),
    outAtMs,
    readyAtMs: instantOf(asked, load.out + cool / 60_000),
    lines,
    isPinned,
  }
}

/** What goes on as soon as it can from now on is about now. */
const SOON_MS = 3 * 60_000

/**
 * Late is late: what should have been done by now, and is to be done as soon as it can, keeps the time that it had. Else it
 * would be due just now at every look, and nobody would see that it waits.
 */
function stillDue(asked: PlanAsked, minute: number, wasAtMs: EpochMs | null | undefined): EpochMs {
  const atMs = instantOf(asked, minute)
  const { nowMs } = asked.line
  return wasAtMs != null && wasAtMs <= nowMs && atMs - nowMs < SOON_MS ? wasAtMs : atMs
}

/** With a changeover, the last load of each shelf. */
function lastOnShelves(asked: PlanAsked, named: readonly Named[]): ReadonlySet<PlannedId> {
  const emptyBy = emptyByOf(asked)
  if (emptyBy === null || emptyBy >= hoursFor(asked).closeMinute) return new Set()
  const last = new Map<string, Named>()
  for (const one of named) {
    const so = last.get(one.load.shelf)
    if (so === undefined || one.load.in > so.load.in) last.set(one.load.shelf, one)
  }
  return new Set([...last.values()].map(({ id }) => id))
}

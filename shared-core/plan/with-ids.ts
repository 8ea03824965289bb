import type { PlannedId } from '../ids.ts'
import type { PlanLoad } from '../live/plan.ts'
import { advisedId } from '../live/plan.ts'
import type { BakeLoad } from './bake-off/bake-off.ts'
import { shelfOf } from './oven-given.ts'
import { minuteOf } from './plan-asked.ts'
import { standingLoads } from './standing-loads.ts'
import type { Named, Telling } from './told-plan.ts'

/** A load is still the same where it goes in about then: further off it is another one with the same pieces. */
const SAME_WITHIN_MIN = 30
/** Of its pieces so many are of the same varieties. */
const SAME_PART = 0.5

/**
 * All loads of a plan with their ids, in the order of their kettle starts. What people set and what has begun keeps its
 * own; an advised load keeps that of the load before which it is recognisably: most of the pieces the same and about the
 * same time, the likest first.
 */
export function withIds({ asked, problem, before, seq }: Telling, loads: readonly BakeLoad[]): readonly Named[] {
  const { begun, pinned } = problem.started
  const old = standingLoads(asked, before)
  const taken = new Set([...begun, ...pinned].flatMap(({ id }) => id ?? []))
  const pairs = loads
    .flatMap((load) => old.map((was) => ({ load, was, likeness: likeness(load, was, minuteOf(asked, was.inAtMs)) })))
    .filter(({ likeness: how, was }) => how > 0 && !taken.has(was.id))
    .sort((one, other) => other.likeness - one.likeness || (one.was.id < other.was.id ? -1 : 1))
  const ids = new Map<BakeLoad, PlannedId>()
  for (const { load, was } of pairs) {
    if (ids.has(load) || taken.has(was.id)) continue
    ids.set(load, was.id)
    taken.add(was.id)
  }
  const fresh = freshIds(seq, new Set([...taken, ...(before?.loads ?? []).map(({ id }) => id)]))
  const all = [
    ...[...begun, ...pinned].map(({ id, isPinned, load }) => ({ id: id ?? fresh(), isPinned, load })),
    ...loads.map((load) => ({ id: ids.get(load) ?? fresh(), isPinned: false, load })),
  ]
  return all.sort(
    (one, other) =>
      one.load.kettleStart - other.load.kettleStart || one.load.in - other.load.in || (one.id < other.id ? -1 : 1),
  )
}

/** 0: another load; above it, the larger the likelier the same one. */
function likeness(load: BakeLoad, was: PlanLoad, wasInMin: number): number {
  const apart = Math.abs(load.in - wasInMin)
  if (apart > SAME_WITHIN_MIN) return 0
  const [now, before] = [
    new Map(load.lines),
    new Map(was.lines.map(({ varietyId, pieces }) => [varietyId as string, pieces])),
  ]
  const sum = (lines: ReadonlyMap<string, number>) => [...lines.values()].reduce((all, pieces) => all + pieces, 0)
  let same = 0
  for (const [name, pieces] of now) same += Math.min(pieces, before.get(name) ?? 0)
  const part = same / Math.max(1, sum(now), sum(before))
  if (part < SAME_PART) return 0
  return part - apart / (4 * SAME_WITHIN_MIN) + (shelfOf(load.shelf) === was.shelfId ? 0.25 : 0)
}

function freshIds(seq: number, taken: Set<PlannedId>): () => PlannedId {
  let n = 0
  return () => {
    for (;;) {
      n += 1
      const id = advisedId(seq, n)
      if (taken.has(id)) continue
      taken.add(id)
      return id
    }
  }
}

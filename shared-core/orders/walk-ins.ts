import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Outlook } from '../live/outlook.ts'
import type { Plan, PlanSupply } from '../live/plan.ts'
import { leaksOf } from '../stock/leak.ts'
import { paceWithLeak, piecesPerHour } from '../stock/run-out.ts'
import type { EpochMs } from '../units.ts'

const HOUR_MS = 3_600_000

export interface WalkInsAsked {
  readonly state: State
  readonly nowMs: EpochMs
  readonly closesAtMs: EpochMs
  readonly outlook: Outlook | null
  readonly plan: Plan | null
}

/** Pieces of a variety that walk-ins are expected to have asked for by an instant, counted from now on. */
export type WalkIns = (varietyId: VarietyId, atMs: number) => number

/**
 * How many: as the outlook of today says, else the plan, else the pace of the last two hours. When: as in the plan, which
 * knows the hours of the day, else evenly until the close.
 */
export function walkInsOf(asked: WalkInsAsked): WalkIns {
  const rest = new Map(asked.outlook?.varieties.map(({ varietyId, rest: { q50 } }) => [varietyId, q50]))
  const courses = new Map(asked.plan?.supply.map((one) => [one.varietyId, one.asked]))
  const leaks = leaksOf(asked.state)
  const { nowMs, closesAtMs, state } = asked
  return (varietyId, atMs) => {
    const untilMs = Math.min(atMs, closesAtMs)
    if (untilMs <= nowMs) return 0
    const course = courses.get(varietyId)
    const whole = course === undefined ? 0 : between(course, nowMs, closesAtMs)
    const part =
      course === undefined || whole <= 0
        ? (untilMs - nowMs) / Math.max(1, closesAtMs - nowMs)
        : between(course, nowMs, untilMs) / whole
    return part * (rest.get(varietyId) ?? (course === undefined ? byPace() : whole))

    function byPace(): number {
      const stock = state.stock.get(varietyId)
      const pace = stock === undefined ? null : paceWithLeak(stock, leaks, nowMs)
      return pace === null ? 0 : (piecesPerHour(pace) * (closesAtMs - nowMs)) / HOUR_MS
    }
  }
}

function between(course: PlanSupply['asked'], fromMs: number, toMs: number): number {
  return Math.max(0, meanBy(course, toMs) - meanBy(course, fromMs))
}

/** Linear between the points; as the first before it, as the last after it. */
function meanBy(course: PlanSupply['asked'], atMs: number): number {
  let before = course[0]
  if (before === undefined) return 0
  if (atMs <= before[0]) return before[2]
  for (const point of course) {
    if (point[0] >= atMs) {
      const span = point[0] - before[0]
      return span <= 0 ? point[2] : before[2] + ((point[2] - before[2]) * (atMs - before[0])) / span
    }
    before = point
  }
  return before[2]
}

import type { VarietyId } from '../ids.ts'
import type { Plan, PlanCause, PlanChange, PlanLoad, PlanSupply } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'
import { fits } from '../orders/spoken-for.ts'
import { emptyByOf } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'

/** So late nobody minds. */
const LATE_MS = 2 * 60_000
/** Sales that are so far off what was expected, in pieces to come, are a cause. */
const PIECES_OFF = 3

/**
 * What gave rise to a change, of what is seen between the plan before and now: what people said or set first, then what
 * happened on the line, then sales.
 */
export function causeOf(asked: PlanAsked, before: Plan, plan: Plan, what: PlanChange['what']): PlanCause {
  return (
    wishOf(asked, before, plan) ??
    shelfOf(asked, before, plan) ??
    orderOf(asked, before, plan, what) ??
    lineOf(asked, before) ??
    salesOf(asked, before, plan, what) ?? { kind: 'other' }
  )
}

function wishOf({ line }: PlanAsked, before: Plan, plan: Plan): PlanCause | null {
  const pinned = (some: Plan) => some.loads.filter(({ isPinned }) => isPinned).map(({ id }) => id)
  const loaded = new Set(line.loads.map(({ plannedId }) => plannedId))
  const [was, is] = [pinned(before), new Set(pinned(plan))]
  const isSet = [...is].some((id) => !was.includes(id)) || was.some((id) => !is.has(id) && !loaded.has(id))
  const isForbidden = before.loads.some(({ id, shelfId, inAtMs, lines }) =>
    line.forbids.some(
      (one) =>
        isAdvised(id) &&
        (one.shelfId ?? shelfId) === shelfId &&
        (one.varietyId === null || lines.some(({ varietyId }) => varietyId === one.varietyId)) &&
        inAtMs >= one.fromMs &&
        inAtMs < one.toMs,
    ),
  )
  return isSet || isForbidden ? { kind: 'wish' } : null
}

function shelfOf(asked: PlanAsked, before: Plan, plan: Plan): PlanCause | null {
  const { line } = asked
  const open = new Set(line.shelves.map(({ shelfId }) => shelfId))
  const over = before.loads.find(({ shelfId }) => !open.has(shelfId))
  if (over !== undefined) return { kind: 'shelf-over', shelfId: over.shelfId }
  const used = new Set(before.loads.map(({ shelfId }) => shelfId))
  const reopened = line.shelves.find(({ shelfId, isReopened }) => isReopened && !used.has(shelfId))
  if (reopened !== undefined && plan.loads.some(({ shelfId }) => shelfId === reopened.shelfId))
    return { kind: 'shelf-open', shelfId: reopened.shelfId }
  const emptyBy = emptyByOf(asked)
  const isMoved = before.last !== null && emptyBy !== null && instantOf(asked, emptyBy) !== before.last.emptyByMs
  return isMoved ? { kind: 'changeover' } : null
}

/** An order was taken since, of what the change is about, or of what is baked for an order now. */
function orderOf({ line }: PlanAsked, before: Plan, plan: Plan, what: PlanChange['what']): PlanCause | null {
  const about = what.kind === 'order-of-loads' ? [] : what.load.lines.map(({ varietyId }) => varietyId)
  const forOrders = plan.loads.flatMap(({ why }) => why.filter(({ kind }) => kind === 'order'))
  const ids = [...about, ...forOrders.map(({ varietyId }) => varietyId)]
  const isTaken = line.ordered.some(
    ({ takenAtMs, lines }) =>
      takenAtMs !== null && takenAtMs > before.atMs && lines.some((one) => ids.some((id) => fits(one, id))),
  )
  return isTaken ? { kind: 'order' } : null
}

function lineOf({ line }: PlanAsked, before: Plan): PlanCause | null {
  const advised = new Map(before.loads.map((load) => [load.id as string, load]))
  for (const { plannedId, shelfId, lines } of line.loads) {
    const was = plannedId === null ? undefined : advised.get(plannedId)
    if (was !== undefined && !hasSameLines(was.lines, lines)) return { kind: 'load-other', shelfId }
  }
  // Told ids alone do not say that another load stands where one was advised.
  const other = line.loads.find(
    ({ plannedId, shelfId, inAtMs }) =>
      inAtMs > before.atMs && plannedId === null && before.loads.some((one) => one.shelfId === shelfId),
  )
  if (other !== undefined) return { kind: 'load-other', shelfId: other.shelfId }
  if (line.loads.some(({ isFlipped, flipAtMs }) => !isFlipped && flipAtMs === line.nowMs)) return { kind: 'flip-late' }
  const gone = new Set(line.loads.map(({ plannedId }) => plannedId))
  const late = before.loads.find(({ id, inAtMs, kettleAtMs }) => {
    const sooner = Math.min(inAtMs, kettleAtMs ?? inAtMs)
    return !gone.has(id) && sooner < line.nowMs - LATE_MS
  })
  if (late === undefined) return null
  return { kind: line.begun.length > 0 || line.kettleFromMs !== null ? 'kettle-slow' : 'load-late' }
}

function hasSameLines(one: PlanLoad['lines'], other: PlanLoad['lines']): boolean {
  const text = (lines: PlanLoad['lines']) =>
    lines
      .map(({ varietyId, pieces }) => `${varietyId} ${pieces}`)
      .sort()
      .join()
  return text(one) === text(other)
}

/** The variety whose want of pieces is furthest from what the plan before expected by now, of those that the change is about first. */
function salesOf(asked: PlanAsked, before: Plan, plan: Plan, what: PlanChange['what']): PlanCause | null {
  const was = new Map(before.supply.map((one) => [one.varietyId, one]))
  const about = new Set<VarietyId>(
    what.kind === 'order-of-loads' ? [] : what.load.lines.map(({ varietyId }) => varietyId),
  )
  let most: { varietyId: VarietyId; off: number } | null = null
  for (const supply of plan.supply) {
    const old = was.get(supply.varietyId)
    if (old === undefined) continue
    const off = wantOf(supply, asked.line.nowMs) - wantOf(old, asked.line.nowMs)
    const weight = about.size === 0 || about.has(supply.varietyId) ? 1 : 0.25
    if (Math.abs(off) < PIECES_OFF) continue
    if (most === null || Math.abs(off * weight) > Math.abs(most.off))
      most = { varietyId: supply.varietyId, off: off * weight }
  }
  return most === null ? null : { kind: 'sales', varietyId: most.varietyId, isMore: most.off > 0 }
}

/** Pieces still asked for from an instant on, less what should be for sale by then. */
function wantOf({ asked, ready, forSale }: PlanSupply, atMs: number): number {
  const all = asked[asked.length - 1]?.[2] ?? 0
  const so = meanBy(asked, atMs)
  const made = ready.reduce((sum, [at, pieces]) => (at <= atMs ? pieces : sum), 0)
  return all - so - Math.max(0, forSale + made - so)
}

function meanBy(asked: PlanSupply['asked'], atMs: number): number {
  let [fromMs, from] = [asked[0]?.[0] ?? 0, 0] as [number, number]
  for (const [toMs, , mean] of asked) {
    if (atMs < toMs) return toMs > fromMs ? from + ((mean - from) * Math.max(0, atMs - fromMs)) / (toMs - fromMs) : from
    ;[fromMs, from] = [toMs, mean]
  }
  return from
}

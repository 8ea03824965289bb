import type { DoughId, PersonId, StepId } from '../ids.ts'
import { dueStatus } from '../line/act-due.ts'
import { hasDippedAnyway } from '../line/float-hold.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop, Step } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { floatMark, stepMark } from './marks.ts'
import type { Mark } from './said.ts'
import type { State } from './state.ts'

/** The opening or the changeover as a list of steps, each worked back from one instant. */
export interface StepList {
  /** What the list counts from: the first load in, or the oven empty. */
  readonly zeroAtMs: EpochMs
  /** Soonest due first. */
  readonly lines: readonly StepLine[]
  readonly doneCount: number
}

export interface StepLine {
  readonly stepId: StepId
  /** Of a float test; else null. */
  readonly doughId: DoughId | null
  /** As the set-up calls the step; of a float test without the dough. */
  readonly name: string
  readonly kind: Step['kind']
  /** When it should be done; of a float test that has not passed, when to look again. */
  readonly dueAtMs: EpochMs
  readonly status: 'coming' | 'due' | 'late' | 'done'
  /** Who did it; while it is not done, who will. */
  readonly personId: PersonId | null
  readonly doneAtMs: EpochMs | null
  /** What the last float test found; null for other steps, and before the first look. */
  readonly float: FloatFound | null
}

export interface FloatFound {
  readonly passed: boolean
  /** Null when it has passed, or when the dough was dipped all the same. */
  readonly lookAgainAtMs: EpochMs | null
  /** It had not passed, and somebody dipped the dough all the same: people know more. */
  readonly dippedAnyway: boolean
}

/** A step is late when it is not done so long after its time (common practice, no source). */
const STEP_LATE_AFTER_MS = 5 * 60_000

/**
 * The steps of one list: a plain step is one line, a float test one for each dough that could be tested now.
 * @returns null without a set-up, and where there is nothing to list
 */
export function stepList(state: State, nowMs: EpochMs, list: Step['list'], zeroAtMs: EpochMs): StepList | null {
  const { shop } = state
  if (shop === null) return null
  const lines = inUse(shop.steps)
    .filter((step) => step.list === list)
    .flatMap((step) => linesOf(step, { state, shop, nowMs, zeroAtMs }))
    .map((line, place) => ({ line, place }))
    .sort((one, other) => one.line.dueAtMs - other.line.dueAtMs || one.place - other.place)
    .map(({ line }) => line)
  if (lines.length === 0) return null
  return { zeroAtMs, lines, doneCount: lines.filter(({ status }) => status === 'done').length }
}

/**
 * Doughs of which a float test says something now: in use, on their way to the kettle from the proof, with pieces that
 * stand there.
 */
export function floatDoughs(state: State, shop: Shop): readonly DoughId[] {
  const standing = new Set<DoughId>()
  for (const { stage, doughId } of state.batches.values())
    if (stage === 'proof' || stage === 'chill' || stage === 'rack') standing.add(doughId)
  return inUse(shop.doughs)
    .filter(({ id, route }) => standing.has(id) && route.includes('proof'))
    .map(({ id }) => id)
}

interface Listing {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly zeroAtMs: EpochMs
}

function linesOf(step: Step, listing: Listing): readonly StepLine[] {
  if (step.kind === 'plain') return [plainLine(step, listing)]
  return floatDoughs(listing.state, listing.shop).map((doughId) => floatLine(step, doughId, listing))
}

function plainLine({ id, name, kind, offsetMs }: Step, { state, nowMs, zeroAtMs }: Listing): StepLine {
  const said = stepSaid(state, id, null)
  const dueAtMs = epochMs(zeroAtMs + offsetMs)
  const doneAtMs = said?.doneAtMs ?? null
  const status = doneAtMs === null ? statusOf(dueAtMs, nowMs) : 'done'
  return {
    stepId: id,
    doughId: null,
    name,
    kind,
    dueAtMs,
    status,
    personId: said?.personId ?? null,
    doneAtMs,
    float: null,
  }
}

function floatLine(
  { id, name, kind, offsetMs }: Step,
  doughId: DoughId,
  { state, nowMs, zeroAtMs }: Listing,
): StepLine {
  const given = stepSaid(state, id, doughId)
  const mark = state.marks.get(floatMark(doughId))
  const found = mark?.kind === 'float' ? mark : null
  const dippedAnyway = found !== null && hasDippedAnyway(state, found)
  const lookAgainAtMs = dippedAnyway ? null : (found?.lookAgainAtMs ?? null)
  const dueAtMs = lookAgainAtMs ?? epochMs(zeroAtMs + offsetMs)
  const doneAtMs = found !== null && (found.passed || dippedAnyway) ? found.atMs : null
  return {
    stepId: id,
    doughId,
    name,
    kind,
    dueAtMs,
    status: doneAtMs === null ? statusOf(dueAtMs, nowMs) : 'done',
    personId: found?.personId ?? given?.personId ?? null,
    doneAtMs,
    float: found === null ? null : { passed: found.passed, lookAgainAtMs, dippedAnyway },
  }
}

function statusOf(dueAtMs: EpochMs, nowMs: EpochMs): StepLine['status'] {
  return dueStatus(dueAtMs, epochMs(dueAtMs + STEP_LATE_AFTER_MS), nowMs)
}

function stepSaid(state: State, stepId: StepId, doughId: DoughId | null): Extract<Mark, { kind: 'step' }> | null {
  const mark = state.marks.get(stepMark(stepId, doughId))
  return mark?.kind === 'step' ? mark : null
}

import type { Batch, State } from '../../shared-core/day/state.ts'
import type { TableName, Trace } from '../../shared-core/day/trace.ts'
import { untilOf } from '../../shared-core/ferment/until-of.ts'
import { outOfTime } from '../../shared-core/line/route.ts'
import { epochMs } from '../../shared-core/units.ts'

/** How far an act was outside its window. */
export interface OutOfWindow {
  readonly limit: 'too-early' | 'too-late'
  readonly byMs: number
}

/** Where the window of an act stands: in what it found there, as it was before the act. */
const WINDOW_OF = new Map<string, readonly [TableName, string]>([
  ['pull', ['batches', 'until']],
  ['moveBatch', ['batches', 'until']],
  ['dip', ['batches', 'until']],
  ['lift', ['batches', 'until']],
  ['board', ['batches', 'until']],
  ['load', ['batches', 'until']],
  ['flip', ['loads', 'flip']],
  ['out', ['loads', 'out']],
])

/** What was too early or too late of an act that was done, the worst of it; null: nothing, or it has no window. */
export function outOfWindow(
  { told, touched, atMs }: Pick<Trace, 'told' | 'touched' | 'atMs'>,
  state: State,
): OutOfWindow | null {
  const where = WINDOW_OF.get(told.type)
  if (where === undefined) return null
  const [table, field] = where
  let worst: OutOfWindow | null = null
  for (const { before } of touched.filter((one) => one.table === table)) {
    const until = table === 'batches' && isBatch(before) ? untilOf(state, before) : windowIn(before, field)
    const [limit] = outOfTime(until, atMs)
    if (until === null || limit === undefined) continue
    const byMs = limit === 'too-early' ? until.earliestAtMs - atMs : atMs - until.latestAtMs
    if (worst === null || byMs > worst.byMs) worst = { limit, byMs }
  }
  return worst
}

function windowIn(before: unknown, field: string) {
  const found: unknown = isObject(before) ? before[field] : null
  if (!isObject(found)) return null
  const { earliestAtMs, targetAtMs, latestAtMs } = found
  if (typeof earliestAtMs !== 'number' || typeof targetAtMs !== 'number' || typeof latestAtMs !== 'number') return null
  return {
    earliestAtMs: epochMs(earliestAtMs),
    targetAtMs: epochMs(targetAtMs),
    latestAtMs: epochMs(latestAtMs),
  }
}

/** Pieces that proof or chill have a clock. */
function isBatch(value: unknown): value is Batch {
  return isObject(value) && typeof value.doughId === 'string' && 'until' in value
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

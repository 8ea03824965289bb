import type { BakeLine, BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { PROBLEMS_MAX, pointer, problemsOf } from '../../shared-core/shop/problems.ts'
import { bakeOffProblems } from './bake-off-rules.ts'
import type { BakeOffJson } from './bake-off-schema.ts'
import { bakeOffSchema } from './bake-off-schema.ts'

export type ReadBakeOff =
  /** `passedOver`: keys that nobody knows, as JSON Pointers. */
  | { readonly ok: true; readonly given: BakeOff; readonly passedOver: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads a planning problem.
 * @param raw as JSON gives it
 * @returns the problem, or each mistake with its place and what would be right
 */
export function readBakeOff(raw: unknown): ReadBakeOff {
  const read = bakeOffSchema.safeParse(raw)
  if (!read.success) return { ok: false, problems: problemsOf(read.error.issues, raw) }
  const problems = bakeOffProblems(read.data).slice(0, PROBLEMS_MAX)
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, given: eachOnce(withoutGaps(read.data)), passedOver: passedOver(raw, read.data) }
}

/** What was left out is not there at all: the reading never writes an undefined one where a key was missing. */
function withoutGaps(read: BakeOffJson): BakeOff {
  return read as BakeOff
}

/**
 * A variety is named once in each list: the planner has places for some two thousand events of a variety, and makes none of
 * more than that.
 */
function eachOnce(given: BakeOff): BakeOff {
  const { orders, running, pinned } = given
  return {
    ...given,
    orders: orders.map(withSums),
    ...(running === undefined ? {} : { running: running.map(withSums) }),
    ...(pinned === undefined ? {} : { pinned: pinned.map(withSums) }),
  }
}

function withSums<Some extends { readonly lines: readonly BakeLine[] }>(one: Some): Some {
  const sums = new Map<string, number>()
  for (const [name, pieces] of one.lines) sums.set(name, (sums.get(name) ?? 0) + pieces)
  return { ...one, lines: [...sums] }
}

/** What was given and is not in what was read of it. */
function passedOver(raw: unknown, read: unknown, path: readonly string[] = []): readonly string[] {
  if (typeof raw !== 'object' || raw === null || typeof read !== 'object' || read === null) return []
  return Object.entries(raw).flatMap(([key, value]) => {
    const at = [...path, key]
    const has = Object.prototype.propertyIsEnumerable.call(read, key)
    return has ? passedOver(value, Reflect.get(read, key), at) : [pointer(at)]
  })
}

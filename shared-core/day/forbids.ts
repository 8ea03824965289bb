import type { EpochMs } from '../units.ts'
import type { Forbid } from './state.ts'

/** Those that are not over at an instant. */
export function stillAhead(forbids: readonly Forbid[], atMs: EpochMs): readonly Forbid[] {
  return forbids.filter(({ toMs }) => toMs > atMs)
}

/** Whether two lists say the same, in the same order. */
export function sameForbids(some: readonly Forbid[], others: readonly Forbid[]): boolean {
  return some.length === others.length && some.every((one, at) => isSame(one, others[at]))
}

function isSame(one: Forbid, other: Forbid | undefined): boolean {
  if (other === undefined) return false
  const { shelfId, varietyId, fromMs, toMs } = other
  return one.shelfId === shelfId && one.varietyId === varietyId && one.fromMs === fromMs && one.toMs === toMs
}

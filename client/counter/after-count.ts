import type { Line, State } from '../../shared-core/day/state.ts'
import type { CommandId, VarietyId } from '../../shared-core/ids.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { CounterWords } from '../words/counter.ts'

/** What a count found: of each rod how many fewer than known (signed; negative: more). They are booked as unexplained. */
export interface Found {
  readonly commandId: CommandId
  readonly gaps: readonly Line[]
}

/**
 * Reads what a count did off the state before and after it.
 * @returns null when it was not taken: a question or a refusal is told elsewhere
 */
export function foundBy(
  before: State,
  after: State,
  commandId: CommandId,
  varietyIds: readonly VarietyId[],
): Found | null {
  if (!after.traces.some((trace) => trace.commandId === commandId)) return null
  const gaps = varietyIds.map((varietyId) => ({
    varietyId,
    pieces: piecesIn(before, varietyId) - piecesIn(after, varietyId),
  }))
  return { commandId, gaps: gaps.filter(({ pieces }) => pieces !== 0) }
}

function piecesIn({ stock }: State, varietyId: VarietyId): number {
  return piecesOf(stock.get(varietyId)?.lots ?? [])
}

/** @example "Sesame: 3 fewer than known, kept as unexplained" */
export function foundText({ gaps }: Found, { names, jobs: { found } }: CounterWords): string {
  const [only] = gaps
  if (only === undefined) return found.asKnown
  if (gaps.length === 1) {
    const text = only.pieces > 0 ? found.fewer(only.pieces) : found.more(-only.pieces)
    return found.named(names.variety(only.varietyId), text)
  }
  const told = gaps.map(({ varietyId, pieces }) => ({ name: names.variety(varietyId), pieces }))
  return found.several(
    told.filter(({ pieces }) => pieces > 0),
    told.filter(({ pieces }) => pieces < 0).map(({ name, pieces }) => ({ name, pieces: -pieces })),
  )
}

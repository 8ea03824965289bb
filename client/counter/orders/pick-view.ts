import type { Short } from '../../../shared-core/day/events.ts'
import type { Line } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { Pick } from '../../../shared-core/orders/picks.ts'

/** What an order still lacks, line by line; null: of a mixed line. */
export function missingOf({ lines }: Pick): readonly Short[] {
  return lines
    .filter(({ missing }) => missing > 0)
    .map(({ line, missing }) => ({ varietyId: line.varietyId, pieces: missing }))
}

/** What could be given in place of it. */
export function insteadOf({ lines }: Pick): readonly Line[] {
  return together(lines.flatMap(({ instead }) => instead))
}

/** What goes into the bag: kept, there, and in place of what is missing where somebody said yes. */
export function bagOf(pick: Pick, isReplaced: boolean): readonly Line[] {
  return together([...pick.kept, ...pick.keep, ...(isReplaced ? insteadOf(pick) : [])])
}

/** So many pieces of how many that were ordered. */
export function orderedOf({ lines }: Pick): number {
  return lines.reduce((sum, { line }) => sum + line.pieces, 0)
}

export function canGoWhole(pick: Pick): boolean {
  return pick.missing === 0
}

function together(lines: readonly Line[]): readonly Line[] {
  const sums = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of lines) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces })).filter((line) => piecesOf([line]) > 0)
}

import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { adjustByBoards, swapVariety } from '../../shared-core/line/differs.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/**
 * What a person is saying a load holds, while they say it. Counted in boards, as hands count: a touch on a variety is a
 * board of it, and a line that is touched first turns into the variety touched next, with all its pieces.
 */
export interface Draft {
  readonly lines: readonly Line[]
  /** The line that the next variety replaces; null: a variety adds a board. */
  readonly chosen: VarietyId | null
}

export interface DraftRules {
  readonly shop: Shop
  /** Pieces the shelf takes: once it is full, a board more of one is a board less of another. Null: nothing limits. */
  readonly mostPieces: number | null
}

/** A draft of lines, with no line chosen. */
export function draftOf(lines: readonly Line[]): Draft {
  return { lines, chosen: null }
}

/** Chooses a line to turn into something else, or lets go of it. */
export function chooseLine(draft: Draft, varietyId: VarietyId): Draft {
  return { ...draft, chosen: draft.chosen === varietyId ? null : varietyId }
}

/** A touch on a variety: the chosen line becomes it; without one, a board of it is added. */
export function touchVariety(draft: Draft, varietyId: VarietyId, rules: DraftRules): Draft {
  if (draft.chosen !== null) return draftOf(swapVariety(draft.lines, draft.chosen, varietyId))
  return addBoard(draft, varietyId, rules)
}

/** A board more of a variety, as a line of its own when it has none. */
export function addBoard(draft: Draft, varietyId: VarietyId, { shop, mostPieces }: DraftRules): Draft {
  return withLines(draft, adjustByBoards(shop, draft.lines, { varietyId, boards: 1, mostPieces }))
}

/** A board less of a variety; with its last board the line goes. */
export function takeBoard(draft: Draft, varietyId: VarietyId, { shop, mostPieces }: DraftRules): Draft {
  return withLines(draft, adjustByBoards(shop, draft.lines, { varietyId, boards: -1, mostPieces }))
}

/** Whether two loads hold the same, in whatever order. */
export function sameLines(one: readonly Line[], other: readonly Line[]): boolean {
  const pieces = new Map(other.map((line) => [line.varietyId, line.pieces]))
  return one.length === other.length && one.every((line) => pieces.get(line.varietyId) === line.pieces)
}

function withLines({ chosen }: Draft, lines: readonly Line[]): Draft {
  return { lines, chosen: lines.some((line) => line.varietyId === chosen) ? chosen : null }
}

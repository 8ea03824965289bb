import type { Line, State } from '../day/state.ts'
import type { DoughId, ShelfId, VarietyId } from '../ids.ts'
import type { BatchStage, Shop } from '../shop/shop.ts'
import { byVariety } from './contents.ts'
import { piecesOf } from './lines.ts'
import { plannedForShelf } from './planned.ts'

/** What "differs" does to a load's lines: a board more or less, or another variety instead. */
export interface BoardChange {
  readonly varietyId: VarietyId
  readonly boards: 1 | -1
  /** Pieces the shelf takes; null where nothing limits. */
  readonly mostPieces: number | null
}

/**
 * One board more or fewer of a variety: to the next whole board up or down; a variety that is not there yet is added,
 * one that comes to nothing goes. When the shelf is full, boards come off the line that has most, so that one touch
 * changes sesame into poppy; when no other line has any left, the total may exceed the shelf: people know what they load.
 * Pans count in the same steps.
 * @example 36 sesame, 12 poppy on a shelf of 48, one board of poppy more at 6 a board // 30 sesame, 18 poppy
 */
export function adjustByBoards(shop: Shop, lines: readonly Line[], change: BoardChange): readonly Line[] {
  const { varietyId, boards, mostPieces } = change
  const known = lines.some((line) => line.varietyId === varietyId)
  const all = known ? lines : [...lines, { varietyId, pieces: 0 }]
  const step = (line: Line, by: 1 | -1) => ({ ...line, pieces: nextBoard(line.pieces, shop.boards.pieces, by) })
  let changed = all.map((line) => (line.varietyId === varietyId ? step(line, boards) : line))
  while (boards === 1 && mostPieces !== null && piecesOf(changed) > mostPieces) {
    const others = changed.filter((line) => line.varietyId !== varietyId && line.pieces > 0)
    const [first, ...rest] = others
    if (first === undefined) break
    const fullest = rest.reduce((most, line) => (line.pieces >= most.pieces ? line : most), first)
    changed = changed.map((line) => (line === fullest ? step(line, -1) : line))
  }
  return changed.filter((line) => line.pieces > 0)
}

/** Another variety instead of one, as many pieces; lines of the same variety are joined. Unchanged when it is not there. */
export function swapVariety(lines: readonly Line[], from: VarietyId, to: VarietyId): readonly Line[] {
  const joined = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of lines) {
    const id = varietyId === from ? to : varietyId
    joined.set(id, (joined.get(id) ?? 0) + pieces)
  }
  return [...joined].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}

/** A variety that "differs" offers. */
export interface Offered {
  readonly varietyId: VarietyId
  /** It is in the planned load. */
  readonly planned: boolean
  /** Pieces that could become it and stand on boards, in the kettle or on the rack now. */
  readonly atHand: number
}

/**
 * The varieties that a shelf may be loaded with, likeliest first: what is planned for it; what the pieces on boards are
 * already topped as; other varieties of the dough that is planned; then of doughs at hand, nearest the oven first; then
 * the rest. Ties in the set-up's order, so that a key stays where the finger learnt it.
 */
export function offer(state: State, shelfId: ShelfId): readonly Offered[] {
  const { shop } = state
  if (shop === null) return []
  const planned = plannedForShelf(state, shelfId)?.lines ?? []
  const plannedIds = new Set(planned.map((line) => line.varietyId))
  const plannedDoughs = new Set(planned.map((line) => shop.varieties.get(line.varietyId)?.doughId))
  const hand = atHand(state)
  return [...shop.varieties.values()]
    .filter((variety) => !variety.retired || plannedIds.has(variety.id))
    .map(({ id, doughId }) => ({
      varietyId: id,
      planned: plannedIds.has(id),
      atHand: (hand.topped.get(id) ?? 0) + (hand.plain.get(doughId)?.pieces ?? 0),
      rank: rankOf([
        plannedIds.has(id),
        hand.topped.has(id),
        plannedDoughs.has(doughId),
        hand.plain.get(doughId)?.nearest === 'boards',
        hand.plain.get(doughId)?.nearest === 'kettle',
        hand.plain.has(doughId),
      ]),
    }))
    .sort((one, other) => one.rank - other.rank || byVariety(shop, one.varietyId, other.varietyId))
    .map(({ varietyId, planned: isPlanned, atHand: pieces }) => ({ varietyId, planned: isPlanned, atHand: pieces }))
}

/** The place of the first reason that holds; the number of reasons when none does. */
function rankOf(reasons: readonly boolean[]): number {
  const first = reasons.indexOf(true)
  return first < 0 ? reasons.length : first
}

function nextBoard(pieces: number, boardPieces: number, by: 1 | -1): number {
  const boards = by === 1 ? Math.floor(pieces / boardPieces) + 1 : Math.ceil(pieces / boardPieces) - 1
  return Math.max(0, boards) * boardPieces
}

const NEAR: readonly BatchStage[] = ['boards', 'kettle', 'rack']

interface AtHand {
  readonly topped: ReadonlyMap<VarietyId, number>
  readonly plain: ReadonlyMap<DoughId, { readonly pieces: number; readonly nearest: BatchStage }>
}

function atHand(state: State): AtHand {
  const topped = new Map<VarietyId, number>()
  const plain = new Map<DoughId, { pieces: number; nearest: BatchStage }>()
  for (const { stage, varietyId, doughId, pieces } of state.batches.values()) {
    if (!NEAR.includes(stage)) continue
    if (varietyId !== null) {
      topped.set(varietyId, (topped.get(varietyId) ?? 0) + pieces)
      continue
    }
    const so = plain.get(doughId) ?? { pieces: 0, nearest: stage }
    const nearest = NEAR.indexOf(stage) < NEAR.indexOf(so.nearest) ? stage : so.nearest
    plain.set(doughId, { pieces: so.pieces + pieces, nearest })
  }
  return { topped, plain }
}

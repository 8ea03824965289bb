import type { DoughId, VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import { epochMs } from '../units.ts'
import type { RiskSave, ShortLine } from './at-risk.ts'
import type { Book } from './book.ts'
import { pieceAt } from './headroom.ts'
import { mixedOf } from './mixed-of.ts'
import type { SupplyAsked } from './promise.ts'

export interface Saving {
  readonly asked: SupplyAsked
  readonly book: Book
  /** `roomFrom` of the book's varieties. */
  readonly rooms: readonly Int32Array[]
}

/** What would save an order, the best first: pieces that lie there, then the oven, then what asks something of whoever ordered. */
export function savesFor({ asked, book, rooms }: Saving, shorts: readonly ShortLine[]): readonly RiskSave[] {
  return [
    ...keepSave(book, shorts),
    ...shorts.flatMap((short) => loadSaves(asked, book, short)),
    ...otherSave(book, rooms, shorts),
    ...laterSaves(asked, shorts),
  ]
}

/** On the rods now, less what orders need of them that are due before. */
function keepSave({ shop, supply, others, nowMs }: Book, shorts: readonly ShortLine[]): readonly RiskSave[] {
  const there = new Map<VarietyId, number>()
  for (const { varietyId, pieces, readyAtMs } of supply)
    if (readyAtMs <= nowMs) there.set(varietyId, (there.get(varietyId) ?? 0) + pieces)
  const first = shorts[0]?.one
  for (const one of others) {
    if (one.orderId === first?.orderId) break
    if (one.varietyId !== null) there.set(one.varietyId, Math.max(0, (there.get(one.varietyId) ?? 0) - one.pieces))
  }
  const keeps = new Map<VarietyId, number>()
  for (const { one, missing } of shorts) {
    const lines =
      one.varietyId === null
        ? mixedOf(shop, one, missing, there)
        : [{ varietyId: one.varietyId, pieces: Math.min(missing, there.get(one.varietyId) ?? 0) }]
    for (const { varietyId, pieces } of lines)
      if (pieces > 0) keeps.set(varietyId, (keeps.get(varietyId) ?? 0) + pieces)
  }
  return keeps.size === 0 ? [] : [{ code: 'keepNow', lines: linesOf(keeps, shop) }]
}

function loadSaves(asked: SupplyAsked, book: Book, { one, takenAtMs, missing }: ShortLine): readonly RiskSave[] {
  const { varietyId } = one
  if (asked.plan === null || varietyId === null) return []
  const open = asked.plan.loads.filter(({ id }) => book.supply.some(({ loadId }) => loadId === id))
  const late = open.find((load) => {
    const takesMs = load.readyAtMs - (load.kettleAtMs ?? load.inAtMs)
    const has = load.lines.some((line) => line.varietyId === varietyId)
    return has && load.readyAtMs > takenAtMs && asked.nowMs + takesMs <= takenAtMs
  })
  if (late !== undefined) {
    const { id: loadId, shelfId, readyAtMs } = late
    return [{ code: 'earlierLoad', loadId, shelfId, readyAtMs, readyByMs: epochMs(takenAtMs) }]
  }
  const other = open.find((load) => !load.isPinned && load.readyAtMs <= takenAtMs)
  const pieces = Math.min(missing, doughLeft(asked, book, varietyId), other === undefined ? 0 : piecesOf(other.lines))
  if (other === undefined || pieces <= 0) return []
  return [{ code: 'otherLoad', loadId: other.id, shelfId: other.shelfId, lines: [{ varietyId, pieces }] }]
}

/** Dough of a variety that no load that is still to come takes. */
function doughLeft({ state }: SupplyAsked, { shop, supply }: Book, varietyId: VarietyId): number {
  const doughId: DoughId | undefined = shop.varieties.get(varietyId)?.doughId
  let left = 0
  for (const batch of state.batches.values())
    if (batch.doughId === doughId && batch.stage !== 'oven' && (batch.varietyId ?? varietyId) === varietyId)
      left += batch.pieces
  for (const one of supply)
    if (one.from === 'load' && shop.varieties.get(one.varietyId)?.doughId === doughId) left -= one.pieces
  return Math.max(0, left)
}

/** Mixed lines have looked at all that fit already. */
function otherSave({ shop, room }: Book, rooms: Saving['rooms'], shorts: readonly ShortLine[]): readonly RiskSave[] {
  const named = shorts.filter(({ one }) => one.varietyId !== null)
  const [first] = named
  if (first === undefined) return []
  const at = Math.max(0, pieceAt(room.fromMs, Math.min(...named.map(({ takenAtMs }) => takenAtMs))))
  const there = new Map(room.varieties.map((id, of) => [id, rooms[of]?.[at] ?? 0]))
  const without = named.flatMap(({ one }) => one.varietyId ?? [])
  const missing = named.reduce((sum, short) => sum + short.missing, 0)
  const lines = mixedOf(shop, { varietyId: null, without }, missing, there)
  return lines.length === 0 ? [] : [{ code: 'otherVariety', lines }]
}

function laterSaves({ state }: SupplyAsked, shorts: readonly ShortLine[]): readonly RiskSave[] {
  let atMs = 0
  for (const { wholeAtMs, takenAtMs, one } of shorts) {
    if (wholeAtMs === null) return []
    // What is packed is ready so much later than it leaves the rods.
    atMs = Math.max(atMs, wholeAtMs + Math.max(0, one.dueAtMs - takenAtMs))
  }
  const id = shorts[0]?.one.orderId
  const ordered = id === undefined ? 0 : piecesOf(state.orders.get(id)?.lines ?? [])
  const isPart = ordered > shorts.reduce((sum, { missing }) => sum + missing, 0)
  const later: RiskSave = { code: 'later', atMs: epochMs(atMs) }
  return isPart ? [{ code: 'split', restAtMs: epochMs(atMs) }, later] : [later]
}

import type { Line, State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import { onTheWay } from '../stock/on-the-way.ts'
import type { EpochMs } from '../units.ts'
import { mixedWanted } from './book.ts'
import type { Room } from './headroom.ts'
import { roomFrom, roomOf } from './headroom.ts'
import { mixedFlow, mixedTakes } from './mixed-flow.ts'
import { mixedOf } from './mixed-of.ts'
import type { OrderLine } from './order.ts'
import type { SupplyAsked } from './promise.ts'
import type { SpokenFor } from './spoken-for.ts'
import type { Supply } from './supply.ts'
import { supplyNow } from './supply.ts'
import { walkInsOf } from './walk-ins.ts'

export interface Picking {
  readonly state: State
  readonly nowMs: EpochMs
  /** What other orders need: later ones by name, mixed ones of all. */
  readonly others: readonly SpokenFor[]
  /** What lies there and is not another's by name; lessened by what is taken. */
  readonly there: Map<VarietyId, number>
  /** What is still expected today; null: only what is on the way. */
  readonly ahead: PickAhead | null
}

/** What the day will bring and ask for, for who knows it. */
export type PickAhead = Pick<SupplyAsked, 'outlook' | 'plan' | 'closesAtMs'>

/**
 * Mixed pieces for one line: of what there is most of, as long as other orders still get theirs out of what is left and on
 * the way; where that would take from one, as the flow gives them to all (`mixed-flow.ts`). What is left then is taken
 * whoever else needs it: this order is being picked.
 */
export function pickMixed(picking: Picking, line: OrderLine, pieces: number): readonly Line[] {
  const { state, there } = picking
  const { shop } = state
  if (shop === null || pieces <= 0) return []
  const first = harmless(picking, line, pieces)
  for (const { varietyId, pieces: some } of first) there.set(varietyId, (there.get(varietyId) ?? 0) - some)
  const rest = mixedOf(shop, line, pieces - piecesOf(first), there)
  const all = new Map<VarietyId, number>()
  for (const { varietyId, pieces: some } of [...first, ...rest]) all.set(varietyId, (all.get(varietyId) ?? 0) + some)
  return linesOf(all, shop)
}

function harmless(picking: Picking, line: OrderLine, pieces: number): readonly Line[] {
  const { state, nowMs, others } = picking
  const { shop } = state
  if (shop === null) return []
  const room = roomNow(picking, [])
  const rooms = room.free.map(roomFrom)
  const free = new Map(room.varieties.map((id, at) => [id, freeAt(room, rooms, at, nowMs)]))
  const plenty = mixedOf(shop, line, pieces, free)
  const mixed = others.filter(({ varietyId }) => varietyId === null)
  if (mixed.length === 0) return plenty
  const wanted = mixed.map((one) => mixedWanted(shop, room, one, Math.max(nowMs, one.dueAtMs)))
  const sum = (some: readonly number[]) => some.reduce((all, one) => all + one, 0)
  const after = roomNow(picking, plenty)
  const served = sum(mixedFlow(rooms, wanted))
  if (piecesOf(plenty) === pieces && sum(mixedFlow(after.free.map(roomFrom), wanted)) >= served) return plenty
  const own = mixedWanted(shop, room, { ...line, pieces }, nowMs)
  const takes = mixedTakes(rooms, [...wanted, own])[wanted.length] ?? []
  return room.varieties.flatMap((varietyId, at) => {
    const some = Math.min(takes[at] ?? 0, picking.there.get(varietyId) ?? 0)
    return some > 0 ? [{ varietyId, pieces: some }] : []
  })
}

/** What lies there and comes, less what later orders need by name, and less some that is taken now. */
function roomNow(picking: Picking, taken: readonly Line[]): Room {
  const { state, nowMs, others, there, ahead } = picking
  const walkIns = ahead === null ? null : walkInsOf({ state, nowMs, ...ahead })
  const part = (state.shop?.orders.walkInPercent ?? 0) / 100
  return roomOf({
    supply: [...[...there].map(([varietyId, pieces]) => ({ varietyId, pieces, readyAtMs: nowMs })), ...coming(picking)],
    taken: [
      ...taken.map((one) => ({ ...one, atMs: nowMs })),
      ...others.flatMap(({ varietyId, pieces, dueAtMs }) =>
        varietyId === null ? [] : [{ varietyId, pieces, atMs: Math.max(nowMs, dueAtMs) }],
      ),
    ],
    walkIns: (id, atMs) => (walkIns === null ? 0 : part * walkIns(id, atMs)),
    rods: 'likely',
    least: 0,
    nowMs,
    closesAtMs: ahead?.closesAtMs ?? Number.MAX_SAFE_INTEGER,
  })
}

function coming({ state, nowMs, ahead }: Picking): readonly Pick<Supply, 'varietyId' | 'pieces' | 'readyAtMs'>[] {
  const { shop } = state
  if (ahead === null || shop === null)
    return [...onTheWay(state, nowMs)].flatMap(([varietyId, some]) => some.map((one) => ({ ...one, varietyId })))
  return supplyNow({ state, shop, nowMs, plan: ahead.plan, rods: 'likely' }).filter(({ from }) => from !== 'rod')
}

function freeAt({ fromMs }: Room, rooms: readonly Int32Array[], variety: number, nowMs: number): number {
  return rooms[variety]?.[fromMs.lastIndexOf(nowMs)] ?? 0
}

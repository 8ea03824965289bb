import type { Short } from '../day/events.ts'
import type { Line } from '../day/state.ts'
import type { OrderId, PlannedId, ShelfId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { Book } from './book.ts'
import { bookOf, mixedWanted, takenAtOf } from './book.ts'
import { roomFrom } from './headroom.ts'
import { isKeptFrom } from './keep-now.ts'
import { mixedFlow } from './mixed-flow.ts'
import type { SupplyAsked } from './promise.ts'
import { byName, courseOf } from './risk-course.ts'
import { savesFor } from './risk-saves.ts'
import type { SpokenFor } from './spoken-for.ts'
import { coolMs } from './supply.ts'

/** An open order of today that cannot be met as things stand. */
export interface AtRisk {
  readonly orderId: OrderId
  readonly dueAtMs: EpochMs
  /** What will not be there when it is due, by variety; null: of mixed lines. */
  readonly missing: readonly Short[]
  /** What would save it, the best first; empty: nothing that the board knows of. */
  readonly saves: readonly RiskSave[]
}

export type RiskSave =
  /** They lie there for walk-ins: keep them now. */
  | { readonly code: 'keepNow'; readonly lines: readonly Line[] }
  /** A load that brings them comes too late: it would have to be ready by then, and still can. */
  | {
      readonly code: 'earlierLoad'
      readonly loadId: PlannedId
      readonly shelfId: ShelfId
      readonly readyAtMs: EpochMs
      readonly readyByMs: EpochMs
    }
  /** A load that is ready in time could bring them: dough is there. */
  | {
      readonly code: 'otherLoad'
      readonly loadId: PlannedId
      readonly shelfId: ShelfId
      readonly lines: readonly Line[]
    }
  /** Other varieties in their place, of which there is enough: ask whoever ordered. */
  | { readonly code: 'otherVariety'; readonly lines: readonly Line[] }
  /** All but the missing ones when it is due, the rest then. */
  | { readonly code: 'split'; readonly restAtMs: EpochMs }
  /** All of it then. */
  | { readonly code: 'later'; readonly atMs: EpochMs }

/** A line of an order that will be short. */
export interface ShortLine {
  readonly one: SpokenFor
  readonly takenAtMs: number
  readonly missing: number
  /** When the last missing piece is there; null: not today. */
  readonly wholeAtMs: number | null
}

/**
 * Which open orders of today cannot be met, in order of their due times, and what saves them. Pieces go to orders as they
 * come out where the shop keeps them so, soonest due first; of what lies on the rods walk-ins take their part before.
 * Mixed lines have what is nobody's (`headroom.ts`).
 */
export function ordersAtRisk(asked: SupplyAsked): readonly AtRisk[] {
  const book = bookOf(asked, 'likely', { least: true })
  if (book === null || book.others.length === 0) return []
  const rooms = book.room.free.map(roomFrom)
  const shorts = [...shortByName(book), ...shortMixed(book, rooms)]
  const saving = { asked, book, rooms }
  const byOrder = new Map<OrderId, ShortLine[]>()
  for (const short of shorts) {
    const so = byOrder.get(short.one.orderId)
    if (so === undefined) byOrder.set(short.one.orderId, [short])
    else so.push(short)
  }
  return [...byOrder]
    .map(([orderId, lines]) => ({
      orderId,
      dueAtMs: lines[0]?.one.dueAtMs ?? asked.nowMs,
      missing: lines.map(({ one, missing }) => ({ varietyId: one.varietyId, pieces: missing })),
      saves: savesFor(saving, lines),
    }))
    .sort((one, other) => one.dueAtMs - other.dueAtMs || (one.orderId < other.orderId ? -1 : 1))
}

function shortByName(book: Book): readonly ShortLine[] {
  const { shop, nowMs, closesAtMs, walkIns } = book
  const takenAt = takenAtOf(shop, book.others, nowMs, closesAtMs)
  const supply = byName(book.supply)
  const part = shop.orders.walkInPercent / 100
  return [...byName(book.others)].flatMap(([varietyId, others]) => {
    const lines = others.map((one) => ({ takenAtMs: takenAt(one), dueAtMs: one.dueAtMs, pieces: one.pieces }))
    const cools = coolMs(shop, varietyId)
    const ends = courseOf({
      supply: supply.get(varietyId) ?? [],
      lines,
      walkIns: (atMs) => (atMs <= nowMs ? 0 : part * walkIns(varietyId, atMs)),
      isKept: ({ dueAtMs }, readyAtMs) =>
        shop.orders.keepsAsTheyCome && isKeptFrom(dueAtMs as EpochMs, readyAtMs - cools),
    })
    return others.flatMap((one, at): ShortLine[] => {
      const { missing = 0, wholeAtMs = null } = ends[at] ?? {}
      return missing === 0 ? [] : [{ one, takenAtMs: lines[at]?.takenAtMs ?? nowMs, missing, wholeAtMs }]
    })
  })
}

function shortMixed(book: Book, rooms: readonly Int32Array[]): readonly ShortLine[] {
  const { shop, room, others, nowMs, closesAtMs } = book
  const takenAt = takenAtOf(shop, others, nowMs, closesAtMs)
  const mixed = others.filter(({ varietyId }) => varietyId === null)
  if (mixed.length === 0) return []
  const wanted = mixed.map((one) => mixedWanted(shop, room, one, takenAt(one)))
  const served = mixedFlow(rooms, wanted)
  return mixed.flatMap((one, at): ShortLine[] => {
    const missing = one.pieces - (served[at] ?? 0)
    if (missing <= 0) return []
    const fitting = rooms.filter((_, variety) => wanted[at]?.fits[variety] === true)
    const whole = room.fromMs.findIndex((_, i) => fitting.reduce((sum, row) => sum + (row[i] ?? 0), 0) >= one.pieces)
    return [{ one, takenAtMs: takenAt(one), missing, wholeAtMs: room.fromMs[whole] ?? null }]
  })
}

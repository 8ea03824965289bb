import type { EventOf, Take, VarietyLot } from '../day/events.ts'
import type { Folding } from '../day/folding.ts'
import { book } from '../day/folding.ts'
import { put } from '../day/recorder.ts'
import type { Line, Lot, Seen, Stock } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { assert, fail, must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** The pace of sales is kept in quarters of an hour, for the last two hours. */
export const PACE_BUCKET_MS = 15 * 60_000
const PACE_BUCKETS_MAX = 8

interface Come {
  readonly atMs: EpochMs
  /** Of a keep that was released: pieces that are kept no more. */
  readonly unkept: number
}

/** New pieces on a rod: from the oven, or from a keep that was released. */
export function addLot(
  folding: Folding,
  { varietyId, doughId, lot }: VarietyLot,
  { atMs, unkept }: Come = { atMs: lot.readyAtMs, unkept: 0 },
): void {
  const stock = stockOf(folding, varietyId, doughId)
  const lots = [...stock.lots, lot].sort(byReady)
  const after: Stock = { ...stock, kept: stock.kept - unkept, lots, goneSinceMs: null }
  // What comes to an empty rod is all that is there; what was kept had left it, and nothing of it went unseen till now.
  const isFirst = stock.lots.length === 0
  const seenAtMs = epochMs(Math.max(atMs, lot.readyAtMs))
  putStock(folding, isFirst ? { ...after, seen: seenAt(folding, stock, seenAtMs), unnamedSince: 0 } : after)
}

export function applyReleased(folding: Folding, event: EventOf<'released'>): void {
  for (const part of event.lots) addLot(folding, part, { atMs: event.atMs, unkept: part.lot.pieces })
  put(folding.state, folding.undo, 'keeps', event.keepId, null)
}

/** Sold, used in the kitchen, wasted or given away. What was not known to be there is booked as found. */
export function applyStockTaken(folding: Folding, event: EventOf<'stockTaken'>): void {
  const stock = stockOf(folding, event.varietyId, event.doughId)
  const pieces = piecesOf(event.takes) + event.found
  const lots = lotsWithout(stock.lots, event.takes)
  const sold = event.fate === 'sold' ? pieces : 0
  // By far the most frequent event of a year: the stock is put together once, not spread twice.
  putStock(folding, {
    varietyId: stock.varietyId,
    doughId: stock.doughId,
    lots,
    kept: stock.kept,
    dayOld: stock.dayOld,
    soldToday: stock.soldToday + sold,
    pace: paceAfter(stock.pace, sold, event.atMs),
    counted: stock.counted,
    seen: stock.seen,
    unnamedSince: event.unnamed ? stock.unnamedSince + pieces : stock.unnamedSince,
    unnamedToday: event.unnamed ? stock.unnamedToday + pieces : stock.unnamedToday,
    dayOldPut: stock.dayOldPut,
    goneSinceMs: goneSince(stock, lots, event.atMs),
  })
  book(folding, event.doughId, 'unexplained', -event.found)
  book(folding, event.doughId, event.fate, pieces)
}

export function applyCounted(folding: Folding, event: EventOf<'counted'>): void {
  const stock = stockOf(folding, event.varietyId, event.doughId)
  const matured = stock.lots.map((lot) =>
    event.matured.includes(lot.id) && lot.readyAtMs > event.atMs ? { ...lot, readyAtMs: event.atMs } : lot,
  )
  const left = lotsWithout(matured, event.takes)
  const lots = event.foundLot === null ? left : [...left, event.foundLot].sort(byReady)
  const counted = { atMs: event.atMs, pieces: event.pieces, within: event.within }
  const seen = seenAt(folding, stock, event.atMs)
  putStock(folding, { ...stock, lots, counted, seen, unnamedSince: 0, goneSinceMs: goneSince(stock, lots, event.atMs) })
  if (event.habit !== null) put(folding.state, folding.undo, 'habits', event.varietyId, event.habit)
  book(folding, event.doughId, 'unexplained', event.unexplained)
}

export function applyKept(folding: Folding, event: EventOf<'kept'>): void {
  for (const part of event.parts) {
    const stock = stockOf(folding, part.varietyId, part.doughId)
    const lots = lotsWithout(stock.lots, part.takes)
    const kept = stock.kept + piecesOf(part.takes) + part.found
    putStock(folding, { ...stock, lots, kept, goneSinceMs: goneSince(stock, lots, event.atMs) })
    book(folding, part.doughId, 'unexplained', -part.found)
  }
  put(folding.state, folding.undo, 'keeps', event.keep.id, event.keep)
}

export function applyHandedOver(folding: Folding, event: EventOf<'handedOver'>): void {
  for (const { varietyId, doughId, pieces } of event.parts) {
    const stock = must(folding.state.stock, varietyId)
    assert(stock.kept >= pieces, `handing over ${pieces} of ${stock.kept} kept ${varietyId}`)
    putStock(folding, {
      ...stock,
      kept: stock.kept - pieces,
      soldToday: stock.soldToday + pieces,
      pace: paceAfter(stock.pace, pieces, event.atMs),
    })
    book(folding, doughId, 'sold', pieces)
  }
  put(folding.state, folding.undo, 'keeps', event.keepId, null)
}

/** Day-old pieces come back for sale: out of the account of their day, into this one. */
export function applyDayOldPut(folding: Folding, event: EventOf<'dayOldPut'>): void {
  for (const { varietyId, doughId, pieces } of event.lines) {
    const stock = stockOf(folding, varietyId, doughId)
    putStock(folding, { ...stock, dayOld: stock.dayOld + pieces, dayOldPut: stock.dayOldPut + pieces })
    book(folding, doughId, 'carriedIn', pieces)
  }
}

export function applyDayOldTaken(folding: Folding, event: EventOf<'dayOldTaken'>): void {
  const { varietyId, doughId, pieces, found, fate } = event
  const stock = stockOf(folding, varietyId, doughId)
  assert(stock.dayOld + found >= pieces, `taking ${pieces} of ${stock.dayOld} day-old ${varietyId}`)
  putStock(folding, { ...stock, dayOld: stock.dayOld + found - pieces })
  book(folding, doughId, 'unexplained', -found)
  book(folding, doughId, fate, pieces)
}

/** Kept pieces that nobody fetched are day-old. */
export function dropKept(folding: Folding, { varietyId, pieces }: Line): void {
  const stock = must(folding.state.stock, varietyId)
  putStock(folding, { ...stock, kept: stock.kept - pieces })
  book(folding, stock.doughId, 'dayOld', pieces)
}

/** What is left at close is day-old; what is kept stays kept. */
export function closeStock(folding: Folding, stock: Stock): void {
  book(folding, stock.doughId, 'dayOld', piecesOf(stock.lots) + stock.dayOld)
  const rest: Stock = { ...NO_STOCK, varietyId: stock.varietyId, doughId: stock.doughId, kept: stock.kept }
  put(folding.state, folding.undo, 'stock', stock.varietyId, stock.kept === 0 ? null : rest)
}

function stockOf({ state }: Folding, varietyId: VarietyId, doughId: DoughId): Stock {
  return state.stock.get(varietyId) ?? { varietyId, doughId, ...NO_STOCK }
}

/** Nothing of a variety, and nothing known of it. */
export const NO_STOCK: Omit<Stock, 'varietyId' | 'doughId'> = {
  lots: [],
  kept: 0,
  dayOld: 0,
  soldToday: 0,
  pace: [],
  counted: null,
  seen: null,
  unnamedSince: 0,
  unnamedToday: 0,
  dayOldPut: 0,
  goneSinceMs: null,
}

/** With what is on record as sold by then, so that a later look knows what was sold since. */
function seenAt({ state }: Folding, { soldToday }: Stock, atMs: EpochMs): Seen {
  let shopSold = 0
  for (const stock of state.stock.values()) shopSold += stock.soldToday
  return { atMs, sold: soldToday, shopSold }
}

function putStock({ state, undo }: Folding, stock: Stock): void {
  put(state, undo, 'stock', stock.varietyId, stock)
}

function lotsWithout(lots: readonly Lot[], takes: readonly Take[]): readonly Lot[] {
  if (takes.length === 0) return lots
  const left: Lot[] = []
  let found = 0
  for (const lot of lots) {
    const pieces = takes.find((take) => take.batchId === lot.id)?.pieces ?? 0
    if (pieces > lot.pieces) fail(`taking ${pieces} of ${lot.pieces} in ${lot.id}`)
    if (pieces > 0) found += 1
    if (pieces === 0) left.push(lot)
    else if (pieces < lot.pieces) left.push({ ...lot, pieces: lot.pieces - pieces })
  }
  assert(found === takes.length, 'taking from a lot that is not there')
  return left
}

function paceAfter(pace: Stock['pace'], pieces: number, atMs: EpochMs): Stock['pace'] {
  if (pieces === 0) return pace
  const fromMs = epochMs(atMs - (atMs % PACE_BUCKET_MS))
  const last = pace[pace.length - 1]
  // A tap from before the newest quarter counts in the newest: the pace is a rate, not a record.
  if (last === undefined || last.fromMs < fromMs) return [...pace, { fromMs, pieces }].slice(-PACE_BUCKETS_MAX)
  return [...pace.slice(0, -1), { fromMs: last.fromMs, pieces: last.pieces + pieces }]
}

function goneSince(stock: Stock, lots: readonly Lot[], atMs: EpochMs): EpochMs | null {
  if (lots.length > 0) return null
  return stock.goneSinceMs ?? atMs
}

function byReady(one: Lot, other: Lot): number {
  return one.readyAtMs - other.readyAtMs || (one.id < other.id ? -1 : 1)
}

import type { ItemDay, Purchase, Span } from '../../shared-core/demand/sales-day.ts'
import { piecesOf, stampOf } from './fields.ts'
import { wrongAt } from './input-error.ts'
import { readCsv } from './read-csv.ts'

/** All that sales files hold of one open day: purchases by item. */
export type TillDay = ReadonlyMap<string, readonly Purchase[]>

/** The days of sales files in order, whatever the order of rows and files. */
export interface Till {
  readonly dates: readonly string[]
  readonly days: ReadonlyMap<string, TillDay>
}

/** A second or two. */
const ROWS_A_SENTENCE = 250_000

/**
 * Reads sales files (ts,txn,item,qty). Rows of one transaction, item and instant are one purchase.
 * @param say is told how far it is and what is left out
 * @throws InputError with file and line
 */
export async function readTill(paths: readonly string[], say: (sentence: string) => void): Promise<Till> {
  const days = new Map<string, Map<string, Map<string, Purchase>>>()
  for (const path of paths) {
    let empty = 0
    let rows = 0
    for await (const row of readCsv(path, ['ts', 'txn', 'item', 'qty'])) {
      rows += 1
      if (rows % ROWS_A_SENTENCE === 0) say(`${path}: ${rows} rows`)
      const ts = row.text('ts')
      const stamp = stampOf(ts)
      if (stamp === null) {
        throw wrongAt(path, row.line, `ts is '${ts}'; it would be a local time like 2026-11-26T08:15:30`)
      }
      const item = row.text('item')
      const qty = row.text('qty')
      const pieces = piecesOf(qty)
      if (pieces === null) throw wrongAt(path, row.line, `qty is '${qty}'; it would be a whole number of pieces`)
      if (pieces === 0) empty += 1
      else add(days, stamp, item, row.maybe('txn'), pieces)
    }
    if (empty > 0) say(`${path}: ${empty} rows with a qty of 0 are left out`)
  }
  const dates = [...days.keys()].sort()
  return { dates, days: new Map(dates.map((date) => [date, inOrder(days.get(date) ?? new Map())])) }
}

/** An item's day, as far as its purchases go. Returns have no time that says anything of demand. */
export function itemDayOf(purchases: readonly Purchase[], gone: readonly Span[] = []): ItemDay {
  const sold = purchases.filter(({ pieces }) => pieces > 0)
  const unseen = purchases.reduce((sum, { pieces }) => sum + Math.min(0, pieces), 0)
  return { sold, unseen, gone, offered: true }
}

function add(
  days: Map<string, Map<string, Map<string, Purchase>>>,
  { date, minute }: { date: string; minute: number },
  item: string,
  transaction: string,
  pieces: number,
): void {
  const day = madeAt(days, date)
  const purchases = madeAt(day, item)
  // Rows without a transaction, and returns, stay by themselves.
  const key = transaction === '' || pieces < 0 ? `row ${purchases.size}` : `${transaction} ${minute}`
  purchases.set(key, { minute, pieces: (purchases.get(key)?.pieces ?? 0) + pieces })
}

function inOrder(day: ReadonlyMap<string, ReadonlyMap<string, Purchase>>): TillDay {
  const items = [...day.keys()].sort()
  return new Map(items.map((item) => [item, [...(day.get(item)?.values() ?? [])].sort(byTime)]))
}

function byTime(left: Purchase, right: Purchase): number {
  return left.minute - right.minute || left.pieces - right.pieces
}

function madeAt<Value>(map: Map<string, Map<string, Value>>, key: string): Map<string, Value> {
  const found = map.get(key)
  if (found !== undefined) return found
  const made = new Map<string, Value>()
  map.set(key, made)
  return made
}

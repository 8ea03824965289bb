import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { FEED } from './sales-tables.ts'

/** What was sold of a name in one purchase, returns taken off. */
export interface DaySale {
  readonly name: number
  readonly second: number
  /** "": a purchase of its own. */
  readonly purchase: string
  pieces: number
}

export interface DayRows {
  readonly day: number
  readonly sales: readonly DaySale[]
  /** Returns for which there is no sale, by name: positive. */
  readonly back: ReadonlyMap<number, number>
}

interface Row {
  readonly day: number
  readonly second: number
  readonly purchase: string
  readonly name: number
  readonly pieces: number
  readonly row_id: string
  readonly nth: number
  readonly file: number
  readonly voided: number
}

/**
 * Rows of the table, day by day: each sale once, whichever files have it, without what was voided or came back. Between
 * two days nothing of the table is held open, so that others may write to it.
 */
export function* dayRows(db: DatabaseSyncInstance, fromDay: number, toDay: number): Generator<DayRows> {
  const next = db.prepare('SELECT min(day) AS day FROM rows WHERE day > ? AND day <= ?')
  const all = db.prepare('SELECT * FROM rows WHERE day = ? ORDER BY second, purchase, name, pieces, row_id, nth, file')
  for (let after = fromDay - 1; ; ) {
    const day = next.get(after, toDay)?.day
    if (day == null) return
    after = Number(day)
    yield dayOf(all.all(after) as unknown as readonly Row[])
  }
}

function dayOf(rows: readonly Row[]): DayRows {
  // What a till sent by itself stands in its files too, under other ids.
  const isInFiles = rows.some(({ file }) => file !== FEED)
  const counted = once(isInFiles ? rows.filter(({ file }) => file !== FEED) : rows)
  const sales: DaySale[] = []
  const returns: Row[] = []
  for (const row of counted) {
    if (row.pieces > 0) sales.push({ name: row.name, second: row.second, purchase: row.purchase, pieces: row.pieces })
    else if (row.pieces < 0) returns.push(row)
  }
  const back = new Map<number, number>()
  for (const row of returns) {
    const left = takeOff(sales, row)
    if (left > 0) back.set(row.name, (back.get(row.name) ?? 0) + left)
  }
  return { day: rows[0]?.day ?? 0, sales: sales.filter(({ pieces }) => pieces > 0), back }
}

/** Rows of several files that say the same stand together; voided in one is voided. */
function once(rows: readonly Row[]): readonly Row[] {
  const kept: Row[] = []
  let last: Row | null = null
  let isVoided = false
  const end = () => {
    if (last !== null && !isVoided) kept.push(last)
  }
  for (const row of rows) {
    if (last !== null && isSame(last, row)) {
      isVoided ||= row.voided === 1
      continue
    }
    end()
    last = row
    isVoided = row.voided === 1
  }
  end()
  return kept
}

function isSame(one: Row, other: Row): boolean {
  return (
    one.second === other.second &&
    one.name === other.name &&
    one.purchase === other.purchase &&
    one.pieces === other.pieces &&
    one.nth === other.nth &&
    one.row_id === other.row_id
  )
}

/** Off the sales of the same purchase, else off the latest ones of that name before. @returns what is left over */
function takeOff(sales: readonly DaySale[], { name, purchase, second, pieces }: Row): number {
  let left = -pieces
  const off = (fits: (sale: DaySale) => boolean) => {
    for (let at = sales.length - 1; at >= 0 && left > 0; at -= 1) {
      const sale = sales[at]
      if (sale === undefined || sale.name !== name || !fits(sale)) continue
      const some = Math.min(left, sale.pieces)
      sale.pieces -= some
      left -= some
    }
  }
  if (purchase !== '') off((sale) => sale.purchase === purchase)
  off((sale) => sale.second <= second)
  return left
}

import type { EpochMs } from '../../shared-core/units.ts'
import { businessMoment } from './local-times.ts'
import type { SalesBooks } from './sales-books.ts'
import { FEED } from './sales-tables.ts'

/** A row that a till posted of a day that is over. */
export interface FedSale {
  readonly atMs: EpochMs
  /** The variety's name or the till's; null: nobody knows which. */
  readonly name: string | null
  readonly pieces: number
  /** The sender and the row's id; null: each sending counts. */
  readonly id: string | null
}

/** The name of rows that have none. */
const NO_NAME = '?'

/** Keeps rows of days that are over. @returns how many were not there yet */
export function feedSales(books: SalesBooks, sales: readonly FedSale[]): number {
  const { db, names, writer } = books
  const times = books.times()
  if (sales.some(({ name }) => name === null) && names.meaningOf(NO_NAME) === null)
    names.mean([{ name: NO_NAME, meaning: { kind: 'unnamed', pieces: 1, among: null } }])
  let taken = 0
  db.exec('BEGIN IMMEDIATE')
  try {
    for (const { atMs, name, pieces, id } of sales) {
      const { day, second } = businessMoment(times.of(atMs))
      const row = { day, second, item: name ?? NO_NAME, pieces, purchase: '', rowId: id ?? '', voided: false }
      if (writer.write(row, FEED, []) === 'new') taken += 1
      books.days.rowsChanged(day, day)
    }
    writer.flush(FEED)
    db.exec('COMMIT')
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK')
    writer.forget()
    throw error
  }
  return taken
}

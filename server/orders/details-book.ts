import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { OrderDetails } from '../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { openDetails, WAIT_MS } from './details-table.ts'

/** A writing of the details of one order, or of one standing order. */
export interface WrittenDetails extends OrderDetails {
  /** Of an order or a standing order. */
  readonly id: string
  /** `Order.details` of that writing. */
  readonly version: number
  /** The order's day, YYYY-MM-DD; null: it stands. */
  readonly day: string | null
  readonly writtenAtMs: EpochMs
}

/** Names, phone numbers and notes of orders: written, read, deleted for good and forgotten in their time. */
export class DetailsBook {
  readonly #db: DatabaseSyncInstance
  /** Whether the log may still hold what was deleted. */
  #isLogDirty = true

  /** @param file ":memory:" for one that is gone with the process. @throws Error with a sentence when it cannot be used */
  constructor(sqlite: Sqlite, file: string) {
    this.#db = openDetails(sqlite, file)
  }

  /** On disk when this returns; of what was there before, the newest stays until the next writing. */
  write({ id, version, name, phone, note, day, writtenAtMs }: WrittenDetails): void {
    this.#together(() => {
      this.#db.prepare('DELETE FROM details WHERE id = ? AND version >= ?').run(id, version)
      this.#db
        .prepare(
          'DELETE FROM details WHERE id = ? AND version < (SELECT max(version) FROM details AS other WHERE other.id = details.id)',
        )
        .run(id)
      this.#db
        .prepare('INSERT INTO details VALUES (?, ?, ?, ?, ?, ?, ?)')
        .run(id, version, name, phone, note, day, writtenAtMs)
    })
    this.#isLogDirty = true
  }

  /** The order is for another day now, or a standing one ended (or stands again: null): its days count from there. */
  setDay(id: string, day: string | null): void {
    this.#db.prepare('UPDATE details SET day = ? WHERE id = ? AND day IS NOT ?').run(day, id, day)
  }

  /** @param version that writing, or the newest before it; null: the newest of all @returns null: there is none */
  find(id: string, version: number | null): WrittenDetails | null {
    const row =
      version === null
        ? this.#db.prepare('SELECT * FROM details WHERE id = ? ORDER BY version DESC LIMIT 1').get(id)
        : this.#db
            .prepare('SELECT * FROM details WHERE id = ? AND version <= ? ORDER BY version DESC LIMIT 1')
            .get(id, version)
    return row === undefined ? null : writtenIn(row)
  }

  /** The newest writing of each order, in the order of their ids. */
  all(): readonly WrittenDetails[] {
    const rows = this.#db
      .prepare(
        'SELECT * FROM details WHERE version = (SELECT max(version) FROM details AS other WHERE other.id = details.id) ORDER BY id',
      )
      .all()
    return rows.map(writtenIn)
  }

  /** Ids of which there is something without a day: those of standing orders. */
  standing(): readonly string[] {
    const rows = this.#db.prepare('SELECT DISTINCT id FROM details WHERE day IS NULL ORDER BY id').all()
    return rows.map(({ id }) => String(id))
  }

  /**
   * Deletes all writings of these for good; of a standing order also those of its dates (`ID.YYYY-MM-DD`).
   * @returns of how many there was something
   */
  forget(ids: readonly string[]): number {
    const remove = this.#db.prepare('DELETE FROM details WHERE id = ? OR (id > ? AND id < ? AND length(id) = ?)')
    let found = 0
    this.#together(() => {
      // "/" comes right after ".": between the two are the ids that go on with a dot.
      for (const id of ids)
        if (Number(remove.run(id, `${id}.`, `${id}/`, id.length + '.YYYY-MM-DD'.length).changes) > 0) found += 1
    })
    this.#forgetLog(found > 0)
    return found
  }

  /**
   * Deletes for good what is of a day that is more than `forgetDays` past.
   * @param today the shop's date
   * @returns how many writings
   */
  purge(today: string, forgetDays: number): number {
    const { changes } = this.#db.prepare('DELETE FROM details WHERE day < ?').run(dateAfter(today, -forgetDays))
    this.#forgetLog(Number(changes) > 0)
    return Number(changes)
  }

  /**
   * Takes what was deleted out of SQLite's log too. While somebody reads the file, as the copies do, it cannot be: then
   * the next time.
   * @returns whether nothing that was deleted is left
   */
  tidyLog(): boolean {
    if (this.#isLogDirty) {
      // Nobody waits for a reader.
      this.#db.exec('PRAGMA busy_timeout = 0')
      const { busy } = this.#db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get() ?? {}
      this.#db.exec(`PRAGMA busy_timeout = ${WAIT_MS}`)
      this.#isLogDirty = Number(busy) !== 0
    }
    return !this.#isLogDirty
  }

  close(): void {
    this.#isLogDirty = true
    this.tidyLog()
    this.#db.close()
  }

  #forgetLog(isChanged: boolean): void {
    this.#isLogDirty ||= isChanged
    if (isChanged) this.tidyLog()
  }

  #together(work: () => void): void {
    this.#db.exec('BEGIN IMMEDIATE')
    try {
      work()
      this.#db.exec('COMMIT')
    } finally {
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
    }
  }
}

function writtenIn(row: Readonly<Record<string, unknown>>): WrittenDetails {
  return {
    id: String(row.id),
    version: Number(row.version),
    name: String(row.name),
    phone: String(row.phone),
    note: String(row.note),
    day: row.day === null ? null : String(row.day),
    writtenAtMs: epochMs(Number(row.written_at_ms)),
  }
}

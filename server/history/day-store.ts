import { rmSync } from 'node:fs'
import { gunzipSync, gzipSync } from 'node:zlib'
import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { DayFigures } from '../../shared-core/day/figures.ts'
import type { StateJson } from '../../shared-core/day/state-json.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Sqlite } from '../journal/sqlite.ts'

/** Raised by one whenever what is kept of a day changes: what was kept in another form is made anew. */
const FORM_VERSION = 3

/** A business day of the journal, without its start state. */
export interface DayRow {
  /** Counts the shop's days from 1. */
  readonly number: number
  /** Local date of its opening; a shop that closes twice a day has two days of one label. */
  readonly label: string
  readonly firstSeq: number
  /** Of its last close; null while it is open. */
  readonly lastSeq: number | null
  readonly openedAtMs: EpochMs
  readonly closedAtMs: EpochMs | null
  /** Null while it is open. */
  readonly figures: DayFigures | null
}

/** What is known once it is closed; the texts are as in `DayTexts`. */
export type ClosedPart = Pick<DayRow, 'lastSeq' | 'closedAtMs' | 'figures'> & {
  readonly sales: string | null
  readonly line: string | null
}

/** A closed day for those who learn from it. */
export interface DayTexts {
  /** As demand sees it (`shared-core/demand/day-text.ts`). */
  readonly sales: string
  /** What its taps say of the line's times: JSON of a `LineDay`. */
  readonly line: string
}

/** Which fold of which journal the days were made by; another one makes them anew. */
export interface MadeBy {
  readonly journalId: string
  /** After a copy was put back the journal has another: the days may know entries that are gone. */
  readonly course: string
  readonly foldVersion: number
}

/**
 * The days in a small SQLite file of their own. Nothing in it is the truth: it can be deleted at any time and is made
 * again from the journal, so that it is not synced to disk at each write either.
 */
export class DayStore {
  readonly #db: DatabaseSyncInstance
  readonly #insert: StatementSyncInstance
  readonly #close: StatementSyncInstance

  /**
   * @param file ":memory:" for one that is gone with the process
   * @throws when the file is no database, damaged or cannot be written
   */
  constructor(sqlite: Sqlite, file: string, madeBy: MadeBy) {
    this.#db = new sqlite.DatabaseSync(file)
    try {
      this.#db.exec(file === ':memory:' ? '' : 'PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;')
      this.#makeTables({ ...madeBy, formVersion: FORM_VERSION })
      this.#check()
    } catch (error) {
      this.#db.close()
      throw error
    }
    this.#insert = this.#db.prepare(
      'INSERT INTO days (number, label, first_seq, opened_at_ms, start) VALUES (?, ?, ?, ?, ?)',
    )
    this.#close = this.#db.prepare(
      'UPDATE days SET last_seq = ?, closed_at_ms = ?, figures = ?, sales = ?, line = ? WHERE number = ?',
    )
  }

  add(row: Omit<DayRow, keyof ClosedPart>, start: StateJson): void {
    this.#insert.run(row.number, row.label, row.firstSeq, row.openedAtMs, gzipSync(JSON.stringify(start)))
  }

  /** A day is closed, or goes on after all: then with nulls. */
  close(number: number, { lastSeq, closedAtMs, figures, sales, line }: ClosedPart): void {
    this.#close.run(lastSeq, closedAtMs, figures === null ? null : JSON.stringify(figures), sales, line, number)
  }

  newest(): DayRow | null {
    return this.list(Number.MAX_SAFE_INTEGER, 1)[0] ?? null
  }

  /** @param openedAtMs which of two days of that label; null: the newer one */
  find(label: string, openedAtMs: number | null): DayRow | null {
    const row = this.#db
      .prepare(`${SELECT} WHERE label = ? AND opened_at_ms = coalesce(?, opened_at_ms) ORDER BY number DESC LIMIT 1`)
      .get(label, openedAtMs)
    return row === undefined ? null : rowOf(row)
  }

  /** Newest first, those opened before an instant. */
  list(beforeMs: number, most: number): readonly DayRow[] {
    return this.#db
      .prepare(`${SELECT} WHERE opened_at_ms < ? ORDER BY number DESC LIMIT ?`)
      .all(beforeMs, most)
      .map((row) => rowOf(row as Row))
  }

  /** The state just before the day's first entry. */
  startOf(number: number): StateJson | null {
    const row = this.#db.prepare('SELECT start FROM days WHERE number = ?').get(number)
    return row === undefined ? null : JSON.parse(gunzipSync(row.start as Uint8Array).toString('utf8'))
  }

  /** Closed days, by number, oldest first, after a number. */
  textsAfter(number: number, most: number): readonly (DayTexts & { readonly number: number })[] {
    return this.#db
      .prepare('SELECT number, sales, line FROM days WHERE number > ? AND sales IS NOT NULL ORDER BY number LIMIT ?')
      .all(number, most)
      .map((row) => ({ number: Number(row.number), sales: String(row.sales), line: String(row.line) }))
  }

  /** Null: it is open, or there is none. */
  textsOf(number: number): DayTexts | null {
    const row = this.#db.prepare('SELECT sales, line FROM days WHERE number = ? AND sales IS NOT NULL').get(number)
    return row === undefined ? null : { sales: String(row.sales), line: String(row.line) }
  }

  /** Many writes as one. */
  together(write: () => void): void {
    this.#db.exec('BEGIN')
    try {
      write()
      this.#db.exec('COMMIT')
    } catch (error) {
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
      throw error
    }
  }

  shut(): void {
    // All in one file.
    this.#db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    this.#db.close()
  }

  /** @throws for a file that cannot be written, or of which a part, however far down, cannot be read */
  #check(): void {
    this.#db.exec('BEGIN IMMEDIATE; ROLLBACK')
    const found = this.#db.prepare('PRAGMA quick_check(1)').get()?.quick_check
    if (found !== 'ok') throw new Error(String(found))
    const newest = this.newest()
    if (newest !== null) this.startOf(newest.number)
  }

  #makeTables(madeBy: MadeBy & { readonly formVersion: number }): void {
    const wanted = JSON.stringify(madeBy)
    this.#db.exec('CREATE TABLE IF NOT EXISTS made_by (made_by TEXT NOT NULL) STRICT')
    const before = this.#db.prepare('SELECT made_by FROM made_by').get()?.made_by
    if (before !== wanted) this.#db.exec('DROP TABLE IF EXISTS days; DELETE FROM made_by')
    this.#db.exec(TABLE)
    if (before !== wanted) this.#db.prepare('INSERT INTO made_by VALUES (?)').run(wanted)
  }
}

/**
 * The store of a file; one that is no database, or damaged, is made anew, as nothing in it is the truth. Where no file
 * can be written at all the days are kept for as long as the process runs: past days must not keep a shop from opening.
 */
export function openDayStore(sqlite: Sqlite, file: string, madeBy: MadeBy): DayStore {
  const attempts = [
    () => new DayStore(sqlite, file, madeBy),
    () => {
      for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true })
      return new DayStore(sqlite, file, madeBy)
    },
  ]
  for (const attempt of attempts) {
    try {
      return attempt()
    } catch {
      // The next way.
    }
  }
  return new DayStore(sqlite, ':memory:', madeBy)
}

const TABLE = `CREATE TABLE IF NOT EXISTS days (
  number INTEGER PRIMARY KEY,
  label TEXT NOT NULL,
  first_seq INTEGER NOT NULL,
  last_seq INTEGER,
  opened_at_ms INTEGER NOT NULL,
  closed_at_ms INTEGER,
  figures TEXT,
  sales TEXT,
  line TEXT,
  start BLOB NOT NULL
) STRICT;
CREATE INDEX IF NOT EXISTS days_by_label ON days (label);`
const SELECT = 'SELECT number, label, first_seq, last_seq, opened_at_ms, closed_at_ms, figures FROM days'

interface Row {
  readonly [column: string]: unknown
}

function rowOf(row: Row): DayRow {
  return {
    number: Number(row.number),
    label: String(row.label),
    firstSeq: Number(row.first_seq),
    lastSeq: row.last_seq === null ? null : Number(row.last_seq),
    openedAtMs: epochMs(Number(row.opened_at_ms)),
    closedAtMs: row.closed_at_ms === null ? null : epochMs(Number(row.closed_at_ms)),
    figures: row.figures === null ? null : JSON.parse(String(row.figures)),
  }
}

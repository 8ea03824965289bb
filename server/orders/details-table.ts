import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'

/** Beside the journal and in the copies' folder. */
export const DETAILS_FILE = 'details.sqlite'

/**
 * Names, phone numbers and notes of orders, in a file of their own beside the journal: what is written there stays for
 * ever, and these must be able to go. A row for each writing (`Order.details`), so that a change that did not reach the
 * journal, or was taken back, leaves the one before it; the turn drops what is older.
 *
 * `day` is the order's, from which the days until it is forgotten count; null: it stands.
 */
const STEPS = [
  `CREATE TABLE details (
    id TEXT NOT NULL,
    version INTEGER NOT NULL,
    name TEXT NOT NULL,
    phone TEXT NOT NULL,
    note TEXT NOT NULL,
    day TEXT,
    written_at_ms INTEGER NOT NULL,
    PRIMARY KEY (id, version)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX details_by_day ON details (day);`,
] as const

/** While it is waited for nothing else goes on; the copies read the file now and then, for milliseconds. */
export const WAIT_MS = 250

/**
 * Opens the file, in today's form, or makes it. What is deleted is overwritten with zeros (`secure_delete`), here and
 * after a checkpoint in the log.
 * @param file ":memory:" for one that is gone with the process
 * @throws JournalError with a sentence when it is newer than this release, damaged, or cannot be written
 */
export function openDetails(sqlite: Sqlite, file: string): DatabaseSyncInstance {
  const db = new sqlite.DatabaseSync(file)
  try {
    db.exec(`PRAGMA busy_timeout = ${WAIT_MS}`)
    if (file !== ':memory:') db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;')
    makeForgetful(db)
    bringToForm(db)
    return db
  } catch (error) {
    db.close()
    const why = error instanceof Error ? error.message : String(error)
    throw new JournalError(
      `Names and notes of orders in ${file} cannot be used: ${why}. Stop the server; npm run restore puts them back.`,
    )
  }
}

/** A setting may be refused silently, so it is read back. */
function makeForgetful(db: DatabaseSyncInstance): void {
  db.exec('PRAGMA secure_delete = ON')
  if (Number(db.prepare('PRAGMA secure_delete').get()?.secure_delete) !== 1)
    throw new Error('this SQLite does not overwrite what is deleted')
}

function bringToForm(db: DatabaseSyncInstance): void {
  const form = Number(db.prepare('PRAGMA user_version').get()?.user_version)
  if (form > STEPS.length) throw new Error('they were written by a newer release of Boilboard')
  if (db.prepare('PRAGMA quick_check(1)').get()?.quick_check !== 'ok') throw new Error('the file is damaged')
  STEPS.slice(form).forEach((step, index) => {
    db.exec(`BEGIN IMMEDIATE; ${step} PRAGMA user_version = ${form + index + 1}; COMMIT`)
  })
}

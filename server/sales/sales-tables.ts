import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Sqlite } from '../journal/sqlite.ts'

/**
 * Past sales from tills, in a file of their own beside the journal: a year has some hundred thousand rows, which no fold
 * needs. It cannot be made again from the journal, so copies and exports carry it.
 *
 * A row's key is all that the till says of it, and how often the same file had said just that before (`nth`); the file
 * comes last. So the rows of one sale that came in several files stand together and count once, a file taken again adds
 * nothing, and one that is taken out leaves what others brought. Rejected: a hash as the key, which scatters the rows of
 * a day; one row for all files, which is lost with the first of them.
 */
const STEPS = [
  `CREATE TABLE files (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    encoding TEXT NOT NULL,
    bytes INTEGER NOT NULL,
    added_at_ms INTEGER NOT NULL,
    state TEXT NOT NULL,
    mapping TEXT,
    bytes_read INTEGER NOT NULL DEFAULT 0,
    next_line INTEGER NOT NULL DEFAULT 1,
    rows INTEGER NOT NULL DEFAULT 0,
    taken INTEGER NOT NULL DEFAULT 0,
    doubled INTEGER NOT NULL DEFAULT 0,
    bad INTEGER NOT NULL DEFAULT 0,
    from_day INTEGER,
    to_day INTEGER,
    why TEXT,
    is_noted INTEGER NOT NULL DEFAULT 0
  ) STRICT;
  CREATE TABLE names (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    meaning TEXT
  ) STRICT;
  CREATE TABLE rows (
    day INTEGER NOT NULL,
    second INTEGER NOT NULL,
    purchase TEXT NOT NULL,
    name INTEGER NOT NULL,
    pieces INTEGER NOT NULL,
    row_id TEXT NOT NULL,
    nth INTEGER NOT NULL,
    file INTEGER NOT NULL,
    voided INTEGER NOT NULL,
    PRIMARY KEY (day, second, purchase, name, pieces, row_id, nth, file)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE name_counts (
    file INTEGER NOT NULL,
    name INTEGER NOT NULL,
    rows INTEGER NOT NULL,
    pieces INTEGER NOT NULL,
    first_day INTEGER NOT NULL,
    last_day INTEGER NOT NULL,
    PRIMARY KEY (file, name)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE bad_rows (
    file INTEGER NOT NULL,
    line INTEGER NOT NULL,
    text TEXT NOT NULL,
    fault TEXT NOT NULL,
    PRIMARY KEY (file, line)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE mappings (
    header TEXT PRIMARY KEY,
    mapping TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;`,
] as const

/** Rows that the till sends by itself belong to no file. */
export const FEED = 0

/** Keeps a day's part of the table in memory while a file is taken. */
const CACHE_KB = 16_384

/**
 * Opens the file, in today's form, or makes it.
 * @param file ":memory:" for one that is gone with the process
 * @throws Error with a sentence when it is newer than this release, damaged, or cannot be written
 */
export function openSalesTables(sqlite: Sqlite, file: string): DatabaseSyncInstance {
  const db = new sqlite.DatabaseSync(file)
  try {
    return inOrder(db, file)
  } catch (error) {
    db.close()
    const why = error instanceof Error ? error.message : String(error)
    throw new Error(`Past sales in ${file} cannot be used: ${why}. Stop the server; npm run restore puts them back.`)
  }
}

function inOrder(db: DatabaseSyncInstance, file: string): DatabaseSyncInstance {
  // How far a file is taken commits together with its rows, so a power cut costs work, never a row twice.
  // The wait comes first: the copies look at the file too, and a new one is locked while it becomes a log.
  if (file !== ':memory:')
    db.exec('PRAGMA busy_timeout = 3000; PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;')
  db.exec(`PRAGMA cache_size = -${CACHE_KB}`)
  const form = Number(db.prepare('PRAGMA user_version').get()?.user_version)
  if (form > STEPS.length) throw new Error('they were written by a newer release of Boilboard')
  // Told at a start, and not by each question that meets a bad page: a million rows are looked at in 0.15 s.
  if (db.prepare('PRAGMA quick_check(1)').get()?.quick_check !== 'ok') throw new Error('the file is damaged')
  STEPS.slice(form).forEach((step, index) => {
    db.exec(`BEGIN IMMEDIATE; ${step} PRAGMA user_version = ${form + index + 1}; COMMIT`)
  })
  return db
}

import { randomBytes } from 'node:crypto'
import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { dirname } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { refuseGone } from './end-mark.ts'
import { JournalError } from './journal.ts'
import { NOT_WRITABLE, orInWords, remedyFor } from './journal-words.ts'
import { logTrouble } from './log-check.ts'
import { MIGRATIONS } from './migrations.ts'
import type { Sqlite } from './sqlite.ts'

export type JournalKind = 'shop' | 'demo'

/** A log of some megabytes on a slow drive. */
const OPENING_WAIT_MS = 3_000
/** While it is waited for nothing else goes on; longer than this, the screens send it again. */
const WRITING_WAIT_MS = 500

/**
 * Opens a journal's file, in today's form and safe against a power cut, or makes a new one.
 * @throws JournalError when the file is of another kind, newer than this release, or not to be trusted
 */
export function openFile(sqlite: Sqlite, file: string, kind: JournalKind): DatabaseSyncInstance {
  refuseGone(file)
  // Before SQLite drops without a word what it does not like of the log.
  const trouble = logTrouble(file)
  if (trouble !== null) throw new JournalError(`The journal is damaged: ${trouble}. ${remedyFor(file)}`)
  if (!existsSync(file)) makeFile(sqlite, file, kind)
  return orInWords(file, () => {
    // SQLite opens a file that may only be read all the same, and fails at the first tap.
    if (!isWritable(file)) throw new JournalError(`${NOT_WRITABLE} ${remedyFor(file)}`)
    if (statSync(file).size === 0) throw new JournalError(`The journal is an empty file. ${remedyFor(file)}`)
    const db = new sqlite.DatabaseSync(file)
    try {
      // A copy or a check that ends just now puts the log in order as it goes, and holds the file for that long.
      db.exec(`PRAGMA busy_timeout = ${OPENING_WAIT_MS}`)
      makeDurable(db)
      migrate(db, file)
      assertKind(db, file, kind)
      db.exec(`PRAGMA busy_timeout = ${WRITING_WAIT_MS}`)
      return db
    } catch (error) {
      db.close()
      throw error
    }
  })
}

function isWritable(file: string): boolean {
  try {
    accessSync(file, constants.W_OK)
    return true
  } catch {
    return false
  }
}

/**
 * Made beside and then named: a file that is empty or has no tables is never one that was just being made. Without
 * SQLite's log until it has its name, as the log goes by the name.
 */
function makeFile(sqlite: Sqlite, file: string, kind: JournalKind): void {
  const fresh = `${file}-new`
  rmSync(fresh, { force: true })
  rmSync(`${fresh}-journal`, { force: true })
  orInWords(file, () => {
    const db = new sqlite.DatabaseSync(fresh)
    db.exec(`PRAGMA synchronous = FULL; BEGIN; ${MIGRATIONS.join('')}
      INSERT INTO about (key, value) VALUES ('journal_id', '${randomBytes(12).toString('hex')}'), ('kind', '${kind}');
      PRAGMA user_version = ${MIGRATIONS.length}; COMMIT`)
    db.close()
  })
  renameSync(fresh, file)
  syncFolder(dirname(file))
}

/** A new name is on disk only when its folder is; not every system can sync one. */
export function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r')
    fsyncSync(handle)
    closeSync(handle)
  } catch {
    // Windows opens no folder, and keeps names by itself.
  }
}

/** Sets what keeps an acknowledged commit through a power cut, and reads it back: a setting may be refused silently. */
function makeDurable(db: DatabaseSyncInstance): void {
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;')
  const mode = db.prepare('PRAGMA journal_mode').get()?.journal_mode
  const synchronous = db.prepare('PRAGMA synchronous').get()?.synchronous
  // 2 is FULL: https://sqlite.org/pragma.html#pragma_synchronous
  if (mode !== 'wal' || synchronous !== 2) {
    throw new JournalError(
      `This disk does not keep the journal safe (journal_mode ${mode}, synchronous ${synchronous}). Use a folder on a local disk.`,
    )
  }
}

function migrate(db: DatabaseSyncInstance, file: string): void {
  const version = formOf(db)
  if (version > MIGRATIONS.length) {
    throw new JournalError(
      `${file} was written by a newer release of Boilboard. Start that release, or a later one. If there never was one, the file is damaged. ${remedyFor(file)}`,
    )
  }
  MIGRATIONS.slice(version).forEach((step, index) => {
    // Together with its number: a start that is killed in the middle leaves the form before, whole.
    db.exec(`BEGIN IMMEDIATE; ${step} PRAGMA user_version = ${version + index + 1}; COMMIT`)
  })
}

/** How many steps of `MIGRATIONS` a file has taken. */
export function formOf(db: DatabaseSyncInstance): number {
  return Number(db.prepare('PRAGMA user_version').get()?.user_version)
}

/** Demo and real data never mix. */
function assertKind(db: DatabaseSyncInstance, file: string, kind: JournalKind): void {
  const known = aboutOf(db, 'kind')
  if (known === kind) return
  if (known === 'demo')
    throw new JournalError(`${file} is a demo's journal. Give a shop a folder of its own with --shop.`)
  if (known === 'archive')
    throw new JournalError(`${file} holds old entries of a journal. Open the journal that it lies beside.`)
  if (known === 'shop') throw new JournalError(`${file} is a real shop's journal. The demo does not open it.`)
  throw new JournalError(`The journal is damaged: it does not say whose it is. ${remedyFor(file)}`)
}

/** What the journal says about itself; null when it says nothing under this key. */
export function aboutOf(db: DatabaseSyncInstance, key: string): string | null {
  const value = db.prepare('SELECT value FROM about WHERE key = ?').get(key)?.value
  return value === undefined ? null : String(value)
}

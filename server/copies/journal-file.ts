import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { syncFolder } from '../journal/open-file.ts'
import type { Sqlite } from '../journal/sqlite.ts'

/** Journal files as plain SQLite: opened to look, copied whole, put in their place. */

/** All of any file: Node takes no -1 here, which is SQLite's own word for it. */
const PAGES_AT_ONCE = 2 ** 31 - 1

type Backup = (source: DatabaseSyncInstance, file: string, options: { readonly rate: number }) => Promise<unknown>

/** A file that is only read; another process, or thread, may be writing it meanwhile. */
export function openToRead(sqlite: Sqlite, file: string): DatabaseSyncInstance {
  const db = new sqlite.DatabaseSync(file, { readOnly: true })
  // Whoever opens or closes the file at this very moment is done in far less.
  db.exec('PRAGMA busy_timeout = 5000')
  return db
}

/**
 * A whole copy by SQLite's online backup, as it stands at one moment, in one file that needs no other beside it. All
 * pages in one step: with more, each commit of somebody else's would begin it anew (https://sqlite.org/backup.html).
 */
export async function copyWhole(sqlite: Sqlite, source: DatabaseSyncInstance, file: string): Promise<void> {
  removeFile(file)
  await (sqlite.backup as Backup)(source, file, { rate: PAGES_AT_ONCE })
  inOneFile(sqlite, file)
}

/** As `copyWhole`; what it was copied from is gone then, with its log. */
export async function moveWhole(sqlite: Sqlite, from: string, to: string): Promise<void> {
  const source = openToRead(sqlite, from)
  try {
    await copyWhole(sqlite, source, to)
  } finally {
    source.close()
  }
  removeFile(from)
}

/** The header of a copy says WAL as its source's does: a file that is carried about is better off without. */
function inOneFile(sqlite: Sqlite, file: string): void {
  const db = new sqlite.DatabaseSync(file)
  try {
    db.exec('PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL;')
  } finally {
    db.close()
  }
  sync(file)
}

/** Whether all its pages hang together. @throws when it is no database at all; see `isDamage` */
export function isSound(db: DatabaseSyncInstance): boolean {
  return db.prepare('PRAGMA quick_check(1)').get()?.quick_check === 'ok'
}

/** Whether a file is there, can be read and hangs together. @param table one that it must have */
export function isWhole(sqlite: Sqlite, file: string, table: string): boolean {
  if (!existsSync(file)) return false
  try {
    const db = openToRead(sqlite, file)
    try {
      // SQLite takes what is shorter than a page for a database without anything in it.
      db.prepare(`SELECT 1 FROM ${table} LIMIT 1`).get()
      return isSound(db)
    } finally {
      db.close()
    }
  } catch {
    return false
  }
}

/** Another file's whole content, in place when this returns; what was there is gone. */
export async function bringWhole(sqlite: Sqlite, from: string, to: string): Promise<void> {
  const db = openToRead(sqlite, from)
  try {
    await copyWhole(sqlite, db, `${to}.part`)
  } finally {
    db.close()
  }
  putInPlace(`${to}.part`, to)
}

/** SQLite's words for a file that is spoilt. */
export function isDamage(error: unknown): boolean {
  return error instanceof Error && /not a database|malformed/.test(error.message)
}

/** With what SQLite keeps beside it. */
export function removeFile(file: string): void {
  for (const end of FILE_ENDS) rmSync(`${file}${end}`, { force: true })
}

/** Those of a journal that are there, the file itself last: what stands beside it belongs to it and goes first. */
export function filesOf(file: string): readonly string[] {
  return FILE_ENDS.map((end) => `${file}${end}`).filter((one) => existsSync(one))
}

const FILE_ENDS = ['-journal', '-wal', '-shm', '-end', ''] as const

/** Renamed within a folder, and on disk when this returns. */
export function putInPlace(from: string, to: string): void {
  renameSync(from, to)
  syncFolder(dirname(to))
}

export function sync(file: string): void {
  const handle = openSync(file, 'r+')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

/**
 * An instant as part of a file's name, in UTC.
 * @example nameOfInstant(Date.parse('2026-11-26T06:42:05.123Z')) // '2026-11-26-064205'
 */
export function nameOfInstant(atMs: number): string {
  const [date, time = ''] = new Date(atMs).toISOString().split('T')
  return `${date}-${time.slice(0, 8).replaceAll(':', '')}`
}

/** A name in a folder that is not taken: with a number behind it where need be. */
export function freeName(path: string): string {
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? path : `${path}-${n}`
    if (!existsSync(name)) return name
  }
}

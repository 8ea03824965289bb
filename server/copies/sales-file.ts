import { existsSync, renameSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Sqlite } from '../journal/sqlite.ts'
import {
  bringWhole,
  copyWhole,
  filesOf,
  freeName,
  isWhole,
  nameOfInstant,
  openToRead,
  putInPlace,
} from './journal-file.ts'

/** Past sales of tills, beside the journal and in the copies' folder. */
export const SALES_FILE = 'sales.sqlite'

/**
 * Where a backup keeps the past sales that belong to it.
 * @example besideBackup('/b/backup-1.sqlite') // '/b/backup-1-sales.sqlite'
 */
export function besideBackup(file: string): string {
  return file.replace(/(\.sqlite)?$/, `-${SALES_FILE}`)
}

/** What became of past sales when a journal was put back. */
export type SalesBrought =
  /** Those of the shop's folder are good. */
  | { readonly kind: 'kept' }
  | { readonly kind: 'brought'; readonly from: string }
  /** There are none, and the journal knows of none. */
  | { readonly kind: 'none' }
  /** The journal knows of files that were taken, and their rows are nowhere. */
  | { readonly kind: 'lost'; readonly files: readonly string[] }

export interface BringSales {
  readonly sqlite: Sqlite
  /** The shop's, taken for this process alone. */
  readonly folder: string
  /** A copy's file, or the copies' folder; it may be gone. */
  readonly place: string
  readonly nowMs: number
}

/** Puts past sales back where they are lost; what can be read of them in the shop's folder is never older than a copy. */
export async function bringSales({ sqlite, folder, place, nowMs }: BringSales): Promise<SalesBrought> {
  const file = join(folder, SALES_FILE)
  if (isWhole(sqlite, file, 'files')) return { kind: 'kept' }
  const from = [besideBackup(place), join(place, SALES_FILE), join(dirname(place), SALES_FILE)].find(
    (copy) => copy !== file && isWhole(sqlite, copy, 'files'),
  )
  if (from === undefined) {
    const files = notedIn(sqlite, join(folder, 'journal.sqlite'))
    return files.length === 0 ? { kind: 'none' } : { kind: 'lost', files }
  }
  for (const broken of filesOf(file))
    renameSync(broken, freeName(join(folder, `set-aside-${nameOfInstant(nowMs)}-${basename(broken)}`)))
  await bringWhole(sqlite, from, file)
  return { kind: 'brought', from }
}

/** What became of past sales, for a person; null: nothing that needs to be said. */
export function saidOfSales(brought: SalesBrought): string | null {
  if (brought.kind === 'brought') return `Past sales are put back from ${brought.from}.`
  if (brought.kind !== 'lost') return null
  return `Past sales are lost: no copy has them. Put these files of the till in again: ${brought.files.join(', ')}.`
}

/** A copy of past sales as they stand at one moment. @returns whether there are any */
export async function copySales(sqlite: Sqlite, folder: string, to: string): Promise<boolean> {
  const file = join(folder, SALES_FILE)
  if (!existsSync(file)) return false
  const db = openToRead(sqlite, file)
  try {
    if (!hasRows(db)) return false
    await copyWhole(sqlite, db, `${to}.part`)
  } finally {
    db.close()
  }
  putInPlace(`${to}.part`, to)
  return true
}

/** Whether anything came in; a server makes the file at its start. */
function hasRows(db: DatabaseSyncInstance): boolean {
  return ['rows', 'files', 'names'].some((table) => db.prepare(`SELECT 1 FROM ${table} LIMIT 1`).get() !== undefined)
}

/** Names of files that the journal was told of. */
function notedIn(sqlite: Sqlite, journalFile: string): readonly string[] {
  if (!existsSync(journalFile)) return []
  const db = openToRead(sqlite, journalFile)
  try {
    const noted = db.prepare(`SELECT entry FROM entries WHERE instr(entry, '"type":"importNoted"') > 0 ORDER BY seq`)
    const names = noted.all().flatMap(({ entry }) => {
      const { events } = JSON.parse(String(entry)) as { readonly events: readonly { type: string; name?: string }[] }
      return events.flatMap(({ type, name }) => (type === 'importNoted' && name !== undefined ? [name] : []))
    })
    return [...new Set(names)]
  } finally {
    db.close()
  }
}

import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import * as z from 'zod'
import { epochMs } from '../../shared-core/units.ts'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { DetailsBook } from '../orders/details-book.ts'
import { DETAILS_FILE } from '../orders/details-table.ts'
import {
  bringWhole,
  filesOf,
  freeName,
  isWhole,
  moveWhole,
  nameOfInstant,
  openToRead,
  removeFile,
} from './journal-file.ts'

/**
 * Whom orders are for, where the shop's folder is lost or carried elsewhere: in the running copy and in exports, so that
 * they do not outlive what was deleted; never in the daily archives, nor in backups, which are kept for years.
 */

/** In an export: a list of writings. */
export const DETAILS_EXPORT = 'order-details.json'

const EXPORTED = z.object({
  form: z.literal(1, 'it is of another form than this release writes; use the release that wrote it, or a later one'),
  details: z.array(
    z.object({
      id: z.string().min(1),
      version: z.int().min(1),
      name: z.string(),
      phone: z.string(),
      note: z.string(),
      day: z.iso.date().nullable(),
      writtenAtMs: z.int().min(0),
    }),
  ),
})

export interface BringDetails {
  readonly sqlite: Sqlite
  /** The shop's, taken for this process alone. */
  readonly folder: string
  /** A copy's file, or the copies' folder; it may be gone. */
  readonly place: string
  readonly nowMs: number
}

/**
 * Puts them back where they are lost; what can be read of them in the shop's folder is never older than a copy, and a copy
 * may have what was deleted since.
 * @returns what became of them, a sentence for a person; null: nothing that needs to be said
 */
export async function bringDetails({ sqlite, folder, place, nowMs }: BringDetails): Promise<string | null> {
  const file = join(folder, DETAILS_FILE)
  if (isWhole(sqlite, file, 'details')) return null
  const from = [join(place, DETAILS_FILE), join(dirname(place), DETAILS_FILE)].find(
    (copy) => copy !== file && isWhole(sqlite, copy, 'details'),
  )
  const broken = filesOf(file)
  for (const one of broken)
    renameSync(one, freeName(join(folder, `set-aside-${nameOfInstant(nowMs)}-${basename(one)}`)))
  if (from === undefined) return broken.length === 0 ? null : LOST
  await bringWhole(sqlite, from, file)
  return `Names and notes of orders are put back from ${from}.`
}

const LOST =
  'Names and notes of orders are lost: no copy has them. Orders stand as they were; the broken file is set aside, and may be deleted.'

/** @returns how many writings; null: there are none, and no file is made. @throws JournalError when they cannot be read */
export function exportDetails(sqlite: Sqlite, shopFolder: string, folder: string): number | null {
  const rows = rowsIn(sqlite, shopFolder)
  if (rows.length === 0) return null
  const details = rows.map(({ written_at_ms: writtenAtMs, ...row }) => ({ ...row, writtenAtMs }))
  writeFileSync(join(folder, DETAILS_EXPORT), `${JSON.stringify({ form: 1, details }, null, 2)}\n`)
  return rows.length
}

/** What a backup says of what it does not hold; null: there is nothing. */
export function notInBackup(shopFolder: string): string | null {
  if (!existsSync(join(shopFolder, DETAILS_FILE))) return null
  return 'Names, phone numbers and notes of orders are not in it, so that what is deleted is gone: the copy that follows has them.'
}

function rowsIn(sqlite: Sqlite, shopFolder: string): readonly Readonly<Record<string, unknown>>[] {
  const file = join(shopFolder, DETAILS_FILE)
  if (!existsSync(file)) return []
  try {
    const db = openToRead(sqlite, file)
    try {
      return db.prepare('SELECT * FROM details ORDER BY id, version').all()
    } finally {
      db.close()
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new JournalError(`${file} cannot be read: ${why}. Stop the server; npm run restore puts it back.`)
  }
}

/**
 * @param file is made; nothing of it is left when it fails
 * @returns how many writings; null: the export has none
 * @throws JournalError that says what is not right
 */
export async function importDetails(sqlite: Sqlite, folder: string, file: string): Promise<number | null> {
  const from = join(folder, DETAILS_EXPORT)
  if (!existsSync(from)) return null
  const { details } = readExported(from)
  const work = `${file}-work`
  removeFile(work)
  try {
    const book = new DetailsBook(sqlite, work)
    try {
      for (const one of details) book.write({ ...one, writtenAtMs: epochMs(one.writtenAtMs) })
    } finally {
      book.close()
    }
    await moveWhole(sqlite, work, file)
  } finally {
    removeFile(work)
  }
  return details.length
}

function readExported(file: string): z.infer<typeof EXPORTED> {
  try {
    return EXPORTED.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch (error) {
    throw new JournalError(`${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

import { createReadStream, existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { parse } from 'csv-parse'
import { stringify } from 'csv-stringify/sync'
import * as z from 'zod'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { openSalesTables } from '../sales/sales-tables.ts'
import { copyWhole, openToRead, removeFile } from './journal-file.ts'
import { sha256Of } from './manifest.ts'

/** Past sales in an export: rows as CSV, all else as JSON, which is written last. */
export const SALES_ROWS = 'sales.csv'
export const SALES_ABOUT = 'sales.json'

const COLUMNS = ['day', 'second', 'purchase', 'name', 'pieces', 'row_id', 'nth', 'file', 'voided'] as const
const ROWS_AT_ONCE = 5_000

const value = z.union([z.string(), z.number(), z.null()])
const table = z.array(z.record(z.string(), value))
/** Tables beside the rows, and the tables' form. */
const OTHERS = ['files', 'names', 'name_counts', 'bad_rows', 'mappings'] as const
const ABOUT = z.object({
  form: z.int(),
  rows: z.int(),
  sha256: z.string(),
  tables: z.object({ files: table, names: table, name_counts: table, bad_rows: table, mappings: table }),
})

/** @param file a copy that nobody writes to @returns how many rows */
export async function exportSales(sqlite: Sqlite, file: string, folder: string): Promise<number> {
  const db = openToRead(sqlite, file)
  try {
    writeFileSync(join(folder, SALES_ROWS), `${COLUMNS.join(',')}\r\n`)
    let rows = 0
    let some: unknown[] = []
    const flush = () => {
      writeFileSync(join(folder, SALES_ROWS), stringify(some, { columns: [...COLUMNS], record_delimiter: 'windows' }), {
        flag: 'a',
      })
      some = []
    }
    for (const row of db.prepare(`SELECT ${COLUMNS.join(', ')} FROM rows`).iterate()) {
      rows += 1
      if (some.push(row) >= ROWS_AT_ONCE) flush()
    }
    flush()
    const tables = Object.fromEntries(OTHERS.map((name) => [name, db.prepare(`SELECT * FROM ${name}`).all()]))
    const form = Number(db.prepare('PRAGMA user_version').get()?.user_version)
    const about = { form, rows, sha256: await sha256Of(join(folder, SALES_ROWS)), tables }
    writeFileSync(join(folder, SALES_ABOUT), `${JSON.stringify(about, null, 2)}\n`)
    return rows
  } finally {
    db.close()
  }
}

/**
 * Makes the past sales of an export.
 * @param file is made; nothing of it is left when it fails
 * @returns how many rows; null: the export has no past sales
 * @throws JournalError that says what is not right
 */
export async function importSales(sqlite: Sqlite, folder: string, file: string): Promise<number | null> {
  if (!existsSync(join(folder, SALES_ABOUT))) {
    if (existsSync(join(folder, SALES_ROWS)))
      throw new JournalError(`${folder} has ${SALES_ROWS} without ${SALES_ABOUT}.`)
    return null
  }
  const about = readAbout(join(folder, SALES_ABOUT))
  if ((await sha256Of(join(folder, SALES_ROWS))) !== about.sha256)
    throw new JournalError(`${SALES_ROWS} is not as it was exported: its SHA-256 is another.`)
  const work = `${file}-work`
  removeFile(work)
  const db = openSalesTables(sqlite, work)
  try {
    if (Number(db.prepare('PRAGMA user_version').get()?.user_version) < about.form)
      throw new JournalError(`${SALES_ABOUT} was written by a newer release of Boilboard. Import it with that one.`)
    db.exec('BEGIN')
    for (const name of OTHERS) for (const row of about.tables[name]) insert(db, name, row)
    const rows = await insertRows(db, join(folder, SALES_ROWS))
    if (rows !== about.rows)
      throw new JournalError(`${SALES_ROWS} has ${rows} rows; ${SALES_ABOUT} says that it has ${about.rows}.`)
    db.exec('COMMIT')
    await copyWhole(sqlite, db, file)
    return rows
  } finally {
    db.close()
    removeFile(work)
  }
}

function readAbout(file: string): z.infer<typeof ABOUT> {
  try {
    return ABOUT.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch (error) {
    throw new JournalError(`${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

async function insertRows(db: DatabaseSyncInstance, file: string): Promise<number> {
  const write = db.prepare(`INSERT INTO rows (${COLUMNS.join(', ')}) VALUES (${COLUMNS.map(() => '?').join(', ')})`)
  const texts: ReadonlySet<string> = new Set(['purchase', 'row_id'])
  let rows = 0
  for await (const row of createReadStream(file).pipe(parse({ columns: true }))) {
    write.run(...COLUMNS.map((column) => (texts.has(column) ? String(row[column]) : Number(row[column]))))
    rows += 1
  }
  return rows
}

function insert(db: DatabaseSyncInstance, name: string, row: Readonly<Record<string, z.infer<typeof value>>>): void {
  const columns = Object.keys(row).filter((column) => /^[a-z0-9_]+$/.test(column))
  const marks = columns.map(() => '?').join(', ')
  db.prepare(`INSERT INTO ${name} (${columns.join(', ')}) VALUES (${marks})`).run(
    ...columns.map((column) => row[column] ?? null),
  )
}

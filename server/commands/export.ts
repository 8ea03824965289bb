import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DETAILS_EXPORT, exportDetails } from '../copies/details-file.ts'
import type { ExportAbout } from '../copies/export-form.ts'
import { EXPORT_FILES } from '../copies/export-form.ts'
import { exportSales, SALES_ABOUT, SALES_ROWS } from '../copies/export-sales.ts'
import type { ExportedRefusal } from '../copies/export-shop.ts'
import { exportJournal } from '../copies/export-shop.ts'
import { copyWhole, openToRead } from '../copies/journal-file.ts'
import { copySales, SALES_FILE } from '../copies/sales-file.ts'
import { OpenArchives } from '../journal/archives.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import type { Command } from './command.ts'
import { CommandRefused, needed, readArgs } from './command.ts'

const USAGE = `npm run export -- --shop FOLDER --to FOLDER    all that the journal holds, as JSON Lines, JSON and CSV`

/** Everything in open formats, also while the server runs: as the journal stands at one moment. */
export const exportShop: Command = async (args, say) => {
  const { shop, to } = readArgs(args, USAGE, { names: ['shop', 'to'] })
  const source = join(needed(shop, 'shop', USAGE), 'journal.sqlite')
  const folder = needed(to, 'to', USAGE)
  if (!existsSync(source)) throw new CommandRefused(`There is no journal in ${shop}.`)
  mkdirSync(folder, { recursive: true })
  if (readdirSync(folder).length > 0)
    throw new CommandRefused(`${folder} is not empty. Give the export a folder of its own.`)
  const about = await exportFrom(source, folder)
  const count = (n: number) => n.toLocaleString('en-US')
  say(`${folder} holds ${count(about.seq)} entries and ${count(about.refusals)} refusals: ${NAMES}.`)
  const sales = await exportSalesOf(needed(shop, 'shop', USAGE), folder)
  if (sales !== null) say(`${SALES_ROWS} and ${SALES_ABOUT} hold ${count(sales)} rows of past sales.`)
  const details = exportDetails(await loadSqlite(), needed(shop, 'shop', USAGE), folder)
  if (details !== null)
    say(`${DETAILS_EXPORT} holds names, phone numbers and notes of orders: keep it as long as you need it, no longer.`)
  say(`The entries come to a state with the fingerprint ${about.hash}; npm run import makes the same of them.`)
}

async function exportSalesOf(shopFolder: string, folder: string): Promise<number | null> {
  const sqlite = await loadSqlite()
  const work = mkdtempSync(join(tmpdir(), 'boilboard-export-'))
  try {
    const file = join(work, SALES_FILE)
    return (await copySales(sqlite, shopFolder, file)) ? await exportSales(sqlite, file, folder) : null
  } finally {
    rmSync(work, { recursive: true, force: true })
  }
}

const NAMES = Object.values(EXPORT_FILES).join(', ')

/** From a copy of the journal, so that what is written belongs to one moment and nothing is written to the shop. */
export async function exportFrom(source: string, folder: string): Promise<ExportAbout> {
  const sqlite = await loadSqlite()
  const work = mkdtempSync(join(tmpdir(), 'boilboard-export-'))
  const file = join(work, 'journal.sqlite')
  try {
    await copyTo(sqlite, source, file)
    const refusals = refusalsOf(sqlite, file)
    const journal = new SqliteJournal(sqlite, file, 'shop')
    try {
      return await exportJournal({ sqlite, journal, refusals: () => refusals, folder, nowMs: Date.now() })
    } finally {
      journal.close()
    }
  } finally {
    rmSync(work, { recursive: true, force: true })
  }
}

async function copyTo(sqlite: Sqlite, source: string, file: string): Promise<void> {
  const db = openToRead(sqlite, source)
  try {
    const archives = new OpenArchives(sqlite, db, source)
    archives.copyBeside(file)
    archives.close()
    await copyWhole(sqlite, db, file)
  } finally {
    db.close()
  }
}

function refusalsOf(sqlite: Sqlite, file: string): readonly ExportedRefusal[] {
  const db = openToRead(sqlite, file)
  try {
    const rows = db.prepare('SELECT * FROM refusals ORDER BY recorded_at_ms, command_id').all()
    return rows.map((row) => ({
      commandId: String(row.command_id),
      recordedAtMs: Number(row.recorded_at_ms),
      answer: JSON.parse(String(row.answer)),
    }))
  } finally {
    db.close()
  }
}

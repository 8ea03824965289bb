import { existsSync, mkdirSync, rmdirSync } from 'node:fs'
import { join } from 'node:path'
import { importDetails } from '../copies/details-file.ts'
import { importSales } from '../copies/export-sales.ts'
import { importJournal, workFileOf } from '../copies/import-shop.ts'
import { putInPlace, removeFile } from '../copies/journal-file.ts'
import { SALES_FILE } from '../copies/sales-file.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { DETAILS_FILE } from '../orders/details-table.ts'
import type { Command } from './command.ts'
import { CommandRefused, needed, readArgs } from './command.ts'

const USAGE = `npm run import -- --from FOLDER --shop NEW_FOLDER    makes a shop of an export`

/** Makes a shop's folder of an export. Nothing is left behind when it does not come to the same state. */
export const importShop: Command = async (args, say) => {
  const { from, shop } = readArgs(args, USAGE, { names: ['from', 'shop'] })
  const folder = needed(shop, 'shop', USAGE)
  const file = join(folder, 'journal.sqlite')
  if (existsSync(file))
    throw new CommandRefused(
      `${folder} has a journal already. Give the import a folder of its own; nothing was changed.`,
    )
  const isNew = !existsSync(folder)
  mkdirSync(folder, { recursive: true })
  const part = `${file}.importing`
  const remove = () => {
    const others = [SALES_FILE, DETAILS_FILE].map((name) => join(folder, `${name}.importing`))
    for (const one of [part, workFileOf(part), ...others]) removeFile(one)
  }
  try {
    remove()
    const { seq, hash, isHashCompared } = await importJournal(await loadSqlite(), needed(from, 'from', USAGE), part)
    const sales = join(folder, SALES_FILE)
    const rows = await importSales(await loadSqlite(), needed(from, 'from', USAGE), `${sales}.importing`)
    const details = join(folder, DETAILS_FILE)
    const written = await importDetails(await loadSqlite(), needed(from, 'from', USAGE), `${details}.importing`)
    if (rows !== null) putInPlace(`${sales}.importing`, sales)
    if (written !== null) putInPlace(`${details}.importing`, details)
    putInPlace(part, file)
    say(`${folder} holds the shop, with ${seq.toLocaleString('en-US')} entries.`)
    say(
      isHashCompared
        ? `They come to the same state as where they were exported: fingerprint ${hash}.`
        : `They were exported by a release that folds otherwise; here they come to the fingerprint ${hash}.`,
    )
    if (rows !== null) say(`${rows.toLocaleString('en-US')} rows of past sales came with it.`)
    if (written !== null) say('Names, phone numbers and notes of orders came with it.')
    say(`Start it: npm start -- --shop ${folder}`)
  } catch (error) {
    remove()
    if (isNew) rmdirSync(folder)
    const why = error instanceof Error ? error.message : String(error)
    throw new CommandRefused(`Nothing was imported. ${why}`, error instanceof CommandRefused && error.isUsage)
  }
}

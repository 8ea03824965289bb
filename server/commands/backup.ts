import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { copiesFolderOf, makeCopiesFolder } from '../copies/copy-folder.ts'
import { readCopy, upTo } from '../copies/copy-list.ts'
import { CopyError, copyTrouble } from '../copies/copy-words.ts'
import { notInBackup } from '../copies/details-file.ts'
import { copyWhole, nameOfInstant, openToRead, putInPlace, removeFile } from '../copies/journal-file.ts'
import { besideBackup, copySales } from '../copies/sales-file.ts'
import { OpenArchives } from '../journal/archives.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import type { Command } from './command.ts'
import { CommandRefused, needed, readArgs } from './command.ts'

const USAGE = `npm run backup -- --shop FOLDER              a copy beside the shop's other copies
npm run backup -- --shop FOLDER --to FILE    a copy in a new file`

/** A whole copy of the journal, also while the server runs, verified before it gets its name. */
export const backup: Command = async (args, say) => {
  const { shop, to } = readArgs(args, USAGE, { names: ['shop', 'to'] })
  const folder = needed(shop, 'shop', USAGE)
  const source = join(folder, 'journal.sqlite')
  if (!existsSync(source)) throw new CommandRefused(`There is no journal in ${folder}.`)
  const file = resolve(to ?? join(folderFor(folder), `backup-${nameOfInstant(Date.now())}.sqlite`))
  if (existsSync(file)) throw new CommandRefused(`${file} is there already. Give the backup a name of its own.`)
  const part = `${file}.part`
  try {
    await copyTo(source, part)
    const copy = await readCopy(await loadSqlite(), part)
    if ('why' in copy) throw new CommandRefused(`The backup is not good and was not kept: ${copy.why}`)
    putInPlace(part, file)
    say(`${file} holds the journal up to ${upTo(copy)}.`)
    say(`It was read from end to end; its state has the fingerprint ${copy.hash}.`)
    const sales = besideBackup(file)
    if (await copySales(await loadSqlite(), folder, sales)) say(`Past sales are in ${sales}; the two belong together.`)
    const missing = notInBackup(folder)
    if (missing !== null) say(missing)
  } catch (error) {
    removeFile(part)
    if (error instanceof CommandRefused) throw error
    throw new CommandRefused(`No backup was made: ${copyTrouble(error, file)}`)
  }
}

async function copyTo(source: string, part: string): Promise<void> {
  const sqlite = await loadSqlite()
  const db = openToRead(sqlite, source)
  try {
    const archives = new OpenArchives(sqlite, db, source)
    archives.copyBeside(part)
    archives.close()
    await copyWhole(sqlite, db, part)
  } finally {
    db.close()
  }
}

function folderFor(shopFolder: string): string {
  const folder = copiesFolderOf(shopFolder, null)
  try {
    makeCopiesFolder(folder)
  } catch (error) {
    throw new CommandRefused(`No backup was made: ${error instanceof CopyError ? error.message : String(error)}`)
  }
  return folder
}

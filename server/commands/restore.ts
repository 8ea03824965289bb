import { existsSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { copiesFolderOf } from '../copies/copy-folder.ts'
import type { GoodCopy } from '../copies/copy-list.ts'
import { candidatesIn, readCopy, upTo } from '../copies/copy-list.ts'
import { bringDetails } from '../copies/details-file.ts'
import type { Prepared, PutBackParts } from '../copies/put-back.ts'
import { finish, prepare, preparedBefore } from '../copies/put-back.ts'
import { bringSales, saidOfSales } from '../copies/sales-file.ts'
import { logTrouble } from '../journal/log-check.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { verifyJournal } from '../journal/verify.ts'
import { takeFolder } from '../shop/folder.ts'
import type { Command } from './command.ts'
import { CommandRefused, needed, readArgs } from './command.ts'

const USAGE = `npm run restore -- --shop FOLDER                        the newest good copy that can be found
npm run restore -- --shop FOLDER --from FILE            this copy
npm run restore -- --shop FOLDER --from FOLDER          the newest good copy in this folder
  --only   just what the copy has: nothing of the present journal is carried over`

/** Puts a copy of the journal back in the place of a broken one, and says what is there and what may be missing. */
export const restore: Command = async (args, say) => {
  const { shop, from, only } = readArgs(args, USAGE, { names: ['shop', 'from'], flags: ['only'] })
  const folder = needed(shop, 'shop', USAGE)
  if (!existsSync(folder)) throw new CommandRefused(`There is no folder ${folder}.`)
  const sqlite = await loadSqlite()
  const taken = takeFolder(sqlite, folder)
  try {
    await putBack({ sqlite, folder, nowMs: Date.now() }, { from, isOnly: only, say })
  } finally {
    taken.release()
  }
}

export interface PutBackAsked {
  readonly from: string | null
  readonly isOnly: boolean
  readonly say: (line: string) => void
}

/** @param parts of a folder that is taken for this process alone */
export async function putBack(parts: PutBackParts, { from, isOnly, say }: PutBackAsked): Promise<void> {
  const { sqlite, folder } = parts
  const place = from ?? copiesFolderOf(folder, null)
  const before = await preparedBefore(parts)
  if (before !== null) {
    say('A restore that was cut short goes on where it was.')
  } else {
    if (from === null && (await isGood(sqlite, folder))) {
      say(`The journal in ${folder} is good, from end to end. Nothing was changed.`)
      await putOthersBack(parts, place, say)
      return
    }
    const copy = await newestGood(sqlite, place, say)
    say(`${copy.file} is good, up to ${upTo(copy)}.`)
    tellCarried(await prepare(copy, isOnly, parts), { isOnly, say })
  }
  const aside = await finish(existsSync(place) ? folderOf(place) : null, parts)
  if (aside !== null) say(`What was there before is kept in ${aside}.`)
  const now = await verifyJournal(sqlite, join(folder, 'journal.sqlite'))
  if (!now.ok) throw new CommandRefused(`What was put back cannot be read: ${now.why}`)
  say(
    `The journal is in its place, with ${now.seq.toLocaleString('en-US')} entries; its state has the fingerprint ${now.hash}.`,
  )
  await putOthersBack(parts, place, say)
  say(`Start the shop: npm start -- --shop ${folder}`)
}

/** What lies beside the journal: past sales, and whom orders are for. */
async function putOthersBack(parts: PutBackParts, place: string, say: PutBackAsked['say']): Promise<void> {
  const said = [saidOfSales(await bringSales({ ...parts, place })), await bringDetails({ ...parts, place })]
  for (const one of said) if (one !== null) say(one)
}

async function isGood(sqlite: Sqlite, folder: string): Promise<boolean> {
  const file = join(folder, 'journal.sqlite')
  return logTrouble(file) === null && (await verifyJournal(sqlite, file)).ok
}

/** @throws CommandRefused when there is none */
async function newestGood(sqlite: Sqlite, place: string, say: (line: string) => void): Promise<GoodCopy> {
  if (!existsSync(place)) throw new CommandRefused(`There is no copy: ${place} is not there. Give another with --from.`)
  for (const file of candidatesIn(place)) {
    const read = await readCopy(sqlite, file)
    if (!('why' in read)) return read
    say(`${file} will not do: ${read.why}`)
  }
  throw new CommandRefused(`There is no good copy in ${place}; nothing was changed. Give another with --from.`)
}

function tellCarried({ entries, lost, seq }: Prepared, { isOnly, say }: Pick<PutBackAsked, 'isOnly' | 'say'>): void {
  const count = (n: number) => `${n.toLocaleString('en-US')} ${n === 1 ? 'entry' : 'entries'}`
  if (isOnly) {
    say('Nothing of the present journal was carried over, as --only says.')
    return
  }
  if (entries > 0) say(`The present journal has ${count(entries)} after that which are good: they are carried over.`)
  if (lost === null) say(`Whether it had more than entry ${seq.toLocaleString('en-US')} cannot be told.`)
  else if (lost === 0) say('As far as can be known, nothing is missing.')
  else
    say(
      `It had ${count(lost)} more that cannot be read. They are missing; what a screen still has to send it sends by itself.`,
    )
}

function folderOf(place: string): string {
  return statSync(place).isDirectory() ? place : dirname(place)
}

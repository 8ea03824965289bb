import { join } from 'node:path'
import { loadSqlite } from '../journal/sqlite.ts'
import { verifyJournal } from '../journal/verify.ts'
import type { Command } from './command.ts'
import { CommandRefused, readArgs } from './command.ts'

const USAGE = `npm run verify -- --shop FOLDER   reads a shop's journal from end to end, also while the server runs
npm run verify -- --file FILE     the same for a copy`

/** Everything that can be known about a journal, in words; a year takes about half a minute. */
export const verify: Command = async (args, say) => {
  const { shop, file } = readArgs(args, USAGE, { names: ['shop', 'file'] })
  if ((shop === null) === (file === null))
    throw new CommandRefused(`Give --shop FOLDER or --file FILE.\n\n${USAGE}`, true)
  const path = file ?? join(shop ?? '', 'journal.sqlite')
  const verified = await verifyJournal(await loadSqlite(), path)
  if (!verified.ok) throw new CommandRefused(verified.why)
  say(`${path} is good: ${verified.entries} entries, read from end to end.`)
  say(`Its state has the fingerprint ${verified.hash}.`)
}

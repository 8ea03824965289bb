import { existsSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { isDate } from '../../shared-core/day/label.ts'
import type { CompactStep } from '../journal/compact.ts'
import { compact as compactJournal } from '../journal/compact.ts'
import { archiveName, lastToMove, STAYS_DAYS } from '../journal/compact-policy.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { loadSqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import { verifyJournal } from '../journal/verify.ts'
import { localInstant } from '../live/shop-clock.ts'
import { takeFolder } from '../shop/folder.ts'
import { wake } from '../shop/wake.ts'
import type { Command } from './command.ts'
import { CommandRefused, needed, readArgs } from './command.ts'

const USAGE = `npm run compact -- --shop FOLDER --before 2026-01-01
Moves entries from before that day, in the shop's zone, into an archive beside the journal. Stop the server first.`

const TOLD: { readonly [Step in CompactStep]: string } = {
  written: 'The archive is written.',
  checked: 'It is what the journal has, entry by entry.',
  named: 'It has its name.',
  moved: 'The journal reads those entries from it now.',
  'made small': 'The journal’s own file keeps no empty room.',
}

/** Old entries into an archive; the state, every answer and every past day stay what they were. */
export const compact: Command = async (args, say) => {
  const { shop, before } = readArgs(args, USAGE, { names: ['shop', 'before'] })
  const folder = needed(shop, 'shop', USAGE)
  const date = needed(before, 'before', USAGE)
  if (!isDate(date)) throw new CommandRefused(`--before is "${date}"; it must be a day, e.g. 2026-01-01.`, true)
  const journalFile = join(folder, 'journal.sqlite')
  if (!existsSync(journalFile)) throw new CommandRefused(`There is no journal in ${folder}.`)
  const sqlite = await loadSqlite()
  const taken = takeFolder(sqlite, folder)
  try {
    await compactTaken({ sqlite, file: journalFile, date, say })
  } finally {
    taken.release()
  }
}

interface Taken {
  readonly sqlite: Sqlite
  readonly file: string
  readonly date: string
  readonly say: (line: string) => void
}

async function compactTaken({ sqlite, file, date, say }: Taken): Promise<void> {
  say('Reading the journal from end to end first.')
  const before = await verifyJournal(sqlite, file)
  if (!before.ok) throw new CommandRefused(`Nothing was moved. ${before.why}`)
  const { lastSeq, names } = await oldOnes(sqlite, file, date)
  const bytes = statSync(file).size
  const name = archiveName(date, names)
  const moved = compactJournal(sqlite, { file, lastSeq, name, onStep: (step) => say(TOLD[step]) })
  if (moved === 0) {
    say(
      `No entry is from before ${date}, ${STAYS_DAYS} days old and before the newest snapshot, and not in an archive already.`,
    )
    return
  }
  const after = await verifyJournal(sqlite, file)
  if (!after.ok || after.hash !== before.hash || after.seq !== before.seq)
    throw new CommandRefused(
      `The journal is not what it was: ${after.ok ? `${after.hash} instead of ${before.hash}` : after.why}`,
    )
  const archive = join(dirname(file), name)
  say(`${moved} entries are in ${archive} (${inMb(statSync(archive).size)}).`)
  say(`The journal had ${inMb(bytes)} and has ${inMb(statSync(file).size)}; its state is the same, ${after.hash}.`)
  say('They belong together: who copies the folder copies both.')
}

async function oldOnes(sqlite: Sqlite, file: string, date: string) {
  const journal = new SqliteJournal(sqlite, file, 'shop')
  try {
    const { shop } = await wake(journal, () => undefined)
    if (shop === null) throw new CommandRefused('The shop has no set-up yet, and nothing that is old.')
    const beforeMs = localInstant(shop.profile.zone, date, 0)
    return { lastSeq: lastToMove(journal, beforeMs, Date.now()), names: journal.archiveNames() }
  } finally {
    journal.close()
  }
}

function inMb(bytes: number): string {
  return `${(bytes / 1024 / 1024).toFixed(1)} MB`
}

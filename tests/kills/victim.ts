import { copyFileSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { FILE_ENDS } from '../../server/journal/end-mark.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { saveSnapshot } from '../../server/shop/wake.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { drawnMorning, refusedAt } from '../server/support/made-entries.ts'

/** A journal's files by the end of their name: `FILE_ENDS`. */
export type Files = ReadonlyMap<string, Buffer>

/** A good journal and all that it must still say, or be refused, after damage. */
export interface Victim {
  /** Of a server that was stopped: one file. */
  readonly closed: Files
  /** Of a server that was killed: what it wrote last lies in the log only. */
  readonly killed: Files
  /** The same before the last writes: a page of it is one whose newer form never reached the disk. */
  readonly older: Files
  readonly known: Known
}

export interface Known {
  readonly entries: readonly string[]
  readonly answers: ReadonlyMap<string, Answer>
  readonly hash: string
}

const ENTRIES = 420
const ENTRIES_A_COMMIT = 7
/** Where the log is folded into the file for the last time before the server is killed. */
const LAST_FOLDED = 340

/** @param folder where it is made and left */
export async function makeVictim(sqlite: Sqlite, folder: string): Promise<Victim> {
  mkdirSync(folder, { recursive: true })
  const file = join(folder, 'journal.sqlite')
  const journal = new SqliteJournal(sqlite, file, 'shop')
  const entries = drawnMorning(ENTRIES, 7)
  const answers = new Map<string, Answer>()
  const state = emptyState()
  let older: Files = new Map()
  for (let at = 0; at < entries.length; at += ENTRIES_A_COMMIT) {
    const group = entries.slice(at, at + ENTRIES_A_COMMIT)
    const refusals = [refusedAt(`refused${String(at).padStart(6, '0')}`, '5:00')]
    await journal.append({ entries: group, refusals })
    for (const { commandId, answer } of refusals) answers.set(commandId, answer)
    for (const entry of group) {
      answers.set(entry.commandId, { kind: 'taken', seq: entry.seq })
      applyEntry(state, entry)
    }
    // Snapshots that were replaced leave free pages behind.
    if (at % 70 === 0) saveSnapshot(journal, state)
    if (at === LAST_FOLDED - (LAST_FOLDED % ENTRIES_A_COMMIT)) {
      fold(sqlite, file)
      older = filesOf(file)
    }
  }
  const killed = filesOf(file)
  journal.close()
  const known = { entries: entries.map((entry) => JSON.stringify(entry)), answers, hash: hashState(state) }
  return { closed: filesOf(file), killed, older, known }
}

function fold(sqlite: Sqlite, file: string): void {
  const db = new sqlite.DatabaseSync(file)
  db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
  db.close()
}

function filesOf(file: string): Files {
  const files = new Map<string, Buffer>()
  for (const end of FILE_ENDS) {
    try {
      // Read by way of a copy: what is mapped into memory by SQLite is read as it is on disk.
      copyFileSync(`${file}${end}`, `${file}.copy`)
      files.set(end, readFileSync(`${file}.copy`))
    } catch {
      // A stopped server leaves the file and its mark.
    }
  }
  return files
}

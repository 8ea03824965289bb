import { existsSync, statSync } from 'node:fs'
import { setImmediate } from 'node:timers/promises'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { OpenArchives } from './archives.ts'
import type { End } from './end-mark.ts'
import { assertEndsAsMarked, EndMark } from './end-mark.ts'
import { EntryTable, setUpsOf } from './entry-table.ts'
import { JournalError } from './journal.ts'
import { orInWords, remedyFor } from './journal-words.ts'
import { MIGRATIONS } from './migrations.ts'
import { aboutOf, formOf } from './open-file.ts'
import { RefusalTable } from './refusal-table.ts'
import type { Sqlite } from './sqlite.ts'

export type Verified =
  | {
      readonly ok: true
      readonly journalId: string
      readonly course: string
      /** Of the last entry, which is how many there are, those in archives too. */
      readonly seq: number
      readonly entries: number
      /** Of the state that all entries together come to, in this fold. */
      readonly hash: string
    }
  /** A sentence that says what is wrong and what to do. */
  | { readonly ok: false; readonly why: string }

/** Entries folded before others get a turn: some 7 ms of work. */
const ENTRIES_A_BREATH = 100
/** First form that has sums. */
const FORM_WITH_SUMS = 3

/**
 * Everything that can be known about a journal's file: SQLite's own check of its pages and indexes, every entry's sum and
 * seq, every refusal's sum, and the fold of all entries, in which no piece is lost. A snapshot on the way must be what the
 * fold comes to. Nothing is written: a file of an earlier form is read as it is. Archives are looked for beside it.
 *
 * SQLite's check holds the process up, some seconds for a year; the rest is done in breaths. A server that serves checks
 * its copies in a process of its own: `npm run verify -- --file FILE`.
 * @param file a journal that may be in use, or a copy
 */
export async function verifyJournal(
  sqlite: Sqlite,
  file: string,
  breathe: () => Promise<unknown> = () => setImmediate(),
): Promise<Verified> {
  try {
    if (!existsSync(file)) throw new JournalError(`${file} is not there.`)
    if (statSync(file).size === 0) throw new JournalError(`The journal is an empty file. ${remedyFor(file)}`)
    // Read before the journal: one that is in use goes on meanwhile.
    const mark = new EndMark(file).read()
    const db = orInWords(file, () => new sqlite.DatabaseSync(file, { readOnly: true }))
    try {
      orInWords(file, () => db.exec('BEGIN'))
      return await verifyOpen({ sqlite, db, file, mark, breathe })
    } finally {
      // By hand: the package for Node 20 closes a file only when all of its statements are forgotten.
      if (db.isTransaction) db.exec('ROLLBACK')
      db.close()
    }
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) }
  }
}

interface Parts {
  readonly sqlite: Sqlite
  readonly db: DatabaseSyncInstance
  readonly file: string
  readonly mark: End | null
  readonly breathe: () => Promise<unknown>
}

async function verifyOpen(parts: Parts): Promise<Verified> {
  const { sqlite, db, file, mark } = parts
  const form = orInWords(file, () => formOf(db))
  if (form === 0 || form > MIGRATIONS.length)
    throw new JournalError(`${file} has form ${form}, and this release knows forms 1 to ${MIGRATIONS.length}.`)
  const archives = new OpenArchives(sqlite, db, file)
  try {
    const table = orInWords(file, () => new EntryTable(db, file, archives.end, form >= FORM_WITH_SUMS))
    const tables = [...archives.tables, table]
    for (const one of tables) {
      one.assertPagesFit()
      one.assertFoundByCommand(one.before.seq)
    }
    const state = await foldAll(tables, parts)
    if (form >= FORM_WITH_SUMS) assertTablesFit(db, tables, file)
    const about = { journalId: aboutOf(db, 'journal_id') ?? '', course: aboutOf(db, 'course') ?? '' }
    const holder = (seq: number) => tables.findLast(({ before }) => before.seq < seq) ?? table
    assertEndsAsMarked(mark, { ...about, ...table.last() }, (seq) => holder(seq).sumAt(seq), file)
    return { ok: true, ...about, seq: state.seq, entries: state.seq, hash: hashState(state) }
  } finally {
    archives.close()
  }
}

async function foldAll(tables: readonly EntryTable[], { db, file, breathe }: Parts): Promise<State> {
  const state = emptyState()
  const snapshots = snapshotsOf(db)
  for (const table of tables) {
    for (const entry of table.eachAfter(table.before.seq)) {
      applyEntry(state, entry)
      const hash = snapshots.get(entry.seq)
      if (hash !== undefined && hash !== hashState(state))
        throw new JournalError(`The snapshot at entry ${entry.seq} is not what the entries come to. ${remedyFor(file)}`)
      if (entry.seq % ENTRIES_A_BREATH === 0) await breathe()
    }
  }
  assertAccounted(state)
  return state
}

function snapshotsOf(db: DatabaseSyncInstance): ReadonlyMap<number, string> {
  const rows = db.prepare('SELECT seq, hash FROM snapshots WHERE fold_version = ?').all(FOLD_VERSION)
  return new Map(rows.map(({ seq, hash }) => [Number(seq), String(hash)]))
}

/** What no running sum speaks for. */
function assertTablesFit(db: DatabaseSyncInstance, tables: readonly EntryTable[], file: string): void {
  new RefusalTable(db, file).assertAllThere()
  for (const _entry of setUpsOf(tables, Number(aboutOf(db, 'set_ups')), file));
}

import { existsSync, renameSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Archive } from './archives.ts'
import { OpenArchives } from './archives.ts'
import { EntryTable } from './entry-table.ts'
import { JournalError } from './journal.ts'
import { orInWords } from './journal-words.ts'
import { MIGRATIONS } from './migrations.ts'
import { aboutOf, openFile, syncFolder } from './open-file.ts'
import type { Sqlite } from './sqlite.ts'

export interface Compacting {
  /** The journal's, which nobody else has open: the caller holds the folder's lock. */
  readonly file: string
  /** The last entry that is moved. */
  readonly lastSeq: number
  /** Of the archive's file, in the same folder. */
  readonly name: string
  /** Hears each step once it is done, for telling and for tests that stop there. */
  readonly onStep: (step: CompactStep) => void
}

type From = Pick<Compacting, 'file' | 'lastSeq'>

/** 200 MB in KiB: commands' ids lie in the index in no order, and a year's fit into that. */
const LARGE_CACHE = 'PRAGMA cache_size = -200000'

export type CompactStep = 'written' | 'checked' | 'named' | 'moved' | 'made small'

/**
 * Moves a journal's oldest entries into an archive beside it. Entries are never fewer than once: the archive is written,
 * synced, checked against the journal and named before one transaction notes it in the journal and deletes there, and
 * only then is the journal's file made small. After a stop in between, the same call goes on from what it finds.
 * @returns how many entries were moved: 0 when all of them lie in archives already
 * @throws JournalError when the archive is not what the journal has, or another file has its name
 */
export function compact(sqlite: Sqlite, { file, lastSeq, name, onStep }: Compacting): number {
  const db = openFile(sqlite, file, 'shop')
  let archives: OpenArchives | null = null
  try {
    archives = new OpenArchives(sqlite, db, file)
    const moved = Math.max(0, lastSeq - archives.end.seq)
    if (moved > 0) {
      const archive = makeArchive({ sqlite, db, file, lastSeq, archives, name, onStep })
      orInWords(file, () => move(db, archive))
      onStep('moved')
    }
    orInWords(file, () => db.exec('VACUUM; PRAGMA wal_checkpoint(TRUNCATE)'))
    onStep('made small')
    return moved
  } finally {
    archives?.close()
    db.close()
  }
}

interface Making extends Compacting {
  readonly sqlite: Sqlite
  readonly db: DatabaseSyncInstance
  readonly archives: OpenArchives
}

function makeArchive({ sqlite, db, file, lastSeq, archives, name, onStep }: Making): Archive {
  const path = join(dirname(file), name)
  const fresh = `${path}-new`
  // What an earlier try left: the journal does not know of it, and has all that is in it.
  for (const old of [fresh, `${fresh}-journal`]) rmSync(old, { force: true })
  const journalId = aboutOf(db, 'journal_id') ?? ''
  if (existsSync(path)) assertLeftOver(sqlite, path, journalId)
  withFile(new sqlite.DatabaseSync(fresh), fresh, (copy) => write(copy, { file, lastSeq, journalId }))
  onStep('written')
  const lastSum = withFile(new sqlite.DatabaseSync(fresh, { readOnly: true }), fresh, (copy) => {
    const table = new EntryTable(copy, fresh, archives.end)
    assertSame(copy, table, { file, lastSeq })
    return table.last().sum
  })
  onStep('checked')
  renameSync(fresh, path)
  syncFolder(dirname(path))
  onStep('named')
  return { firstSeq: archives.end.seq + 1, lastSeq, lastSum, name }
}

function withFile<T>(db: DatabaseSyncInstance, file: string, work: (db: DatabaseSyncInstance) => T): T {
  try {
    return orInWords(file, () => work(db))
  } finally {
    db.close()
  }
}

/** An archive has the journal's own form, so that the same code reads it; one file, as nobody writes to it again. */
function write(copy: DatabaseSyncInstance, journal: From & { journalId: string }): void {
  copy.exec(`PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL; ${LARGE_CACHE}; BEGIN; ${MIGRATIONS.join('')}
    PRAGMA user_version = ${MIGRATIONS.length}; COMMIT`)
  copy.prepare('ATTACH ? AS journal').run(journal.file)
  copy.exec('BEGIN IMMEDIATE')
  const about = copy.prepare('INSERT INTO about (key, value) VALUES (?, ?)')
  about.run('journal_id', journal.journalId)
  about.run('kind', 'archive')
  copy
    .prepare(
      `INSERT INTO entries (seq, command_id, entry, sum)
       SELECT seq, command_id, entry, sum FROM journal.entries WHERE seq <= ? ORDER BY seq`,
    )
    .run(journal.lastSeq)
  copy.exec('COMMIT')
}

/** The archive is read back: whole by itself, and each row the one that the journal has. */
function assertSame(copy: DatabaseSyncInstance, table: EntryTable, { file, lastSeq }: From): void {
  table.assertPagesFit()
  copy.prepare('ATTACH ? AS journal').run(file)
  let last = table.before.seq
  for (const { seq } of table.eachAfter(last)) last = seq
  const different = copy
    .prepare(
      `SELECT count(*) AS rows FROM journal.entries AS there LEFT JOIN main.entries AS here USING (seq)
       WHERE there.seq <= ? AND (here.entry IS NOT there.entry OR here.sum IS NOT there.sum
         OR here.command_id IS NOT there.command_id)`,
    )
    .get(lastSeq)?.rows
  if (last !== lastSeq || different !== 0)
    throw new JournalError(
      `The archive differs from the journal in ${different} entries. Nothing was moved; try again.`,
    )
}

function move(db: DatabaseSyncInstance, { firstSeq, lastSeq, lastSum, name }: Archive): void {
  db.exec(`${LARGE_CACHE}; BEGIN IMMEDIATE`)
  try {
    db.prepare('INSERT INTO archives (first_seq, last_seq, last_sum, name) VALUES (?, ?, ?, ?)').run(
      firstSeq,
      lastSeq,
      lastSum,
      name,
    )
    db.prepare('DELETE FROM entries WHERE seq <= ?').run(lastSeq)
    db.exec('COMMIT')
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK')
    throw error
  }
}

/** @throws JournalError when a file that has the archive's name is not one that an earlier try left */
function assertLeftOver(sqlite: Sqlite, path: string, journalId: string): void {
  const db = orInWords(path, () => new sqlite.DatabaseSync(path, { readOnly: true }))
  try {
    const isOurs = orInWords(path, () => aboutOf(db, 'journal_id') === journalId && aboutOf(db, 'kind') === 'archive')
    if (!isOurs) throw new JournalError(`${path} is there already and no archive of this journal. Move it away first.`)
  } finally {
    db.close()
  }
}

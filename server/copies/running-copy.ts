import { statSync } from 'node:fs'
import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import { archivesOf } from '../journal/archives.ts'
import { aboutOf, formOf } from '../journal/open-file.ts'
import { runOn } from '../journal/running-sum.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { CopyError } from './copy-words.ts'

/** See `migrations.ts`. */
const FORM_WITH_SUMS = 3
/** Rows in memory at once: after a long absence there are many. */
const ROWS_A_PAGE = 1_000

/**
 * The copy that follows the journal: rows as they stand in the journal's own file, its sums among them, appended as they
 * come. Its file is no WAL: a network drive keeps none, and one file alone can be carried about. Rejected: entries handed
 * over by the room, which would be a second way for what is recorded, and would miss what was recorded while this slept.
 */
export class RunningCopy {
  readonly #source: DatabaseSyncInstance
  readonly #copy: DatabaseSyncInstance
  readonly #file: string
  readonly #inode: bigint
  #seq: number

  /** @throws when the file cannot be opened; see `whyNotOurs` for whether it is a copy of this journal */
  constructor(sqlite: Sqlite, source: DatabaseSyncInstance, file: string) {
    this.#source = source
    this.#file = file
    this.#copy = new sqlite.DatabaseSync(file)
    this.#copy.exec('PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL; PRAGMA busy_timeout = 0;')
    this.#inode = inodeOf(file)
    this.#seq = lastSeq(this.#copy)
  }

  /** The last entry that is in it, on disk. */
  get seq(): number {
    return this.#seq
  }

  /** SQLite goes on writing to a file that was taken away under its hands. */
  isInPlace(): boolean {
    try {
      return inodeOf(this.#file) === this.#inode
    } catch {
      return false
    }
  }

  /**
   * Appends what has come since, in one commit, as the journal stands at one moment.
   * @throws when it could not be written: then the copy is as it was
   */
  catchUp(): void {
    let last = this.#seq
    this.#source.exec('BEGIN')
    try {
      this.#copy.exec('BEGIN IMMEDIATE')
      last = this.#followEntries()
      this.#followRefusals()
      this.#followSnapshots(last)
      // The counts that `about` keeps belong to these very rows.
      this.#replaceAll('about')
      this.#copy.exec('COMMIT')
    } finally {
      if (this.#copy.isTransaction) this.#copy.exec('ROLLBACK')
      this.#source.exec('ROLLBACK')
    }
    this.#seq = last
  }

  close(): void {
    this.#copy.close()
  }

  #followEntries(): number {
    const { columns, write } = this.#writer('entries')
    const page = this.#source.prepare(`SELECT ${columns.join(', ')} FROM entries WHERE seq > ? ORDER BY seq LIMIT ?`)
    let last = this.#seq
    let sum = lastSum(this.#copy)
    for (;;) {
      const rows = page.all(last, ROWS_A_PAGE)
      if (rows.length === 0) return last
      for (const row of rows) {
        last += 1
        sum = runOn(sum ?? 0, String(row.entry))
        // What was damaged on the journal's disk must not get into the copy of it.
        if (row.seq !== last || row.sum !== sum)
          throw new CopyError(`entry ${last} of the journal is not as it was written.`)
        write.run(...valuesOf(row, columns))
      }
    }
  }

  /** They are pruned from the middle, so the two sets are compared; two weeks have some hundreds. */
  #followRefusals(): void {
    const ids = (db: DatabaseSyncInstance) =>
      new Set(
        db
          .prepare('SELECT command_id FROM refusals')
          .all()
          .map((row) => String(row.command_id)),
      )
    const wanted = ids(this.#source)
    const there = ids(this.#copy)
    const remove = this.#copy.prepare('DELETE FROM refusals WHERE command_id = ?')
    for (const id of there) if (!wanted.has(id)) remove.run(id)
    const { columns, write } = this.#writer('refusals')
    const read = this.#source.prepare(`SELECT ${columns.join(', ')} FROM refusals WHERE command_id = ?`)
    for (const id of wanted) if (!there.has(id)) write.run(...valuesOf(read.get(id) ?? {}, columns))
  }

  /** So that a start from the copy is as quick as from the journal. */
  #followSnapshots(last: number): void {
    const newest = (db: DatabaseSyncInstance) => db.prepare('SELECT max(seq) AS seq FROM snapshots').get()?.seq ?? 0
    const seq = newest(this.#source)
    // One of an entry that is not here yet comes with the next time.
    if (seq !== newest(this.#copy) && Number(seq) <= last) this.#replaceAll('snapshots')
  }

  #replaceAll(table: 'about' | 'snapshots'): void {
    const { columns, write } = this.#writer(table)
    this.#copy.exec(`DELETE FROM ${table}`)
    const rows = this.#source.prepare(`SELECT ${columns.join(', ')} FROM ${table}`).all()
    for (const row of rows) write.run(...valuesOf(row, columns))
  }

  /** Columns as the journal has them: its form grows from release to release. */
  #writer(table: string): { readonly columns: readonly string[]; readonly write: StatementSyncInstance } {
    const info = this.#source.prepare('SELECT name FROM pragma_table_info(?)').all(table)
    const columns = info.map(({ name }) => String(name))
    const marks = columns.map(() => '?').join(', ')
    return { columns, write: this.#copy.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${marks})`) }
  }
}

/**
 * Why a file is no earlier stand of this journal, as the end of a sentence; null when it is: then it can go on from
 * where it is.
 */
export function whyNotOurs(source: DatabaseSyncInstance, copy: DatabaseSyncInstance): string | null {
  if (formOf(copy) !== formOf(source)) return 'it has the form of another release'
  if (aboutOf(copy, 'journal_id') !== aboutOf(source, 'journal_id')) return 'it is of another journal'
  if ((aboutOf(copy, 'course') ?? '') !== (aboutOf(source, 'course') ?? ''))
    return 'the journal was put back from a copy since'
  if (JSON.stringify(archivesOf(copy)) !== JSON.stringify(archivesOf(source)))
    return 'entries of the journal were moved to a yearly archive since'
  const seq = lastSeq(copy)
  const row = (db: DatabaseSyncInstance) =>
    JSON.stringify(db.prepare('SELECT * FROM entries WHERE seq = ?').get(seq) ?? null)
  return row(copy) === row(source) ? null : `the journal has another entry ${seq}, or none`
}

/** Whether all that a file holds is in the journal too, so that nothing is lost with it. */
export function holdsNothingElse(source: DatabaseSyncInstance, copy: DatabaseSyncInstance): boolean {
  const seq = lastSeq(copy)
  const row = (db: DatabaseSyncInstance) =>
    JSON.stringify(db.prepare('SELECT command_id, entry FROM entries WHERE seq = ?').get(seq) ?? null)
  return aboutOf(copy, 'journal_id') === aboutOf(source, 'journal_id') && row(copy) === row(source)
}

export function lastSeq(db: DatabaseSyncInstance): number {
  const seq = db.prepare('SELECT max(seq) AS seq FROM entries').get()?.seq ?? null
  // Where all is in yearly archives, the newest of them ends it.
  return Number(seq ?? archivesOf(db).at(-1)?.lastSeq ?? 0)
}

/** That of the last entry, on which the next one's runs on; null where it has none. */
export function lastSum(db: DatabaseSyncInstance): number | null {
  if (formOf(db) < FORM_WITH_SUMS) return null
  const row = db.prepare('SELECT sum FROM entries ORDER BY seq DESC LIMIT 1').get()
  if (row === undefined) return archivesOf(db).at(-1)?.lastSum ?? null
  return row.sum === null ? null : Number(row.sum)
}

function valuesOf(row: object, columns: readonly string[]): (string | number | null)[] {
  const values = row as Readonly<Record<string, string | number | null>>
  return columns.map((column) => values[column] ?? null)
}

function inodeOf(file: string): bigint {
  return statSync(file, { bigint: true }).ino
}

import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { OpenArchives } from './archives.ts'
import { assertTailFits } from './at-start.ts'
import { assertEndsAsMarked, EndMark } from './end-mark.ts'
import type { Before } from './entry-table.ts'
import { broken, EntryTable, setUpsOf } from './entry-table.ts'
import type { Group, Journal, Snapshot } from './journal.ts'
import { assertFollows, SET_UP_MARK, SNAPSHOTS_KEPT } from './journal.ts'
import { inWords, orInWords, remedyFor } from './journal-words.ts'
import type { JournalKind } from './open-file.ts'
import { aboutOf, openFile } from './open-file.ts'
import { RefusalTable } from './refusal-table.ts'
import { runOn } from './running-sum.ts'
import type { Sqlite } from './sqlite.ts'

export type { JournalKind } from './open-file.ts'

/** The journal in one SQLite file and its archives: WAL, every commit synced to disk before it is acknowledged. */
export class SqliteJournal implements Journal {
  readonly journalId: string
  readonly course: string
  readonly courseFromSeq: number
  readonly remedy: string
  readonly #db: DatabaseSyncInstance
  readonly #sqlite: Sqlite
  readonly #file: string
  readonly #archives: OpenArchives
  readonly #table: EntryTable
  readonly #refusals: RefusalTable
  readonly #mark: EndMark
  readonly #insertEntry: StatementSyncInstance
  readonly #countSetUps: StatementSyncInstance
  #last: Before

  /** @throws JournalError when the file is of another kind, newer than this release, or not to be trusted */
  constructor(sqlite: Sqlite, file: string, kind: JournalKind) {
    this.#sqlite = sqlite
    this.#file = file
    this.remedy = remedyFor(file)
    this.#db = openFile(sqlite, file, kind)
    this.#mark = new EndMark(file)
    let archives: OpenArchives | null = null
    try {
      archives = new OpenArchives(sqlite, this.#db, file)
      this.#archives = archives
      this.journalId = orInWords(file, () => aboutOf(this.#db, 'journal_id') ?? '')
      this.course = orInWords(file, () => aboutOf(this.#db, 'course') ?? '')
      this.courseFromSeq = orInWords(file, () => Number(aboutOf(this.#db, 'course_from_seq') ?? 0))
      this.#table = new EntryTable(this.#db, file, archives.end)
      this.#refusals = new RefusalTable(this.#db, file)
      this.#insertEntry = this.#db.prepare('INSERT INTO entries (seq, command_id, entry, sum) VALUES (?, ?, ?, ?)')
      this.#countSetUps = this.#db.prepare("UPDATE about SET value = value + ? WHERE key = 'set_ups'")
      this.#last = this.#table.last()
      assertEndsAsMarked(this.#mark.read(), this.#end(), (seq) => this.#sumAt(seq), file)
      assertTailFits(this.#table)
      this.#refusals.assertAllThere()
    } catch (error) {
      archives?.close()
      this.#db.close()
      throw inWords(error, file)
    }
  }

  lastSeq(): number {
    return this.#last.seq
  }

  async append(group: Group): Promise<void> {
    let last = this.#last
    try {
      this.#db.exec('BEGIN IMMEDIATE')
      assertFollows(last.seq, group)
      for (const entry of group.entries) last = this.#insert(entry, last)
      this.#refusals.insert(group.refusals)
      this.#db.exec('COMMIT')
    } catch (error) {
      // A full disk may have rolled back by itself already.
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
      this.#last = this.#table.last()
      throw inWords(error, this.#file)
    }
    this.#last = last
    this.#mark.write(this.#end())
  }

  #insert(entry: Entry, { sum }: Before): Before {
    const text = JSON.stringify(entry)
    const next = { seq: entry.seq, sum: runOn(sum ?? 0, text) }
    // The table's own key knows of no archive.
    for (const table of this.#archives.tables)
      if (table.find(entry.commandId) !== null) throw new Error(`${entry.commandId} is taken`)
    this.#insertEntry.run(entry.seq, entry.commandId, text, next.sum)
    if (text.includes(SET_UP_MARK)) this.#countSetUps.run(1)
    return next
  }

  answerOf(commandId: CommandId): Answer | null {
    const seq = this.#table.find(commandId)
    if (seq !== null) return { kind: 'taken', seq }
    const refusal = this.#refusals.find(commandId)
    if (refusal !== null) return refusal
    for (const table of this.#archives.tables) {
      const archived = table.find(commandId)
      if (archived !== null) return { kind: 'taken', seq: archived }
    }
    return null
  }

  *entriesAfter(seq: number, most = Number.MAX_SAFE_INTEGER): Iterable<Entry> {
    let last = seq
    for (const { table, endSeq } of this.#tables()) {
      if (endSeq <= last) continue
      for (const entry of table.after(last, most - (last - seq))) {
        yield entry
        last = entry.seq
      }
      if (last - seq >= most) return
      if (last < endSeq) throw broken(last + 1, 'it is missing', this.#file)
    }
  }

  setUpEntries(): Iterable<Entry> {
    const tables = this.#tables().map(({ table }) => table)
    return setUpsOf(tables, Number(aboutOf(this.#db, 'set_ups')), this.#file)
  }

  newestSnapshot(foldVersion: number, beforeSeq = Number.MAX_SAFE_INTEGER): Snapshot | null {
    const row = orInWords(this.#file, () =>
      this.#db
        .prepare('SELECT seq, hash, state FROM snapshots WHERE fold_version = ? AND seq < ? ORDER BY seq DESC LIMIT 1')
        .get(foldVersion, beforeSeq),
    )
    if (row === undefined) return null
    return { seq: Number(row.seq), foldVersion, hash: String(row.hash), json: String(row.state) }
  }

  saveSnapshot({ seq, foldVersion, hash, json }: Snapshot): void {
    this.#db
      .prepare('INSERT OR REPLACE INTO snapshots (seq, fold_version, hash, state) VALUES (?, ?, ?, ?)')
      .run(seq, foldVersion, hash, json)
    this.#db
      .prepare('DELETE FROM snapshots WHERE seq NOT IN (SELECT seq FROM snapshots ORDER BY seq DESC LIMIT ?)')
      .run(SNAPSHOTS_KEPT)
  }

  pruneRefusals(beforeMs: EpochMs): number {
    return this.#refusals.prune(beforeMs)
  }

  async backupTo(file: string): Promise<void> {
    this.#archives.copyBeside(file)
    await this.#sqlite.backup(this.#db, file)
  }

  /** Files beside the journal's that belong to it, oldest first. */
  archiveNames(): readonly string[] {
    return this.#archives.list.map(({ name }) => name)
  }

  close(): void {
    try {
      // All in one file: who copies a stopped shop may copy that one alone, and its archives.
      this.#db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    } finally {
      this.#mark.close()
      this.#archives.close()
      this.#db.close()
    }
  }

  #end() {
    return { journalId: this.journalId, course: this.course, seq: this.#last.seq, sum: this.#last.sum }
  }

  /** The files that hold the entries, oldest first. */
  #tables(): readonly { readonly table: EntryTable; readonly endSeq: number }[] {
    const tables = [...this.#archives.tables, this.#table]
    return tables.map((table, n) => ({ table, endSeq: tables[n + 1]?.before.seq ?? this.#last.seq }))
  }

  #sumAt(seq: number): number | null {
    const holder = this.#tables().find(({ endSeq }) => seq <= endSeq)
    return holder === undefined ? null : holder.table.sumAt(seq)
  }
}

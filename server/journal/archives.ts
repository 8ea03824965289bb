import { copyFileSync, existsSync, renameSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Before } from './entry-table.ts'
import { EntryTable } from './entry-table.ts'
import { JournalError } from './journal.ts'
import { orInWords, remedyFor } from './journal-words.ts'
import { aboutOf, formOf, syncFolder } from './open-file.ts'
import type { Sqlite } from './sqlite.ts'

/** Entries that were moved out of the journal's own file, never to be written again. */
export interface Archive {
  readonly firstSeq: number
  readonly lastSeq: number
  readonly lastSum: number | null
  /** Of the file in the journal's folder. */
  readonly name: string
}

const FIRST: Before = { seq: 0, sum: null }

/** The archives of a journal, oldest first, as its own file tells them. A file of a form before there were any has none. */
export function archivesOf(db: DatabaseSyncInstance): readonly Archive[] {
  if (formOf(db) < 3) return []
  const rows = db.prepare('SELECT first_seq, last_seq, last_sum, name FROM archives ORDER BY first_seq').all()
  return rows.map((row) => ({
    firstSeq: Number(row.first_seq),
    lastSeq: Number(row.last_seq),
    lastSum: row.last_sum === null ? null : Number(row.last_sum),
    name: String(row.name),
  }))
}

/** A journal's archives, open for reading. */
export class OpenArchives {
  readonly list: readonly Archive[]
  readonly tables: readonly EntryTable[]
  /** Where the journal's own file goes on. */
  readonly end: Before
  readonly #folder: string
  readonly #opened: readonly DatabaseSyncInstance[]

  /** @throws JournalError when one is missing, or another than the journal says */
  constructor(sqlite: Sqlite, journal: DatabaseSyncInstance, file: string) {
    this.#folder = dirname(file)
    this.list = orInWords(file, () => archivesOf(journal))
    const opened: DatabaseSyncInstance[] = []
    const tables: EntryTable[] = []
    let before = FIRST
    try {
      for (const archive of this.list) {
        const path = join(this.#folder, archive.name)
        if (!existsSync(path))
          throw new JournalError(
            `The archive ${path} is missing: entries ${archive.firstSeq} to ${archive.lastSeq} are in it. ${remedyFor(file)}`,
          )
        const db = orInWords(path, () => new sqlite.DatabaseSync(path, { readOnly: true }))
        opened.push(db)
        tables.push(orInWords(path, () => archiveTable(db, { path, archive, before, journal })))
        before = { seq: archive.lastSeq, sum: archive.lastSum }
      }
    } catch (error) {
      for (const db of opened) db.close()
      throw error
    }
    this.tables = tables
    this.#opened = opened
    this.end = before
  }

  /** Copies them beside another file, those that do not lie there yet. */
  copyBeside(file: string): void {
    for (const { name } of this.list) {
      const from = join(this.#folder, name)
      const to = join(dirname(file), name)
      if (!existsSync(to)) {
        copyFileSync(from, `${to}-new`)
        renameSync(`${to}-new`, to)
        syncFolder(dirname(file))
      } else if (statSync(to).size !== statSync(from).size)
        throw new JournalError(`${to} is another journal's archive. Choose a folder of its own for the copy.`)
    }
  }

  close(): void {
    for (const db of this.#opened) db.close()
  }
}

interface ArchiveFile {
  readonly path: string
  readonly archive: Archive
  readonly before: Before
  readonly journal: DatabaseSyncInstance
}

function archiveTable(db: DatabaseSyncInstance, { path, archive, before, journal }: ArchiveFile): EntryTable {
  const table = new EntryTable(db, path, before)
  const last = table.last()
  const isOurs = aboutOf(db, 'journal_id') === aboutOf(journal, 'journal_id')
  if (!isOurs || archive.firstSeq !== before.seq + 1 || last.seq !== archive.lastSeq || last.sum !== archive.lastSum)
    throw new JournalError(
      `The archive ${path} is not the one that this journal made: it should end with entry ${archive.lastSeq}. ${remedyFor(path)}`,
    )
  return table
}

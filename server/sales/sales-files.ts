import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { FileState, Mapping, Preview, SalesFile } from '../../shared-core/live/sales-import.ts'
import { epochMs } from '../../shared-core/units.ts'
import { dateOf } from './local-times.ts'

/** A file as its row has it: what people see of it, and how it is gone on with. */
export interface FileRow extends SalesFile {
  readonly encoding: Preview['encoding']
  readonly mapping: Mapping | null
  /** The line that is read next. */
  readonly nextLine: number
  readonly fromDay: number | null
  readonly toDay: number | null
  /** The journal knows of it. */
  readonly isNoted: boolean
}

export type NewFile = Pick<FileRow, 'name' | 'sha256' | 'encoding' | 'bytes' | 'addedAtMs'>

/** How far a file is read, and what came of it so far. */
export type Progress = Pick<
  FileRow,
  'bytesRead' | 'nextLine' | 'rows' | 'taken' | 'doubled' | 'bad' | 'fromDay' | 'toDay' | 'state'
>

/** The table of files. */
export class SalesFiles {
  readonly #db: DatabaseSyncInstance
  readonly #progress: StatementSyncInstance

  constructor(db: DatabaseSyncInstance) {
    this.#db = db
    this.#progress =
      db.prepare(`UPDATE files SET bytes_read = ?, next_line = ?, rows = ?, taken = ?, doubled = ?, bad = ?,
      from_day = ?, to_day = ?, state = ? WHERE id = ?`)
  }

  /** Newest first. */
  list(): readonly FileRow[] {
    return this.#db
      .prepare('SELECT * FROM files ORDER BY id DESC')
      .all()
      .map((row) => fileOf(row as Row))
  }

  find(id: number): FileRow | null {
    const row = this.#db.prepare('SELECT * FROM files WHERE id = ?').get(id)
    return row === undefined ? null : fileOf(row as Row)
  }

  add({ name, sha256, encoding, bytes, addedAtMs }: NewFile): FileRow {
    const { lastInsertRowid } = this.#db
      .prepare(
        "INSERT INTO files (name, sha256, encoding, bytes, added_at_ms, state) VALUES (?, ?, ?, ?, ?, 'waiting')",
      )
      .run(name, sha256, encoding, bytes, addedAtMs)
    const added = this.find(Number(lastInsertRowid))
    if (added === null) throw new Error('a file that was just added is not there')
    return added
  }

  begin(id: number, mapping: Mapping): void {
    this.#db
      .prepare("UPDATE files SET state = 'taking', mapping = ?, why = NULL WHERE id = ?")
      .run(JSON.stringify(mapping), id)
  }

  progress(id: number, now: Progress): void {
    const { bytesRead, nextLine, rows, taken, doubled, bad, fromDay, toDay, state } = now
    this.#progress.run(bytesRead, nextLine, rows, taken, doubled, bad, fromDay, toDay, state, id)
  }

  fail(id: number, why: string): void {
    this.#db.prepare("UPDATE files SET state = 'failed', why = ? WHERE id = ?").run(why, id)
  }

  noted(id: number): void {
    this.#db.prepare('UPDATE files SET is_noted = 1 WHERE id = ?').run(id)
  }

  remove(id: number): void {
    this.#db.prepare('DELETE FROM files WHERE id = ?').run(id)
  }
}

interface Row {
  readonly [column: string]: unknown
}

function fileOf(row: Row): FileRow {
  const day = (value: unknown) => (value === null ? null : Number(value))
  const [fromDay, toDay] = [day(row.from_day), day(row.to_day)]
  return {
    id: Number(row.id),
    name: String(row.name),
    sha256: String(row.sha256),
    encoding: row.encoding as FileRow['encoding'],
    bytes: Number(row.bytes),
    addedAtMs: epochMs(Number(row.added_at_ms)),
    state: row.state as FileState,
    mapping: row.mapping === null ? null : JSON.parse(String(row.mapping)),
    bytesRead: Number(row.bytes_read),
    nextLine: Number(row.next_line),
    rows: Number(row.rows),
    taken: Number(row.taken),
    doubled: Number(row.doubled),
    bad: Number(row.bad),
    fromDay,
    toDay,
    from: fromDay === null ? null : dateOf(fromDay),
    to: toDay === null ? null : dateOf(toDay),
    why: row.why === null ? null : String(row.why),
    isNoted: row.is_noted === 1,
  }
}

/** What people see of a file. */
export function toldFile({ encoding, mapping, nextLine, fromDay, toDay, isNoted, ...told }: FileRow): SalesFile {
  return told
}

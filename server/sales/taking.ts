import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { RowFault, Told } from '../../shared-core/live/sales-import.ts'
import { assert } from '../../shared-core/support.ts'
import type { CsvHears, Line } from './csv-walk.ts'
import type { LocalTimes } from './local-times.ts'
import type { OpenCsv } from './open-csv.ts'
import { openCsv, textOf, walkRows } from './open-csv.ts'
import { RowReader } from './read-row.ts'
import { rowFault } from './row-fault.ts'
import type { FileRow, Progress, SalesFiles } from './sales-files.ts'
import type { RowWriter } from './sales-rows.ts'
import { spansOfOthers } from './sales-rows.ts'

/** Bad rows kept to be corrected; a file with more has the wrong mapping. */
export const BAD_KEPT_MAX = 10_000

export interface TakingParts {
  readonly db: DatabaseSyncInstance
  readonly files: SalesFiles
  readonly writer: RowWriter
  readonly times: LocalTimes
  /** Where the file lies. */
  readonly path: string
  readonly blockBytes: number
}

/**
 * A file being taken, a block at a time. Each block's rows, its bad rows and how far the file is read are one commit: one
 * that is killed goes on from the last, and no row is taken twice or lost.
 */
export class Taking {
  readonly #parts: TakingParts
  readonly #id: number
  readonly #csv: OpenCsv
  readonly #rows: ReturnType<typeof walkRows>
  readonly #reader: RowReader
  readonly #addBad: StatementSyncInstance
  #now: Progress

  constructor(file: FileRow, parts: TakingParts) {
    const { mapping } = file
    assert(mapping !== null, 'a file is taken by a mapping')
    this.#parts = parts
    this.#id = file.id
    this.#now = file
    this.#csv = openCsv(parts.path, parts.blockBytes)
    const from = file.bytesRead === 0 ? this.#csv.start : { byte: file.bytesRead, line: file.nextLine }
    this.#rows = walkRows(this.#csv, mapping, from)
    this.#reader = new RowReader(mapping, parts.times, file.addedAtMs)
    this.#addBad = parts.db.prepare('INSERT INTO bad_rows VALUES (?, ?, ?, ?)')
  }

  /** Takes the next block. @throws when it cannot be written: then this object is of no more use, the table is whole */
  step(): void {
    const { db, files, writer } = this.#parts
    const others = spansOfOthers(db, this.#id)
    const now = { ...this.#now }
    db.exec('BEGIN IMMEDIATE')
    try {
      this.#rows.step(this.#hears(now, others))
      const { byte, line } = this.#rows.walk.place
      now.bytesRead = byte
      now.nextLine = line
      if (this.#rows.walk.isOver) now.state = 'taken'
      writer.flush(this.#id)
      files.progress(this.#id, now)
      db.exec('COMMIT')
    } catch (error) {
      if (db.isTransaction) db.exec('ROLLBACK')
      writer.forget()
      throw error
    }
    this.#now = now
  }

  get isOver(): boolean {
    return this.#now.state === 'taken'
  }

  close(): void {
    this.#csv.close()
  }

  #hears(now: Writable<Progress>, others: ReturnType<typeof spansOfOthers>): CsvHears {
    const bad = (at: Line, fault: Told<RowFault>) => {
      now.rows += 1
      now.bad += 1
      if (now.bad <= BAD_KEPT_MAX) this.#addBad.run(this.#id, at.line, textOf(this.#csv, at), JSON.stringify(fault))
    }
    return {
      row: (cells, at) => {
        const { row, fault } = this.#reader.read(cells)
        if (row === null) return bad(at, fault)
        now.rows += 1
        now.taken += 1
        if (this.#parts.writer.write(row, this.#id, others) === 'doubled') now.doubled += 1
        if (now.fromDay === null || row.day < now.fromDay) now.fromDay = row.day
        if (now.toDay === null || row.day > now.toDay) now.toDay = row.day
      },
      broken: (at) => bad(at, rowFault('open-quote', {})),
    }
  }
}

type Writable<T> = { -readonly [K in keyof T]: T[K] }

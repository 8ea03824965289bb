import { parse } from 'csv-parse/sync'
import type { BadRow, BadRows, Mapping, MendedRows, RowFault, Told } from '../../shared-core/live/sales-import.ts'
import type { RowRead } from './read-row.ts'
import { RowReader } from './read-row.ts'
import { rowFault } from './row-fault.ts'
import type { SalesBooks } from './sales-books.ts'
import type { FileRow } from './sales-files.ts'
import { spansOfOthers } from './sales-rows.ts'

const ROWS_A_PAGE = 200

export interface MendedLine {
  readonly line: number
  /** "": the line is no sale, and is let go. */
  readonly text: string
}

/** Rows of a file that could not be read, after a line. */
export function badRowsAfter({ db }: SalesBooks, fileId: number, after: number): BadRows {
  const rows = db
    .prepare('SELECT line, text, fault FROM bad_rows WHERE file = ? AND line > ? ORDER BY line LIMIT ?')
    .all(fileId, after, ROWS_A_PAGE + 1)
    .map((row): BadRow => ({ line: Number(row.line), text: String(row.text), fault: JSON.parse(String(row.fault)) }))
  return { bad: rows.slice(0, ROWS_A_PAGE), hasMore: rows.length > ROWS_A_PAGE }
}

/** Takes lines of a file as somebody corrected them; one that is not bad any more, or never was, is left alone. */
export function mendRows(books: SalesBooks, file: FileRow, lines: readonly MendedLine[]): MendedRows {
  const { db, files, writer } = books
  const { mapping } = file
  if (mapping === null) return { taken: 0, doubled: 0, bad: [] }
  const reader = new RowReader(mapping, books.times(), file.addedAtMs)
  const others = spansOfOthers(db, file.id)
  const now = { ...file }
  const [bad, before]: [BadRow[], { taken: number; doubled: number }] = [
    [],
    { taken: file.taken, doubled: file.doubled },
  ]
  db.exec('BEGIN IMMEDIATE')
  try {
    for (const { line, text } of lines) {
      if (db.prepare('SELECT 1 FROM bad_rows WHERE file = ? AND line = ?').get(file.id, line) === undefined) continue
      const read = text.trim() === '' ? null : readLine(text, mapping, reader)
      if (read?.row === null) {
        const { fault } = read
        db.prepare('UPDATE bad_rows SET text = ?, fault = ? WHERE file = ? AND line = ?').run(
          text,
          JSON.stringify(fault),
          file.id,
          line,
        )
        bad.push({ line, text, fault })
        continue
      }
      db.prepare('DELETE FROM bad_rows WHERE file = ? AND line = ?').run(file.id, line)
      now.bad -= 1
      if (read === null) continue
      now.taken += 1
      if (writer.write(read.row, file.id, others) === 'doubled') now.doubled += 1
      now.fromDay = Math.min(read.row.day, now.fromDay ?? read.row.day)
      now.toDay = Math.max(read.row.day, now.toDay ?? read.row.day)
      books.days.rowsChanged(read.row.day, read.row.day)
    }
    writer.flush(file.id)
    files.progress(file.id, now)
    db.exec('COMMIT')
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK')
    writer.forget()
    throw error
  }
  return { taken: now.taken - before.taken, doubled: now.doubled - before.doubled, bad }
}

function readLine(text: string, { delimiter, quote }: Mapping, reader: RowReader): RowRead {
  const broken = (fault: Told<RowFault>) => ({ row: null, fault })
  try {
    const [cells] = parse(text, { delimiter, quote, relaxQuotes: true, relaxColumnCount: true }) as string[][]
    return cells === undefined ? broken(rowFault('too-few-columns', { columns: 0, needed: 2 })) : reader.read(cells)
  } catch {
    return broken(rowFault('open-quote', {}))
  }
}

import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import type { CsvFile, CsvHears, Line, Place } from './csv-walk.ts'
import { BLOCK_BYTES, CsvWalk } from './csv-walk.ts'
import type { TableForm } from './guess-form.ts'

const BOM = Buffer.from([0xef, 0xbb, 0xbf])
/** Of a line that is told as bad. */
const TEXT_MAX_BYTES = 2_000

/** A file that is being read. */
export interface OpenCsv extends CsvFile {
  /** Where its first line begins. */
  readonly start: Place
  close(): void
}

export function openCsv(file: string, blockBytes = BLOCK_BYTES): OpenCsv {
  const fd = openSync(file, 'r')
  const read: CsvFile['read'] = (to, offset, length, position) => readSync(fd, to, offset, length, position)
  return { read, size: fstatSync(fd).size, blockBytes, start: startOf(read), close: () => closeSync(fd) }
}

/** A short file that is all here, and is never to lie on a disk. @param bytes in UTF-8 */
export function csvOf(bytes: Buffer): OpenCsv {
  const read: CsvFile['read'] = (to, offset, length, position) => bytes.copy(to, offset, position, position + length)
  return { read, size: bytes.length, start: startOf(read), close: () => undefined }
}

function startOf(read: CsvFile['read']): Place {
  const mark = Buffer.alloc(BOM.length)
  read(mark, 0, BOM.length, 0)
  return { byte: mark.equals(BOM) ? BOM.length : 0, line: 1 }
}

/** The line as it stands in the file. */
export function textOf({ read: readAt }: OpenCsv, { fromByte, toByte }: Line): string {
  const bytes = Buffer.alloc(Math.min(toByte - fromByte, TEXT_MAX_BYTES))
  const read = readAt(bytes, 0, bytes.length, fromByte)
  return bytes
    .subarray(0, read)
    .toString('utf8')
    .replace(/\r?\n$/, '')
}

/** Walks the rows after what a mapping leaves out: a title's lines and the header. */
export function walkRows(
  csv: OpenCsv,
  mapping: TableForm,
  from: Place,
): { step(hears: CsvHears): void; walk: CsvWalk } {
  const walk = new CsvWalk(csv, mapping, from, columnsOf(csv, mapping))
  let isHeaderToCome = mapping.hasHeader && from.byte <= csv.start.byte
  const step = (hears: CsvHears) =>
    walk.step({
      row: (cells, at) => {
        if (at.line <= mapping.skip) return
        if (isHeaderToCome) isHeaderToCome = false
        else hears.row(cells, at)
      },
      broken: (at) => {
        if (at.line > mapping.skip) hears.broken(at)
      },
    })
  return { step, walk }
}

/** Of the table's first row: not of a title above it, and the same where a walk goes on in the middle after a stop. */
function columnsOf(csv: OpenCsv, mapping: TableForm): number {
  const walk = new CsvWalk(csv, mapping, csv.start)
  let columns = 0
  const row = (cells: readonly string[], { line }: Line) => {
    if (columns === 0 && line > mapping.skip) columns = cells.length
  }
  while (columns === 0 && !walk.isOver) walk.step({ row, broken: () => undefined })
  return columns
}

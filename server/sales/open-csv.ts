import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import type { Mapping } from '../../shared-core/live/sales-import.ts'
import type { CsvFile, CsvHears, Line, Place } from './csv-walk.ts'
import { BLOCK_BYTES, CsvWalk } from './csv-walk.ts'

const BOM = Buffer.from([0xef, 0xbb, 0xbf])
/** Of a line that is told as bad. */
const TEXT_MAX_BYTES = 2_000

/** A till's file that is being read. */
export interface OpenCsv extends CsvFile {
  /** Where its first line begins. */
  readonly start: Place
  close(): void
}

export function openCsv(file: string, blockBytes = BLOCK_BYTES): OpenCsv {
  const fd = openSync(file, 'r')
  const mark = Buffer.alloc(BOM.length)
  readSync(fd, mark, 0, BOM.length, 0)
  const start = { byte: mark.equals(BOM) ? BOM.length : 0, line: 1 }
  return { fd, size: fstatSync(fd).size, blockBytes, start, close: () => closeSync(fd) }
}

/** The line as it stands in the file. */
export function textOf({ fd }: OpenCsv, { fromByte, toByte }: Line): string {
  const bytes = Buffer.alloc(Math.min(toByte - fromByte, TEXT_MAX_BYTES))
  const read = readSync(fd, bytes, 0, bytes.length, fromByte)
  return bytes
    .subarray(0, read)
    .toString('utf8')
    .replace(/\r?\n$/, '')
}

/** Walks the rows after what a mapping leaves out: a title's lines and the header. */
export function walkRows(csv: OpenCsv, mapping: Mapping, from: Place): { step(hears: CsvHears): void; walk: CsvWalk } {
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
function columnsOf(csv: OpenCsv, mapping: Mapping): number {
  const walk = new CsvWalk(csv, mapping, csv.start)
  let columns = 0
  const row = (cells: readonly string[], { line }: Line) => {
    if (columns === 0 && line > mapping.skip) columns = cells.length
  }
  while (columns === 0 && !walk.isOver) walk.step({ row, broken: () => undefined })
  return columns
}

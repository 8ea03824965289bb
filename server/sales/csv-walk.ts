import { parse } from 'csv-parse/sync'
import type { Delimiter } from '../../shared-core/live/sales-import.ts'

/** Read at once, one or two thousand rows: what else waits for this thread waits for that long, some 10 ms. */
export const BLOCK_BYTES = 64 * 1024
/** A longer row is none: a quotation mark in it was not closed. */
const ROW_BYTES_MAX = 16 * 1024
const NEW_LINE = 0x0a
const RETURN = 0x0d

export interface Line {
  /** Counted from 1, of the row's beginning. */
  readonly line: number
  readonly fromByte: number
  readonly toByte: number
}

export interface CsvForm {
  readonly delimiter: Delimiter
  readonly quote: '"' | "'"
}

export interface CsvFile {
  /** Reads into `to[offset …]` what stands at `position`. @returns how many bytes; 0: there are no more */
  readonly read: (to: Buffer, offset: number, length: number, position: number) => number
  readonly size: number
  /** Left out: some thousands of rows. */
  readonly blockBytes?: number
}

export interface CsvHears {
  row(cells: readonly string[], at: Line): void
  /** A quotation mark opens in this line and is not closed; the lines after it are read all the same. */
  broken(at: Line): void
}

/** Where to go on after a stop. */
export interface Place {
  readonly byte: number
  /** Of the row that begins there. */
  readonly line: number
}

/**
 * A CSV file in UTF-8 row by row, a block at a time, from any row on. csv-parse reads the rows; where blocks end and
 * what a quotation mark that is never closed may swallow is decided here, as a stream of it would stop at the first
 * such mark, or take the rest of the file for one cell.
 */
export class CsvWalk {
  readonly #read: CsvFile['read']
  readonly #size: number
  readonly #form: CsvForm
  readonly #blockBytes: number
  #byte: number
  #line: number
  #columns: number

  /** @param columns how many good rows have; 0: as many as the first that is read */
  constructor(file: CsvFile, form: CsvForm, from: Place, columns = 0) {
    this.#columns = columns
    this.#blockBytes = file.blockBytes ?? BLOCK_BYTES
    this.#read = file.read
    this.#size = file.size
    this.#form = form
    this.#byte = from.byte
    this.#line = from.line
  }

  /** Where the next row begins. */
  get place(): Place {
    return { byte: this.#byte, line: this.#line }
  }

  get isOver(): boolean {
    return this.#byte >= this.#size
  }

  /** Reads the next block, at the least one line of it. */
  step(hears: CsvHears): void {
    const block = this.#block()
    const isLast = this.#byte + block.length >= this.#size
    const whole = isLast ? block : block.subarray(0, block.lastIndexOf(NEW_LINE) + 1)
    const from = this.#byte
    if (whole.length > 0 && this.#rowsOf(whole, hears)) this.#breakLine(block.subarray(this.#byte - from), hears)
    else if (this.#byte === from) this.#breakLine(block, hears)
  }

  /**
   * Rows that end in these bytes. Where the last one begins with a quotation mark that is not closed in them, the next
   * block begins with it.
   * @returns whether it stopped at a line that is broken for certain
   */
  #rowsOf(bytes: Buffer, hears: CsvHears): boolean {
    const from = this.#byte
    let done = 0
    const onRecord = (cells: string[], { bytes: end }: { readonly bytes: number }) => {
      const start = afterBlankLines(bytes, done)
      const at = { line: this.#line + linesIn(bytes, done, start), fromByte: from + start, toByte: from + end }
      const lines = linesIn(bytes, start, end)
      if (lines > 1 && this.#isSwallowed(cells, bytes.subarray(start, end))) throw new Swallowed()
      if (this.#columns === 0) this.#columns = cells.length
      if (cells.length > 1 || cells[0]?.trim() !== '') hears.row(cells, at)
      this.#line = at.line + lines
      done = end
      return null
    }
    const { delimiter, quote } = this.#form
    try {
      parse(bytes, { ...FORM, delimiter, quote, onRecord })
      this.#line += linesIn(bytes, done, bytes.length)
      done = bytes.length
    } catch (error) {
      if (!(error instanceof Swallowed) && !isUnclosed(error)) throw error
      const start = afterBlankLines(bytes, done)
      this.#line += linesIn(bytes, done, start)
      this.#byte = from + start
      return error instanceof Swallowed
    }
    this.#byte = from + done
    return false
  }

  /**
   * Whether a row over several lines holds other rows, as another row's mark closed what one had opened: it has another
   * number of columns than the others, or more than one of its lines has as many as a row.
   */
  #isSwallowed(cells: readonly string[], bytes: Buffer): boolean {
    if (bytes.length > ROW_BYTES_MAX || (this.#columns > 0 && cells.length !== this.#columns)) return true
    const lines = bytes.toString('latin1').trimEnd().split('\n')
    return lines.filter((line) => line.split(this.#form.delimiter).length >= cells.length).length > 1
  }

  /** The line that begins where we are is told as broken, and the next one is read on its own. */
  #breakLine(bytes: Buffer, { broken }: CsvHears): void {
    const end = bytes.indexOf(NEW_LINE)
    const length = end === -1 ? bytes.length : end + 1
    broken({ line: this.#line, fromByte: this.#byte, toByte: this.#byte + length })
    this.#byte += length
    if (end !== -1) this.#line += 1
  }

  #block(): Buffer {
    const length = Math.min(this.#blockBytes, this.#size - this.#byte)
    const block = Buffer.allocUnsafe(length)
    let filled = 0
    while (filled < length) {
      const read = this.#read(block, filled, length - filled, this.#byte + filled)
      if (read === 0) throw new Error('The file became shorter while it was read.')
      filled += read
    }
    return block
  }
}

const FORM = { relaxColumnCount: true, relaxQuotes: true, skipEmptyLines: true }

/** Stops the parser at a row that holds other rows. */
class Swallowed extends Error {}

function isUnclosed(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'CSV_QUOTE_NOT_CLOSED'
}

function linesIn(bytes: Buffer, from: number, to: number): number {
  let lines = 0
  for (let at = bytes.indexOf(NEW_LINE, from); at !== -1 && at < to; at = bytes.indexOf(NEW_LINE, at + 1)) lines += 1
  return lines
}

function afterBlankLines(bytes: Buffer, from: number): number {
  let at = from
  while (bytes[at] === NEW_LINE || bytes[at] === RETURN) at += 1
  return at
}

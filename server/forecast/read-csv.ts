import { createReadStream } from 'node:fs'
import { pipeline } from 'node:stream'
import { createGunzip } from 'node:zlib'
import type { Parser } from 'csv-parse'
import { parse } from 'csv-parse'
import { InputError, wrongAt } from './input-error.ts'

/** A row of a CSV file: its fields by column, and the line on which it ends. */
export interface Row {
  readonly line: number
  /** @throws InputError where the field is empty */
  text(column: string): string
  /** '' where the field is empty or the column missing. */
  maybe(column: string): string
}

/** The library's word for a fault, and ours. */
const FAULTS: Readonly<Record<string, string>> = {
  CSV_RECORD_INCONSISTENT_FIELDS_LENGTH: 'this line has another number of fields than the header',
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark opens and is never closed',
  CSV_INVALID_CLOSING_QUOTE: 'after a closing quotation mark stands something other than a comma',
  INVALID_OPENING_QUOTE: 'a quotation mark stands inside a field; put the whole field in quotation marks',
}

/**
 * Rows of a CSV file with a header, plain or .gz, one at a time.
 * @param columns that the header must have; others are ignored
 * @throws InputError with file and line
 */
export async function* readCsv(path: string, columns: readonly string[]): AsyncGenerator<Row, void> {
  const parser = opened(path)
  let header: readonly string[] | null = null
  try {
    for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: { lines: number } }>) {
      if (header === null) header = checkedHeader(path, record, columns)
      else yield rowOf(path, info.lines, header, record)
    }
  } catch (error) {
    throw error instanceof InputError ? error : said(path, error)
  } finally {
    parser.destroy()
  }
  if (header === null) throw wrongAt(path, 1, `the file is empty; it begins with ${columns.join(',')}`)
}

function opened(path: string): Parser {
  const parser = parse({ bom: true, info: true, skip_empty_lines: true })
  const failed = (error: Error | null | undefined) => {
    if (error && !parser.destroyed) parser.destroy(error)
  }
  const file = createReadStream(path)
  if (path.endsWith('.gz')) pipeline(file, createGunzip(), parser, failed)
  else pipeline(file, parser, failed)
  return parser
}

function checkedHeader(path: string, record: readonly string[], columns: readonly string[]): readonly string[] {
  const header = record.map((name) => name.trim())
  const missing = columns.filter((column) => !header.includes(column))
  if (missing.length > 0) {
    throw wrongAt(
      path,
      1,
      `the header is '${header.join(',')}' and lacks ${missing.join(', ')}; it has ${columns.join(',')}`,
    )
  }
  return header
}

function rowOf(path: string, line: number, header: readonly string[], record: readonly string[]): Row {
  const maybe = (column: string) => record[header.indexOf(column)]?.trim() ?? ''
  return {
    line,
    maybe,
    text: (column) => {
      const value = maybe(column)
      if (value === '') throw wrongAt(path, line, `${column} is empty`)
      return value
    },
  }
}

function said(path: string, error: unknown): InputError {
  const { code = '', message, lines = 1 } = error as { code?: string; message: string; lines?: number }
  if (code === 'ENOENT') return new InputError(`${path}: there is no such file`)
  if (code === 'EISDIR') return new InputError(`${path}: this is a folder; name a file`)
  if (code === 'EACCES') return new InputError(`${path}: this file may not be read`)
  if (code.startsWith('Z_')) return new InputError(`${path}: this is no whole gzip file (${message})`)
  return wrongAt(path, lines, FAULTS[code] ?? message)
}

import { parse } from 'csv-parse/sync'
import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { SALES_MAX } from './sales-schema.ts'

const COLUMNS = ['at', 'variety', 'pieces', 'id'] as const
type Column = (typeof COLUMNS)[number]
const RIGHT = `Columns at, variety, pieces, id: a time or empty, a name or empty, 1 to ${PIECES_MAX}, a text or empty.`

/** A row as it stands in the file. */
export interface SalesRow {
  readonly line: number
  readonly cells: { readonly [column in Column]: string }
}

export type SalesRowsRead =
  | { readonly ok: true; readonly rows: readonly SalesRow[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Sales as a till or spreadsheet saves them: with commas, semicolons or tabs. A header line that names some of the four
 * columns may put them in any order, among others; without one they are at, variety, pieces, id.
 */
export function readSalesCsv(text: string): SalesRowsRead {
  const rows: SalesRow[] = []
  let order: readonly string[] | null = null
  const read = (cells: string[], { lines }: { readonly lines: number }) => {
    if (order === null) {
      order = headerOf(cells)
      if (order !== null) return null
      order = COLUMNS
    }
    rows.push({ line: lines, cells: cellsOf(cells, order) })
    return null
  }
  try {
    parse(text, { ...FORM, onRecord: read })
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return unreadable(`This is no readable CSV: ${why}.`)
  }
  if (rows.length === 0) return unreadable('There is no sale in it.')
  return rows.length > SALES_MAX
    ? unreadable(`${rows.length} sales are too many at once; ${SALES_MAX} may be.`)
    : { ok: true, rows }
}

const FORM = {
  bom: true,
  delimiter: [',', ';', '\t'],
  trim: true,
  skipEmptyLines: true,
  relaxColumnCount: true,
  relaxQuotes: true,
}

function headerOf(cells: readonly string[]): readonly string[] | null {
  const names = cells.map((cell) => cell.toLowerCase())
  return names.includes('variety') && names.includes('pieces') ? names : null
}

function cellsOf(cells: readonly string[], order: readonly string[]): SalesRow['cells'] {
  const cell = (column: Column) => cells[order.indexOf(column)] ?? ''
  return { at: cell('at'), variety: cell('variety'), pieces: cell('pieces'), id: cell('id') }
}

function unreadable(wrong: string): SalesRowsRead {
  return { ok: false, problems: [{ path: '', wrong, right: RIGHT }] }
}

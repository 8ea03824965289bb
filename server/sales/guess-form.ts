import type { Mapping } from '../../shared-core/live/sales-import.ts'
import { DELIMITERS } from '../../shared-core/live/sales-import.ts'
import type { CsvForm } from './csv-walk.ts'
import type { OpenCsv } from './open-csv.ts'
import { dateRead } from './read-moment.ts'
import { numberOf } from './read-row.ts'
import type { SampleRow } from './sample.ts'
import { firstRows, mostFrequent } from './sample.ts'

export type TableForm = CsvForm & Pick<Mapping, 'skip' | 'hasHeader'>

/** How a file is laid out: the delimiter that gives most rows the same number of columns, and where its table begins. */
export function guessForm(csv: OpenCsv): TableForm {
  const tried = DELIMITERS.map((delimiter) => {
    const form = { delimiter, quote: '"' as const }
    const rows = firstRows(csv, form)
    const columns = mostFrequent(rows.map(({ cells }) => cells.length))
    const alike = rows.filter(({ cells }) => cells.length === columns).length
    return { form, rows, columns, score: columns < 2 ? 0 : alike / rows.length + columns / 1_000 }
  })
  const best = tried.reduce((one, other) => (other.score > one.score ? other : one))
  const quote = isSingleQuoted(best.rows) ? ("'" as const) : ('"' as const)
  const rows = quote === '"' ? best.rows : firstRows(csv, { ...best.form, quote })
  const columns = mostFrequent(rows.map(({ cells }) => cells.length))
  const begin = rows.findIndex(({ cells }) => cells.length >= columns)
  const [first, ...others] = rows.slice(Math.max(0, begin))
  const skip = begin > 0 ? (first?.line ?? 1) - 1 : 0
  return { delimiter: best.form.delimiter, quote, skip, hasHeader: first !== undefined && isHeader(first, others) }
}

function isSingleQuoted(rows: readonly SampleRow[]): boolean {
  const quoted = rows.filter(({ cells }) => cells.some((cell) => /^'.*'$/.test(cell)))
  return quoted.length > rows.length / 2
}

/** Names of columns are neither dates nor numbers, where the rows below have these. */
function isHeader({ cells }: SampleRow, others: readonly SampleRow[]): boolean {
  if (cells.some((cell) => isDate(cell) || numberOf(cell, '.') !== null)) return false
  return (
    others.length === 0 || others.some((row) => row.cells.some((cell) => isDate(cell) || numberOf(cell, '.') !== null))
  )
}

export function isDate(text: string): boolean {
  return dateRead(text, 'y-m-d') !== null || dateRead(text, 'm-d-y') !== null || dateRead(text, 'd-m-y') !== null
}

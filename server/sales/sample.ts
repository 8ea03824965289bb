import type { CsvForm, Place } from './csv-walk.ts'
import { CsvWalk } from './csv-walk.ts'
import type { OpenCsv } from './open-csv.ts'

export interface SampleRow {
  readonly cells: readonly string[]
  readonly line: number
}

/** Of each place that is looked at. */
const SAMPLE_BYTES = 24 * 1024
const PLACES = 8
/** Of rows whose line nobody has counted. */
const FAR_DOWN = 1_000_000_000

/** A file's first rows, whole ones. */
export function firstRows(csv: OpenCsv, form: CsvForm): readonly SampleRow[] {
  return rowsFrom(csv, form, csv.start)
}

/** Rows from all over a file: the days of its beginning alone may not tell a day from a month. */
export function rowsAllOver(csv: OpenCsv, form: CsvForm): readonly SampleRow[] {
  const first = firstRows(csv, form)
  if (csv.size <= SAMPLE_BYTES) return first
  const step = Math.floor((csv.size - SAMPLE_BYTES) / PLACES)
  const later = Array.from({ length: PLACES }, (_, place) =>
    // Where a place falls into the middle of a row, the rest of that row is none.
    rowsFrom(csv, form, { byte: csv.start.byte + (place + 1) * step, line: FAR_DOWN }).slice(1),
  )
  return [...first, ...later.flat()]
}

function rowsFrom(csv: OpenCsv, form: CsvForm, from: Place): readonly SampleRow[] {
  const size = Math.min(csv.size, from.byte + SAMPLE_BYTES)
  const rows: SampleRow[] = []
  const walk = new CsvWalk({ read: csv.read, size }, form, from)
  const hears = {
    row: (cells: readonly string[], { line }: SampleRow | { line: number }) =>
      void rows.push({ cells: cells.map((cell) => cell.trim()), line }),
    broken: () => undefined,
  }
  while (!walk.isOver) walk.step(hears)
  // What the sample's end cuts off is no row either.
  return size === csv.size ? rows : rows.slice(0, -1)
}

/** What most of the rows have. */
export function mostFrequent(values: readonly number[]): number {
  const counts = new Map<number, number>()
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1)
  let [best, most] = [0, 0]
  for (const [value, count] of counts)
    if (count > most || (count === most && value > best)) [best, most] = [value, count]
  return best
}

import type {
  DateForm,
  Doubt,
  Mapping,
  Preview,
  PreviewRow,
  SalesFile,
  Told,
} from '../../shared-core/live/sales-import.ts'
import { guessColumns } from './guess-columns.ts'
import type { DateHints, DatesGuess } from './guess-dates.ts'
import { guessDates } from './guess-dates.ts'
import type { TableForm } from './guess-form.ts'
import { guessForm } from './guess-form.ts'
import type { LocalTimes } from './local-times.ts'
import { dateOf } from './local-times.ts'
import type { OpenCsv } from './open-csv.ts'
import { dateRead, NO_TIME } from './read-moment.ts'
import { RowReader } from './read-row.ts'
import type { SampleRow } from './sample.ts'
import { rowsAllOver } from './sample.ts'

const ROWS_SHOWN = 20
const SAMPLES = 3
/** More bad rows than this among those looked at, and the mapping is probably wrong. */
const MANY_BAD = 0.1

export interface PreviewAsked {
  readonly csv: OpenCsv
  readonly file: SalesFile
  readonly encoding: Preview['encoding']
  /** Another file that has the same bytes; null: there is none. */
  readonly twin: SalesFile | null
  readonly times: LocalTimes
  readonly hints: DateHints
  /** What was taken for the columns of such a header; null: it was never seen. */
  readonly remembered: (signature: string) => Mapping | null
  /** Chosen by somebody; null: guess. */
  readonly chosen: Mapping | null
}

/** How a file would be understood, with what is in doubt. */
export function previewOf(asked: PreviewAsked): Preview {
  const { csv, file, encoding, chosen } = asked
  const form = chosen ?? guessForm(csv)
  const table = tableOf(csv, form)
  const remembered = chosen === null ? asked.remembered(signatureOf(table, form)) : null
  const guessed = chosen ?? remembered ?? guessMapping(table, form, asked.hints)
  const reader = new RowReader(guessed, asked.times, file.addedAtMs)
  const rows = table.rows.slice(0, ROWS_SHOWN).map((row) => understood(row, reader))
  const width = Math.max(table.header?.length ?? 0, ...table.rows.slice(0, ROWS_SHOWN).map(({ cells }) => cells.length))
  const columns = Array.from({ length: width }, (_, index) => ({
    name: table.header?.[index] ?? '',
    samples: [...new Set(table.rows.flatMap(({ cells }) => cells[index] || []))].slice(0, SAMPLES),
  }))
  const isRemembered = remembered !== null
  return { file, encoding, mapping: guessed, isRemembered, columns, rows, doubts: doubtsOf(table, guessed, asked) }
}

interface Table {
  readonly header: readonly string[] | null
  readonly rows: readonly SampleRow[]
}

function tableOf(csv: OpenCsv, form: TableForm): Table {
  const [first, ...others] = rowsAllOver(csv, form).filter(({ line }) => line > form.skip)
  if (first === undefined) return { header: null, rows: [] }
  return form.hasHeader ? { header: first.cells, rows: others } : { header: null, rows: [first, ...others] }
}

/** By what a file is known to be laid out as an earlier one. */
export function signatureOf(
  { header, rows }: Pick<Table, 'header' | 'rows'>,
  { delimiter }: Pick<TableForm, 'delimiter'>,
): string {
  const names = header?.map((name) => name.toLowerCase()) ?? [`${rows[0]?.cells.length ?? 0} columns`]
  return [delimiter, ...names].join('\n')
}

/** The signature of a file that is taken by a mapping. */
export function signatureBy(csv: OpenCsv, mapping: Mapping): string {
  return signatureOf(tableOf(csv, mapping), mapping)
}

function guessMapping({ header, rows }: Table, form: TableForm, hints: DateHints): Mapping {
  const cells = rows.map((row) => row.cells)
  const { delimiter, quote, skip, hasHeader } = form
  const decimal = delimiter !== ',' && cells.some((row) => row.some((cell) => /^-?\d+,\d{1,2}$/.test(cell))) ? ',' : '.'
  const columns = guessColumns(header, cells, decimal) ?? NOTHING_FOUND
  const dates = guessDates(
    cells.map((row) => row[columns.date] ?? ''),
    hints,
  )
  return { skip, hasHeader, delimiter, quote, decimal, dateForm: dates?.form ?? 'y-m-d', ...columns }
}

/** Somebody says which it is; the preview shows that this is not. */
const NOTHING_FOUND = {
  date: 0,
  clock: null,
  item: 1,
  detail: null,
  pieces: null,
  transaction: null,
  line: null,
  voided: null,
}

function understood({ cells, line }: SampleRow, reader: RowReader): PreviewRow {
  const { row, fault } = reader.read(cells)
  if (row === null) return { line, cells, read: null, fault }
  const { day, second, item, pieces, purchase, voided } = row
  const minute = second === NO_TIME ? null : Math.floor(second / 60)
  return { line, cells, read: { date: dateOf(day), minute, item, pieces, transaction: purchase, voided }, fault: null }
}

function doubtsOf(table: Table, mapping: Mapping, { file, twin, times, hints }: PreviewAsked): readonly Told<Doubt>[] {
  const doubts: Told<Doubt>[] = []
  const reader = new RowReader(mapping, times, file.addedAtMs)
  const read = table.rows.map(({ cells }) => reader.read(cells))
  const dates = guessDates(
    table.rows.map(({ cells }) => cells[mapping.date] ?? ''),
    hints,
  )
  if (dates?.inDoubt != null) doubts.push(dayOrMonth(dates, dates.inDoubt, mapping.dateForm))
  if (twin !== null)
    doubts.push({
      code: 'same-file',
      params: { name: twin.name, id: twin.id },
      text: `This very file was taken before, as "${twin.name}". Taken again it adds nothing.`,
    })
  if (mapping.transaction === null) doubts.push({ code: 'no-transaction', params: {}, text: NO_TRANSACTION })
  if (mapping.pieces === null) doubts.push({ code: 'one-a-row', params: {}, text: ONE_A_ROW })
  if (read.some(({ row }) => row?.second === NO_TIME)) doubts.push({ code: 'no-times', params: {}, text: NO_TIMES })
  const bad = read.filter(({ fault }) => fault !== null).length
  if (bad > read.length * MANY_BAD)
    doubts.push({
      code: 'many-bad',
      params: { bad, of: read.length },
      text: `${bad} of the ${read.length} rows looked at cannot be read so. Is each column what it is taken for?`,
    })
  return doubts
}

function dayOrMonth(
  { form }: DatesGuess,
  inDoubt: { readonly text: string; readonly other: DateForm },
  chosen: DateForm,
): Told<Doubt> {
  const date = (by: DateForm) => {
    const read = dateRead(inDoubt.text, by)
    return read === null ? '' : dateOf(read.day)
  }
  const [one, other] = chosen === inDoubt.other ? [inDoubt.other, form] : [form, inDoubt.other]
  const params = { text: inDoubt.text, one: date(one), other: date(other) }
  const text = `"${params.text}" is read as ${params.one}; it could be ${params.other}. A day after the 12th would decide; say which.`
  return { code: 'day-or-month', params, text }
}

const NO_TRANSACTION = 'Nothing tells which rows were bought together: each row counts as a purchase of its own.'
const ONE_A_ROW = 'No column says how many: each row counts as one.'
const NO_TIMES = 'The file has dates without times: it tells how many went in a day, not when they ran out.'

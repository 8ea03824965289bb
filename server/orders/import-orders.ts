import { setImmediate as nextTurn } from 'node:timers/promises'
import type {
  OrderDoubt,
  OrderMapping,
  OrderRowFault,
  OrdersRead,
  ReadOrder,
} from '../../shared-core/live/orders-import.ts'
import type { Meaning, Told } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { encodingOfBytes } from '../sales/encoding.ts'
import type { DateHints } from '../sales/guess-dates.ts'
import { guessDates, isDayFirst } from '../sales/guess-dates.ts'
import { guessForm } from '../sales/guess-form.ts'
import { dateOf, LocalTimes } from '../sales/local-times.ts'
import type { OpenCsv } from '../sales/open-csv.ts'
import { csvOf, walkRows } from '../sales/open-csv.ts'
import { dateRead } from '../sales/read-moment.ts'
import { firstRows } from '../sales/sample.ts'
import { guessOrderColumns } from './import-columns.ts'
import { DueReader } from './import-due.ts'
import { orderDoubt, orderFault } from './import-fault.ts'
import type { GroupedOrder } from './import-groups.ts'
import { groupRows } from './import-groups.ts'
import type { RowRead } from './import-row.ts'
import { columnOf, OrderRowReader } from './import-row.ts'

/** A catering sheet has some hundred rows; what is longer is no file of orders. */
export const ORDER_ROWS_MAX = 5_000
const SAMPLES = 3
/** More bad rows than this, and the mapping is probably wrong. */
const MANY_BAD = 0.1

export interface OrdersFile {
  readonly encoding: OrdersRead['encoding']
  readonly csv: OpenCsv
}

/** @param bytes as they were sent */
export function ordersFile(bytes: Buffer): OrdersFile {
  const encoding = encodingOfBytes(bytes)
  return { encoding, csv: csvOf(encoding === 'utf-8' ? bytes : Buffer.from(new TextDecoder(encoding).decode(bytes))) }
}

export interface OrdersAsked {
  readonly file: OrdersFile
  readonly shop: Shop
  readonly nowMs: EpochMs
  /** What was said for a file with this header; null: nothing. */
  readonly remembered: (header: readonly string[]) => OrderMapping | null
  /** Said by somebody for this file; null: guess. */
  readonly chosen: OrderMapping | null
  /** What names of the till mean. */
  readonly meanings: (names: readonly string[]) => Promise<ReadonlyMap<string, Meaning>>
  /** Whether an order is there already. */
  readonly isKnown: (order: GroupedOrder) => boolean
}

export interface OrdersUnderstood {
  readonly told: OrdersRead
  readonly header: readonly string[] | null
  /** In the order of `told.orders`. */
  readonly orders: readonly GroupedOrder[]
}

interface Row {
  readonly line: number
  readonly cells: readonly string[]
}

/** How a file of orders would be understood, row by row, with what is in doubt. */
export async function understandOrders(asked: OrdersAsked): Promise<OrdersUnderstood | 'too-long'> {
  const { file, shop, nowMs, chosen } = asked
  const header = headerOf(file.csv, chosen)
  const remembered = chosen === null && header !== null ? asked.remembered(header) : null
  const mapping = chosen ?? remembered ?? guessMapping(file.csv, header, asked)
  const { rows, broken } = rowsOf(file.csv, mapping)
  if (rows.length > ORDER_ROWS_MAX) return 'too-long'
  const due = new DueReader(mapping, shop, nowMs)
  const meanings = await asked.meanings(namesIn(rows, mapping))
  const reader = new OrderRowReader({ mapping, shop, meanings, due })
  const grouped = groupRows(await readAll(rows, reader), mapping)
  const faults = [...grouped.faults, ...broken].sort((one, other) => one.line - other.line)
  const told: OrdersRead = {
    encoding: file.encoding,
    mapping,
    isRemembered: remembered !== null,
    columns: columnsOf(header, rows),
    rows: rows.length + broken.length,
    orders: grouped.orders.map(({ key: _, ...order }, index): ReadOrder => {
      const known = grouped.orders[index]
      return { ...order, state: known !== undefined && asked.isKnown(known) ? 'known' : 'new' }
    }),
    faults,
    doubts: doubtsOf(rows, { mapping, due, faults, asked }),
  }
  return { told, header, orders: grouped.orders }
}

/** A long file must not make a tap wait. */
const ROWS_A_BREATH = 200

async function readAll(rows: readonly Row[], reader: OrderRowReader): Promise<readonly RowRead[]> {
  const read: RowRead[] = []
  for (const [index, { cells, line }] of rows.entries()) {
    if (index % ROWS_A_BREATH === 0) await nextTurn()
    read.push(reader.read(cells, line))
  }
  return read
}

function headerOf(csv: OpenCsv, chosen: OrderMapping | null): readonly string[] | null {
  const form = chosen ?? guessForm(csv)
  const [first] = firstRows(csv, form).filter(({ line }) => line > form.skip)
  return first === undefined || !form.hasHeader ? null : first.cells
}

function guessMapping(csv: OpenCsv, header: readonly string[] | null, asked: OrdersAsked): OrderMapping {
  const form = guessForm(csv)
  const cells = rowsOf(csv, form, ROWS_GUESSED_BY).rows.map((row) => row.cells)
  const decimal = form.delimiter !== ',' && cells.some((row) => row.some((cell) => /^\d+,\d{1,2}$/.test(cell)))
  const columns = guessOrderColumns(header, cells, decimal ? ',' : '.')
  const dates = guessDates(textsOf(cells, columns.dueDate), hintsOf(asked))
  const { delimiter, quote, skip, hasHeader } = form
  return {
    ...{ skip, hasHeader, delimiter, quote, decimal: decimal ? ',' : '.' },
    dateForm: dates?.form ?? 'y-m-d',
    columns,
    isAfternoonMeant: false,
  }
}

function hintsOf({ shop, nowMs }: OrdersAsked): DateHints {
  const today = new LocalTimes(shop.profile.zone).of(nowMs).day
  return { today, isDayFirst: isDayFirst(shop.profile), isToCome: true }
}

/** Enough to tell a column by. */
const ROWS_GUESSED_BY = 500

function rowsOf(csv: OpenCsv, form: Parameters<typeof walkRows>[1], most = ORDER_ROWS_MAX) {
  const rows: Row[] = []
  const broken: OrderRowFault[] = []
  const walked = walkRows(csv, form, csv.start)
  const hears = {
    row: (cells: readonly string[], { line }: { readonly line: number }) => {
      if (cells.some((cell) => cell.trim() !== '')) rows.push({ cells: cells.map((cell) => cell.trim()), line })
    },
    broken: ({ line }: { readonly line: number }) => {
      broken.push({ line, cells: [], fault: orderFault('open-quote') })
    },
  }
  while (!walked.walk.isOver && rows.length <= most) walked.step(hears)
  return { rows, broken }
}

function columnsOf(header: readonly string[] | null, rows: readonly Row[]): OrdersRead['columns'] {
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), header?.length ?? 0)
  return Array.from({ length: width }, (_, index) => ({
    name: header?.[index] ?? '',
    samples: [...new Set(rows.flatMap(({ cells }) => cells[index] || []))].slice(0, SAMPLES),
  }))
}

function namesIn(rows: readonly Row[], { columns }: OrderMapping): readonly string[] {
  const names = [columns.variety, columns.item].flatMap((index) =>
    textsOf(
      rows.map(({ cells }) => cells),
      index,
    ),
  )
  return [...new Set(names)].filter((name) => name !== '')
}

function textsOf(rows: readonly (readonly string[])[], index: number | null): readonly string[] {
  return index === null ? [] : rows.map((cells) => cells[index] ?? '')
}

interface Doubting {
  readonly mapping: OrderMapping
  readonly due: DueReader
  readonly faults: readonly OrderRowFault[]
  readonly asked: OrdersAsked
}

function doubtsOf(rows: readonly Row[], { mapping, due, faults, asked }: Doubting): readonly Told<OrderDoubt>[] {
  const doubts: Told<OrderDoubt>[] = []
  const { columns } = mapping
  const cells = rows.map((row) => row.cells)
  const dates = guessDates(textsOf(cells, columns.dueDate), hintsOf(asked))
  if (dates?.inDoubt != null) {
    const { text, other } = dates.inDoubt
    const date = (form: OrderMapping['dateForm']) => {
      const read = dateRead(text, form)
      return read === null ? '' : dateOf(read.day)
    }
    const isOther = mapping.dateForm === other
    const [one, two] = isOther ? [other, dates.form] : [dates.form, other]
    doubts.push(orderDoubt('day-or-month', { text, one: date(one), other: date(two) }))
  }
  const [days, clocks] = [textsOf(cells, columns.dueDate), textsOf(cells, columns.dueTime)]
  const early = days.findIndex((day, index) => due.isInDoubt(day, clocks[index] ?? ''))
  const isWholeDay = [...days, ...clocks].some((text) => /(?:^|[ T])(1[3-9]|2[0-3])[:.h]\d{2}/.test(text))
  if (early !== -1 && !isWholeDay && !mapping.isAfternoonMeant)
    doubts.push(orderDoubt('am-or-pm', { text: clocks[early] || days[early] || '' }))
  if (columnOf(mapping, 'ref') === 0) doubts.push(orderDoubt('no-ref'))
  const bad = new Set(faults.map(({ line }) => line)).size
  if (bad > rows.length * MANY_BAD) doubts.push(orderDoubt('many-bad', { bad, of: rows.length }))
  return doubts
}

/**
 * Whether what somebody took for the names of the columns is an order itself: it says when, or how many. Whoever ordered
 * would stand among the remembered headers for good.
 */
export function isRowOfOrders(header: readonly string[], { columns, dateForm }: OrderMapping): boolean {
  const cell = (at: number | null) => (at === null ? '' : (header[at] ?? '')).trim()
  return (
    dateRead(cell(columns.dueDate), dateForm) !== null ||
    [columns.pieces, columns.dozens].some((at) => /^\d/.test(cell(at)))
  )
}

/** What must be said before anything is taken: both readings would be somebody's order on another day or half of it. */
export function isAmbiguous({ doubts }: OrdersRead): boolean {
  return doubts.some(({ code }) => code === 'day-or-month' || code === 'am-or-pm')
}

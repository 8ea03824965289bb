import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { commandOfRow } from './derived-command.ts'
import type { Today } from './instant.ts'
import { instantOf } from './instant.ts'
import { named } from './named.ts'
import { readSalesCsv } from './sales-csv.ts'
import { saleSchema, salesEnvelope } from './sales-schema.ts'
import type { Typed } from './typed-load.ts'

/** A sale that can be taken: which row it was, and the command of it. */
export interface ReadSale {
  /** Counted from 1 in a list, the line of a file. */
  readonly row: number
  readonly command: Command
}

/** `isWhole`: there were rows to look at; what is wrong is wrong with single ones. */
export interface SalesRead {
  readonly isWhole: boolean
  readonly sales: readonly ReadSale[]
  readonly problems: readonly Problem[]
}

interface Reading {
  readonly shop: Shop
  readonly today: Today
  readonly deviceId: DeviceId
}

/** Rows of a till as commands, CSV as text or JSON; each row that cannot be taken is told with its place. */
export function readSales(raw: unknown, reading: Reading): SalesRead {
  const rows = typeof raw === 'string' ? rowsOfCsv(raw) : rowsOfJson(raw)
  if (!rows.ok) return { isWhole: false, sales: [], problems: rows.problems }
  const problems: Problem[] = []
  const sales = rows.rows.flatMap((row, index): readonly ReadSale[] => {
    const one = saleOf(row, reading, problems)
    return one === null ? [] : [{ row: row.row, command: { ...one, deviceSeq: index + 1 } }]
  })
  return { isWhole: true, sales, problems }
}

interface RawRow {
  readonly row: number
  readonly value: unknown
  readonly where: string
  readonly path: (field: string) => string
}
type Rows =
  | { readonly ok: true; readonly rows: readonly RawRow[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

function rowsOfJson(raw: unknown): Rows {
  const read = salesEnvelope.safeParse(raw)
  if (!read.success) return { ok: false, problems: problemsOf(read.error.issues, raw) }
  const rows = read.data.sales.map((value, index): RawRow => {
    const path = (field: string) => `/sales/${index}${field === '' ? '' : `/${field}`}`
    return { row: index + 1, value, where: '', path }
  })
  return { ok: true, rows }
}

function rowsOfCsv(text: string): Rows {
  const read = readSalesCsv(text)
  if (!read.ok) return read
  const rows = read.rows.map(({ line, cells }): RawRow => {
    const pieces = /^\d{1,6}$/.test(cells.pieces) ? Number(cells.pieces) : cells.pieces
    const value = { at: cells.at || null, variety: cells.variety || null, pieces, id: cells.id || null }
    return { row: line, value, where: `Line ${line}: `, path: () => `/rows/${line}` }
  })
  return { ok: true, rows }
}

function saleOf(row: RawRow, { shop, today, deviceId }: Reading, problems: Problem[]): Command | null {
  const read = saleSchema.safeParse(row.value)
  if (!read.success) {
    for (const { path, wrong, right } of problemsOf(read.error.issues, row.value)) {
      problems.push({ path: row.path(path.slice(1)), wrong: `${row.where}${wrong}`, right })
    }
    return null
  }
  const { at, variety, pieces, id } = read.data
  const typed = (value: string, field: string): Typed<string> => ({ value, where: row.where, path: row.path(field) })
  const before = problems.length
  const tappedAtMs = at == null ? null : instantOf(typed(at, 'at'), today, problems)
  const varietyId =
    variety === null ? null : named(shop.varieties, { typed: typed(variety, 'variety'), what: 'variety', problems })
  if (problems.length > before) return null
  const act: Act =
    varietyId === null
      ? { type: 'sellUnnamed', pieces, from: 'till' }
      : { type: 'sell', lines: [{ varietyId, pieces }], from: 'till' }
  return { id: commandOfRow(deviceId, 'sale', id ?? null), deviceSeq: 1, tappedAtMs, ...act }
}

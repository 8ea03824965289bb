import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { DeviceId, VarietyId } from '../../shared-core/ids.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { actOfMeaning } from './act-of-meaning.ts'
import { commandOfRow } from './derived-command.ts'
import type { Today } from './instant.ts'
import { instantOf } from './instant.ts'
import { findNamed, named } from './named.ts'
import { readSalesCsv } from './sales-csv.ts'
import { saleSchema, salesEnvelope } from './sales-schema.ts'
import type { Typed } from './typed-load.ts'

/** A sale that can be taken: which row it was, and the command of it. */
export interface ReadSale {
  /** Counted from 1 in a list, the line of a file. */
  readonly row: number
  readonly command: Command
  /** As the till says it: a name, or null for nobody knows which. */
  readonly sold: { readonly name: string | null; readonly pieces: number }
}

/** `isWhole`: there were rows to look at; what is wrong is wrong with single ones. */
export interface SalesRead {
  readonly isWhole: boolean
  readonly sales: readonly ReadSale[]
  /** Rows of what the desk has said to be none of the shop's pieces. */
  readonly ignored: number
  readonly problems: readonly Problem[]
}

interface Reading {
  readonly shop: Shop
  readonly today: Today
  readonly deviceId: DeviceId
  /** What the desk has said of the till's names; left out: nothing. */
  readonly meanings?: ReadonlyMap<string, Meaning>
}

/** Rows of a till as commands, CSV as text or JSON; each row that cannot be taken is told with its place. */
export function readSales(raw: unknown, reading: Reading): SalesRead {
  const rows = typeof raw === 'string' ? rowsOfCsv(raw) : rowsOfJson(raw)
  if (!rows.ok) return { isWhole: false, sales: [], ignored: 0, problems: rows.problems }
  const problems: Problem[] = []
  let ignored = 0
  const sales = rows.rows.flatMap((row, index): readonly ReadSale[] => {
    const one = saleOf(row, reading, problems)
    if (one === 'nothing') ignored += 1
    if (one === null || one === 'nothing') return []
    return [{ row: row.row, sold: one.sold, command: { ...one.command, deviceSeq: index + 1 } }]
  })
  return { isWhole: true, sales, ignored, problems }
}

/** Names in rows that are no variety's: the till's own, perhaps. */
export function tillNamesIn(raw: unknown, shop: Shop): readonly string[] {
  const rows = typeof raw === 'string' ? rowsOfCsv(raw) : rowsOfJson(raw)
  if (!rows.ok) return []
  const names = rows.rows.flatMap(({ value }) => {
    const { variety } = Object(value) as { readonly variety?: unknown }
    return typeof variety === 'string' && findNamed(shop.varieties, variety) === null ? [variety.trim()] : []
  })
  return [...new Set(names)]
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

type Understood = Pick<ReadSale, 'command' | 'sold'> | 'nothing' | null

function saleOf(row: RawRow, { shop, today, deviceId, meanings }: Reading, problems: Problem[]): Understood {
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
  const meaning = variety === null ? undefined : meanings?.get(variety.trim())
  const act =
    variety !== null && meaning !== undefined && findNamed(shop.varieties, variety) === null
      ? actOfMeaning(meaning, pieces, shop)
      : sellBy(
          variety === null
            ? null
            : named(shop.varieties, { typed: typed(variety, 'variety'), what: 'variety', problems }),
          pieces,
        )
  if (act === 'too-many') {
    const wrong = `${row.where}${pieces} of "${variety}" are more than ${PIECES_MAX} pieces.`
    problems.push({ path: row.path('pieces'), wrong, right: 'Fewer of it, or say at the desk how many pieces one is.' })
  }
  if (problems.length > before || act === 'too-many') return null
  if (act === 'nothing') return act
  const command = { id: commandOfRow(deviceId, 'sale', id ?? null), deviceSeq: 1, tappedAtMs, ...act }
  return { command, sold: { name: nameOf(variety, shop), pieces } }
}

function sellBy(varietyId: VarietyId | null, pieces: number): Act {
  return varietyId === null
    ? { type: 'sellUnnamed', pieces, from: 'till' }
    : { type: 'sell', lines: [{ varietyId, pieces }], from: 'till' }
}

/** The set-up's name of a variety that was named by its id. */
function nameOf(variety: string | null, { varieties }: Shop): string | null {
  return variety === null ? null : (findNamed(varieties, variety)?.name ?? variety.trim())
}

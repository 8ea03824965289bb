import type { Mapping } from '../../shared-core/live/sales-import.ts'
import { isDate } from './guess-form.ts'
import { numberOf } from './read-row.ts'

export type Columns = Pick<Mapping, 'date' | 'clock' | 'item' | 'detail' | 'pieces' | 'transaction' | 'line' | 'voided'>
type Role = keyof Columns

/** Names of columns as tills have them in English and Spanish; the first that fits counts most. Common practice, no source. */
const NAMES: { readonly [role in Role]: RegExp } = {
  date: /^(business )?dat(e|um)|fecha|d[i\u00ed]a|timestamp|^ts$|^day$|created|when/,
  clock: /time|hora|^hour|clock/,
  item: /item|product|art[i\u00ed]culo|descri|variet|^name|nombre|plu name|^menu/,
  detail: /variation|size|tama\u00f1o|variante|option|modifier|opci[o\u00f3]n/,
  pieces: /qty|quant|cantidad|^count|units?$|unidades|piece|pieza|^sold$|pcs/,
  transaction: /trans|txn|receipt|order|check|ticket|recibo|folio|pedido|invoice|factura|sale id|bill|cuenta/,
  line: /line|row id|row no|l[i\u00ed]nea|rengl[o\u00f3]n|item id|entry/,
  voided: /void|cancel|anulad|refund|status|estado|return/,
}
/** Columns of these hold none of what is asked for, whatever else their name says. */
const NO_NAMES = /price|amount|total|tax|cost|precio|importe|impuesto|discount|descuento|categor|sku|zone|zona/

/** What stands in a column. */
export interface SeenColumn {
  readonly index: number
  readonly name: string
  /** Filled cells. */
  readonly cells: readonly string[]
  readonly dates: number
  readonly clocks: number
  readonly wholes: number
  readonly words: number
  readonly different: number
}

/**
 * Which column holds what, by its name and by what stands in it. Null: there is no date or nothing that was sold.
 * @param header names of the columns; null: there are none
 */
export function guessColumns(
  header: readonly string[] | null,
  rows: readonly (readonly string[])[],
  decimal: Mapping['decimal'],
): Columns | null {
  const width = Math.max(header?.length ?? 0, ...rows.slice(0, 50).map((cells) => cells.length))
  const seen = Array.from({ length: width }, (_, index) => lookAtColumn(index, header?.[index] ?? '', rows, decimal))
  const free = new Set(seen)
  const take = (role: Role, fits: (column: SeenColumn) => boolean, worth: (column: SeenColumn) => number = () => 0) => {
    const able = [...free].filter((column) => fits(column) && !NO_NAMES.test(column.name))
    const named = able.filter(({ name }) => NAMES[role].test(name))
    const best = (named.length > 0 ? named : header === null || NEEDED.has(role) ? able : []).sort(
      (one, other) => worth(other) - worth(one) || one.index - other.index,
    )[0]
    if (best !== undefined) free.delete(best)
    return best?.index ?? null
  }
  const date = take('date', ({ dates }) => dates > MOST)
  const clock = take('clock', ({ clocks }) => clocks > MOST)
  const item = take(
    'item',
    ({ words }) => words > MOST,
    ({ words, different, cells }) =>
      words - different / Math.max(1, cells.length) - (different < LEAST_NAMES && cells.length > MANY_ROWS ? 1 : 0),
  )
  if (date === null || item === null) return null
  const detail = header === null ? null : take('detail', ({ name }) => NAMES.detail.test(name))
  const pieces = take('pieces', (column) => column.wholes > MOST && isFew(column, decimal))
  const line = header === null ? null : take('line', ({ name }) => NAMES.line.test(name))
  const transaction = take(
    'transaction',
    ({ cells, different }) => cells.length > 0 && (header !== null || different > cells.length / 5),
  )
  const voided = header === null ? null : take('voided', ({ name }) => NAMES.voided.test(name))
  return { date, clock, item, detail, pieces, transaction, line, voided }
}
const MOST = 0.6
/** A shop sells more kinds than a till has states of a row or ways to pay. Common practice, no source. */
const LEAST_NAMES = 5
const MANY_ROWS = 50
const NEEDED: ReadonlySet<Role> = new Set(['date', 'item', 'pieces'])

/** @param name in its header @param rows cells of rows below it */
export function lookAtColumn(
  index: number,
  name: string,
  rows: readonly (readonly string[])[],
  decimal: Mapping['decimal'],
): SeenColumn {
  const cells = rows.flatMap((row) => row[index] || [])
  const share = (is: (cell: string) => boolean) => (cells.length === 0 ? 0 : cells.filter(is).length / cells.length)
  return {
    index,
    name: name
      .trim()
      .toLowerCase()
      .replaceAll(/[_\s]+/g, ' '),
    cells,
    dates: share((cell) => isDate(cell) || /^1\d{9}(\d{3})?$/.test(cell)),
    clocks: share((cell) => /^\d{1,2}[:.h]\d{2}/.test(cell) && !isDate(cell)),
    wholes: share((cell) => Number.isInteger(numberOf(cell, decimal) ?? 0.5)),
    words: share((cell) => /\p{L}{2}/u.test(cell) && !isDate(cell)),
    different: new Set(cells).size,
  }
}

/** Numbers of pieces come again and again, and are small; numbers of receipts are not. */
function isFew({ name, cells, different }: SeenColumn, decimal: Mapping['decimal']): boolean {
  if (NAMES.pieces.test(name)) return true
  const values = cells.map((cell) => Math.abs(numberOf(cell, decimal) ?? 0))
  return different <= Math.max(12, cells.length / 10) && values.every((value) => value <= 200)
}

import type { OrderColumn, OrderMapping } from '../../shared-core/live/orders-import.ts'
import { ORDER_COLUMNS } from '../../shared-core/live/orders-import.ts'
import type { Mapping } from '../../shared-core/live/sales-import.ts'
import type { SeenColumn } from '../sales/guess-columns.ts'
import { lookAtColumn } from '../sales/guess-columns.ts'

type Columns = OrderMapping['columns']

/**
 * Names of columns as shops and offices write them in English and Spanish. Asked in this order, as "customer note" is a
 * note and "order date" no order's number. Common practice, no source.
 */
const NAMES: readonly (readonly [OrderColumn, RegExp])[] = [
  ['note', /note|remark|comment|instruct|nota|observa|comentario|indicaci/],
  ['phone', /phone|mobile|cell|^tel|tel[eé]fono|m[oó]vil|celular/],
  ['dueTime', /time|hora|^hour|clock/],
  ['dueDate', /^(due|for|needed|pick ?up|delivery)? ?(date|day|on)$|dat(e|um)|fecha|^d[ií]a|^when$|^due|cu[aá]ndo/],
  ['paid', /paid|pagad|prepa(id|gad)/],
  ['sliced', /slice|^cut$|rebanad|cortad|tajad/],
  ['bagged', /^bags?$|bagged|embolsad|en bolsa|^bolsa/],
  ['way', /^way|pick ?up or|deliver|method|fulfil|entrega|env[ií]o|modo|forma/],
  ['mark', /mark|initial|^tag$|slip|marca|inicial|turno/],
  [
    'ref',
    /^(order|ref|po|pedido|folio|orden)$|^po\b|order ?(no|num|id|#|ref)|ref(eren)?|folio|n[uú]m(ero)? de (pedido|orden)|^id$|invoice/,
  ],
  ['dozens', /doz|docena|^dz/],
  ['pieces', /qty|quant|cantidad|piece|pieza|^count|units?$|unidades|^number$|^how many/],
  ['item', /sandwich|menu|men[uú]|dish|plato|made to order|platillo/],
  ['variety', /variet|variedad|bagel|kind|flavou?r|sabor/],
  ['variety', /product|^item|^what|descri|clase|tipo|art[ií]culo/],
  ['item', /^item|art[ií]culo/],
  ['name', /name|customer|client|company|nombre|contact|^who|cliente|empresa|for whom/],
]

/**
 * Which column of a file of orders holds what, by its name; where there is no header, by what stands in it, and then only
 * what cannot be anything else.
 */
export function guessOrderColumns(
  header: readonly string[] | null,
  rows: readonly (readonly string[])[],
  decimal: Mapping['decimal'],
): Columns {
  const width = Math.max(header?.length ?? 0, ...rows.slice(0, 50).map((cells) => cells.length))
  const seen = Array.from({ length: width }, (_, index) => lookAtColumn(index, header?.[index] ?? '', rows, decimal))
  const found = new Map<OrderColumn, SeenColumn>()
  const free = new Set(seen)
  const take = (role: OrderColumn, column: SeenColumn | undefined) => {
    if (column === undefined || found.has(role)) return
    found.set(role, column)
    free.delete(column)
  }
  if (header !== null) {
    for (const [role, pattern] of NAMES)
      take(
        role,
        [...free].find((column) => pattern.test(column.name) && fits(role, column)),
      )
  }
  take(
    'dueDate',
    [...free].find(({ dates }) => dates > MOST),
  )
  if (header === null) {
    take(
      'dueTime',
      [...free].find(({ clocks }) => clocks > MOST),
    )
    take(
      'variety',
      [...free].find(({ words, different, cells }) => words > MOST && different < cells.length),
    )
    take(
      'pieces',
      [...free].find(({ wholes }) => wholes > MOST),
    )
  }
  return Object.fromEntries(ORDER_COLUMNS.map((role) => [role, found.get(role)?.index ?? null])) as {
    [role in OrderColumn]: number | null
  }
}
const MOST = 0.6

/** An empty column may hold anything; one that is filled holds what its name says. */
function fits(role: OrderColumn, { cells, dates, clocks }: SeenColumn): boolean {
  if (cells.length === 0) return true
  if (role === 'dueDate') return dates > MOST
  if (role === 'dueTime') return clocks > MOST || dates < MOST
  if (role === 'dozens' || role === 'pieces') return cells.some((cell) => /\d|½|half|media/i.test(cell))
  return dates < MOST
}

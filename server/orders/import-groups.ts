import { createHash } from 'node:crypto'
import type { OrderColumn, OrderMapping, OrderRowFault, ReadOrder } from '../../shared-core/live/orders-import.ts'
import type { AskedItem, AskedLine } from '../../shared-core/orders/order-commands.ts'
import {
  DETAIL_CHARACTERS_MAX,
  MARK_CHARACTERS_MAX,
  ORDER_ITEMS_MAX,
  ORDER_LINES_MAX,
  ORDER_THINGS_MAX,
  TIMES_MAX,
} from '../../shared-core/orders/order-limits.ts'
import { epochMs } from '../../shared-core/units.ts'
import { orderFault } from './import-fault.ts'
import type { RowRead, RowSaid } from './import-row.ts'
import { columnOf } from './import-row.ts'

/**
 * An order with what it is known by again: its reference and its day, as a sheet may count from 1 each week; without one
 * all that stands in it but whom it is for.
 */
export type GroupedOrder = Omit<ReadOrder, 'state'> & { readonly key: string }

export interface Grouped {
  readonly orders: readonly GroupedOrder[]
  readonly faults: readonly OrderRowFault[]
}

/** Rows of one reference are one order. One with a row that cannot be read is not taken; all its faults are told. */
export function groupRows(rows: readonly RowRead[], mapping: OrderMapping): Grouped {
  const groups = new Map<string, RowRead[]>()
  for (const row of rows) {
    const key = row.ref ?? `line ${row.line}`
    groups.set(key, [...(groups.get(key) ?? []), row])
  }
  const faults: OrderRowFault[] = []
  const orders: GroupedOrder[] = []
  const seen = new Map<string, number>()
  for (const group of groups.values()) {
    const [first] = group
    if (first === undefined) continue
    const found = faultsOf(group, first, mapping)
    faults.push(...found)
    if (found.length > 0) continue
    const order = orderOf(group, first)
    const bare = order.ref === null ? `=${contentOf(order)}` : `${order.ref} ${dayOf(order)}`
    const nth = seen.get(bare) ?? 0
    seen.set(bare, nth + 1)
    orders.push({ ...order, key: nth === 0 ? bare : `${bare} ${nth}` })
  }
  return { orders, faults: faults.sort((one, other) => one.line - other.line) }
}

/** What the rows of an order must say alike, where they say it. */
const ALIKE: readonly (readonly [keyof RowSaid, OrderColumn])[] = [
  ['mark', 'mark'],
  ['name', 'name'],
  ['phone', 'phone'],
  ['dueAtMs', 'dueDate'],
  ['way', 'way'],
  ['isPaid', 'paid'],
]

function faultsOf(group: readonly RowRead[], first: RowRead, mapping: OrderMapping): OrderRowFault[] {
  const at = ({ line, cells }: RowRead, fault: OrderRowFault['fault']) => ({ line, cells, fault })
  const found = group.flatMap((row) => row.faults.map((fault) => at(row, fault)))
  for (const [field, column] of ALIKE) {
    const saying = group.filter(({ said }) => said[field] !== null)
    const [one, ...others] = saying
    const other = others.find(({ said }) => said[field] !== one?.said[field])
    if (one !== undefined && other !== undefined)
      found.push(at(other, orderFault('rows-differ', { line: one.line, column: columnOf(mapping, column) })))
  }
  if (found.length > 0) return found
  if (group.every(({ said }) => said.dueAtMs === null))
    found.push(at(first, orderFault('no-time', { text: '', column: columnOf(mapping, 'dueTime') })))
  const lines = merged(group)
  const items = group.flatMap((row) => row.items)
  if (lines.length + items.length === 0) found.push(at(first, orderFault('nothing-ordered')))
  if (lines.length > ORDER_LINES_MAX) found.push(at(first, orderFault('too-many-lines', { most: ORDER_LINES_MAX })))
  if (items.length > ORDER_ITEMS_MAX) found.push(at(first, orderFault('too-many-lines', { most: ORDER_ITEMS_MAX })))
  const many = items.find(({ times }) => times > TIMES_MAX)
  if (many !== undefined)
    found.push(at(first, orderFault('too-many-pieces', { text: String(many.times), most: TIMES_MAX })))
  const things = items.reduce((sum, { times }) => sum + times, 0)
  if (things > ORDER_THINGS_MAX) found.push(at(first, orderFault('too-many-lines', { most: ORDER_THINGS_MAX })))
  return found
}

function orderOf(group: readonly RowRead[], first: RowRead): Omit<ReadOrder, 'state'> {
  const said = <Field extends keyof RowSaid>(field: Field) =>
    group.map((row) => row.said[field]).find((value) => value !== null) ?? null
  const name = said('name') ?? ''
  const notes = [...new Set(group.flatMap((row) => row.said.note ?? []))]
  return {
    rows: group.map(({ line }) => line),
    ref: first.ref,
    mark: said('mark') ?? initialsOf(name),
    name,
    phone: said('phone') ?? '',
    note: notes.join('; ').slice(0, DETAIL_CHARACTERS_MAX.note),
    dueAtMs: epochMs(said('dueAtMs') ?? 0),
    way: said('way') ?? 'pickUp',
    lines: merged(group),
    items: group.flatMap(({ items }) => items),
    isPaid: said('isPaid') ?? false,
    guessed: group.flatMap(({ guessed }) => guessed),
  }
}

/** Lines that differ in nothing but how many are one. */
function merged(group: readonly RowRead[]): readonly AskedLine[] {
  const lines = new Map<string, AskedLine>()
  for (const line of group.flatMap((row) => row.lines)) {
    const { varietyId, without, sliced, bagged } = line
    const key = JSON.stringify([varietyId, without, sliced, bagged])
    const before = lines.get(key)
    lines.set(key, {
      ...line,
      dozens: line.dozens + (before?.dozens ?? 0),
      pieces: line.pieces + (before?.pieces ?? 0),
    })
  }
  return [...lines.values()]
}

/** What is called across the room is no name. @example initialsOf('Oak Street School') // 'OSS' */
export function initialsOf(name: string): string | null {
  const letters = name.match(/(?<!\p{L})\p{L}/gu) ?? []
  return letters.length === 0 ? null : letters.join('').toUpperCase().slice(0, MARK_CHARACTERS_MAX)
}

/** In UTC: it only keeps one week's sheet from the next one's. */
function dayOf({ dueAtMs }: Pick<ReadOrder, 'dueAtMs'>): string {
  return new Date(dueAtMs).toISOString().slice(0, 10)
}

/** In what it comes to be known by again nobody can be guessed. */
function contentOf(order: Omit<ReadOrder, 'state'>): string {
  const { dueAtMs, way, lines, items } = order
  const asked: readonly (readonly AskedLine[] | readonly AskedItem[])[] = [lines, items]
  return createHash('sha256')
    .update(JSON.stringify([dueAtMs, way, asked]))
    .digest('hex')
    .slice(0, 32)
}

import type { OrderColumn, OrderMapping, OrdersRead } from '../../../shared-core/live/orders-import.ts'
import { ORDER_COLUMNS } from '../../../shared-core/live/orders-import.ts'
import type { Done } from '../call.ts'

/** What a column of a file of orders can be taken for; `none`: it is not used. */
export const COLUMN_CHOICES = ['none', ...ORDER_COLUMNS] as const
export type ColumnChoice = OrderColumn | 'none'

/** @param at counted from 0 */
export function columnTakenFor({ columns }: Pick<OrderMapping, 'columns'>, at: number): ColumnChoice {
  return ORDER_COLUMNS.find((column) => columns[column] === at) ?? 'none'
}

/** A column is taken for one thing, and each thing is in one column: what held it before is not used any more. */
export function withOrderColumn(mapping: OrderMapping, at: number, column: ColumnChoice): OrderMapping {
  const columns = { ...mapping.columns }
  for (const one of ORDER_COLUMNS) if (columns[one] === at) columns[one] = null
  if (column !== 'none') columns[column] = at
  return { ...mapping, columns }
}

/** How many orders a touch would take. */
export function newOrders({ orders }: Pick<OrdersRead, 'orders'>): number {
  return orders.filter(({ state }) => state === 'new').length
}

/**
 * Has a file of orders read by the shop's server, or taken; it stays in this browser meanwhile.
 * @param mapping null: as it is guessed. Never throws: whatever goes wrong on the way is no contact.
 */
export async function sendOrders(file: Blob, mapping: OrderMapping | null, takes: boolean): Promise<Done<OrdersRead>> {
  const query = new URLSearchParams()
  if (mapping !== null) query.set('mapping', JSON.stringify(mapping))
  if (takes) query.set('take', '1')
  try {
    const response = await fetch(`/api/v1/orders/import?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv' },
      body: file,
    })
    const said = await response.json()
    if (response.ok) return { kind: 'done', value: said }
    return { kind: 'refused', status: response.status, detail: typeof said?.detail === 'string' ? said.detail : '' }
  } catch {
    return { kind: 'no-contact' }
  }
}

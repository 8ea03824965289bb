import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { OrderMapping, RememberedMapping } from '../../shared-core/live/orders-import.ts'

/**
 * What was said for files of orders, by their header: in the table of the sales' mappings, since it is the same kind of
 * thing and goes where that goes. Keys of sales begin with a delimiter.
 */
const OF_ORDERS = 'orders\n'

/** Those that are known, in the order of their headers. */
export function orderMappings(db: DatabaseSyncInstance): readonly RememberedMapping[] {
  return db
    .prepare('SELECT mapping FROM mappings WHERE substr(header, 1, ?) = ? ORDER BY header')
    .all(OF_ORDERS.length, OF_ORDERS)
    .map(({ mapping }) => JSON.parse(String(mapping)) as RememberedMapping)
}

/** @param mapping null: forget it */
export function rememberOrderMapping(
  db: DatabaseSyncInstance,
  { header, mapping }: { readonly header: readonly string[]; readonly mapping: OrderMapping | null },
): void {
  const key = OF_ORDERS + headerKey(header)
  if (mapping === null) db.prepare('DELETE FROM mappings WHERE header = ?').run(key)
  else
    db.prepare('INSERT INTO mappings VALUES (?, ?) ON CONFLICT DO UPDATE SET mapping = excluded.mapping').run(
      key,
      JSON.stringify({ header, mapping }),
    )
}

/** Headers that differ in capital letters alone are one. */
export function headerKey(header: readonly string[]): string {
  return header.map((name) => name.trim().toLowerCase()).join('\n')
}

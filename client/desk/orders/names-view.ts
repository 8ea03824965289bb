import type { State } from '../../../shared-core/day/state.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { DetailsBook } from '../../live/details-book.ts'

/** Somebody of whom something is known, beside one order or one that stands. */
export interface KnownName {
  /** Of the order or the standing order. */
  readonly id: string
  readonly mark: string
  /** Null: it stands. */
  readonly dueAtMs: EpochMs | null
  readonly details: OrderDetails
}

/** All that are here, by name; those without one last, by mark. */
export function knownNames(
  { orders, standing }: Pick<State, 'orders' | 'standing'>,
  book: Pick<DetailsBook, 'of'>,
): readonly KnownName[] {
  const all = [
    ...[...standing.values()].map((one) => ({ one, dueAtMs: null })),
    ...[...orders.values()].map((one) => ({ one, dueAtMs: one.dueAtMs })),
  ]
  return all
    .flatMap(({ one, dueAtMs }) => {
      const details = book.of(one)
      if (details === null || details.name + details.phone + details.note === '') return []
      return [{ id: one.id, mark: one.mark, dueAtMs, details }]
    })
    .sort(byName)
}

function byName(one: KnownName, other: KnownName): number {
  if ((one.details.name === '') !== (other.details.name === '')) return one.details.name === '' ? 1 : -1
  return one.details.name.localeCompare(other.details.name) || (one.id < other.id ? -1 : 1)
}

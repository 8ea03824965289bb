import type { JournalDay, JournalItem } from './journal-day.ts'
import type { Purchase, Span } from './sales-day.ts'

/**
 * The days of one date as one: a shop that closed and opened again that day has two. Both were projected with the whole
 * day's hours, so that something was gone when neither of them had it.
 * @returns null for none
 */
export function joinedDay(days: readonly JournalDay[]): JournalDay | null {
  const [first, ...others] = days
  if (first === undefined) return null
  return others.reduce(joined, first)
}

function joined(one: JournalDay, other: JournalDay): JournalDay {
  const ids = [...new Set([...one.items, ...other.items].map(({ id }) => id))].sort()
  const itemOf = ({ items }: JournalDay, id: string) => items.find((item) => item.id === id)
  const items = ids.flatMap((id) => joinedItem(itemOf(one, id), itemOf(other, id)) ?? [])
  return { ...one, closeMinute: Math.max(one.closeMinute, other.closeMinute), isClosed: other.isClosed, items }
}

function joinedItem(one: JournalItem | undefined, other: JournalItem | undefined): JournalItem | undefined {
  if (one === undefined || other === undefined) return one ?? other
  return {
    id: one.id,
    sold: inOrder(one.sold, other.sold),
    allotted: inOrder(one.allotted, other.allotted),
    kitchen: inOrder(one.kitchen, other.kitchen),
    unseen: one.unseen + other.unseen,
    gone: inBoth(one.gone, other.gone),
    baked: one.baked + other.baked,
    left: other.left,
    wasted: one.wasted + other.wasted,
    given: one.given + other.given,
    ordered: one.ordered === null && other.ordered === null ? null : (one.ordered ?? 0) + (other.ordered ?? 0),
  }
}

function inOrder(some: readonly Purchase[], others: readonly Purchase[]): readonly Purchase[] {
  return [...some, ...others].sort((one, other) => one.minute - other.minute)
}

function inBoth(some: readonly Span[], others: readonly Span[]): readonly Span[] {
  return some.flatMap((one) =>
    others.flatMap((other) => {
      const fromMinute = Math.max(one.fromMinute, other.fromMinute)
      const toMinute = Math.min(one.toMinute, other.toMinute)
      return fromMinute < toMinute ? [{ fromMinute, toMinute }] : []
    }),
  )
}

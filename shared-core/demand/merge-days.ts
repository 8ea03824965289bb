import { assert } from '../support.ts'
import type { JournalDay, JournalItem } from './journal-day.ts'
import type { ItemDay, Purchase, SalesDay, Span } from './sales-day.ts'

/**
 * A board that knows of less than this part of what the till sold was not kept that day: its counts say nothing.
 * Common sense, no source.
 */
const KEPT_PART = 0.5

/**
 * One day from its two witnesses. The till knows when and what was bought; the journal knows how much went in all, as
 * what was baked and is left is counted, and when there was none. So purchases are those of the one that has more of
 * them; what the counts say beyond them is `unseen`, and a piece that both know counts once.
 * @param till unnamed pieces spread already; null: no rows of that date
 * @param journal null: the journal has no such day
 * @param menu varieties of the shop: one that the journal's day does not have was not offered on it
 * @throws AssertionError when both are null or of different dates
 */
export function mergedDay(till: SalesDay | null, journal: JournalDay | null, menu: readonly string[] = []): SalesDay {
  if (journal === null || (till !== null && !isKept(journal, till))) {
    assert(till !== null, 'a merged day has a till’s day or a journal’s')
    return till
  }
  assert(till === null || till.date === journal.date, `days of one date: ${till?.date} and ${journal.date}`)
  const isTills = till !== null && timedOf(till) >= ownOf(journal)
  const items = new Map<string, ItemDay>()
  for (const id of menu) if (!till?.items.has(id)) items.set(id, NOT_OFFERED)
  for (const item of journal.items)
    items.set(item.id, itemOf(item, isTills ? till.items.get(item.id) : undefined, journal.isClosed))
  // What the board has nothing of and the till sold all the same.
  for (const [id, item] of till?.items ?? []) if (!journal.items.some((one) => one.id === id)) items.set(id, item)
  const { date, openMinute, closeMinute } = journal
  return { date, openMinute, closeMinute, specials: till?.specials ?? [], items }
}

/** All that went of an item by the journal's account: sold, used and what the counts found missing. */
export function wentOf({ sold, allotted, kitchen, unseen }: JournalItem): number {
  return piecesOf(sold) + piecesOf(allotted) + piecesOf(kitchen) + unseen
}

/** Whether the board's account of a day is to be believed beside the till's. */
export function isKept(journal: JournalDay, till: SalesDay): boolean {
  const went = journal.items.reduce((sum, item) => sum + wentOf(item), 0)
  let sold = 0
  for (const { sold: purchases, unseen } of till.items.values()) sold += piecesOf(purchases) + unseen
  return went >= sold * KEPT_PART
}

/** Pieces by the till whose minute is known. */
function timedOf({ items }: SalesDay): number {
  return [...items.values()].reduce((sum, { sold }) => sum + piecesOf(sold), 0)
}

function ownOf({ items }: JournalDay): number {
  return items.reduce(
    (sum, { sold, allotted, kitchen }) => sum + piecesOf(sold) + piecesOf(allotted) + piecesOf(kitchen),
    0,
  )
}

function itemOf(item: JournalItem, till: ItemDay | undefined, isClosed: boolean): ItemDay {
  const own = inOrder([...item.sold, ...item.allotted, ...item.kitchen])
  const hasTill = till !== undefined && piecesOf(till.sold) > 0
  // While a day is open nobody has counted what is left: the one that knows more is right.
  if (hasTill && !isClosed) {
    const known = piecesOf(till.sold) + till.unseen > piecesOf(own) + item.unseen ? till : { ...item, sold: own }
    return { sold: known.sold, unseen: known.unseen, gone: item.gone, offered: true }
  }
  const sold = hasTill ? till.sold : own
  return { sold, unseen: wentOf(item) - piecesOf(sold), gone: goneBeside(item.gone, sold), offered: true }
}

/** Taps come late: what was sold while the board had none was there until then. */
function goneBeside(gone: readonly Span[], sold: readonly Purchase[]): readonly Span[] {
  return gone.flatMap(({ fromMinute, toMinute }) => {
    const inside = sold.filter(({ minute }) => minute > fromMinute && minute < toMinute)
    const from = inside.reduce((latest, { minute }) => Math.max(latest, minute), fromMinute)
    return [{ fromMinute: from, toMinute }]
  })
}

function inOrder(purchases: readonly Purchase[]): readonly Purchase[] {
  return [...purchases].sort((one, other) => one.minute - other.minute || one.pieces - other.pieces)
}

function piecesOf(purchases: readonly Purchase[]): number {
  return purchases.reduce((sum, { pieces }) => sum + pieces, 0)
}

const NOT_OFFERED: ItemDay = { sold: [], unseen: 0, gone: [], offered: false }

import type { JournalDay, JournalItem } from './journal-day.ts'
import type { Purchase, Span } from './sales-day.ts'

/** Pairs of numbers one after the other: a day has hundreds of purchases, and a shop years of days. */
type Pairs = readonly number[]
type Packed = Omit<JournalDay, 'items'> & { readonly items: readonly PackedItem[] }
type PackedItem = Omit<JournalItem, 'sold' | 'allotted' | 'kitchen' | 'gone'> & {
  readonly sold: Pairs
  readonly allotted: Pairs
  readonly kitchen: Pairs
  readonly gone: Pairs
}

/** A day of the journal as a compact text; `dayOfText` reads it. */
export function textOfDay(day: JournalDay): string {
  const items = day.items.map((item) => ({
    ...item,
    sold: pairs(item.sold),
    allotted: pairs(item.allotted),
    kitchen: pairs(item.kitchen),
    gone: item.gone.flatMap(({ fromMinute, toMinute }) => [fromMinute, toMinute]),
  }))
  return JSON.stringify({ ...day, items } satisfies Packed)
}

/** @throws SyntaxError for what `textOfDay` has not made */
export function dayOfText(text: string): JournalDay {
  const day: Packed = JSON.parse(text)
  const items = day.items.map((item) => ({
    ...item,
    sold: purchases(item.sold),
    allotted: purchases(item.allotted),
    kitchen: purchases(item.kitchen),
    gone: spans(item.gone),
  }))
  return { ...day, items }
}

function pairs(all: readonly Purchase[]): Pairs {
  return all.flatMap(({ minute, pieces }) => [minute, pieces])
}

/** @param flat minute, pieces, minute, pieces … */
export function purchases(flat: Pairs): readonly Purchase[] {
  return inPairs(flat, (minute, pieces) => ({ minute, pieces }))
}

/** @param flat from, to, from, to … */
export function spans(flat: Pairs): readonly Span[] {
  return inPairs(flat, (fromMinute, toMinute) => ({ fromMinute, toMinute }))
}

function inPairs<One>(flat: Pairs, make: (first: number, second: number) => One): readonly One[] {
  const made: One[] = []
  for (let at = 0; at + 1 < flat.length; at += 2) made.push(make(flat[at] ?? 0, flat[at + 1] ?? 0))
  return made
}

import type { SpecialDay } from '../../../shared-core/shop/shop.ts'
import type { Telling } from './say-value.ts'

type Span = SpecialDay['spans'][number]

/** @example "Thu, Nov 26, 2026", "Mon, Dec 21, 2026 – Sun, Jan 3, 2027" */
export function spanTold({ from, to }: Span, telling: Telling): string {
  return from === to ? dateTold(from, telling) : `${dateTold(from, telling)} – ${dateTold(to, telling)}`
}

/** With its year: special days reach over several. What is no date is told as it was typed. */
export function dateTold(date: string, { words, say }: Telling): string {
  if (Number.isNaN(Date.parse(date))) return date
  return say.demand.dates.long(words.times.date(date), date.slice(0, 4))
}

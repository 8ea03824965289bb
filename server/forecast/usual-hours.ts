import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { TillDay } from './till.ts'

/** When customers can usually buy, in minutes after midnight. */
export interface UsualHours {
  readonly openMinute: number
  readonly closeMinute: number
}

/** Days of a weekday that say when it usually opens and closes, and the fewest that say it by themselves. */
const LOOK_BACK = 12
const FEWEST = 2
const QUARTER = 15
/** Before there is any day. Common practice, no source. */
const UNKNOWN: UsualHours = { openMinute: 420, closeMinute: 1020 }

/**
 * A till does not say when a shop opens and closes. Its weekday's usual hours are taken for it, from days before: the
 * medians of first and last sale, to the quarter of an hour before and after. A single late sale moves no median.
 */
export class HoursSeen {
  readonly #byWeekday = new Map<number, { first: number; last: number }[]>()
  readonly #all: { first: number; last: number }[] = []

  of(date: string): UsualHours {
    const own = (this.#byWeekday.get(isoWeekday(date)) ?? []).slice(-LOOK_BACK)
    const days = own.length >= FEWEST ? own : this.#all.slice(-LOOK_BACK)
    if (days.length === 0) return UNKNOWN
    const openMinute = Math.floor(median(days.map(({ first }) => first)) / QUARTER) * QUARTER
    const closeMinute = Math.ceil(median(days.map(({ last }) => last)) / QUARTER) * QUARTER
    return { openMinute, closeMinute: Math.max(closeMinute, openMinute + QUARTER) }
  }

  learn(date: string, day: TillDay): void {
    const minutes = [...day.values()].flatMap((sold) => sold.map(({ minute }) => minute))
    if (minutes.length === 0) return
    const span = { first: Math.min(...minutes), last: Math.max(...minutes) }
    const weekday = isoWeekday(date)
    this.#byWeekday.set(weekday, [...(this.#byWeekday.get(weekday) ?? []), span])
    this.#all.push(span)
  }
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((left, right) => left - right)
  const middle = Math.floor(sorted.length / 2)
  const upper = sorted[middle] ?? 0
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2
}

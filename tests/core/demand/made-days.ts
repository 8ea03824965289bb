import { dateAfter } from '../../../shared-core/day/label.ts'
import type { ItemDay, Purchase, SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { isoWeekday } from '../../../shared-core/shop/hours.ts'
import { drawer } from '../support/draw.ts'

interface MadeOf {
  readonly from: string
  readonly days: number
  readonly seed?: number
  /** Customers on a usual day, by item. */
  readonly customers: Readonly<Record<string, number>>
  /** Pieces that there are of each item each day; left out: always enough. */
  readonly stock?: number
  readonly specials?: (date: string) => readonly string[]
  /** How much the date's demand is of a usual one. */
  readonly factor?: (date: string) => number
}

const OPEN = 6 * 60
const CLOSE = 14 * 60

/** Days of an invented shop: mornings busier than afternoons, Saturdays half as much again, one customer in six buys six. */
export function madeDays({ from, days, seed = 1, customers, stock, specials, factor }: MadeOf): SalesDay[] {
  const { upTo } = drawer(seed)
  return Array.from({ length: days }, (_, place): SalesDay => {
    const date = dateAfter(from, place)
    const special = specials?.(date) ?? []
    const weekday = isoWeekday(date) === 6 ? 1.5 : 1
    const items = Object.entries(customers).map(([id, usual]): [string, ItemDay] => {
      const come = Math.round(usual * weekday * (factor?.(date) ?? 1) * (0.7 + upTo(60) / 100))
      const asked = Array.from({ length: come }, (): Purchase => {
        const late = Math.max(upTo(1_000), upTo(1_000)) / 1_000
        return { minute: Math.floor(OPEN + (1 - late) * (CLOSE - OPEN)), pieces: upTo(5) === 0 ? 6 : 1 }
      }).sort((one, other) => one.minute - other.minute)
      return [id, soldOf(asked, stock)]
    })
    return { date, openMinute: OPEN, closeMinute: CLOSE, specials: special, items: new Map(items) }
  })
}

/** What can be sold of what is asked for: the first to come are served. */
function soldOf(asked: readonly Purchase[], stock = Number.POSITIVE_INFINITY): ItemDay {
  const sold: Purchase[] = []
  let left = stock
  for (const { minute, pieces } of asked) {
    const taken = Math.min(left, pieces)
    if (taken > 0) sold.push({ minute, pieces: taken })
    left -= taken
    if (left === 0) return { sold, unseen: 0, gone: [{ fromMinute: minute, toMinute: CLOSE }], offered: true }
  }
  return { sold, unseen: 0, gone: [], offered: true }
}

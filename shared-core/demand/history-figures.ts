import type {
  HistoryDayJson,
  HistoryHoursJson,
  HistoryOfDayJson,
  HistoryWeekdayJson,
  SaidJson,
} from '../live/sales-history.ts'
import { isoWeekday } from '../shop/hours.ts'
import type { Judged, Said, WalkedDay } from './backtest.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'
import { soldOf } from './sales-day.ts'

/** A day of sales with what was asked for. */
export type TrueDay = Pick<WalkedDay, 'day' | 'asked'>

/**
 * A day's total of some items. Null: none of them was offered.
 * @param said the forecast of the one item that these are
 */
export function historyDay(
  { day, asked }: TrueDay,
  has: (itemId: string) => boolean,
  said: SaidJson | null = null,
): HistoryDayJson | null {
  const items = offeredItems(day, has)
  if (items.length === 0) return null
  let [sold, lost, soldOut] = [0, 0, 0]
  for (const [id, item] of items) {
    const went = soldOf(item)
    sold += went
    lost += lostOf(asked.get(id), went)
    if (endsGone(item, day.closeMinute)) soldOut += 1
  }
  return { date: day.date, sold, lost: rounded(lost), soldOut, specials: day.specials, said }
}

/** What a weekday sells on the mean, special days apart: one street fair would make every Saturday large. */
export function historyWeekdays(days: readonly HistoryDayJson[]): HistoryWeekdayJson[] {
  return WEEKDAYS.flatMap((weekday) => {
    const some = days.filter(({ date, specials }) => specials.length === 0 && isoWeekday(date) === weekday)
    if (some.length === 0) return []
    const mean = (key: 'sold' | 'lost') => rounded(some.reduce((sum, day) => sum + day[key], 0) / some.length)
    return [{ weekday, days: some.length, sold: mean('sold'), lost: mean('lost') }]
  })
}

/** What each hour of a weekday sells on the mean, special days apart. What went at no known time is told as a part. */
export function historyHours(days: readonly SalesDay[], has: (itemId: string) => boolean): HistoryHoursJson {
  const byWeekday = WEEKDAYS.map(() => ({ days: 0, hours: new Map<number, number>() }))
  let [timed, untimed] = [0, 0]
  for (const day of days) {
    const weekday = byWeekday[isoWeekday(day.date) - 1]
    const items = offeredItems(day, has)
    if (weekday === undefined || items.length === 0 || day.specials.length > 0) continue
    weekday.days += 1
    for (const [, { sold, unseen }] of items) {
      untimed += Math.max(0, unseen)
      for (const { minute, pieces } of sold) {
        const hour = Math.floor(minute / 60)
        timed += pieces
        weekday.hours.set(hour, (weekday.hours.get(hour) ?? 0) + pieces)
      }
    }
  }
  const told = byWeekday.flatMap(({ hours }) => [...hours.keys()])
  const fromHour = told.length === 0 ? 0 : Math.min(...told)
  const count = told.length === 0 ? 0 : Math.max(...told) - fromHour + 1
  const weekdays = byWeekday.map((weekday) =>
    weekday.days === 0
      ? null
      : Array.from({ length: count }, (_, place) => rounded((weekday.hours.get(fromHour + place) ?? 0) / weekday.days)),
  )
  return { fromHour, weekdays, untimed: timed + untimed === 0 ? 0 : untimed / (timed + untimed) }
}

/** One day, variety by variety, the most sold first. */
export function historyOfDay({ day, asked }: TrueDay, judged: readonly Judged[]): Omit<HistoryOfDayJson, 'isRecorded'> {
  const saids = new Map(judged.map(({ itemId, said }) => [itemId, said]))
  const items = offeredItems(day, () => true).map(([varietyId, item]) => {
    const sold = soldOf(item)
    return {
      varietyId,
      sold,
      lost: rounded(lostOf(asked.get(varietyId), sold)),
      gone: item.gone,
      said: shortOf(saids.get(varietyId)),
    }
  })
  const { date, openMinute, closeMinute, specials } = day
  items.sort((one, other) => other.sold - one.sold || (one.varietyId < other.varietyId ? -1 : 1))
  return { date, openMinute, closeMinute, specials, items }
}

/** What a plot needs of a forecast. */
export function shortOf(said: Said | undefined): SaidJson | null {
  return said === undefined ? null : { q10: said.q10, q50: said.q50, q90: said.q90 }
}

const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7]

function offeredItems({ items }: SalesDay, has: (itemId: string) => boolean): (readonly [string, ItemDay])[] {
  return [...items].filter(([id, { offered }]) => offered && has(id))
}

function endsGone({ gone }: ItemDay, closeMinute: number): boolean {
  return gone.some(({ toMinute }) => toMinute >= closeMinute)
}

function lostOf(asked: number | undefined, sold: number): number {
  return Math.max(0, (asked ?? sold) - sold)
}

/** A tenth of a piece is told; less nobody can see. */
function rounded(pieces: number): number {
  return Math.round(pieces * 10) / 10
}

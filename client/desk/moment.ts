import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localDate, minuteOfDay } from '../live/clock-text.ts'
import type { DeskWords } from '../words/desk.ts'

export interface MomentParts {
  readonly shopClock: ShopClock | null
  readonly nowMs: EpochMs
  readonly shop: Shop
  readonly words: DeskWords
}

/** An instant as a list at the desk tells it, where the hour alone does not say which half of which day is meant. */
export interface Moment {
  /** The shop's way. @example "9:10 pm", "21:10" */
  readonly clock: string
  /** "" today; another year is said. @example "Wed, Nov 25", "Fri, Nov 26, 2027" */
  readonly day: string
}

export function momentOf(atMs: EpochMs, { shopClock, nowMs, shop, words }: MomentParts): Moment {
  const clock = words.times.clock(atMs)
  if (shopClock === null) return { clock, day: '' }
  const [date, today] = [localDate(shopClock, atMs), localDate(shopClock, nowMs)]
  const { am, pm } = words.desk.halfDays
  const half = minuteOfDay(shopClock, atMs) < NOON_MINUTE ? am : pm
  return {
    clock: shop.profile.clock === 24 ? clock : `${clock} ${half}`,
    day: date === today ? '' : dayOf(date, today, words),
  }
}

const NOON_MINUTE = 720

/** A token of a year ends on this very day of the next one. */
function dayOf(date: string, today: string, words: DeskWords): string {
  const [year, day] = [date.slice(0, 4), words.times.date(date)]
  if (year === today.slice(0, 4)) return day
  return words.language === 'es' ? `${day} de ${year}` : `${day}, ${year}`
}

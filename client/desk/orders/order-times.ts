import type { EpochMs } from '../../../shared-core/units.ts'
import { localDate, minuteText } from '../../live/clock-text.ts'
import { momentOf } from '../moment.ts'
import type { OrdersParts } from './parts.ts'

type Timed = Pick<OrdersParts, 'live' | 'shop' | 'words' | 'room'>

/** The time on its day. @example "9:10 am" */
export function clockOf(atMs: EpochMs, { live, shop, words }: Timed): string {
  return momentOf(atMs, { ...live, shop, words }).clock
}

/** With its day, where that is not today. @example "Wed, Nov 25, 9:10 am" */
export function whenOf(atMs: EpochMs, { live, shop, words }: Timed): string {
  const { day, clock } = momentOf(atMs, { ...live, shop, words })
  return day === '' ? clock : `${day}, ${clock}`
}

export function dateOf(atMs: EpochMs, { room }: Timed): string {
  return localDate(room.clock, atMs)
}

/** A time of day of a standing order. @param minute after local midnight */
export function minuteClock(minute: number, { shop, words }: Timed): string {
  const { clock } = shop.profile
  const { am, pm } = words.desk.halfDays
  const text = minuteText(minute, clock)
  return clock === 24 ? text : `${text} ${minute < NOON_MINUTE ? am : pm}`
}

const NOON_MINUTE = 720

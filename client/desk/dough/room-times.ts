import type { EpochMs } from '../../../shared-core/units.ts'
import { localDate } from '../../live/clock-text.ts'
import { momentOf } from '../moment.ts'
import type { RoomParts } from './room.ts'

type TimeParts = Pick<RoomParts, 'live' | 'shop' | 'words' | 'say' | 'room'>

/** The clock time alone: work in the dough room runs from morning to night. @example "5:10 am" */
export function clockOf(atMs: EpochMs, { live, shop, words }: TimeParts): string {
  return momentOf(atMs, { ...live, shop, words }).clock
}

/** With its day where that is not today. @example "Fri, Nov 27, 5:10 am" */
export function timeOf(atMs: EpochMs, { live, shop, words }: TimeParts): string {
  const { clock, day } = momentOf(atMs, { ...live, shop, words })
  return day === '' ? clock : words.desk.trays.untilOn(clock, day)
}

/** @example "today", "Fri, Nov 27" */
export function dayOf(atMs: EpochMs, { room, words, say }: TimeParts): string {
  const date = localDate(room.clock, atMs)
  return date === room.today ? say.today : words.times.date(date)
}

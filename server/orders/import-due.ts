import type { OrderFault, OrderMapping } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'
import { dateOf, LocalTimes } from '../sales/local-times.ts'
import { MomentReader, NO_TIME } from '../sales/read-moment.ts'
import { DATE_EXAMPLES } from '../sales/read-row.ts'
import { orderFault } from './import-fault.ts'

/** Who orders earlier than that, has a standing order. */
const AHEAD_MS_MAX = 400 * 86_400_000
const NOON_SECOND = 12 * 3_600

/** Reads when orders of a file are due, as it writes dates and times. */
export class DueReader {
  readonly #mapping: OrderMapping
  readonly #shop: Shop
  readonly #nowMs: EpochMs
  readonly #moments: MomentReader
  /** Zone tables are slow to ask, and orders are due at the same times. */
  readonly #instants = new Map<string, EpochMs>()

  constructor(mapping: OrderMapping, shop: Shop, nowMs: EpochMs) {
    this.#mapping = mapping
    this.#shop = shop
    this.#nowMs = nowMs
    this.#moments = new MomentReader(mapping.dateForm, new LocalTimes(shop.profile.zone))
  }

  /** The instant; null: the row says nothing of it, or it cannot be read, and then a fault more. */
  read(date: string, clock: string, faults: Told<OrderFault>[]): number | null {
    if (date === '' && clock === '') return null
    const { columns, dateForm } = this.#mapping
    const column = (columns.dueDate ?? -1) + 1
    const moment = this.#moments.read(date, clock === '' ? null : clock)
    if (moment === 'no-date') {
      faults.push(orderFault('no-date', { text: date, column, example: DATE_EXAMPLES[dateForm] }))
      return null
    }
    if (moment === 'no-time' || moment.second === NO_TIME) {
      faults.push(
        orderFault('no-time', { text: clock || date, column: (columns.dueTime ?? columns.dueDate ?? -1) + 1 }),
      )
      return null
    }
    const text = clock === '' ? date : `${date} ${clock}`
    const isLater = this.#mapping.isAfternoonMeant && isEarly(text, moment.second, this.#shop)
    const second = moment.second + (isLater ? NOON_SECOND : 0)
    const minute = Math.floor(second / 60)
    const atMs = this.#instantOf(moment.day, minute)
    if (atMs >= this.#nowMs && atMs <= this.#nowMs + AHEAD_MS_MAX) return atMs
    faults.push(orderFault('not-to-come', { text }))
    return null
  }

  #instantOf(day: number, minute: number): EpochMs {
    const key = `${day} ${minute}`
    const atMs = this.#instants.get(key) ?? localInstant(this.#shop.profile.zone, dateOf(day), minute)
    this.#instants.set(key, atMs)
    return atMs
  }

  /** Whether a time may be meant of the afternoon though it does not say so. */
  isInDoubt(date: string, clock: string): boolean {
    if (date === '') return false
    const moment = this.#moments.read(date, clock === '' ? null : clock)
    return typeof moment !== 'string' && isEarly(clock === '' ? date : clock, moment.second, this.#shop)
  }
}

/** Before the oven is ready nobody can fetch anything, unless it says am. */
function isEarly(text: string, second: number, { hours }: Shop): boolean {
  if (second === NO_TIME || /[ap]\.? ?m\.?$/i.test(text.trim()) || /(?:Z|UTC|[+-]\d{2}:?\d{2})$/.test(text))
    return false
  const ofDay = second % 86_400
  return ofDay < Math.min(hours.ovenReadyMinute * 60, NOON_SECOND)
}

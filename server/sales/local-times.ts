import { IANAZone } from 'luxon'

const QUARTER_MS = 900_000

/** A moment on the shop's wall clock: days since 1970-01-01 and seconds after that day's midnight. */
export interface LocalMoment {
  readonly day: number
  readonly second: number
}

/** Instants on a shop's wall clock. Offsets change at whole quarters of an hour, so each quarter is looked up once. */
export class LocalTimes {
  readonly #zone: IANAZone
  readonly #offsets = new Map<number, number>()

  constructor(zone: string) {
    this.#zone = IANAZone.create(zone)
  }

  of(atMs: number): LocalMoment {
    const quarter = Math.floor(atMs / QUARTER_MS)
    let offset = this.#offsets.get(quarter)
    if (offset === undefined) {
      offset = this.#zone.offset(atMs)
      this.#offsets.set(quarter, offset)
    }
    const seconds = Math.floor(atMs / 1_000) + offset * 60
    const day = Math.floor(seconds / DAY_SECONDS)
    return { day, second: seconds - day * DAY_SECONDS }
  }
}

export const DAY_SECONDS = 86_400
/**
 * Before this hour of the night a sale belongs to the day before: a bagel shop is closed then, a late tab is not.
 * Common practice, no source.
 */
const DAY_BEGINS_SECOND = 3 * 3_600

/** The business day of a moment; seconds after its midnight go on past 86,400. */
export function businessMoment({ day, second }: LocalMoment): LocalMoment {
  return second >= DAY_BEGINS_SECOND || second < 0 ? { day, second } : { day: day - 1, second: second + DAY_SECONDS }
}

/** @example dayOf('1970-01-02') // 1 */
export function dayOf(isoDate: string): number {
  return Math.round(Date.parse(`${isoDate}T00:00:00Z`) / 86_400_000)
}

/** @example dateOf(1) // '1970-01-02' */
export function dateOf(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}

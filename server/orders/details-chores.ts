import type { State } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Log } from '../live/room-parts.ts'
import type { DetailsBook } from './details-book.ts'

/** Days are counted in dates: an hour is soon enough, and a server that was off does it when it starts. */
const PURGED_EVERY_MS = 3_600_000

export interface DetailsChoresParts {
  readonly details: DetailsBook
  readonly state: State
  readonly now: () => EpochMs
  /** The shop's date at an instant, YYYY-MM-DD. */
  readonly localDate: (atMs: EpochMs) => string
  readonly log: Log
}

/** Forgets whom orders were for when their days are over, and takes what was deleted out of SQLite's log. */
export class DetailsChores {
  readonly #parts: DetailsChoresParts
  #purgedAtMs = Number.NEGATIVE_INFINITY

  constructor(parts: DetailsChoresParts) {
    this.#parts = parts
  }

  /** To be called about once a second. Never throws: a disk that is full is told elsewhere, and tried again. */
  tick(): void {
    const { details, now, log } = this.#parts
    try {
      if (now() - this.#purgedAtMs >= PURGED_EVERY_MS) {
        this.#purge()
        this.#purgedAtMs = now()
      }
      details.tidyLog()
    } catch (error) {
      this.#purgedAtMs = now()
      log.error({ error }, 'names and notes of orders could not be forgotten')
    }
  }

  #purge(): void {
    const { details, state, now, localDate } = this.#parts
    const { shop } = state
    if (shop === null) return
    const today = localDate(now())
    // As the shop stands now: what was taken back may be due another day, or stand again.
    for (const order of state.orders.values()) if (order.details > 0) details.setDay(order.id, localDate(order.dueAtMs))
    for (const standing of state.standing.values()) if (standing.details > 0) details.setDay(standing.id, null)
    const standing: ReadonlySet<string> = new Set(state.standing.keys())
    for (const id of details.standing()) if (!standing.has(id)) details.setDay(id, today)
    details.purge(today, shop.orders.forgetDays)
  }
}

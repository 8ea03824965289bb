import type { State } from '../../shared-core/day/state.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localDate, shopClock } from './shop-clock.ts'

const A_DAY_MS = 86_400_000
/** Before the first set-up nobody has said where the shop is. */
const NO_ZONE = 'UTC'

/** The shop's offsets and dates, reckoned once a day or when the shop's zone changes. */
export class ClockDesk {
  readonly #state: State
  readonly #now: () => EpochMs
  #table: ShopClock | null = null
  #told: ShopClock
  #madeAtMs = 0

  constructor(state: State, now: () => EpochMs) {
    this.#state = state
    this.#now = now
    this.#told = this.table()
  }

  get zone(): string {
    return this.#state.shop?.profile.zone ?? NO_ZONE
  }

  /** @returns true once for each table that differs from the last one: screens that are linked already need it */
  isNew(): boolean {
    const before = this.#told
    this.#told = this.table()
    return before !== this.#told
  }

  table(): ShopClock {
    const nowMs = this.#now()
    if (this.#table === null || this.#table.zone !== this.zone || nowMs - this.#madeAtMs >= A_DAY_MS) {
      this.#table = shopClock(this.zone, nowMs)
      this.#madeAtMs = nowMs
    }
    return this.#table
  }

  date(atMs: EpochMs): string {
    return localDate(this.zone, atMs)
  }
}

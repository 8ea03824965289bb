import type { DeviceClock } from '../../client/live/server-clock.ts'
import type { Schedule } from './schedule.ts'

/** A device's clocks as they are: wrong, drifting, set by somebody, standing still in sleep. */
export class SimClock implements DeviceClock {
  readonly #schedule: Schedule
  readonly #rate: number
  #wallAheadMs: number
  #monotonic: { readonly atMs: number; readonly readMs: number }
  #isAsleep = false

  /** @param driftPpm against the true time; the server's clock is the true time */
  constructor(
    schedule: Schedule,
    { wallAheadMs, bootMs, driftPpm }: { wallAheadMs: number; bootMs: number; driftPpm: number },
  ) {
    this.#schedule = schedule
    this.#rate = 1 + driftPpm / 1_000_000
    this.#wallAheadMs = wallAheadMs
    this.#monotonic = { atMs: schedule.nowMs, readMs: bootMs }
  }

  monotonicMs(): number {
    const { atMs, readMs } = this.#monotonic
    return this.#isAsleep ? readMs : readMs + (this.#schedule.nowMs - atMs) * this.#rate
  }

  wallMs(): number {
    return Math.round(this.#schedule.nowMs + this.#wallAheadMs)
  }

  step(byMs: number): void {
    this.#wallAheadMs += byMs
  }

  sleep(): void {
    this.#monotonic = { atMs: this.#schedule.nowMs, readMs: this.monotonicMs() }
    this.#isAsleep = true
  }

  wake(): void {
    this.#monotonic = { atMs: this.#schedule.nowMs, readMs: this.#monotonic.readMs }
    this.#isAsleep = false
  }
}

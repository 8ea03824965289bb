import type { EpochMs } from '../../shared-core/units.ts'
import type { DeviceClock, ServerClock } from './server-clock.ts'
import type { Connection, Turned } from './shop-store.ts'

/** A server that has not answered for this long is not there, whatever the link believes. */
const ANSWER_WAIT_MS = 10_000

/** How the contact with the server stands, since when, and whether an answer is overdue. */
export class Contact {
  readonly #device: DeviceClock
  readonly #server: ServerClock
  #connection: Connection
  /** When it was last up to date, in server time; null before the first time and while it is. */
  #lostAtMs: EpochMs | null = null
  /** Since when an answer is awaited, by the monotonic clock; null when none is. */
  #waitingSinceMs: number | null = null

  constructor(device: DeviceClock, server: ServerClock) {
    this.#device = device
    this.#server = server
    this.#connection = { phase: 'connecting', sinceMs: server.serverNowMs() }
  }

  get connection(): Connection {
    return this.#connection
  }

  get phase(): Connection['phase'] {
    return this.#connection.phase
  }

  /** Being away counts from the last time that it was up to date, also when contact came back for a moment. */
  enter(phase: Exclude<Connection['phase'], 'outside'>): void {
    if (phase === this.phase) return
    const nowMs = this.#server.serverNowMs()
    if (this.phase === 'live') this.#lostAtMs = nowMs
    if (phase === 'live') this.#lostAtMs = null
    this.#connection = { phase, sinceMs: phase === 'away' ? (this.#lostAtMs ?? nowMs) : nowMs }
  }

  /** Not let in, since the first time that this was said. */
  turnAway(why: Turned): void {
    const { phase, sinceMs } = this.#connection
    const nowMs = this.#server.serverNowMs()
    if (phase === 'live') this.#lostAtMs = nowMs
    this.#connection = { phase: 'outside', sinceMs: phase === 'outside' ? sinceMs : nowMs, why }
    this.#waitingSinceMs = null
  }

  expectAnswer(): void {
    this.#waitingSinceMs = this.#device.monotonicMs()
  }

  expectNothing(): void {
    this.#waitingSinceMs = null
  }

  /** Whether an awaited answer has not come in time; said once. */
  isOverdue(): boolean {
    if (this.#waitingSinceMs === null || this.#device.monotonicMs() - this.#waitingSinceMs <= ANSWER_WAIT_MS)
      return false
    this.#waitingSinceMs = null
    return true
  }
}

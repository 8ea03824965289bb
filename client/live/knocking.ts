/**
 * When a screen that was not let in asks again. A row of tablets that were all shown out must not storm the door, so
 * each waits long, and each another time; a person who looks at the page has just done something about it.
 */
const WAIT_MS = 20_000
/** Spread over the devices by their ids. */
const SPREAD_MS = 10_000
/** However often a page is hidden and shown. */
const LEAST_MS = 2_000

export class Knocking {
  readonly #waitMs: number
  /** By the monotonic clock; null: it is let in, as far as it knows. */
  #nextAtMs: number | null = null
  #lastAtMs = 0

  constructor(deviceId: string) {
    let sum = 0
    for (let at = 0; at < deviceId.length; at += 1) sum = (sum * 31 + deviceId.charCodeAt(at)) % SPREAD_MS
    this.#waitMs = WAIT_MS + sum
  }

  /** The door stayed shut. */
  turnedAway(nowMs: number): void {
    this.#lastAtMs = nowMs
    this.#nextAtMs = nowMs + this.#waitMs
  }

  letIn(): void {
    this.#nextAtMs = null
  }

  /** Somebody looks at the page: it need not wait any longer. */
  looked(nowMs: number): void {
    if (this.#nextAtMs !== null) this.#nextAtMs = Math.max(nowMs, this.#lastAtMs + LEAST_MS)
  }

  /** To be asked at every tick. @returns whether to knock now */
  isDue(nowMs: number): boolean {
    if (this.#nextAtMs === null || nowMs < this.#nextAtMs) return false
    this.turnedAway(nowMs)
    return true
  }
}

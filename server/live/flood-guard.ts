/**
 * What one link may say a second. A person taps three times a second, and a queue from hours without contact goes fifty
 * taps a message, each message after the answer to the last: two hundred is what only a page in a loop, or an attacker,
 * sends. Each message is read whole, so that more would take the time of everybody's taps.
 */
export const MESSAGES_A_SECOND_MAX = 200
/** What may come at once after a rest: what a network held up for some seconds arrives together. */
export const MESSAGES_AT_ONCE_MAX = 1_000

/** Counts the messages of one link: a token bucket (RFC 2697 has the method; from memory). */
export class FloodGuard {
  readonly #monotonicMs: () => number
  #left = MESSAGES_AT_ONCE_MAX
  #lastMs: number

  constructor(monotonicMs: () => number) {
    this.#monotonicMs = monotonicMs
    this.#lastMs = monotonicMs()
  }

  /** Whether one more message is within what a link may say. Once it is not, the link is to be ended. */
  mayCome(): boolean {
    const nowMs = this.#monotonicMs()
    const earned = ((nowMs - this.#lastMs) / 1_000) * MESSAGES_A_SECOND_MAX
    this.#left = Math.min(MESSAGES_AT_ONCE_MAX, this.#left + earned)
    this.#lastMs = nowMs
    if (this.#left < 1) return false
    this.#left -= 1
    return true
  }
}

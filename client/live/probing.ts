/** Questions for the server's time: a few at once, as the quickest answer is the most exact, and again each minute. */
const PROBES_AT_ONCE = 4
/** Drift adds 3 ms a minute at most, which nobody sees. */
const AGAIN_MS = 60_000

export class Probing {
  /** Sending times of those that are not answered. */
  readonly #open = new Set<number>()
  #left = 0
  #nextAtMs = 0

  /** Begins anew: after a new contact, and after sleep, when answers to earlier questions say nothing. */
  begin(): void {
    this.#open.clear()
    this.#left = 0
    this.#nextAtMs = 0
  }

  /** To be asked at every tick. @returns whether a probe with this time should go out */
  isDue(nowMs: number): boolean {
    if (nowMs < this.#nextAtMs) return false
    this.#left = PROBES_AT_ONCE - 1
    this.#nextAtMs = nowMs + AGAIN_MS
    this.#open.add(nowMs)
    return true
  }

  /** @returns whether this answers a question of ours, once; another one says nothing about the clocks */
  isAnswer(t0: number): boolean {
    return this.#open.delete(t0)
  }

  /** To be asked after an answer. @returns whether the next of the same few should go out at once */
  hasMore(nowMs: number): boolean {
    if (this.#left === 0) return false
    this.#left -= 1
    this.#open.add(nowMs)
    return true
  }
}

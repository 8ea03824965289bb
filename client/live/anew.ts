/** `gap`: entries are missing. The others: this state is not the server's. */
export type Trouble = 'gap' | 'fault' | 'hash' | 'server-behind'

/** Least time between two fetches of what is missing or wrong: a fault that stays must not become a storm. */
const WAIT_MS = 5_000

/** When what is missing or wrong is fetched anew. */
export class Anew {
  #isWanted = false
  #lastMs = Number.NEGATIVE_INFINITY

  /** @returns whether to fetch now; else it will be due */
  want(nowMs: number): boolean {
    this.#isWanted = nowMs - this.#lastMs < WAIT_MS
    if (!this.#isWanted) this.#lastMs = nowMs
    return !this.#isWanted
  }

  /** To be asked at every tick. */
  isDue(nowMs: number): boolean {
    return this.#isWanted && this.want(nowMs)
  }

  /** The next hello brings it, whoever says that. */
  forget(): void {
    this.#isWanted = false
  }
}

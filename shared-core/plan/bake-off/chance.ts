/** Uniform numbers from a constant seed. Source: mulberry32 (Tommy Ettinger), public domain. */
export class Chance {
  #state: number

  constructor(seed: number) {
    this.#state = seed | 0
  }

  /** On [0, 1). */
  part(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }

  /** 0 … below − 1. */
  index(below: number): number {
    return Math.floor(this.part() * below)
  }
}

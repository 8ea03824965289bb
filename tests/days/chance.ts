/**
 * Repeatable chance: xoshiro128** by David Blackman and Sebastiano Vigna (public domain, prng.di.unimi.it), 128 bits
 * of state filled from a 32-bit seed by SplitMix32. The same seed gives the same day on every machine.
 */
export class Chance {
  readonly #state: Uint32Array

  constructor(seed: number) {
    let mixed = seed >>> 0
    this.#state = Uint32Array.from({ length: 4 }, () => {
      mixed = (mixed + 0x9e3779b9) >>> 0
      let word = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad)
      word = Math.imul(word ^ (word >>> 15), 0x735a2d97)
      return (word ^ (word >>> 15)) >>> 0
    })
  }

  /** A whole number from 0 to 2³² − 1. */
  word(): number {
    const [a = 0, b = 0, c = 0, d = 0] = this.#state
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0
    const c1 = c ^ a
    const d1 = d ^ b
    this.#state.set([a ^ d1, b ^ c1, c1 ^ (b << 9), rotated(d1, 11)])
    return result
  }

  /** A whole number from `least` to `most`, both among them. */
  between(least: number, most: number): number {
    return least + (this.word() % (most - least + 1))
  }

  /** True so many times out of a thousand. */
  permille(times: number): boolean {
    return this.word() % 1_000 < times
  }

  oneOf<Thing>(things: readonly Thing[]): Thing {
    const thing = things[this.between(0, things.length - 1)]
    if (thing === undefined) throw new Error('nothing to choose from')
    return thing
  }
}

function rotated(word: number, by: number): number {
  return ((word << by) | (word >>> (32 - by))) >>> 0
}

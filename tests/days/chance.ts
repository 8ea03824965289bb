/**
 * Repeatable chance: xoshiro128** by David Blackman and Sebastiano Vigna (public domain, prng.di.unimi.it), 128 bits
 * of state filled from a 32-bit seed by SplitMix32. The same seed gives the same day on every machine.
 */
export class Chance {
  readonly #seed: number
  #a: number
  #b: number
  #c: number
  #d: number

  constructor(seed: number) {
    this.#seed = seed >>> 0
    let mixed = seed >>> 0
    const word = () => {
      mixed = (mixed + 0x9e3779b9) >>> 0
      let made = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad)
      made = Math.imul(made ^ (made >>> 15), 0x735a2d97)
      return made ^ (made >>> 15)
    }
    this.#a = word()
    this.#b = word()
    this.#c = word()
    this.#d = word()
  }

  /**
   * Another chance of the same seed, for a part of the world by its name: what the disk draws does not shift what
   * people draw, so that a day stays much the same when a kind of fault is left out of it.
   */
  part(name: string): Chance {
    // FNV-1a (Fowler, Noll and Vo), 32 bits; from memory, only its evenness matters here.
    let hash = 0x811c9dc5
    for (const letter of name) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193)
    return new Chance(this.#seed ^ hash)
  }

  /** A whole number from 0 to 2³² − 1. */
  word(): number {
    const b = this.#b
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0
    const c = this.#c ^ this.#a
    const d = this.#d ^ b
    this.#b = b ^ c
    this.#a ^= d
    this.#c = c ^ (b << 9)
    this.#d = rotated(d, 11)
    return result
  }

  /** A whole number from `least` to `most`, both among them. */
  between(least: number, most: number): number {
    return least + (this.word() % (most - least + 1))
  }

  /** True so many times out of a thousand; parts of one count. */
  permille(times: number): boolean {
    return this.word() < times * 4_294_967.296
  }

  oneOf<Thing>(things: readonly Thing[]): Thing {
    const thing = things[this.between(0, things.length - 1)]
    if (thing === undefined) throw new Error('nothing to choose from')
    return thing
  }
}

function rotated(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by))
}

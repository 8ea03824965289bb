/** Chance of a simulated shop, from one seed: SplitMix32 steps, from memory; only evenness matters here. */
export class Chance {
  #state: number

  constructor(seed: number) {
    this.#state = seed >>> 0
  }

  /** From 0 up to, not including, 1. */
  share(): number {
    this.#state = (this.#state + 0x9e3779b9) >>> 0
    let mixed = Math.imul(this.#state ^ (this.#state >>> 16), 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32
  }

  between(low: number, high: number): number {
    return low + this.share() * (high - low)
  }

  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1))
  }

  /** True with a chance from 0 to 1. */
  comes(chance: number): boolean {
    return this.share() < chance
  }

  /** Poisson by counting down a product. Source: Knuth, The Art of Computer Programming, vol. 2, section 3.4.1. */
  poisson(mean: number): number {
    const least = Math.exp(-mean)
    let product = this.share()
    let events = 0
    while (product > least) {
      product *= this.share()
      events += 1
    }
    return events
  }

  /** The place of one of the weights, each as likely as it is heavy; -1 when none has any. */
  pick(weights: readonly number[]): number {
    let rest = this.share() * weights.reduce((sum, weight) => sum + weight, 0)
    for (const [place, weight] of weights.entries()) {
      rest -= weight
      if (rest < 0) return place
    }
    return -1
  }
}

/**
 * A binary heap of numbers by key, the smallest first; of equal keys the smaller number. Source: Cormen et al.,
 * Introduction to Algorithms, chapter 6.
 */
export class EventHeap {
  readonly #keys: number[] = []
  readonly #values: number[] = []

  get size(): number {
    return this.#keys.length
  }

  /** The smallest key; NaN when it is empty. */
  get firstAt(): number {
    return this.#keys[0] ?? Number.NaN
  }

  push(key: number, value: number): void {
    const keys = this.#keys
    const values = this.#values
    let at = keys.length
    keys.push(key)
    values.push(value)
    while (at > 0) {
      const up = (at - 1) >> 1
      if (!isBefore(key, value, keys[up] ?? 0, values[up] ?? 0)) break
      keys[at] = keys[up] ?? 0
      values[at] = values[up] ?? 0
      at = up
    }
    keys[at] = key
    values[at] = value
  }

  /** The number with the smallest key, which is taken out; -1 when it is empty. */
  pop(): number {
    const first = this.#values[0] ?? -1
    const key = this.#keys.pop() ?? 0
    const value = this.#values.pop() ?? 0
    if (this.#keys.length > 0) this.#sink(key, value)
    return first
  }

  #sink(key: number, value: number): void {
    const keys = this.#keys
    const values = this.#values
    let at = 0
    for (;;) {
      let down = 2 * at + 1
      if (down >= keys.length) break
      const other = down + 1
      if (other < keys.length && isBefore(keys[other] ?? 0, values[other] ?? 0, keys[down] ?? 0, values[down] ?? 0))
        down = other
      if (!isBefore(keys[down] ?? 0, values[down] ?? 0, key, value)) break
      keys[at] = keys[down] ?? 0
      values[at] = values[down] ?? 0
      at = down
    }
    keys[at] = key
    values[at] = value
  }
}

function isBefore(key: number, value: number, otherKey: number, other: number): boolean {
  return key < otherKey || (key === otherKey && value < other)
}

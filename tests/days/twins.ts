/**
 * Whether two states are the same, found out again and again while they grow. Entities are immutable and replaced
 * whole, so that a pair that was equal once is so for ever: only what is new is looked at. The maps that hold them are
 * changed in place and gone through each time.
 */
export class Twins {
  readonly #equal = new WeakMap<object, object>()

  /** @returns where they first differ, as a path; null when they are the same */
  difference(one: unknown, other: unknown): string | null {
    if (Object.is(one, other)) return null
    if (!isObject(one) || !isObject(other)) return ''
    if (one instanceof Map || other instanceof Map) return this.#inMaps(one, other)
    if (Array.isArray(one) || Array.isArray(other)) return this.#inLists(one, other)
    if (this.#equal.get(one) === other) return null
    const found = this.#inFields(one, other)
    // What holds a map is not immutable: the state itself, and its shop.
    if (found === null && !Object.values(one).some((value) => value instanceof Map)) this.#equal.set(one, other)
    return found
  }

  #inMaps(one: unknown, other: unknown): string | null {
    if (!(one instanceof Map) || !(other instanceof Map) || one.size !== other.size) return ''
    for (const [key, value] of one) {
      const found = other.has(key) ? this.difference(value, other.get(key)) : ''
      if (found !== null) return `.${key}${found}`
    }
    return null
  }

  #inLists(one: unknown, other: unknown): string | null {
    if (!Array.isArray(one) || !Array.isArray(other) || one.length !== other.length) return ''
    for (let at = 0; at < one.length; at += 1) {
      const found = this.difference(one[at], other[at])
      if (found !== null) return `.${at}${found}`
    }
    return null
  }

  #inFields(one: object, other: object): string | null {
    const keys = Object.keys(one)
    if (keys.length !== Object.keys(other).length) return ''
    for (const key of keys) {
      const found = key in other ? this.difference(fieldOf(one, key), fieldOf(other, key)) : ''
      if (found !== null) return `.${key}${found}`
    }
    return null
  }
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

function fieldOf(object: object, key: string): unknown {
  return (object as Readonly<Record<string, unknown>>)[key]
}

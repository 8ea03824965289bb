/** Throws when something that the code relies on does not hold: our bug, never the user's input. */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new AssertionError(message)
}

/** For the hottest paths, which should not build a message that nobody reads: `if (!holds) fail(...)`. */
export function fail(message: string): never {
  throw new AssertionError(message)
}

export class AssertionError extends Error {
  override name = 'AssertionError'
}

/** Marks the end of a switch over a union: a missing case is a compile error. */
export function unreachable(value: never): never {
  throw new AssertionError(`unreachable: ${JSON.stringify(value)}`)
}

/** The value at `key`, which must be there. @throws AssertionError when it is not. */
export function must<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value {
  const value = map.get(key)
  assert(value !== undefined, `nothing at ${String(key)}`)
  return value
}

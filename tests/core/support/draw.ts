export interface Draw {
  readonly upTo: (most: number) => number
  readonly oneOf: <Thing>(things: readonly Thing[]) => Thing
}

/** Numbers out of one number: SplitMix32, from memory; only evenness matters here. */
export function drawer(seed: number): Draw {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x9e3779b9) >>> 0
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return (mixed ^ (mixed >>> 15)) >>> 0
  }
  const upTo = (most: number) => next() % (Math.max(0, most) + 1)
  const oneOf = <Thing>(things: readonly Thing[]): Thing => {
    const thing = things[upTo(things.length - 1)]
    if (thing === undefined) throw new Error('nothing to draw from')
    return thing
  }
  return { upTo, oneOf }
}

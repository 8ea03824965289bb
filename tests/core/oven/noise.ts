/** Numbers of a standard normal law that look like chance and are the same each time (mulberry32, twelve of them summed). */
export function noise(seed: number): () => number {
  let state = seed
  const next = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  return () => Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, -6)
}

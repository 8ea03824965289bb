/**
 * Chance for the demo, drawn from a seed and a name: the same act of the same morning is always late by the same
 * seconds, whatever was drawn before it. Why not one stream for all: a person's tap in between would then change
 * everything that comes after, and no run could be told twice.
 */
export interface Draw {
  /** From 0 up to, not including, 1. */
  share(): number
  /** From `low` up to, not including, `high`. */
  between(low: number, high: number): number
  /** A whole number, both ends included. */
  whole(low: number, high: number): number
  /** True once in so many times. */
  oneIn(times: number): boolean
}

/** @param name of what is drawn for, e.g. the key of an act @example drawFor(1, 'flip:k7.1').share() // always the same */
export function drawFor(seed: number, name: string): Draw {
  let state = hashOf(`${seed} ${name}`)
  const share = () => {
    state = (state + 0x6d2b79f5) | 0
    return mixed(state) / 2 ** 32
  }
  const between = (low: number, high: number) => low + share() * (high - low)
  return {
    share,
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    oneIn: (times) => share() * times < 1,
  }
}

/** One of the items, each as likely as its weight says; null when none has any. */
export function pick<Item>(draw: Draw, items: readonly Item[], weightOf: (item: Item) => number): Item | null {
  let rest = draw.share() * items.reduce((sum, item) => sum + weightOf(item), 0)
  for (const item of items) {
    rest -= weightOf(item)
    if (rest < 0) return item
  }
  return null
}

/** FNV-1a, 32 bit. Source: draft-eastlake-fnv, section 5. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  return hash
}

/** Mulberry32 by T. Ettinger (public domain): one step of 32 bits, uniform enough for a make-believe shop. */
function mixed(state: number): number {
  let mix = Math.imul(state ^ (state >>> 15), state | 1)
  mix ^= mix + Math.imul(mix ^ (mix >>> 7), mix | 61)
  return (mix ^ (mix >>> 14)) >>> 0
}

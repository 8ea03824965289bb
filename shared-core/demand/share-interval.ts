/** How often something came true of so many times, with the part in which it would in the long run. */
export interface Share {
  readonly hits: number
  readonly of: number
  /** Between these in the long run, with 95 % confidence; 0 and 1 where nothing was seen. */
  readonly low: number
  readonly high: number
}

/** 97.5 % point of the normal distribution. */
const Z = 1.959963984540054

/**
 * Wilson's score interval, which keeps its promise with few trials and near 0 and 1, where the usual p ± z·s does not.
 *
 *   (p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) / (1 + z²/n)
 *
 * @param of trials @param effective trials that they are worth when they hang together; left out: as many
 * Source: E. B. Wilson, Probable inference, the law of succession, and statistical inference, JASA 22 (1927).
 * @example wilson(39, 48) // low 0.681, high 0.898
 */
export function wilson(hits: number, of: number, effective = of): Share {
  if (of === 0 || effective === 0) return { hits, of, low: 0, high: 1 }
  const p = hits / of
  const n = effective
  const middle = p + (Z * Z) / (2 * n)
  const half = Z * Math.sqrt((p * (1 - p)) / n + (Z * Z) / (4 * n * n))
  const whole = 1 + (Z * Z) / n
  return { hits, of, low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) }
}

/**
 * The same for trials that come in groups which share their luck: a rainy day takes all varieties below their range.
 * A share's variance between groups says how many independent trials they are worth (Kish's effective sample size), at
 * least one a group, at most all.
 */
export function wilsonOfGroups(groups: readonly { readonly hits: number; readonly of: number }[]): Share {
  const hits = groups.reduce((sum, group) => sum + group.hits, 0)
  const of = groups.reduce((sum, group) => sum + group.of, 0)
  if (of === 0) return wilson(0, 0)
  const p = hits / of
  const count = groups.length
  const spread = groups.reduce((sum, group) => sum + (group.hits - p * group.of) ** 2, 0)
  const variance = count < 2 ? Number.POSITIVE_INFINITY : (spread * count) / (count - 1) / (of * of)
  const worth = variance === 0 ? of : (p * (1 - p)) / variance
  return wilson(hits, of, Math.min(of, Math.max(Math.min(count, of), worth)))
}

/**
 * Rings strung on a lying rod: each as far along as it is due, pushed aside where another one is there already, as rings
 * on a rod do. The order on the rod is the order in time, so what comes first is at the left whatever was pushed.
 */
export interface Strung {
  readonly key: string
  readonly atMs: number
  readonly widthPx: number
}

export interface StrungPlace {
  readonly key: string
  readonly leftPx: number
}

export interface RodSpan {
  readonly fromMs: number
  readonly toMs: number
  readonly widthPx: number
  readonly gapPx: number
  /** Room for the count of those that do not fit, "+3", at the right end. */
  readonly morePx: number
}

/**
 * @param rings soonest first
 * @returns the places of those that fit, soonest first, in whole pixels; what is due outside the span stands at its ends
 */
export function strung(
  rings: readonly Strung[],
  span: RodSpan,
): { readonly placed: readonly StrungPlace[]; readonly hidden: number } {
  const { widthPx, gapPx, morePx } = span
  const all = fitting(rings, widthPx, gapPx)
  const count = all === rings.length ? all : fitting(rings, widthPx - morePx - gapPx, gapPx)
  const shown = rings.slice(0, count)
  const endPx = count === rings.length ? widthPx : widthPx - morePx - gapPx
  let fromPx = 0
  let restPx = shown.reduce((sum, ring) => sum + ring.widthPx + gapPx, -gapPx)
  const placed = shown.map(({ key, atMs, widthPx: ownPx }) => {
    const wantedPx = middleOf(atMs, span) - ownPx / 2
    const leftPx = Math.round(Math.max(fromPx, Math.min(wantedPx, endPx - restPx)))
    fromPx = leftPx + ownPx + gapPx
    restPx -= ownPx + gapPx
    return { key, leftPx }
  })
  return { placed, hidden: rings.length - count }
}

/** How far along the rod an instant is. */
export function middleOf(atMs: number, { fromMs, toMs, widthPx }: Omit<RodSpan, 'gapPx' | 'morePx'>): number {
  return Math.min(1, Math.max(0, (atMs - fromMs) / (toMs - fromMs))) * widthPx
}

function fitting(rings: readonly Strung[], roomPx: number, gapPx: number): number {
  let takenPx = -gapPx
  for (const [index, { widthPx }] of rings.entries()) {
    takenPx += widthPx + gapPx
    if (takenPx > roomPx) return index
  }
  return rings.length
}

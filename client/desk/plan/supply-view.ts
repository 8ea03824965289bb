import type { PlanSupply } from '../../../shared-core/live/plan.ts'

export interface SupplyGiven {
  readonly fromMs: number
  readonly toMs: number
  readonly widthPx: number
  readonly heightPx: number
}

/** One variety over the rest of the day, drawn: SVG paths in CSS pixels. */
export interface SupplyView {
  /** Pieces that there have been for sale, in steps. */
  readonly supply: string
  /** What will probably have been asked for. */
  readonly asked: string
  /** Between 10 and 90 % chance. */
  readonly band: string
  /** Pieces at the top of the drawing. */
  readonly most: number
}

/** Those that decide the day come first; a piece asked for in vain counts twice one that is left. */
export function thatMatter(supply: readonly PlanSupply[], count: number): readonly PlanSupply[] {
  const weight = ({ lost, left }: PlanSupply) => lost * 2 + left
  const order = [...supply].sort(
    (one, other) => weight(other) - weight(one) || (one.varietyId < other.varietyId ? -1 : 1),
  )
  return order.slice(0, count)
}

/** Pieces ready so far against pieces asked for so far; where the second runs over the first, somebody goes without. */
export function supplyView({ forSale, ready, asked }: PlanSupply, given: SupplyGiven): SupplyView {
  const { fromMs, toMs, widthPx, heightPx } = given
  const last = ready[ready.length - 1]?.[1] ?? 0
  const most = Math.max(1, forSale + last, ...asked.map(([, , , q90]) => q90))
  const x = (ms: number) => round(Math.min(1, Math.max(0, (ms - fromMs) / (toMs - fromMs))) * widthPx)
  const y = (pieces: number) => round(heightPx - (pieces / most) * heightPx)
  let supply = `M${x(fromMs)} ${y(forSale)}`
  for (const [atMs, pieces] of ready) supply += `H${x(atMs)}V${y(forSale + pieces)}`
  supply += `H${widthPx}`
  const line = (of: (one: PlanSupply['asked'][number]) => number, points = asked) =>
    points.map((one) => `${x(one[0])} ${y(of(one))}`).join('L')
  if (asked.length === 0) return { supply, asked: '', band: '', most }
  const back = [...asked].reverse()
  const band = `M${line(([, q10]) => q10)}L${line(([, , , q90]) => q90, back)}Z`
  return { supply, asked: `M${line(([, , mean]) => mean)}`, band, most }
}

function round(value: number): number {
  return Math.round(value * 2) / 2
}

/** A day's demand at one rate: `pieces` come in that day, with probability `weight`. */
export interface RatePoint {
  readonly pieces: number
  readonly weight: number
}

const POINTS_MIN = 4
const POINTS_MAX = 6
const CELLS = 240
const LOWEST_Z = -4.2
const HIGHEST_Z = 4.6

/**
 * The gamma law of a day's rate as `count` equally likely parts, each standing at its own mean, so that whatever is
 * linear in the rate inside a part is exact. Cells are even in the cube root, where a gamma is close to a normal.
 * Source: Wilson & Hilferty 1931, Proc. Natl. Acad. Sci. 17:684–688.
 */
export function ratePoints(mean: number, dispersion: number, count: number): RatePoint[] {
  if (mean <= 0) return []
  const { roots, masses } = cells(dispersion)
  const total = masses.reduce((sum, mass) => sum + mass, 0)
  const points: RatePoint[] = []
  let weight = 0
  let moment = 0
  let passed = 0
  for (let cell = 0; cell < CELLS; cell++) {
    const mass = (masses[cell] ?? 0) / total
    weight += mass
    passed += mass
    moment += mass * (roots[cell] ?? 0) ** 3
    const isLast = cell === CELLS - 1
    if (weight > 0 && (isLast || passed >= (points.length + 1) / count)) {
      points.push({ pieces: (mean * moment) / (weight * dispersion), weight })
      weight = moment = 0
    }
  }
  return scaledTo(mean, points)
}

/** The more parts, the wider the rate's spread is against the Poisson noise, which smooths what lies between them. */
export function pointsFor({ mean, dispersion }: { readonly mean: number; readonly dispersion: number }): number {
  const gammaOverPoisson = Math.sqrt(mean / dispersion)
  return Math.max(POINTS_MIN, Math.min(POINTS_MAX, Math.round(3 + 2 * gammaOverPoisson)))
}

function cells(dispersion: number) {
  const spread = 1 / (3 * Math.sqrt(dispersion))
  const centre = 1 - 1 / (9 * dispersion)
  const top = Math.max(centre + HIGHEST_Z * spread, 0.5) * Math.cbrt(dispersion)
  const bottom = Math.max(0, (centre + LOWEST_Z * spread) * Math.cbrt(dispersion))
  const step = (top - bottom) / CELLS
  const roots: number[] = []
  const logs: number[] = []
  for (let cell = 0; cell < CELLS; cell++) {
    const root = bottom + (cell + 0.5) * step
    roots.push(root)
    logs.push((3 * dispersion - 1) * Math.log(root) - root ** 3)
  }
  const highest = Math.max(...logs)
  return { roots, masses: logs.map((log) => Math.exp(log - highest)) }
}

/** Takes out what the cells' width has added to the mean. */
function scaledTo(mean: number, points: readonly RatePoint[]): RatePoint[] {
  const actual = points.reduce((sum, { pieces, weight }) => sum + weight * pieces, 0)
  return points.map(({ pieces, weight }) => ({ pieces: (pieces * mean) / actual, weight }))
}

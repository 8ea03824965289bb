import type { FirstOrder } from './first-order.ts'
import type { HeatPrior, HeatReading } from './heat.ts'

/** For one τ: the course, courses around it by what is not known of limit and start, and how well the readings agree. */
interface LineThrough {
  readonly course: FirstOrder
  readonly courses: readonly { readonly weight: number; readonly course: FirstOrder }[]
  /** Logarithm of the readings' marginal likelihood, up to a constant that no τ changes. */
  readonly logEvidence: number
}

/** Nodes and weights of the Gauss–Hermite rule for a normal law, 5 points (Abramowitz & Stegun, table 25.10, scaled). */
const NODES = [-2.856970013872806, -1.355626179974266, 0, 1.355626179974266, 2.856970013872806]
const NODE_WEIGHTS = [0.011257411327721, 0.222075922005613, 0.533333333333333, 0.222075922005613, 0.011257411327721]
/** Of what the start is away from the limit, °C: nothing is held beforehand. */
const AWAY_SPREAD = 1_000

/**
 * The straight line T = limit + away·e^(−t/τ) through readings, t from the last one, with a normal law held of the
 * limit: linear regression in closed form.
 */
export function lineThrough(
  readings: readonly HeatReading[],
  weights: readonly number[],
  tau: number,
  { limit: held, limitSpread, noise }: HeatPrior,
): LineThrough {
  const lastMinute = readings[readings.length - 1]?.minute ?? 0
  const precision = 1 / (noise * noise)
  // Around the limit that is held, so that the numbers stay small.
  let [a, b, c] = [1 / limitSpread ** 2, 0, 1 / AWAY_SPREAD ** 2]
  let [p, q, squares, logNoise] = [0, 0, 0, 0]
  for (const [at, { minute, celsius }] of readings.entries()) {
    const weight = (weights[at] ?? 1) * precision
    const e = Math.exp(-(minute - lastMinute) / tau)
    const y = celsius - held
    a += weight
    b += weight * e
    c += weight * e * e
    p += weight * y
    q += weight * y * e
    squares += weight * y * y
    logNoise += Math.log(weight)
  }
  const determinant = a * c - b * b
  const [limit, away] = [(c * p - b * q) / determinant, (a * q - b * p) / determinant]
  const logEvidence = 0.5 * (logNoise - Math.log(determinant) - squares + limit * p + away * q)
  const course = courseOf(held + limit, away, tau)
  return { course, courses: around(held + limit, away, tau, { a, b, c, determinant }), logEvidence }
}

function courseOf(limit: number, away: number, tau: number): FirstOrder {
  return { limit, start: limit + away, tau }
}

/** Along the two axes of what is not known: Cholesky's root of the inverse of [[a, b], [b, c]]. */
function around(
  limit: number,
  away: number,
  tau: number,
  inverse: { a: number; b: number; c: number; determinant: number },
) {
  const { a, b, c, determinant } = inverse
  const one = Math.sqrt(c / determinant)
  const mixed = -b / determinant / one
  const other = Math.sqrt(Math.max(0, a / determinant - mixed * mixed))
  return NODES.flatMap((x, i) =>
    NODES.map((y, j) => ({
      weight: (NODE_WEIGHTS[i] ?? 0) * (NODE_WEIGHTS[j] ?? 0),
      course: courseOf(limit + one * x, away + mixed * x + other * y, tau),
    })),
  )
}

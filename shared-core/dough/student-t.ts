/**
 * Student's t at 97.5 % by degrees of freedom from 1 on, to six digits.
 *
 * Why a table: its quantiles come from logarithms and powers, which differ between engines, and a library for them weighs
 * more than the screen that asks. Computed with scipy 1.17.1 (`scipy.stats.t.ppf`) and held to jstat by a test.
 */
const T_975: readonly number[] = [
  12.706205, 4.302653, 3.182446, 2.776445, 2.570582, 2.446912, 2.364624, 2.306004, 2.262157, 2.228139, 2.200985,
  2.178813, 2.160369, 2.144787, 2.13145, 2.119905, 2.109816, 2.100922, 2.093024, 2.085963, 2.079614, 2.073873, 2.068658,
  2.063899, 2.059539, 2.055529, 2.051831, 2.048407, 2.04523, 2.042272, 2.039513, 2.036933, 2.034515, 2.032245, 2.030108,
  2.028094, 2.026192, 2.024394, 2.022691, 2.021075, 2.019541, 2.018082, 2.016692, 2.015368, 2.014103, 2.012896,
  2.011741, 2.010635, 2.009575, 2.008559, 2.007584, 2.006647, 2.005746, 2.004879, 2.004045, 2.003241, 2.002465,
  2.001717, 2.000995, 2.000298, 1.999624, 1.998972, 1.998341, 1.99773, 1.997138, 1.996564, 1.996008, 1.995469, 1.994945,
  1.994437, 1.993943, 1.993464, 1.992997, 1.992543, 1.992102, 1.991673, 1.991254, 1.990847, 1.99045, 1.990063, 1.989686,
  1.989319, 1.98896, 1.98861, 1.988268, 1.987934, 1.987608, 1.98729, 1.986979, 1.986675, 1.986377, 1.986086, 1.985802,
  1.985523, 1.985251, 1.984984, 1.984723, 1.984467, 1.984217, 1.983972, 1.983731, 1.983495, 1.983264, 1.983038,
  1.982815, 1.982597, 1.982383, 1.982173, 1.981967, 1.981765, 1.981567, 1.981372, 1.98118, 1.980992, 1.980808, 1.980626,
  1.980448, 1.980272, 1.9801,
]

/**
 * The factor of a two-sided 95 % interval. More degrees of freedom than the table has get its last value, which is 1.1 %
 * too wide at the most.
 * @param freedom degrees of freedom, 1 or more; with none nothing can be said
 * @example tOf(11) // 2.200985
 */
export function tOf(freedom: number): number {
  if (freedom < 1) return Number.POSITIVE_INFINITY
  return T_975[Math.min(Math.floor(freedom), T_975.length) - 1] ?? Number.POSITIVE_INFINITY
}

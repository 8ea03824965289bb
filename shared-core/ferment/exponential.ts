/**
 * e^x and ln x with + − × ÷ only: `Math.exp` and `Math.log` may differ in the last bit between engines, and what decides a
 * move must come out the same on every one. Good to some 1e-14 of the value.
 */

/** e^x by its power series after halving x below 1/8, then squared as often. @example exponential(-1) // 0.367879 */
export function exponential(x: number): number {
  if (x > 700) return Number.POSITIVE_INFINITY
  if (x < -700) return 0
  let halvings = 0
  let small = x
  while (small > 0.125 || small < -0.125) {
    small /= 2
    halvings += 1
  }
  let sum = 1
  for (let n = 11; n >= 1; n -= 1) sum = 1 + (sum * small) / n
  for (let n = 0; n < halvings; n += 1) sum *= sum
  return sum
}

/** ln x by ln x = 2 artanh((x − 1)/(x + 1)), after taking out powers of two; −∞ at 0. @example logarithm(21) // 3.044522 */
export function logarithm(x: number): number {
  if (x <= 0) return Number.NEGATIVE_INFINITY
  if (x === Number.POSITIVE_INFINITY) return x
  let twos = 0
  let near = x
  while (near > 1.5) {
    near /= 2
    twos += 1
  }
  while (near < 0.75) {
    near *= 2
    twos -= 1
  }
  const y = (near - 1) / (near + 1)
  let sum = 0
  for (let n = 31; n >= 1; n -= 2) sum = sum * y * y + 1 / n
  return 2 * sum * y + twos * Math.LN2
}

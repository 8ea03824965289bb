import { assert } from '../support.ts'
import type { Pieces } from './pieces.ts'
import { fromChances } from './pieces.ts'

/** How many customers come: negative binomial by mean and dispersion, Poisson where that is Infinity. */
export interface Customers {
  readonly mean: number
  readonly dispersion: number
}

/** As far as the distribution is made: what lies beyond has less than this chance. */
const BEYOND = 1e-13
/** A recursion that never gets there is our bug. */
const PIECES_MAX = 100_000

/**
 * Pieces asked for by customers who each take a number of their own: Panjer's recursion.
 *
 *   g(0) = P(no customer),   g(x) = Σ (a + b·j/x)·f(j)·g(x − j), j from 1 to x
 *   Poisson(λ):           a = 0,                    b = λ
 *   negative binomial:    a = mean / (k + mean),    b = (k − 1)·a
 *
 * Source: Panjer, Recursive evaluation of a family of compound distributions, ASTIN Bulletin 12 (1981); Klugman, Panjer &
 * Willmot, Loss Models. Every customer takes one at least (f(0) = 0), so no divisor is needed.
 * @param sizes chances of 1, 2, 3, … pieces for one customer; they sum to 1
 * @throws AssertionError for sizes that do not, and for so many customers that a double has no P(no customer): above about
 * 700 for Poisson; there the lumps no longer show
 * @example compound({ mean: 0.25, dispersion: Infinity }, dozens only) // 0 pieces with chance 0.78, else a dozen or more
 */
export function compound({ mean, dispersion }: Customers, sizes: readonly number[]): Pieces {
  const sum = sizes.reduce((all, chance) => all + chance, 0)
  assert(Math.abs(sum - 1) < 1e-9 && sizes.every((chance) => chance >= 0), `chances of sizes sum to 1: ${sum}`)
  assert(mean >= 0 && dispersion > 0, `customers: mean ${mean}, dispersion ${dispersion}`)
  const a = dispersion === Number.POSITIVE_INFINITY ? 0 : mean / (dispersion + mean)
  const b = dispersion === Number.POSITIVE_INFINITY ? mean : (dispersion - 1) * a
  const none = dispersion === Number.POSITIVE_INFINITY ? Math.exp(-mean) : Math.exp(dispersion * Math.log1p(-a))
  assert(none > 0, `too many customers for the recursion: ${mean}`)
  const chances = [none]
  // Where only dozens are bought there are eleven zeros between two chances: as many in a row say nothing yet.
  for (let x = 1, reached = none, zeros = 0; 1 - reached > BEYOND && zeros <= sizes.length; x += 1) {
    assert(x <= PIECES_MAX, `no end of pieces for ${mean} customers`)
    let chance = 0
    for (let j = 1; j <= Math.min(x, sizes.length); j += 1)
      chance += (a + (b * j) / x) * (sizes[j - 1] ?? 0) * (chances[x - j] ?? 0)
    chances.push(chance)
    reached += chance
    zeros = reached > 0.5 && chance < BEYOND * Number.EPSILON ? zeros + 1 : 0
  }
  return fromChances(chances)
}

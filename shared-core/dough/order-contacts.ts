import type { Line } from './order-line.ts'
import { lineBefore, withMixed } from './order-line.ts'
import type { Item, Problem, Residue } from './order-problem.ts'
import { bitsIn, needsWash } from './order-problem.ts'

/** One contact more is worse than any number of washes: both in one number, so that sums and comparisons are one step. */
const CONTACT = 4_096

/** @example inOne({ contacts: 2, washes: 3 }) // 8_195 */
export function inOne({ contacts, washes }: { readonly contacts: number; readonly washes: number }): number {
  return contacts * CONTACT + washes
}

/** The washes of `inOne`. */
export function washesOf(cost: number): number {
  return cost % CONTACT
}

/**
 * The fewest contacts and then washes that the mixes left will still cost, whatever time it takes.
 *
 * Both follow from how many mixes of each class are left (those that are not have brought their allergens into the day)
 * and from what is in the bowl. A class is best mixed in one go: moving its later mixes up to its first gives them no more
 * contacts and the others none, and adds no wash, as what needs no wash after something that needs none after a third needs
 * none after that either. So the search goes over orders of classes, not of mixes, and remembers what it found.
 */
export class ContactsAhead {
  readonly #problem: Problem
  readonly #counts: readonly number[]
  /** What one mix of each class counts in `left`, a number in mixed radix. */
  readonly #radix: readonly number[]
  readonly #known = new Map<number, number>()
  readonly whole: number

  constructor(problem: Problem) {
    const { classes, items } = problem
    this.#problem = problem
    this.#counts = classes.map((_, one) => items.filter((item) => item.class === one).length)
    let next = 1
    this.#radix = this.#counts.map((count) => {
      const radix = next
      next *= count + 1
      return radix
    })
    this.whole = this.#counts.reduce((sum, count, one) => sum + count * (this.#radix[one] ?? 0), 0)
  }

  /** `left` with one mix fewer of the item's class. */
  without(left: number, item: Item): number {
    return left - (this.#radix[item.class] ?? 0)
  }

  /**
   * @param last what was mixed last; null: nothing yet
   * @returns as `inOne`
   */
  least(left: number, last: Item | null): number {
    return this.#least(left, last === null ? -1 : last.class)
  }

  #least(left: number, last: number): number {
    if (left === 0) return 0
    const { classes, bowl, dayMask } = this.#problem
    const key = left * (classes.length + 1) + last + 1
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const from: Residue | null = last === -1 ? bowl : (classes[last] ?? null)
    let mask = dayMask
    for (const [one, residue] of classes.entries()) if (this.#leftOf(left, one) < this.#count(one)) mask |= residue.mask
    let best = Number.POSITIVE_INFINITY
    for (const [one, residue] of classes.entries()) {
      const count = this.#leftOf(left, one)
      if (count === 0) continue
      const own = count * bitsIn(mask & ~residue.mask) * CONTACT + (needsWash(from, residue) ? 1 : 0)
      if (own >= best) continue
      best = Math.min(best, own + this.#least(left - count * (this.#radix[one] ?? 0), one))
    }
    this.#known.set(key, best)
    return best
  }

  #count(one: number): number {
    return this.#counts[one] ?? 0
  }

  #leftOf(left: number, one: number): number {
    return Math.floor(left / (this.#radix[one] ?? 1)) % (this.#count(one) + 1)
  }
}

/** An order that costs no more contacts and washes than it must; where several do, the lower ranks first. */
export function fewestContacts(problem: Problem, ahead: ContactsAhead): Item[] {
  const order: Item[] = []
  let line = lineBefore(problem)
  let left = ahead.whole
  for (const _ of problem.items) {
    let best: { readonly item: Item; readonly cost: number; readonly line: Line } | null = null
    for (const item of problem.items) {
      if (order.includes(item)) continue
      const after = withMixed(problem, line, item)
      const cost = inOne(after) + ahead.least(ahead.without(left, item), item)
      if (best === null || cost < best.cost) best = { item, cost, line: after }
    }
    if (best === null) break
    order.push(best.item)
    line = best.line
    left = ahead.without(left, best.item)
  }
  return order
}

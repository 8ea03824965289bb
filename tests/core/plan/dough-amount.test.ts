import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Pieces } from '../../../shared-core/demand/pieces.ts'
import { negativeBinomial, quantile } from '../../../shared-core/demand/pieces.ts'
import type { DoughAsked } from '../../../shared-core/plan/dough-amount.ts'
import { howMuchDough, inTrays } from '../../../shared-core/plan/dough-amount.ts'
import { howMany } from '../../../shared-core/plan/how-many.ts'
import type { Worth } from '../../../shared-core/plan/worth.ts'
import { chancesOf, summed } from './brute.ts'

const WORTH: Worth = { uses: [{ part: 1, worthCents: 200 }], costCents: 50, dayOldCents: 0, isAssumed: false }

function asked(parts: Partial<DoughAsked> = {}): DoughAsked {
  return { demand: negativeBinomial(120, 12), worth: WORTH, next: negativeBinomial(120, 12), ...parts }
}

/** Money of so much dough by going through both days: what is left over saves the next day's, less a tenth for carrying. */
function earns({ demand, worth, next }: DoughAsked, pieces: number): number {
  const later = next === null ? [1] : chancesOf(next, 500)
  const price = worth.uses[0]?.worthCents ?? 0
  return chancesOf(demand, 500).reduce((sum, chance, d) => {
    const left = Math.max(0, pieces - d)
    const saved = next === null ? 0 : later.reduce((all, too, e) => all + too * Math.min(left, e), 0) - 0.1 * left
    return sum + chance * (Math.min(d, pieces) * price - pieces * worth.costCents + saved * worth.costCents)
  }, 0)
}

describe('how much dough', () => {
  it.each([
    ['carried over', asked()],
    ['carried to a slow day', asked({ next: negativeBinomial(12, 4) })],
    ['lost after the day', asked({ next: null })],
  ])('[Q48] given dough that is %s, when tried one by one, then no number earns more', (_, one) => {
    const { pieces } = howMuchDough(one)
    const own = earns(one, pieces)
    for (const other of [pieces - 20, pieces - 1, pieces + 1, pieces + 20])
      expect(own).toBeGreaterThanOrEqual(earns(one, other) - 1e-6)
  })

  it('[Q48] given dough that can be carried over, when it is decided, then more of it than where it is lost', () => {
    const [carried, slow, lost] = [asked(), asked({ next: negativeBinomial(12, 4) }), asked({ next: null })].map(
      (one) => howMuchDough(one).pieces,
    )
    expect(carried).toBeGreaterThan(slow ?? 0)
    expect(slow).toBeGreaterThan(lost ?? 0)
    expect(lost).toBe(quantile(negativeBinomial(120, 12), 0.75))
  })

  it('[Q47] given trays of 15, when rounded, then what is made is whole trays, and orders are always made', () => {
    const one = asked()
    const amount = howMuchDough(one)
    for (const there of [0, 40, 300, -31]) {
      const counter = inTrays(one, amount, there, 15)
      const made = Math.max(0, counter - there)
      expect(made % 15).toBe(0)
      if (there < amount.pieces) expect(Math.abs(counter - amount.pieces)).toBeLessThan(15)
      else expect(counter).toBe(amount.pieces)
    }
    // Nothing for the counter is worth it, yet four are ordered: one tray.
    const none = asked({ demand: negativeBinomial(0, 1) })
    expect(inTrays(none, howMuchDough(none), -4, 15)).toBe(11)
  })

  it('[Q49] given equal prices and costs, when varieties are pooled, then the expected cost is never higher', () => {
    const kinds = fc.array(
      fc.record({
        mean: fc.double({ min: 0.5, max: 40, noNaN: true }),
        k: fc.double({ min: 0.5, max: 50, noNaN: true }),
      }),
      { minLength: 2, maxLength: 6 },
    )
    fc.assert(
      fc.property(kinds, fc.integer({ min: 60, max: 400 }), (some, price) => {
        const demands = some.map(({ mean, k }) => negativeBinomial(mean, k))
        const worth: Worth = { ...WORTH, uses: [{ part: 1, worthCents: price }] }
        const costOf = (demand: Pieces) => {
          const one = { demand, stock: [{ pieces: 0, chance: 1 }], later: null, worth, unit: 1, besides: 0 }
          const pieces = howMany(new Map([[0, one]]), 0).get(0)?.pieces ?? 0
          const over = chancesOf(demand, 900).reduce((sum, chance, d) => sum + chance * Math.max(0, pieces - d), 0)
          return 50 * over + (price - 50) * (demand.mean - pieces + over)
        }
        const separate = demands.reduce((sum, demand) => sum + costOf(demand), 0)
        expect(costOf(summed(demands))).toBeLessThanOrEqual(separate + 1e-6)
      }),
      { numRuns: 30 },
    )
  })
})

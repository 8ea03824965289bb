import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Hand } from '../../client/counter/hand.ts'
import { linesOf, piecesInHand, spreadTo, touched } from '../../client/counter/hand.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'

describe('what is in hand', () => {
  it('given rods touched in turn, then each touch is one piece, in the order of the touches', () => {
    const names = ['sesame', 'poppy', 'sesame']
    const hand = names.reduce<Hand>((so, name) => touched(so, varietyId(name)), [])
    expect(hand).toEqual(lines('sesame', 2, 'poppy', 1))
    expect(piecesInHand(hand)).toBe(3)
  })

  it('given a line put to nothing, then an act does not name it', () => {
    expect(linesOf(lines('sesame', 2, 'poppy', 0))).toEqual(lines('sesame', 2))
  })
})

describe('a number for what is in hand', () => {
  it.each([
    ['one rod', lines('sesame', 1), 13, lines('sesame', 13)],
    ['two rods', lines('sesame', 1, 'poppy', 1), 13, lines('sesame', 7, 'poppy', 6)],
    ['more of one', lines('sesame', 8, 'poppy', 1), 12, lines('sesame', 8, 'poppy', 4)],
    ['just so many', lines('sesame', 2, 'poppy', 4), 6, lines('sesame', 2, 'poppy', 4)],
    ['more in hand than that', lines('sesame', 7), 6, null],
    ['nothing in hand', [], 6, null],
  ])('given %s, then the rest is spread evenly over what was touched', (_what, hand, pieces, expected) => {
    expect(spreadTo(hand, pieces)).toEqual(expected)
  })

  it('given any hand, then the sum is the number and nothing that was touched is lost', () => {
    const anyHand = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(anyHand, fc.integer({ min: 0, max: 40 }), (counts, more) => {
        const hand = counts.map((pieces, n) => ({ varietyId: varietyId(`v${n}`), pieces }))
        const spread = spreadTo(hand, piecesInHand(hand) + more) ?? []
        expect(piecesInHand(spread)).toBe(piecesInHand(hand) + more)
        expect(spread.every((line, n) => line.pieces >= (counts[n] ?? 0))).toBe(true)
      }),
    )
  })
})

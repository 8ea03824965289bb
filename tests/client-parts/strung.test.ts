import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { middleOf, strung } from '../../client/parts/strung.ts'
import '../fixed-seed.ts'

const SPAN = { fromMs: 0, toMs: 1_000, widthPx: 500, gapPx: 10, morePx: 40 }
const rings = (...dueAtMs: readonly number[]) =>
  dueAtMs.map((atMs, index) => ({ key: `r${index}`, atMs, widthPx: 100 }))

describe('rings strung on a lying rod', () => {
  it.each([
    ['one, by its due time', [500], [200]],
    ['at the left end', [0], [0]],
    ['at the right end', [1_000], [400]],
    ['one that was due before the span, at its left end', [-900], [0]],
    ['two at the same time, the second pushed aside', [500, 500], [200, 310]],
    ['two at the right end, the first makes room', [1_000, 1_000], [290, 400]],
    ['four that fill the rod', [990, 991, 992, 993], [70, 180, 290, 400]],
  ])('%s', (_what, due, leftPx) => {
    const { placed, hidden } = strung(rings(...due), SPAN)
    expect(placed.map((place) => place.leftPx)).toEqual(leftPx)
    expect(hidden).toBe(0)
  })

  it('given more than fit, then the soonest stand and the others are counted, with room for their count', () => {
    const { placed, hidden } = strung(rings(0, 1, 2, 3, 4, 5), SPAN)
    expect(placed.map((place) => place.leftPx)).toEqual([0, 110, 220, 330])
    expect(hidden).toBe(2)
  })

  it('whatever is due when, then no two touch, all lie on the rod, in the order of time', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ atMs: fc.integer({ min: -500, max: 1_500 }), widthPx: fc.integer({ min: 20, max: 160 }) }),
        ),
        (all) => {
          const sorted = all
            .map((one, index) => ({ ...one, key: String(index) }))
            .sort((one, other) => one.atMs - other.atMs)
          const { placed, hidden } = strung(sorted, SPAN)
          const endPx = hidden === 0 ? SPAN.widthPx : SPAN.widthPx - SPAN.morePx - SPAN.gapPx
          let fromPx = 0
          for (const [index, { key, leftPx }] of placed.entries()) {
            const ring = sorted[index]
            expect(key).toBe(ring?.key)
            expect(leftPx).toBeGreaterThanOrEqual(fromPx)
            fromPx = leftPx + (ring?.widthPx ?? 0) + SPAN.gapPx
            expect(fromPx - SPAN.gapPx).toBeLessThanOrEqual(endPx)
          }
          expect(placed.length + hidden).toBe(sorted.length)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('given an instant, then its place is its part of the span, held within it', () => {
    expect([-1, 0, 250, 1_000, 2_000].map((ms) => middleOf(ms, SPAN))).toEqual([0, 0, 125, 500, 500])
  })
})

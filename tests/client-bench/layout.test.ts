import { describe, expect, it } from 'vitest'
import type { BenchGlass } from '../../client/bench/layout.ts'
import { benchLayout } from '../../client/bench/layout.ts'
import { KEY_GAP_MM_MIN, KEY_MM_MIN, mmPerCssPx } from '../../client/parts/legibility.ts'

/** A tablet held across, with its panel given by the diagonal. */
function glass(shelves: number, parts: Partial<BenchGlass> & { inches?: number } = {}): BenchGlass {
  const { inches = 10.1, widthPx = 1280, heightPx = 800, ...rest } = parts
  const mmPx = 1 / mmPerCssPx({ diagonalInch: inches, widthPx, heightPx })
  return { widthPx, heightPx, mmPx, shelves, topHeightPx: 90, headingPx: 34, actWidthPx: 125, ...rest }
}

const EVERY_OVEN = Array.from({ length: 12 }, (_, n) => n + 1)
const TABLETS = [8, 10.1, 11, 13.3, 15.6]

describe.each(TABLETS)('on %s inches', (inches) => {
  it.each(EVERY_OVEN)('[B2] given %s shelves, when laid out, then keys are 20 mm and all of them fit', (shelves) => {
    const size = glass(shelves, { inches })
    const layout = benchLayout(size)
    const leastPx = KEY_MM_MIN * size.mmPx
    expect(layout.keyPx).toBeGreaterThanOrEqual(leastPx)
    expect(layout.gapPx).toBeGreaterThanOrEqual(KEY_GAP_MM_MIN * size.mmPx)
    expect(layout.shelfHeightPx).toBeGreaterThanOrEqual(leastPx)
    expect(layout.shelfWidthPx).toBeGreaterThanOrEqual(leastPx)
    expect(layout.rows * layout.columns).toBeGreaterThanOrEqual(shelves)
    expect(layout.form === 'stacked').toBe(inches === 8 && shelves > 10)

    // A page that scrolls has no height to keep.
    if (layout.form === 'stacked') return
    const column = layout.shelfWidthPx + (layout.differsBeside ? layout.gapPx + layout.keyPx : 0)
    const ovenPx = layout.columns * (column + layout.gapPx) - layout.gapPx
    const acrossPx = 2 * layout.marginPx + layout.lineWidthPx + layout.jointWidthPx + ovenPx
    expect(acrossPx).toBeLessThanOrEqual(size.widthPx)
    const headingPx = layout.hasOvenHeading ? size.headingPx : 0
    const ovenHighPx = layout.rows * (layout.shelfHeightPx + layout.gapPx) - layout.gapPx + headingPx
    expect(ovenHighPx).toBeLessThanOrEqual(layout.lineHeightPx)
    const highPx = size.topHeightPx + layout.lineHeightPx + layout.keyPx + layout.gapPx + 2 * layout.marginPx
    expect(highPx).toBeLessThanOrEqual(size.heightPx)
  })
})

it.each([
  // shelves, columns, "differs" beside each
  [1, 1, true],
  [3, 1, true],
  [4, 1, true],
  [5, 2, true],
  [8, 2, true],
  [9, 3, false],
  [12, 3, false],
] as const)('given a ten-inch tablet and %s shelves, when laid out, then %s columns', (shelves, columns, beside) => {
  const layout = benchLayout(glass(shelves))
  expect([layout.columns, layout.differsBeside]).toEqual([columns, beside])
})

it('[B3] given a long act on a shelf’s key, when "differs" would leave no room for it, then it moves away', () => {
  expect(benchLayout(glass(8, { actWidthPx: 240 })).differsBeside).toBe(false)
  expect(benchLayout(glass(3, { actWidthPx: 240 })).differsBeside).toBe(true)
})

it.each([
  ['a phone held upright', { widthPx: 390, heightPx: 844, inches: 6.1 }],
  ['a phone held across', { widthPx: 844, heightPx: 390, inches: 6.1 }],
])('given %s, when laid out, then all stands below each other in keys of 20 mm', (_name, size) => {
  const layout = benchLayout(glass(4, size))
  expect(layout.form).toBe('stacked')
  expect(layout.shelfWidthPx).toBeGreaterThanOrEqual(layout.keyPx)
  expect(layout.shelfWidthPx + layout.gapPx + layout.keyPx + 2 * layout.marginPx).toBeLessThanOrEqual(size.widthPx)
})

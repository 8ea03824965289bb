import { describe, expect, it } from 'vitest'
import { fitList, fitRack, howManyFit } from '../../client/parts/fit.ts'
import { textWidthPx } from '../../client/parts/text-width.ts'

describe('how many fit', () => {
  const row = { eachPx: 150, gapPx: 10, morePx: 150 }
  it.each([
    // count room  shown
    [6, 950, 6], // six of 150 and five gaps of 10: just so
    [6, 949, 4], // no longer six; 160 go to "2 others"
    [12, 1000, 5],
    [3, 100, 0],
    [0, 1000, 0],
    [5, 0, 0],
  ])('of %i in %i px: %i', (count, roomPx, shown) => {
    expect(howManyFit({ count, roomPx, ...row })).toBe(shown)
  })

  it('given room for the others’ word, never shows so many that the word does not fit', () => {
    for (let roomPx = 0; roomPx < 2_000; roomPx += 7) {
      const shown = howManyFit({ count: 12, roomPx, ...row })
      const usedPx = shown * 150 + Math.max(0, shown - 1) * 10
      expect(shown === 0 || shown === 12 || usedPx + 160 <= roomPx).toBe(true)
    }
  })
})

describe('a rack', () => {
  const counter = { widthPx: 1240, heightPx: 560, cellWidthPx: 200, cellHeightPx: 270, gapPx: 6 }
  it.each([
    [0, { columns: 1, rows: 1, shown: 0 }],
    [1, { columns: 1, rows: 1, shown: 1 }],
    [6, { columns: 6, rows: 1, shown: 6 }],
    [8, { columns: 4, rows: 2, shown: 8 }],
    [12, { columns: 6, rows: 2, shown: 12 }],
    [28, { columns: 6, rows: 2, shown: 11 }],
  ])('of %i varieties on the counter', (count, fit) => {
    expect(fitRack({ count, ...counter })).toEqual(fit)
  })

  it('has at least one place, however small the screen', () => {
    expect(fitRack({ ...counter, count: 5, widthPx: 50, heightPx: 50 })).toEqual({ columns: 1, rows: 1, shown: 0 })
  })
})

describe('a list in one line', () => {
  const texts = ['Everything 36', 'Salt 12', 'Onion 12']
  const more = (count: number) => `${count} more`
  const roomFor = (text: string) => ({ roomPx: textWidthPx(text, 20), fontPx: 20 })

  it.each(['Everything 36, Salt 12, Onion 12', 'Everything 36, Salt 12, 1 more', 'Everything 36, 2 more', '3 more'])(
    'in the room of %j is that',
    (text) => {
      expect(fitList(texts, roomFor(text), more)).toBe(text)
      expect(
        textWidthPx(fitList(texts, { roomPx: textWidthPx(text, 20) - 0.01, fontPx: 20 }, more), 20),
      ).toBeLessThanOrEqual(textWidthPx(text, 20))
    },
  )

  it('of nothing is nothing', () => {
    expect(fitList([], { roomPx: 100, fontPx: 20 }, more)).toBe('')
  })
})

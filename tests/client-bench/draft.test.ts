import { expect, it } from 'vitest'
import type { Draft } from '../../client/bench/draft.ts'
import { addBoard, chooseLine, draftOf, sameLines, takeBoard, touchVariety } from '../../client/bench/draft.ts'
import { pageOf } from '../../client/bench/pages.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

const SHELF = { shop: shopWith(), mostPieces: 48 }
const FLOOR = { shop: shopWith(), mostPieces: null }
const [SESAME, POPPY, PLAIN] = [varietyId('sesame'), varietyId('poppy'), varietyId('plain')]
const full = draftOf(lines('sesame', 36, 'poppy', 12))

it.each([
  // a board is six pieces
  [
    'a variety is touched on a full shelf',
    touchVariety(full, PLAIN, SHELF),
    lines('sesame', 30, 'poppy', 12, 'plain', 6),
  ],
  [
    'a variety is touched where nothing limits',
    touchVariety(full, PLAIN, FLOOR),
    lines('sesame', 36, 'poppy', 12, 'plain', 6),
  ],
  ['a board more of a line is taken', addBoard(full, POPPY, SHELF), lines('sesame', 30, 'poppy', 18)],
  ['a board less of a line is taken', takeBoard(full, SESAME, SHELF), lines('sesame', 30, 'poppy', 12)],
  [
    'a line’s last board is taken',
    takeBoard(draftOf(lines('sesame', 36, 'poppy', 6)), POPPY, SHELF),
    lines('sesame', 36),
  ],
  [
    'a line is touched, then a variety',
    touchVariety(chooseLine(full, SESAME), PLAIN, SHELF),
    lines('plain', 36, 'poppy', 12),
  ],
  [
    'a line is touched, then another that is there',
    touchVariety(chooseLine(full, SESAME), POPPY, SHELF),
    lines('poppy', 48),
  ],
])('[B5] given a load, when %s, then it holds that', (_name, draft: Draft, held) => {
  expect(draft.lines).toEqual(held)
  expect(draft.chosen).toBeNull()
})

it('given a chosen line, when it is touched again or is gone, then nothing is chosen', () => {
  const chosen = chooseLine(full, POPPY)
  expect(chosen.chosen).toBe(POPPY)
  expect(chooseLine(chosen, POPPY).chosen).toBeNull()
  expect(takeBoard(takeBoard(chosen, POPPY, SHELF), POPPY, SHELF).chosen).toBeNull()
  expect(takeBoard(chosen, SESAME, SHELF).chosen).toBe(POPPY)
})

it('given two loads, when compared, then their order does not matter and their pieces do', () => {
  expect(sameLines(lines('sesame', 36, 'poppy', 12), lines('poppy', 12, 'sesame', 36))).toBe(true)
  expect(sameLines(lines('sesame', 36), lines('sesame', 30))).toBe(false)
  expect(sameLines(lines('sesame', 36), lines('sesame', 36, 'poppy', 12))).toBe(false)
})

it.each([
  // items, places, arrows, wanted → shown, page, pages
  [5, 5, 2, 0, [0, 1, 2, 3, 4], 0, 1],
  [6, 5, 2, 0, [0, 1, 2], 0, 2],
  [6, 5, 2, 1, [3, 4, 5], 1, 2],
  [6, 5, 2, 9, [3, 4, 5], 1, 2],
  [6, 5, 2, -1, [0, 1, 2], 0, 2],
  [0, 5, 2, 3, [], 0, 1],
  [4, 3, 1, 1, [2, 3], 1, 2],
])(
  'given %s items in %s places, %s of them for arrows, when page %s is wanted, then these',
  (count, places, arrows, wanted, items, page, pages) => {
    const all = Array.from({ length: count }, (_, n) => n)
    expect(pageOf(all, { places, arrows }, wanted)).toEqual({ items, page, pages })
  },
)

it('given no place beside the arrows, when a page is asked for, then it is refused', () => {
  expect(() => pageOf([1, 2, 3], { places: 2, arrows: 2 }, 0)).toThrow(RangeError)
})

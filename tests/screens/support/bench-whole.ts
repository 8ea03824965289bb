import { KEY_GAP_MM_MIN, KEY_MM_MIN, mmPerCssPx } from '../../../client/parts/legibility.ts'
import { contrastRatio } from '../../../client/theme/contrast.ts'
import type { BenchTablet } from './bench-touch.ts'
import { TABLET } from './bench-touch.ts'
import { keysOn, offPage, tooClose, tooSmall } from './keys-on-page.ts'
import { expect } from './shop-server.ts'
import { cutOff, overlaps, textsOn } from './texts-on-page.ts'

/** WCAG 2.2, 1.4.3: text of this size would need 3; small text on keys gets the higher. */
const CONTRAST_MIN = 4.5

/** Every key can be hit with a knuckle, every text read, nothing is cut off or reached by dragging. */
export async function expectWhole(bench: BenchTablet, inches: number, state: string): Promise<void> {
  const { page } = bench
  const pxPerMm = 1 / mmPerCssPx({ diagonalInch: inches, widthPx: TABLET.width, heightPx: TABLET.height })
  const keys = await keysOn(page)
  expect(keys.length, state).toBeGreaterThan(2)
  expect(tooSmall(keys, KEY_MM_MIN * pxPerMm), state).toEqual([])
  expect(tooClose(keys, KEY_GAP_MM_MIN * pxPerMm), state).toEqual([])
  expect(offPage(keys, TABLET), state).toEqual([])
  const texts = await textsOn(page)
  expect(texts.length, state).toBeGreaterThan(5)
  expect(overlaps(texts), state).toEqual([])
  expect(cutOff(texts), state).toEqual([])
  const faint = texts.filter(({ ink, ground }) => contrastRatio(ink, ground) < CONTRAST_MIN)
  expect(
    faint.map(({ text, ink, ground }) => `"${text}" ${ink} on ${ground}`),
    state,
  ).toEqual([])
  // Nothing on a tablet at the line is reached by dragging.
  const scrolls = await page.evaluate(() => document.documentElement.scrollHeight > window.innerHeight + 1)
  expect(scrolls, `${state} scrolls`).toBe(false)
}

import AxeBuilder from '@axe-core/playwright'
import type { Browser, Page } from '@playwright/test'
import { expect } from '@playwright/test'
import { arcMinutesOf } from '../../../client/parts/legibility.ts'
import { contrastRatio } from '../../../client/theme/contrast.ts'
import type { ShopServer } from './shop-server.ts'
import { cutOff, overlaps, textsOn } from './texts-on-page.ts'

export const WALL = { width: 1920, height: 1080 } as const
const PANEL = { diagonalInch: 43, widthPx: WALL.width, heightPx: WALL.height }
const DISTANCE_M = 3
/** The browser rounds font sizes to a 64th of a pixel. */
const ARC_SLACK = 0.05
/** Names and times of steps, what is left, headlines. */
const LARGE = ['wall-step-when', 'wall-title', 'wall-bar-next', 'ring-label']

export async function openWall(browser: Browser, server: ShopServer, settings: object = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: WALL, hasTouch: true })
  await context.addInitScript((text) => localStorage.setItem('boilboard.wall.settings', text), JSON.stringify(settings))
  const page = await context.newPage()
  await page.goto(`${server.address}/wall`)
  await page.locator('.wall').waitFor()
  await page.evaluate(() => document.fonts.ready)
  return page
}

/** All that is on the wall can be read from 3 m, nothing overlaps or is cut off, and contrast holds. */
export async function expectLegible(page: Page, state: string, contrastMin = 7): Promise<void> {
  const texts = await textsOn(page)
  expect(texts.length, state).toBeGreaterThan(5)
  const arc = (fontPx: number) => arcMinutesOf({ ...PANEL, distanceM: DISTANCE_M, fontPx })
  const small = texts.filter(
    ({ fontPx, within }) => arc(fontPx) < (within.some((name) => LARGE.includes(name)) ? 22 : 16) - ARC_SLACK,
  )
  expect(
    small.map(({ text, fontPx }) => `"${text}" ${arc(fontPx).toFixed(1)}′`),
    state,
  ).toEqual([])
  expect(overlaps(texts), state).toEqual([])
  expect(cutOff(texts), state).toEqual([])
  const faint = texts.filter(({ ink, ground }) => contrastRatio(ink, ground) < contrastMin)
  expect(
    faint.map(({ text }) => text),
    state,
  ).toEqual([])
}

/** No violation of WCAG 2.2 A and AA that axe can find. */
export async function expectNoViolations(page: Page, state: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
    state,
  ).toEqual([])
}

import type { Page } from '@playwright/test'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { ago, openDeskByTouch } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

const PLACES = [
  'today',
  'loads',
  'close',
  'past',
  'past/today',
  'sales-in',
  'sales-in/names',
  'screens',
  'screens/kiosk',
  'screens/pedals',
]
const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]
const LOOKS = [
  { language: 'en', varieties: 12, settings: {} },
  { language: 'es', varieties: 28, settings: { theme: 'dark', textPercent: 125 } },
] as const

for (const [n, { language, varieties, settings }] of LOOKS.entries()) {
  for (const [m, size] of SIZES.entries()) {
    test(`given ${varieties} varieties in ${language}, when every place is shown at ${size.width} px, then nothing overlaps, is cut off or sticks out, and axe finds nothing${lookMark(n + m)}`, async ({
      browser,
      server,
    }) => {
      test.setTimeout(240_000)
      await start(server, varieties, language)
      const page = await openDeskByTouch(browser, server, { language, size, settings })
      for (const place of PLACES) {
        await page.goto(`${server.address}/desk#${place}`)
        await page.waitForLoadState('networkidle')
        await expect(page.locator('.desk-panel').first()).toBeVisible()
        await look(page, place)
      }
    })
  }
}

/** Names as long as a set-up may have them; dough, loads and stock everywhere; lists with people; a day to look at. */
async function start(server: ShopServer, varieties: number, language: 'en' | 'es'): Promise<void> {
  const big = bigSetUp(varieties)
  const { profile, hours, people, steps } = shiftShop({ language, changeoverIn: 60, isLong: true })
  await server.start({ ...big, profile: { ...big.profile, zone: profile.zone, language }, hours, people, steps })
  await ago(server, 150, { type: 'openDay' })
  const ids = [...big.varieties.keys()]
  for (const [index, varietyId] of ids.entries()) await ago(server, 60, { type: 'count', varietyId, pieces: 6 + index })
  await server.act({ type: 'sell', lines: ids.slice(0, 4).map((varietyId) => ({ varietyId, pieces: 3 })) }, 'counter')
  await server.act({ type: 'keep', lines: [{ varietyId: ids[0] ?? must(), pieces: 2 }] }, 'counter')
  await server.act({ type: 'care', care: 'topUp' })
  await server.act({
    type: 'writeNote',
    text: `${'W'.repeat(40)} the oven door sticks, lift it a little when you close it`,
  })
}

function must(): never {
  throw new Error('the shop has no variety')
}

async function look(page: Page, place: string): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${place} sticks out sideways`).toBeLessThanOrEqual(0)
  const all = await textsOn(page)
  // What lies over the page, or is moved sideways or up and down by itself, is looked at by itself.
  const texts = all.filter(({ within }) => !APART.some((one) => within.includes(one)))
  expect(overlaps(texts), place).toEqual([])
  const shown = texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } }))
  expect(cutOff(shown), place).toEqual([])
  await expectNoViolations(page, place)
}

const APART = ['desk-head', 'desk-sideways', 'desk-scroll', 'desk-lanes', 'ruler', 'desk-sheet']

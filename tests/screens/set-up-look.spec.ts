import AxeBuilder from '@axe-core/playwright'
import { bigDoughRoom } from '../core/shop/big-dough-room.ts'
import { withBigKitchen } from '../core/shop/big-kitchen.ts'
import { lookMark } from './support/looks.ts'
import { DeskTouch } from './support/set-up-touch.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'

/** Those with the most and the longest fields. */
const FULLEST = [
  'set-up',
  ...['guide/oven', 'hours', 'varieties', 'steps', 'formulas', 'save'].map((page) => `set-up/${page}`),
]
const ALL = [
  'set-up',
  ...['shop', 'oven', 'kettle', 'hours', 'doughs', 'stations', 'open'].map((step) => `set-up/guide/${step}`),
  ...['shop', 'hours', 'people', 'counter', 'oven', 'kettle', 'boards', 'room', 'varieties', 'doughs', 'toppings'],
  ...[
    'formulas',
    'card/plain',
    'preparations',
    'ingredients',
    'doughRoom',
    'worth',
    'usual',
    'baking',
    'orders',
    'runs',
    'kitchen',
    'menu',
    'specialDays',
    'windows',
    'stations',
    'steps',
    'screens',
    'versions',
    'file',
    'save',
  ],
].map((page) => (page.startsWith('set-up') ? page : `set-up/${page}`))
const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]

const LOOKS = [
  { which: 'the fullest pages are', pages: FULLEST, languages: ['en'], sizes: SIZES.slice(0, 1), mark: lookMark(0) },
  { which: 'every page is', pages: ALL, languages: ['en', 'es'], sizes: SIZES, mark: lookMark(1) },
] as const

for (const { which, pages, languages, sizes, mark } of LOOKS) {
  for (const [language, size] of languages.flatMap((one) => sizes.map((size) => [one, size] as const))) {
    test(`given 28 varieties with the longest names in ${language}, when ${which} shown at ${size.width} px, then nothing overlaps or is cut off and axe finds nothing${mark}`, async ({
      browser,
      server,
    }) => {
      test.setTimeout(240_000)
      const shop = withBigKitchen(bigDoughRoom(28))
      await server.start({ ...shop, profile: { ...shop.profile, language } })
      const desk = await DeskTouch.open(browser, server, { size, hash: '#set-up/varieties' })
      // Something to save, and a row that is open: the bar at the foot and the fields are looked at too.
      await desk.page.locator('.setup-row-head').first().tap()
      await desk.page.locator('.setup-row-body input[type=text]').first().fill('Short')
      await desk.page.locator('.setup-row-body .setup-fold summary').tap()
      await look(desk, 'an open variety')
      await desk.go('set-up/formulas')
      await desk.page.locator('.setup-row-head').first().tap()
      await look(desk, 'an open formula')
      await desk.go('set-up/menu')
      await desk.page.locator('.setup-row-head').nth(1).tap()
      await look(desk, 'an open item')
      for (const place of pages) {
        await desk.go(place)
        await look(desk, place)
      }
    })
  }
}

async function look({ page }: DeskTouch, place: string): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${place} sticks out sideways`).toBeLessThanOrEqual(0)
  // All of the page at once: what is fixed to its foot is looked at where it lies.
  const texts = (await textsOn(page)).filter(({ within }) => !FIXED.some((one) => within.includes(one)))
  expect(overlaps(texts), place).toEqual([])
  const shown = texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } }))
  expect(cutOff(shown), place).toEqual([])
  const { violations } = await new AxeBuilder({ page }).include('.setup').analyze()
  const told = violations.map(
    ({ id, nodes }) => `${place} ${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
  )
  expect(told).toEqual([])
}

/** They lie over what scrolls under them. */
const FIXED = ['setup-bar', 'setup-foot', 'desk-head']

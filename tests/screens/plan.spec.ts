import { doughId } from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { hours, shopWith, table, variety } from '../core/support/shop.ts'
import { zoneAtHour } from '../core/support/zone-at-hour.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

/** It is evening in it: tomorrow is planned. Nothing is sold yet; how much goes on a usual day was typed. */
function eveningShop(): Shop {
  const { profile, ...base } = shopWith()
  const varieties = table([
    variety({ id: 'sesame', order: 1, usual: 120 }),
    variety({ id: 'poppy', order: 2, usual: 80 }),
    variety({ id: 'rye', order: 3, doughId: doughId('rye'), decidedAt: 'mixer', usual: 36 }),
  ])
  return shopWith({ ...base, profile: { ...profile, zone: zoneAtHour(20) }, hours: hours(), varieties })
}

test('[I61, I62, I68, I69] given the evening before, when a load is moved with the arrow keys, then its cost is said, it is kept for all screens, and let go again; and one more shelf is reckoned', async ({
  browser,
  server,
}) => {
  await server.start(eveningShop())
  const page = await openDeskByTouch(browser, server, { place: 'plan' })
  const loads = page.locator('.plan-load')
  await expect(loads.first()).toBeVisible()
  const before = await loads.first().getAttribute('aria-label')
  await loads.first().focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  const tried = part(page, 'plan-tried')
  await expect(tried.getByRole('status')).toHaveText(/Costs|Gains|No money/)
  // The same load has the keyboard, where it was moved to.
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))
  await expect.poll(focused).toMatch(/set by people$/)
  expect(await focused()).not.toBe(before)
  expect((await server.state()).planned.size).toBe(0)
  await tried.getByRole('button', { name: 'Keep' }).tap()
  await expect.poll(async () => (await server.state()).planned.size).toBe(1)
  await expect(tried).toHaveCount(0)
  const wishes = part(page, 'plan-wishes')
  await wishes.getByRole('button', { name: 'Let it move' }).tap()
  await tried.getByRole('button', { name: 'Keep' }).tap()
  await expect.poll(async () => (await server.state()).planned.size).toBe(0)
  await expect(wishes.getByText('Nothing is set', { exact: false })).toBeVisible()
  await page.getByRole('link', { name: 'What if' }).tap()
  const whatIf = part(page, 'plan-what-if')
  await whatIf.getByRole('button', { name: 'Reckon' }).tap()
  await expect(whatIf.getByRole('row', { name: /expected money/ })).toBeVisible()
  await expect(whatIf.getByText('Tightest', { exact: false })).toBeVisible()
})

for (const [index, [language, size]] of (
  [
    ['es', { width: 390, height: 844 }],
    ['en', { width: 1440, height: 900 }],
  ] as const
).entries()) {
  test(`[I64, I67] given a plan in ${language} at ${size.width}, then no text is cut off or covered, and axe finds nothing${lookMark(index)}`, async ({
    browser,
    server,
  }) => {
    await server.start(eveningShop())
    const page = await openDeskByTouch(browser, server, { place: 'plan', language, size })
    await page.locator('.plan-load').first().tap()
    await expect(part(page, 'plan-chosen')).toBeVisible()
    await page.locator('summary').tap()
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(sideways, 'sticks out sideways').toBeLessThanOrEqual(0)
    // What is in the picture is moved sideways in it, and says more where it is chosen.
    const texts = (await textsOn(page)).filter(
      ({ within }) => !within.some((name) => ['desk-head', 'plan-scroll'].includes(name)),
    )
    expect(texts.length).toBeGreaterThan(40)
    expect(overlaps(texts)).toEqual([])
    expect(cutOff(texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } })))).toEqual([])
    await expectNoViolations(page, 'plan')
  })
}

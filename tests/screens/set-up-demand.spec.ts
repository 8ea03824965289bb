import { inUse } from '../../shared-core/shop/in-order.ts'
import { shopWith } from '../core/support/shop.ts'
import { DeskTouch } from './support/set-up-touch.ts'
import { expect, test } from './support/shop-server.ts'

test('[Q92] given guesses typed down a column, a kitchen value, a region and its holidays in one touch, when saved, then the shop has them', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/usual' })
  const { page } = desk
  await page.getByLabel('Sesame: Pieces on a usual day').fill('216')
  await page.keyboard.press('Enter')
  await page.keyboard.type('96')
  await page.keyboard.press('Enter')
  await page.keyboard.type('x')
  await expect(page.getByText('From 0 to 20000.')).toBeVisible()

  await desk.go('set-up/worth')
  await page.getByLabel('Plain: What a piece brings in the kitchen').fill('2.60')
  await desk.tap(desk.button('Sending somebody away costs: more'))

  await desk.go('set-up/specialDays')
  await expect(page.getByText(/^Choose where the shop is/)).toBeVisible()
  await page.getByLabel('Country').selectOption('US')
  await page.getByLabel('State or region').selectOption('US-IL')
  const all = page.getByRole('button', { name: /^Add all \d+$/ })
  const offered = Number(/\d+/.exec((await all.textContent()) ?? '')?.[0])
  await desk.tap(all)
  await expect(page.locator('.setup-row')).toHaveCount(offered)
  await page.locator('.setup-row-head', { hasText: 'Thanksgiving Day' }).tap()
  const again = page.getByRole('button', { name: /^Again next year: Thu, Nov \d+, \d+$/ })
  await desk.tap(again)

  await desk.go('set-up/save')
  await desk.tap(desk.button('Save'))
  await expect.poll(async () => (await server.state()).shop?.demand.region).toBe('US-IL')
  const { shop } = await server.state()
  if (shop === null) throw new Error('no shop')
  expect(inUse(shop.varieties).map(({ id, usual, kitchenCents }) => [id, usual, kitchenCents])).toEqual([
    ['sesame', 216, null],
    ['poppy', 96, null],
    ['plain', null, 260],
    ['focaccia', null, null],
    ['cheddar', null, null],
    ['rye', null, null],
  ])
  expect(shop.demand.disappointCents).toBe(75)
  const days = inUse(shop.specialDays)
  expect(days).toHaveLength(offered)
  // A holiday that moves comes again by the calendar: the fourth Thursday of November (5 U.S.C. 6103).
  const spans = days.find(({ id }) => id === 'thanksgiving-day')?.spans ?? []
  expect(spans.length).toBeGreaterThan(4)
  for (const { from, to } of spans) {
    expect([to, from.slice(5, 8), from >= `${from.slice(0, 4)}-11-22`, from <= `${from.slice(0, 4)}-11-28`]).toEqual([
      from,
      '11-',
      true,
      true,
    ])
    expect(new Date(`${from}T00:00:00Z`).getUTCDay()).toBe(4)
  }
})

import { inUse } from '../../shared-core/shop/in-order.ts'
import { shopWith } from '../core/support/shop.ts'
import { DeskTouch } from './support/set-up-touch.ts'
import { expect, test } from './support/shop-server.ts'

test('[I9] given people by hour, hands, the least on show, an allergen to avoid, a shelf emptied apart, and then something to bake to order, when saved, then the shop has them', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/baking' })
  const { page } = desk
  await expect(page.getByText('Nobody has said: people are no limit to the plan.')).toBeVisible()
  await desk.tap(page.getByRole('button', { name: 'Add a time' }))
  await desk.tap(page.getByRole('button', { name: 'Add a time' }))
  await page.getByLabel('From', { exact: true }).nth(1).fill('03:00')
  await page.getByLabel('People', { exact: true }).nth(1).fill('2')
  await expect(page.getByText(/Times in order, each of them once/)).toBeVisible()
  await page.getByLabel('From', { exact: true }).nth(1).fill('07:00')
  await expect(page.getByText(/Times in order, each of them once/)).toHaveCount(0)
  await page.getByLabel('Load: unit').selectOption('s')
  await page.getByLabel('Load', { exact: true }).fill('45')
  await page.getByLabel('Sesame: Least on show').fill('12')
  await desk.tap(desk.button('On show until: Say it'))
  await page.getByLabel('On show until', { exact: true }).fill('09:30')

  await desk.go('set-up/varieties')
  await desk.tap(page.getByRole('button', { name: /^Plain/ }))
  await desk.tap(page.locator('.setup-row-body').getByLabel('egg', { exact: true }))
  await desk.go('set-up/oven')
  await desk.tap(page.locator('.setup-row-head').first())
  await desk.tap(desk.button('Empty of bagels by: Say it'))
  await expect(page.getByLabel('Empty of bagels by', { exact: true })).toHaveValue('10:00')

  await desk.go('set-up/save')
  await expect(page.getByText(/1 from 4:00 am, 2 from 7:00 am/)).toBeVisible()
  await desk.tap(desk.button('Save'))
  await expect.poll(async () => (await server.state()).shop?.baking.showUntilMinute).toBe(570)
  const { shop } = await server.state()
  if (shop === null) throw new Error('no shop')
  expect(shop.baking).toMatchObject({
    people: [
      { fromMinute: 240, people: 1 },
      { fromMinute: 420, people: 2 },
    ],
    door: { loadMs: 45_000, flipMs: 0, outMs: 0 },
  })
  expect(inUse(shop.varieties).map(({ showLeast, avoids }) => [showLeast, avoids])).toEqual([
    [12, []],
    [0, []],
    [0, ['egg']],
    ...[4, 5, 6].map(() => [0, []]),
  ])
  expect(inUse(shop.shelves).map(({ emptyByMinute }) => emptyByMinute)).toEqual([600, null, null])

  await desk.go('set-up/kitchen')
  await page.getByLabel('A new station', { exact: true }).fill('Hot side')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /^Hot side/ })).toBeVisible()
  await desk.go('set-up/menu')
  await page.getByLabel('A new item', { exact: true }).fill('Flatbread')
  await page.keyboard.press('Enter')
  await desk.tap(page.getByRole('button', { name: 'Add a part' }))
  await desk.tap(desk.radio('Made', 'in the oven'))
  await expect(page.getByText('No shelf has places for it yet')).toBeVisible()
  await desk.go('set-up/oven')
  await desk.tap(page.locator('.setup-row-head').first())
  await desk.tap(desk.button('Places of the second menu: more'))
  await desk.go('set-up/save')
  await desk.tap(desk.button('Save'))
  await expect.poll(async () => (await server.state()).shop?.menu.size).toBe(1)
  const then = (await server.state()).shop
  expect([...(then?.menu.values() ?? [])]).toMatchObject([
    {
      name: 'Flatbread',
      steps: [{ stationId: 'hot-side', takesMs: 240_000, oven: { slots: 1, at: null, turns: [] } }],
    },
  ])
  expect(inUse(then?.shelves ?? new Map()).map(({ slots }) => slots)).toEqual([1, 0, 0])
})

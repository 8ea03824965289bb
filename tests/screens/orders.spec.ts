import { menuItemId, portionId, varietyId } from '../../shared-core/ids.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import { kitchenParts } from '../core/support/shop-kitchen.ts'
import { axeFindings, CounterGlass, PHONE, shopAtHour, small, unreadable } from './support/counter-glass.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

/** Early in the afternoon, with the second menu in the oven; walk-ins are left nothing. */
function afternoon() {
  const shop = shopAtHour(13, kitchenParts())
  return { ...shop, orders: { ...shop.orders, walkInPercent: 0, walkInLeast: 0 } }
}

async function stocked(server: ShopServer): Promise<void> {
  for (const [variety, pieces] of [
    ['sesame', 12],
    ['poppy', 30],
  ] as const) {
    const counted = { type: 'count', varietyId: varietyId(variety), pieces, ...{ confirmed: ['far-count'] } } as const
    await server.act(counted)
  }
  for (const [portion, portions] of [
    ['ball', 9],
    ['sauce', 30],
    ['cheese', 30],
    ['lox', 0],
  ] as const)
    await server.act({ type: 'countPortions', portionId: portionId(portion), portions })
}

async function orders(server: ShopServer): Promise<readonly Order[]> {
  return [...(await server.state()).orders.values()]
}

test('[M139] given an order taken without contact, when the page is closed and opened again, then it has it with its name; kept, handed over and taken back by touch', async ({
  browser,
  server,
}) => {
  test.setTimeout(90_000)
  await server.start(afternoon())
  await stocked(server)
  const glass = await CounterGlass.open(browser, server)
  const { page } = glass
  await glass.touch(glass.foot('orders'))
  await expect(page.getByText('No order is open.')).toBeVisible()

  await server.stop('SIGKILL')
  await glass.touch(glass.named('Take an order'))
  await glass.touch(glass.named('Sesame'))
  await glass.touch(glass.named('Mixed'))
  await glass.touch(glass.named('Without…'))
  await glass.touch(glass.named('Sesame'))
  await expect(page.getByRole('button', { name: '1 dozen mixed, no Sesame' })).toBeVisible()
  expect(await unreadable(page)).toEqual([])
  expect(await small(page.locator('.counter button'))).toEqual([])
  await glass.touch(glass.foot('take-when'))
  await expect(page.getByRole('status').filter({ hasText: 'can be promised' })).toBeVisible()
  await glass.touch(glass.foot('take-who'))
  await page.getByLabel('Mark, called across the room').fill('AB')
  await page.getByLabel('Name').fill('Somebody Invented')
  await glass.touch(glass.foot('take-it'))
  // Shown at once, with the name that nobody but this device knows yet.
  await expect(page.locator('.counter-orders button')).toContainText('Somebody Invented')
  expect(await unreadable(page)).toEqual([])
  await page.close()

  await server.start()
  const again = new CounterGlass(await page.context().newPage())
  await again.page.goto(`${server.address}/counter`)
  await expect.poll(async () => (await orders(server)).map(({ mark, details }) => [mark, details])).toEqual([['AB', 1]])
  await again.touch(again.foot('orders'))
  await expect(again.page.locator('.counter-orders button')).toContainText('Somebody Invented')
  await again.page.getByRole('searchbox').fill('some')
  await again.touch(again.page.locator('.counter-orders button'))
  await again.touch(again.named('Keep 24'))
  await expect(again.page.locator('.counter-picked').first()).toContainText('kept 12')
  expect(await unreadable(again.page)).toEqual([])
  expect(await axeFindings(again.page)).toEqual([])
  await again.touch(again.named(/^Hand over/))
  await expect.poll(async () => (await orders(server)).length).toBe(0)
  await again.touch(again.foot('take-back'))
  await expect(again.page.locator('.counter-orders button')).toContainText('ready')
  await expect.poll(async () => (await orders(server)).length).toBe(1)
})

test('[M136] given a slip of two of a thing, when it is started, then its wait was told, it waits on the rod, and it is handed over when it is made; what has run out says why', async ({
  browser,
  server,
}) => {
  test.setTimeout(90_000)
  await server.start(afternoon())
  await stocked(server)
  const glass = await CounterGlass.open(browser, server, { size: PHONE })
  const { page } = glass
  await glass.touch(glass.foot('slip'))
  await expect(page.getByText('Nobody waits')).toBeVisible()
  await expect(page.getByRole('button', { name: /Lox.*none left/ })).toHaveAttribute('aria-disabled', 'true')
  expect(await unreadable(page)).toEqual([])

  const begun = glass.touches
  await glass.touch(glass.named(/^Flatbread/))
  await glass.touch(glass.named(/Flatbread/))
  await expect(glass.foot('slip-start')).toHaveText(/Start 1about \d+, up to \d+ min/)
  await glass.touch(glass.foot('slip-start'))
  expect(glass.touches - begun).toBe(3)
  await expect(page.locator('[data-waits="1"]')).toBeVisible()
  await expect
    .poll(async () => (await orders(server)).map(({ mark, way, items }) => [mark, way, items.length]))
    .toEqual([['1', 'here', 2]])

  // The number on the paper slip, and somebody who must not get egg.
  await glass.touch(glass.foot('slip-number'))
  await glass.touch(glass.named('4'))
  await glass.touch(glass.named('1'))
  await glass.touch(glass.named(/^Use it/))
  await glass.touch(glass.named(/^Melt/))
  await glass.touch(glass.named(/^Poppy/))
  await glass.touch(glass.named('Allergy'))
  await glass.touch(glass.named('Egg'))
  await expect(page.locator('.counter-allergy')).toHaveText('ALLERGY: egg')
  expect(await unreadable(page)).toEqual([])
  await glass.touch(glass.foot('slip-start'))
  await expect(page.locator('[data-waits="41"] .order-ring-allergy')).toBeVisible()

  const first = (await orders(server)).find(({ mark }) => mark === '1')
  expect(first?.items[0]?.itemId).toBe(menuItemId('flatbread'))
  const parts = (first?.items ?? []).map(({ no, steps }) => ({ orderId: first?.id, no, step: steps.length - 1 }))
  await server.act({ type: 'moveItems', parts: parts as never, to: 'made', shelfId: null }, 'bench')
  await glass.touch(glass.named(/^Hand over 1/))
  await expect.poll(async () => (await orders(server)).map(({ mark }) => mark)).toEqual(['41'])
})

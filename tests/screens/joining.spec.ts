import type { Page, WebSocketRoute } from '@playwright/test'
import { doughId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { ClosedShop, touchPage, typeCode } from './support/closed-shop.ts'
import { axeFindings } from './support/counter-glass.ts'
import { expect, test } from './support/shop-server.ts'

const PHONE = { width: 390, height: 844 }
const WRONG = '000000'

const opened: ClosedShop[] = []
test.afterEach(async () => {
  for (const shop of opened.splice(0)) await shop.server.remove()
})

async function claimed(...parts: Parameters<typeof ClosedShop.claim>): Promise<ClosedShop> {
  const shop = await ClosedShop.claim(...parts)
  opened.push(shop)
  return shop
}

/** Something to load on shelf 1, and trays for it. */
async function stock(shop: ClosedShop): Promise<void> {
  const trays = { doughId: doughId('plain'), varietyId: null, pieces: 144, stage: 'rack', sinceMs: null } as const
  await shop.act({ type: 'carryIn', ...trays })
  await shop.act({ type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: lines('sesame', 48) }] })
}

/** The way from this page to the server, which a test can hold up; what the server says still comes. */
async function holdable(page: Page): Promise<{ isHeld: boolean }> {
  const way = { isHeld: false }
  await page.routeWebSocket(/socket\.io/, (screen: WebSocketRoute) => {
    const server = screen.connectToServer()
    // Pings go through: only what people tap is held up.
    screen.onMessage((message) => {
      if (!way.isHeld || !String(message).startsWith('42')) server.send(message)
    })
  })
  return way
}

const shelf = (bench: Page) => bench.locator('[data-shelf="s1"] .bench-act button').first()

test('[E33, E34] given a shop that nobody has claimed, when the terminal’s code is typed, then that is the desk, which lets a bench in by six digits and says so', async ({
  browser,
}) => {
  const shop = await claimed(browser, shopWith(), async (page) => {
    await expect(page.getByRole('heading', { name: 'Whose shop is this?' })).toBeVisible()
    expect(await axeFindings(page)).toEqual([])
    await typeCode(page, WRONG)
    await expect(page.getByRole('alert')).toContainText('from the window in which the shop was started')
  })
  await shop.screens()
  const code = await shop.code('Bench', 'Bench 2')
  expect(await axeFindings(shop.desk)).toEqual([])

  const tablet = await touchPage(browser, { width: 1280, height: 800 })
  await tablet.goto(`${shop.server.address}/bench`)
  await expect(tablet.getByRole('heading', { name: 'This screen has not joined this shop' })).toBeVisible()
  expect(await axeFindings(tablet)).toEqual([])
  await tablet.getByRole('link', { name: 'Join with a code' }).tap()
  await typeCode(tablet, `${code.slice(0, 3)} ${code.slice(3)}`)
  await tablet.waitForURL('**/bench')
  await expect(shop.part('let-in')).toContainText('Bench 2 has joined.')
  await expect(shop.row('Bench 2 Bench all ● linked')).toBeVisible()

  await tablet.goto(`${shop.server.address}/counter`)
  await tablet.waitForURL('**/bench')
  const again = await touchPage(browser, PHONE, { locale: 'es-MX' })
  await again.goto(`${shop.server.address}/#join=${code}`)
  await expect(again.getByRole('alert')).toContainText('ya se usó')
  expect(new URL(again.url()).hash).toBe('')
})

test('[E30, E34] given a bench that is shown out while its taps are on their way, then it says so and keeps them, and they count once it is let in again, until it leaves by itself', async ({
  browser,
}) => {
  const shop = await claimed(browser, shopWith())
  await shop.screens()
  await stock(shop)
  const code = await shop.code('Bench', 'Bench 2')
  const bench = await touchPage(browser, { width: 1280, height: 800 })
  const way = await holdable(bench)
  await bench.goto(`${shop.server.address}/#join=${code}`)
  await expect(shelf(bench)).toContainText('Load 1')
  await expect(shop.row('Bench 2 .*linked')).toBeVisible()

  way.isHeld = true
  await shelf(bench).tap()
  await expect(shelf(bench)).toContainText('Flip 1')
  await shop.row('Bench 2').getByRole('button').tap()
  await shop.part('screens').getByRole('button', { name: 'Show it out' }).tap()
  await expect(shop.part('screens').getByRole('alert')).toContainText('Show Bench 2 out?')
  await shop.part('screens').getByRole('button', { name: 'Show it out' }).tap()

  await expect(bench.getByRole('heading', { name: 'The desk has shown this screen out' })).toBeVisible()
  await expect(bench.locator('.outside')).toContainText('1 tap was not sent')
  await expect(shop.row('Bench 2')).toHaveCount(0)
  expect((await shop.state()).loads.size).toBe(0)

  way.isHeld = false
  const second = await shop.code('Bench', 'Bench 3')
  await bench.getByRole('link', { name: 'Join with a code' }).tap()
  await expect(bench.getByText('The desk has shown this device out.')).toBeVisible()
  await typeCode(bench, second)
  await expect(shelf(bench)).toContainText('Flip 1')
  await expect.poll(async () => (await shop.state()).loads.size).toBe(1)

  // A leave that the server did not hear is none, and says so.
  await bench.route('**/api/v1/leave', (route) => route.abort())
  await bench.goto(`${shop.server.address}/#device`)
  const leave = async () => {
    await bench.getByRole('button', { name: 'Leave this shop' }).tap()
    await bench.getByRole('button', { name: 'Leave', exact: true }).tap()
  }
  await leave()
  await expect(bench.getByRole('heading', { name: 'No contact with the shop.' })).toBeVisible()
  await bench.unroute('**/api/v1/leave')
  await leave()
  await expect(bench.getByText('Leave this shop')).toHaveCount(0)
  await expect(shop.row('Bench 3')).toHaveCount(0)
})

test('[E31, E32] given a bench, when the desk renames and moves it, then it is called so and goes to its new page by itself; without its cookie it joins anew', async ({
  browser,
}) => {
  const shop = await claimed(browser, shopWith())
  await shop.screens()
  const bench = await shop.device(browser, 'Bench', 'Bench 2', 'bench')
  await expect(bench.locator('.bench-board')).toContainText('Bench 2')
  await shop.row('Bench 2').getByRole('button').tap()
  const form = shop.part('screens').locator('form')
  await form.getByLabel('Name').fill('Oven bench')
  await form.getByRole('button', { name: 'Save' }).tap()
  await expect(bench.locator('.bench-board')).toContainText('Oven bench')

  await shop.row('Oven bench').getByRole('button').tap()
  await form.getByRole('radio', { name: 'Counter' }).tap()
  await form.getByRole('button', { name: 'Save' }).tap()
  await bench.waitForURL('**/counter')
  await expect(shop.row('Oven bench Counter .*linked')).toBeVisible()

  // Its browser was cleaned of cookies, not of what it stored: it joins as another device.
  await bench.context().clearCookies()
  const code = await shop.code('Counter', 'Front counter')
  await bench.goto(`${shop.server.address}/#join=${code}`)
  await bench.waitForURL('**/counter')
  await expect(shop.row('Front counter Counter .*linked')).toBeVisible()
  await expect(bench.locator('.outside')).toHaveCount(0)
})

test('[E35, E36] given forged and missing keys, then they get nothing and the desk tells of them; a token is shown once', async ({
  browser,
}) => {
  const shop = await claimed(browser, shopWith())
  const { address } = shop.server
  const stranger = await touchPage(browser, PHONE)
  const forged = { name: 'boilboard_device', value: 'A'.repeat(43), url: address }
  await stranger.context().addCookies([forged])
  await stranger.goto(`${address}/counter`)
  await expect(stranger.getByRole('heading', { name: 'This shop does not know this screen' })).toBeVisible()
  expect(await stranger.locator('.counter-rod, .rod').count()).toBe(0)
  for (let n = 0; n < 6; n += 1) expect((await stranger.request.get(`${address}/api/v1/state`)).status()).toBe(401)

  await shop.desk.goto(`${address}/desk#today`)
  await shop.desk.reload()
  await shop.desk.getByRole('link', { name: /\d+ refused/ }).tap()
  await expect(shop.part('refused')).toContainText(/\d+ keys that are none of ours/)
  await expect(shop.part('refused')).toContainText('127.0.0.1')
  await expect(shop.desk.getByRole('link', { name: /\d+ refused/ })).toHaveCount(0)

  const tokens = shop.part('tokens')
  await tokens.getByLabel('What it is called').fill('Till')
  await tokens.getByRole('button', { name: 'Make a token' }).tap()
  const token = (await tokens.locator('code').first().textContent()) ?? ''
  const headers = { authorization: `Bearer ${token}` }
  expect((await fetch(`${address}/api/v1/state`, { headers })).status).toBe(200)
  await shop.part('screens').getByRole('button').first().tap()
  expect(await axeFindings(shop.desk)).toEqual([])
  await tokens.getByRole('button', { name: 'I have it' }).tap()
  await expect(shop.desk.locator('body')).not.toContainText(token)
  await shop.desk.reload()
  await expect(tokens.getByRole('row', { name: /Till Counter/ })).toBeVisible()
  await expect(shop.desk.locator('body')).not.toContainText(token)
})

import type { Page } from '@playwright/test'
import jsQR from 'jsqr'
import { shopWith } from '../core/support/shop.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import { expect, test } from './support/shop-server.ts'

/** The code as it is painted, read by a reader that shares no code with what drew it. */
async function readCode(page: Page): Promise<string | null> {
  const { width, pixels } = await page.locator('.desk-qr').evaluate(async (svg) => {
    const text = new XMLSerializer().serializeToString(svg)
    const image = new Image()
    image.src = `data:image/svg+xml;base64,${btoa(unescape(encodeURIComponent(text)))}`
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = image.width
    canvas.height = image.height
    const context = canvas.getContext('2d')
    if (context === null) throw new Error('no canvas')
    context.drawImage(image, 0, 0)
    return { width: canvas.width, pixels: [...context.getImageData(0, 0, canvas.width, canvas.height).data] }
  })
  return jsQR(new Uint8ClampedArray(pixels), width, width)?.data ?? null
}

test('given a code for a named screen, when it is read and opened on another device, then that screen is called so, and the desk lists it after it has left', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const page = await openDeskByTouch(browser, server, { place: 'screens' })
  const open = part(page, 'open')
  await open.getByRole('radio', { name: 'Counter' }).tap()
  await open.getByLabel('What it is called').fill('Front counter')
  const link = await readCode(page)
  expect(link).toBe(`${server.address}/counter?name=Front%20counter`)

  const tablet = await (await browser.newContext({ hasTouch: true })).newPage()
  await tablet.goto(link ?? '')
  await expect(part(page, 'screens').getByRole('row', { name: /Front counter Counter all ● connected/ })).toBeVisible()
  expect(new URL(tablet.url()).search).toBe('')
  await tablet.reload()
  await expect(part(page, 'screens').getByRole('row', { name: /Front counter Counter all ● connected/ })).toBeVisible()
  await tablet.close()
  await expect(part(page, 'screens').getByRole('row', { name: /Front counter .*last seen at/ })).toBeVisible()
})

for (const [language, kiosk, pedals] of [
  ['en', 'A machine that shows one screen', 'Foot pedals and one-key pads'],
  ['es', 'Un aparato que muestra una sola pantalla', 'Pedales y botones'],
] as const) {
  test(`given the guides in ${language}, when they are opened, then cautions stand first and each station has its key${lookMark(language === 'en' ? 0 : 1)}`, async ({
    browser,
    server,
  }) => {
    await server.start(shopWith())
    const page = await openDeskByTouch(browser, server, { place: 'screens', language })
    await part(page, 'guides').locator('a[href="#screens/kiosk"]').tap()
    await expect(page.getByRole('heading', { name: kiosk })).toBeVisible()
    await expect(page.locator('.desk-panel').first()).toHaveAttribute('data-part', 'caution')
    await expect(page.locator('code')).toContainText('/wall?name=')
    await page.goto(`${server.address}/desk#screens/pedals`)
    await expect(page.getByRole('heading', { name: pedals })).toBeVisible()
    await expect(page.locator('.desk-panel').first()).toHaveAttribute('data-part', 'caution')
    await expect(page.getByRole('cell', { name: 'F13' })).toBeVisible()
  })
}

test('given this screen’s name, when it is typed letter by letter, then it keeps its spaces, and the server hears of it once', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const page = await openDeskByTouch(browser, server, { place: 'screens' })
  const hellos: string[] = []
  page.on('websocket', (socket) =>
    socket.on('framesent', ({ payload }) => String(payload).includes('"hello"') && hellos.push(String(payload))),
  )
  await page.reload()
  const name = part(page, 'this').getByLabel('Name')
  await name.pressSequentially('Back room 2')
  await expect(name).toHaveValue('Back room 2')
  await name.press('Enter')
  await expect(part(page, 'screens').getByRole('row', { name: /Back room 2/ })).toBeVisible()
  const names = hellos.flatMap((hello) => /"name":"([^"]*)"/.exec(hello)?.[1] ?? [])
  expect(names.filter((text) => /^B/.test(text))).toEqual(['Back room 2'])
})

test('given this screen’s settings, when dark and the largest print are chosen, then the desk is so, and still after a reload', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const page = await openDeskByTouch(browser, server, { place: 'screens' })
  const mine = part(page, 'this')
  const fontPx = () => page.locator('.desk').evaluate((desk) => Number.parseFloat(getComputedStyle(desk).fontSize))
  const before = await fontPx()
  await mine.getByRole('combobox').first().selectOption('dark')
  await mine.getByRole('combobox').last().selectOption('largest')
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark')
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark')
  expect(await fontPx()).toBe(before * 1.5)
})

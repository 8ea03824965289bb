import type { Page } from '@playwright/test'
import { runId, varietyId } from '../../shared-core/ids.ts'
import { MARK_CHARACTERS_MAX } from '../../shared-core/orders/order-limits.ts'
import { NAME_MAX } from '../../shared-core/shop/set-up-limits.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { standingCommand } from '../client-desk-orders/standing-maker.ts'
import { askedItem, askedLine, takeOrder } from '../core/orders/order-makers.ts'
import { kitchenParts } from '../core/support/shop-kitchen.ts'
import { noonShop, openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

const HOUR_MS = 3_600_000

/** The shop's date so many days from now; in a `noonShop` it is noon. */
function dateIn(days: number): string {
  const ahead = 12 - new Date().getUTCHours()
  return new Date(Date.now() + (ahead + days * 24) * HOUR_MS).toISOString().slice(0, 10)
}

const go = (page: Page, within: string) =>
  page.evaluate((hash) => {
    window.location.hash = hash
  }, `#${within}`)

test('[M156, M157, M158] given the desk, when an order is taken at a risk, changed and cancelled, a run is printed, a name deleted and the day settled, then the shop has it so', async ({
  browser,
  server,
}) => {
  await server.start(noonShop(kitchenParts()))
  await server.act({ type: 'openDay' })
  const page = await openDeskByTouch(browser, server, { place: 'orders/new' })
  await takeOne(page)
  const row = page.locator('[data-order]')
  await expect(row).toContainText('Ada Nightjar')
  await expect(row).toContainText('1 dozen Sesame, sliced')
  await expect.poll(async () => [...(await server.state()).orders.values()].length).toBe(1)
  const [order] = (await server.state()).orders.values()
  expect(order).toMatchObject({ mark: '1', isRisk: true, details: 1, lines: [{ varietyId: 'sesame', pieces: 12 }] })
  await row.getByRole('link', { name: 'Change: 1' }).tap()
  await expect(page.getByLabel('Name')).toHaveValue('Ada Nightjar')
  await page.getByLabel('Mark', { exact: true }).fill('AN')
  await page.getByRole('button', { name: 'Save the change' }).tap()
  await expect(page.locator('[data-order="AN"]')).toContainText('Ada Nightjar')
  await page.getByRole('button', { name: 'Cancel: AN' }).tap()
  await page.getByRole('button', { name: 'Yes, cancel it' }).tap()
  await expect(page.getByText('Nothing is ordered', { exact: false })).toBeVisible()

  await printRound(page, server)
  await deleteName(page, server)

  await server.act(takeOrder({ mark: 'ZZ', dueAtMs: Date.now() + HOUR_MS, lines: [askedLine('poppy')] } as never))
  await go(page, 'close')
  await part(page, 'orders').getByRole('button', { name: 'Nobody came: ZZ' }).tap()
  await expect(part(page, 'orders')).toContainText('Every order of the day is settled.')
})

/** A dozen that nothing promises: there are no bagels today. */
async function takeOne(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Variety', exact: true }).selectOption({ label: 'Sesame' })
  await page.getByLabel('Dozens').fill('1')
  await page.getByLabel('sliced').check()
  await page.getByLabel('Time').fill('14:00')
  await page.getByLabel('Name').fill('Ada Nightjar')
  await expect(page.getByText('That does not hold', { exact: false })).toBeVisible()
  await page.getByRole('button', { name: 'Take it all the same' }).tap()
}

/** Two stops of tomorrow's van, on one page of paper, and nothing of the desk around them. */
async function printRound(page: Page, server: ShopServer): Promise<void> {
  const [run] = (await server.state()).shop?.runs.keys() ?? []
  const stands = { way: 'delivery', runId: run ?? runId('none') } as const
  const recurrence = { ...standingCommand().recurrence, from: dateIn(1) }
  for (const stop of [2, 1])
    await server.act(standingCommand({ ...stands, stop, mark: `S${stop}`, recurrence, details: detailsOf(stop) }))
  await go(page, `orders/packing/${dateIn(1)}`)
  const sheet = page.locator('.orders-pack')
  await expect(sheet.locator('tbody th strong')).toHaveText(['S1', 'S2'])
  await expect(sheet).toContainText('Stop 1 Hall')
  await expect(sheet).toContainText('24')
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.desk-nav')).toBeHidden()
  await expect(page.locator('.orders-dates')).toBeHidden()
  expect((await page.pdf({ format: 'A4' })).toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
  await page.emulateMedia({ media: 'screen' })
}

const detailsOf = (stop: number) => ({ name: `Stop ${stop} Hall`, phone: '555 0100', note: '' })

async function deleteName(page: Page, server: ShopServer): Promise<void> {
  await go(page, 'orders/names')
  // Of the order that was cancelled as well.
  await expect(page.locator('.orders-names li')).toHaveCount(3)
  await page.getByLabel('Find a name', { exact: false }).fill('nightjar')
  await expect(page.locator('.orders-names li')).toHaveCount(1)
  await page.getByRole('button', { name: 'Delete: Ada Nightjar' }).tap()
  await page.getByRole('button', { name: 'Yes, delete it' }).tap()
  await expect(page.getByText('Deleted: Ada Nightjar.')).toBeVisible()
  const found = await fetch(`${server.address}/api/v1/orders/names`)
  expect((await found.json()).names.map(({ name }: { name: string }) => name)).toEqual(['Stop 1 Hall', 'Stop 2 Hall'])
}

const LONG = 'Wn'.repeat(15)

/** The first of them in every run looks at what is read at five in the morning. */
for (const [index, [language, size, most]] of (
  [
    ['es', { width: 390, height: 844 }, 2],
    ['es', { width: 390, height: 844 }, 7],
    ['en', { width: 1440, height: 900 }, 7],
  ] as const
).entries()) {
  test(`[M157] given orders with the longest names in ${language} at ${size.width}, when ${most} of their pages are looked at, then no text is cut off or covered, and axe finds nothing${lookMark(index)}`, async ({
    browser,
    server,
  }) => {
    await server.start(withLongNames(noonShop(kitchenParts())))
    await server.act({ type: 'openDay' })
    await longOrders(server)
    const page = await openDeskByTouch(browser, server, { place: 'orders', language, size })
    const [standing] = (await server.state()).standing.keys()
    const pages = [
      ['orders', '[data-order]'],
      [`orders/packing/${dateIn(1)}`, '.orders-pack'],
      [`orders/standing/${standing}`, '.orders-next'],
      ['orders/new', '[data-part="order"]'],
      ['orders/standing', '[data-standing]'],
      ['orders/names', '.orders-names'],
      ['orders/files', '[data-part="calendar"]'],
    ] as const
    for (const [within, shown] of pages.slice(0, most)) {
      await go(page, within)
      await expect(page.locator(shown).first()).toBeVisible()
      await look(page, within)
    }
  })
}

async function longOrders(server: ShopServer): Promise<void> {
  const details = { name: LONG, phone: '555 0100 0100 0100', note: LONG.repeat(3) }
  const mark = 'W'.repeat(MARK_CHARACTERS_MAX)
  const lines = [
    askedLine('sesame', { dozens: 12, pieces: 5, sliced: true, bagged: true }),
    askedLine(null, { dozens: 2, without: [varietyId('poppy')] }),
  ]
  const item = askedItem('lox', { varietyId: varietyId('sesame'), toasted: true, allergies: ['treeNuts', 'egg'] })
  const dueAtMs = Date.now() + HOUR_MS
  await server.act({ ...takeOrder({ mark, lines, items: [item], details }), dueAtMs } as never)
  const [run] = (await server.state()).shop?.runs.keys() ?? []
  const recurrence = { ...standingCommand().recurrence, from: dateIn(0), except: [dateIn(3)], also: [dateIn(9)] }
  await server.act(standingCommand({ mark, lines, details, recurrence, way: 'delivery', runId: run ?? null, stop: 12 }))
}

/** Names as long as a set-up may have them, in one word. */
function withLongNames(shop: Shop): Shop {
  const long = <Id, Thing extends { readonly name: string }>(things: ReadonlyMap<Id, Thing>) =>
    new Map([...things].map(([id, thing]) => [id, { ...thing, name: thing.name.padEnd(NAME_MAX.variety, 'Wn') }]))
  return { ...shop, varieties: long(shop.varieties), menu: long(shop.menu), runs: long(shop.runs) }
}

async function look(page: Page, place: string): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${place} sticks out sideways`).toBeLessThanOrEqual(0)
  const texts = (await textsOn(page)).filter(({ within }) => !within.includes('desk-head'))
  expect(texts.length, place).toBeGreaterThan(15)
  expect(overlaps(texts), place).toEqual([])
  // What lies below the fold is reached by scrolling.
  expect(cutOff(texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } }))), place).toEqual([])
  await expectNoViolations(page, place)
}

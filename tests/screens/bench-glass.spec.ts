import type { Browser } from '@playwright/test'
import type { BenchOn } from './support/bench-touch.ts'
import { BenchTablet, TABLET } from './support/bench-touch.ts'
import { expectWhole } from './support/bench-whole.ts'
import type { Crowd } from './support/crowded-shop.ts'
import { crowd, crowdedShop } from './support/crowded-shop.ts'
import { keysOn } from './support/keys-on-page.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { overlaps, textsOn } from './support/texts-on-page.ts'

async function expectSheetsWhole(bench: BenchTablet, inches: number, state: string): Promise<void> {
  const { page } = bench
  const bottom = (at: number) => page.locator('.bench-bottom-key button').nth(at)
  const keysAtBottom = await page.locator('.bench-bottom-key').count()
  const [dry, more] = [bottom(keysAtBottom - 2), bottom(keysAtBottom - 1)]
  const back = page.locator('.bench-sheet-back button')
  const look = async (name: string) => expectWhole(bench, inches, `${state}, ${name}`)
  const openMore = async (cell: string) => {
    await bench.touch(more)
    await bench.touch(bench.cell(cell))
  }
  const differs = async (shelf: string) => {
    if ((await bench.differs(shelf).count()) > 0) return bench.touch(bench.differs(shelf))
    await bench.touch(bottom(keysAtBottom - 3))
    await look('what differs')
    await bench.touch(bench.shelf(shelf))
  }
  await differs('s0')
  await look('before a load')
  await bench.touch(page.locator('.bench-mode button').nth(1))
  await look('load list')
  await bench.touch(back)
  await differs('s2')
  for (const [at, part] of ['inside', 'some out', 'move', 'dropped'].entries()) {
    if (at > 0) await bench.touch(page.locator('.bench-mode button').nth(at))
    await look(part)
  }
  await bench.touch(back)
  await bench.touch(more)
  await look('more')
  await bench.touch(back)
  for (const cell of ['line', 'unplanned', 'skip', 'pull', 'dip', 'board', 'carry-in', 'shape', 'done']) {
    await openMore(cell)
    await look(cell)
    await bench.touch(back)
  }
  await bench.touch(dry)
  await look('dry hands')
  await bench.touch(back)
  await openMore('settings')
  await bench.cell('part name').waitFor()
  await look('settings')
  for (const part of ['name', 'person', 'station', 'size', 'look', 'sound', 'pedals']) {
    await bench.touch(bench.cell(`part ${part}`))
    await look(`settings ${part}`)
    await bench.touch(back)
  }
  await bench.touch(back)
  await expectShiftSheets(bench, look, openMore)
}

/** The sheets of a shift's ends. */
async function expectShiftSheets(
  bench: BenchTablet,
  look: (name: string) => Promise<void>,
  openMore: (cell: string) => Promise<void>,
): Promise<void> {
  const { page } = bench
  const back = page.locator('.bench-sheet-back button')
  await openMore('notes')
  await look('notes')
  await bench.touch(back)
  for (const [cell, parts] of [
    ['kettle', 4],
    ['changeover', 4],
  ] as const) {
    await openMore(cell)
    for (let at = 0; at < parts; at++) {
      await bench.touch(page.locator('.bench-mode button').nth(at))
      await look(`${cell} ${at}`)
    }
    await bench.touch(back)
  }
}

async function openCrowded(browser: Browser, server: ShopServer, shop: Crowd, on: BenchOn): Promise<BenchTablet> {
  await server.start(crowdedShop(shop))
  await crowd(server, shop)
  return await BenchTablet.open(browser, server, on)
}

const WITH_SHEETS = [
  { varieties: 12, shelves: 3, language: 'en' },
  { varieties: 28, shelves: 12, language: 'es', hasLongShelves: true },
] as const satisfies readonly Crowd[]

for (const [n, shop] of WITH_SHEETS.entries()) {
  const name = `${shop.shelves} shelves, ${shop.varieties} varieties, ${shop.language}`
  test(`[B2, B3] given ${name}, when the line and all its sheets are shown, then keys are 20 mm and no text is lost${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    const bench = await openCrowded(browser, server, shop, {})
    await expectWhole(bench, 10.1, name)
    await expectSheetsWhole(bench, 10.1, name)
  })
}

const LINES = [
  { varieties: 12, shelves: 4, language: 'es' },
  { varieties: 28, shelves: 12, language: 'en' },
  { varieties: 28, shelves: 7, language: 'es', kind: 'rotating', hasLongShelves: true },
] as const satisfies readonly Crowd[]

for (const [n, shop] of LINES.entries()) {
  const name = `${shop.shelves} shelves, ${shop.varieties} varieties, ${shop.language}`
  test(`[B2, B3] given ${name}, when the line is shown, then keys are 20 mm and no text is lost${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    await expectWhole(await openCrowded(browser, server, shop, {}), 10.1, name)
  })
}

for (const [n, inches] of [8, 11].entries()) {
  test(`[B2, B3] given a tablet of ${inches} inches, when a crowded line is shown, then keys are 20 mm and no text is lost${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    const shop: Crowd = { varieties: 28, shelves: 6, language: 'es', hasLongShelves: true }
    const bench = await openCrowded(browser, server, shop, { inches })
    await expectWhole(bench, inches, `${inches} inches`)
  })
}

test('given a phone, when the line is shown, then all keys are there, below each other', async ({
  browser,
  server,
}) => {
  const shop: Crowd = { varieties: 12, shelves: 4, language: 'en' }
  const bench = await openCrowded(browser, server, shop, { inches: 6.1, size: { width: 390, height: 844 } })
  const keys = await keysOn(bench.page)
  expect(keys.length).toBeGreaterThanOrEqual(4 * 2 + 3)
  for (const { left, width } of keys) expect(left + width).toBeLessThanOrEqual(390)
  expect(overlaps(await textsOn(bench.page))).toEqual([])
})

test('given no shop yet and a server without a set-up, when the bench is opened, then it says what it waits for', async ({
  browser,
  server,
}) => {
  await server.start(crowdedShop({ varieties: 12, shelves: 3, language: 'en' }))
  const context = await browser.newContext({ viewport: TABLET })
  const page = await context.newPage()
  await page.routeWebSocket(/socket\.io/, () => undefined)
  await page.goto(`${server.address}/bench`)
  await expect(page.getByText('Looking for the shop …')).toBeVisible()
})

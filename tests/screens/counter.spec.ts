import type { Browser, Locator, Page } from '@playwright/test'
import { mmPerCssPx } from '../../client/parts/legibility.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

const GLASS = { width: 1280, height: 800 }
const INCHES = 10.1
const MM = mmPerCssPx({ diagonalInch: INCHES, widthPx: GLASS.width, heightPx: GLASS.height })

/** A ten-inch tablet on its side, set to a language. */
async function openCounter(
  browser: Browser,
  server: ShopServer,
  language: Language = 'en',
  size = GLASS,
): Promise<Page> {
  const context = await browser.newContext({ viewport: size, hasTouch: true })
  await context.addInitScript(
    (settings) => localStorage.setItem('boilboard.counter.settings', JSON.stringify(settings)),
    { diagonalInches: INCHES, language },
  )
  const page = await context.newPage()
  await page.goto(`${server.address}/counter`)
  await expect(page.locator('.counter-cell').first()).toBeVisible()
  await page.evaluate(() => document.fonts.ready)
  return page
}

const rodKey = (page: Page, variety: string) => page.locator(`[data-variety="${variety}"] button`)
const rodNumber = (page: Page, variety: string) => page.locator(`[data-variety="${variety}"] .counter-number`)
const sellKey = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Sold', exact: true }).getByRole('button', { name, exact: true })

async function left(server: ShopServer, variety: string): Promise<number> {
  const lots = (await server.state()).stock.get(varietyId(variety))?.lots ?? []
  return lots.reduce((sum, lot) => sum + lot.pieces, 0)
}

/** Texts that are cut off, stick out of their key or the glass, or lie on one another; [] when all can be read. */
async function unreadable(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    // The ink of a line: a font's box is higher than its letters, and neighbouring boxes may overlap.
    const inked = (rect: DOMRect, fontPx: number, text: string) => ({
      left: rect.left,
      right: rect.right,
      top: rect.top + rect.height / 2 - fontPx * 0.42,
      bottom: rect.top + rect.height / 2 + fontPx * (/[gjpqy,()ç]/.test(text) ? 0.55 : 0.34),
    })
    const texts = [...document.querySelectorAll<HTMLElement>('.counter *')]
      .filter((one) => one.children.length === 0 && !(one instanceof SVGElement) && one.textContent?.trim() !== '')
      .flatMap((one) => {
        const range = document.createRange()
        range.selectNodeContents(one)
        const fontPx = Number.parseFloat(getComputedStyle(one).fontSize)
        const text = one.textContent ?? ''
        return [...range.getClientRects()].map((rect) => ({ one, text, box: inked(rect, fontPx, text) }))
      })
    for (const { one, text, box } of texts) {
      const holder = one.closest('button')?.getBoundingClientRect() ?? new DOMRect(0, 0, innerWidth, innerHeight)
      const isInside =
        box.left >= holder.left - 0.5 &&
        box.right <= holder.right + 0.5 &&
        box.top >= holder.top - 0.5 &&
        box.bottom <= holder.bottom + 0.5
      if (!isInside) found.push(`sticks out: ${text}`)
    }
    texts.forEach((a, index) => {
      for (const b of texts.slice(index + 1)) {
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        if (across > 0.5 && down > 0.5) found.push(`over each other: ${a.text} | ${b.text}`)
      }
    })
    for (const one of document.querySelectorAll<HTMLElement>('.counter-hand, .counter button')) {
      if (one.scrollWidth > one.clientWidth + 1) found.push(`cut off: ${one.textContent}`)
    }
    return found
  })
}

/** Keys under 20 mm one way, or under 3 mm from the next; [] when all can be touched. */
async function small(keys: Locator): Promise<string[]> {
  const boxes = await keys.evaluateAll((all) =>
    all.map((one) => ({ text: one.textContent ?? '', ...one.getBoundingClientRect().toJSON() })),
  )
  return boxes
    .filter((box) => box.width * MM < 20 || box.height * MM < 20)
    .map((box) => `${box.text}: ${box.width} × ${box.height}`)
}

for (const [count, language] of [
  [12, 'en'],
  [12, 'es'],
  [28, 'en'],
  [28, 'es'],
] as const) {
  test(`given ${count} varieties with the longest names in ${language}, when the rack is paged and a rod is in hand, then all can be read and touched`, async ({
    browser,
    server,
  }) => {
    await server.start(bigSetUp(count))
    for (let n = 1; n <= count; n++) {
      await server.act({ type: 'count', varietyId: varietyId(`variety-${n}`), pieces: [0, 4, 12, 24, 18][n % 5] ?? 0 })
    }
    await server.act({ type: 'sell', lines: [{ varietyId: varietyId('variety-2'), pieces: 8 }] })
    await server.act({ type: 'keep', lines: [{ varietyId: varietyId('variety-3'), pieces: 8 }] })
    const page = await openCounter(browser, server, language)
    const seen = new Set<string>()
    const further = page.locator('.counter-pages button').last()
    for (;;) {
      expect(await unreadable(page)).toEqual([])
      for (const name of await page
        .locator('.counter-cell')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-variety') ?? '')))
        seen.add(name)
      if ((await further.count()) === 0 || (await further.getAttribute('aria-disabled')) === 'true') break
      const before = await page.locator('.counter-cell').first().getAttribute('data-variety')
      await further.tap()
      await expect(page.locator('.counter-cell').first()).not.toHaveAttribute('data-variety', before ?? '')
    }
    expect(seen.size).toBe(count)
    expect(await small(page.locator('.counter button'))).toEqual([])
    await page.locator('.counter-cell button').first().tap()
    await expect(page.locator('.counter-sell button')).toHaveCount(4)
    expect(await small(page.locator('.counter button'))).toEqual([])
    expect(await unreadable(page)).toEqual([])
    // What is kept and in hand has the most to say.
    for (const cell of await page.locator('.counter-cell button').all()) await cell.tap()
    expect(await unreadable(page)).toEqual([])
    await page.locator('.counter-small-key').nth(0).tap()
    await expect(page.locator('.counter-rings')).toBeVisible()
    expect(await small(page.locator('.counter button'))).toEqual([])
    expect(await unreadable(page)).toEqual([])
    await page.locator('.counter-back button').tap()
    // Right after "back", at the same place of the glass, a touch is taken for the same one.
    await expect(async () => {
      await page.locator('.counter-small-key').last().tap()
      await expect(page.locator('.counter-sell')).toHaveCount(0, { timeout: 500 })
    }).toPass()
    await page.locator('.counter-cell button').first().tap()
    await page.locator('.counter-small-key').nth(1).tap()
    await expect(page.locator('.counter-rings')).toBeVisible()
    expect(await small(page.locator('.counter button'))).toEqual([])
    expect(await unreadable(page)).toEqual([])
  })
}

test('given a rod, when it is touched and then a number, then so many are sold; several rods make a mixed sale', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 24 })
  await server.act({ type: 'count', varietyId: varietyId('poppy'), pieces: 24 })
  await server.act({ type: 'count', varietyId: varietyId('plain'), pieces: 24 })
  const page = await openCounter(browser, server)
  await expect(rodNumber(page, 'sesame')).toHaveText('24')

  await rodKey(page, 'sesame').tap()
  await sellKey(page, 'sold Sesame 1').tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('23')
  await rodKey(page, 'sesame').tap()
  await sellKey(page, 'sold Sesame 6').tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('17')
  await rodKey(page, 'poppy').tap()
  await sellKey(page, 'sold Poppy 12').tap()
  await expect(rodNumber(page, 'poppy')).toHaveText('12')
  await rodKey(page, 'sesame').tap()
  await rodKey(page, 'poppy').tap()
  await rodKey(page, 'plain').tap()
  await sellKey(page, 'sold Sesame 5, Poppy 4, Plain 4').tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('12')
  await expect(rodNumber(page, 'plain')).toHaveText('20')
  expect((await server.state()).traces.at(-1)?.told.lines).toEqual(lines('sesame', 5, 'poppy', 4, 'plain', 4))

  // Another number: one ring and three singles.
  await rodKey(page, 'plain').tap()
  await page.getByRole('button', { name: 'Another number' }).tap()
  await expect(page.locator('.counter-wide button')).toHaveText(/Sold.*choose how many/)
  await page.getByRole('button', { name: '6: 1 half-dozen', exact: true }).tap()
  await expect(page.locator('.counter-total')).toHaveText('6')
  await page.getByRole('button', { name: 'and 3 singles' }).tap()
  await page.getByRole('button', { name: 'Sold 9' }).tap()
  await expect(rodNumber(page, 'plain')).toHaveText('11')
  await expect.poll(() => left(server, 'plain')).toBe(11)

  await page.getByRole('button', { name: /Take back.*sold Plain 9/ }).tap()
  await expect(rodNumber(page, 'plain')).toHaveText('20')
  await expect.poll(() => left(server, 'plain')).toBe(20)
})

test('given a count far from what is known, when the question is answered, then no leaves it and yes takes it', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 6 })
  const page = await openCounter(browser, server)
  const count = async () => {
    await rodKey(page, 'sesame').tap()
    await page.getByRole('button', { name: 'Count', exact: true }).tap()
    await expect(page.locator('.counter-total')).toHaveText('–')
    await page.getByRole('button', { name: '36: 6 half-dozens' }).tap()
    await page.getByRole('button', { name: 'and 2 singles' }).tap()
    await page.getByRole('button', { name: 'Counted 38' }).tap()
    await expect(page.getByText('Sesame: 38 counted, 6 known. Is the count right?')).toBeVisible()
  }
  await count()
  await page.getByRole('button', { name: 'No, count again' }).tap()
  await expect(page.getByText('Touch a rod, then the number sold')).toBeVisible()
  await expect(rodNumber(page, 'sesame')).toHaveText('6')
  await count()
  await page.getByRole('button', { name: 'Yes, as counted' }).tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('38')
  await expect.poll(() => left(server, 'sesame')).toBe(38)
})

test('given pieces that are not sold, when they are wasted, kept, handed over and released, then each goes where it should', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 24 })
  const page = await openCounter(browser, server)
  await rodKey(page, 'sesame').tap()
  await page.getByRole('button', { name: 'Not sold' }).tap()
  await page.getByRole('button', { name: 'and 2 singles' }).tap()
  await page.getByRole('button', { name: 'Wasted 2' }).tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('22')

  for (const leftThen of ['16', '10']) {
    await rodKey(page, 'sesame').tap()
    await page.getByRole('button', { name: 'Keep', exact: true }).tap()
    await page.getByRole('button', { name: '6: 1 half-dozen', exact: true }).tap()
    await page.getByRole('button', { name: 'Keep 6' }).tap()
    await expect(rodNumber(page, 'sesame')).toHaveText(leftThen)
  }
  await page.getByRole('button', { name: /Kept.*2 kept, 12 pieces/ }).tap()
  await page.getByRole('button', { name: 'Hand over' }).first().tap()
  await expect(page.locator('[data-keep]')).toHaveCount(1)
  await page.getByRole('button', { name: 'Release' }).first().tap()
  await expect(page.locator('[data-keep]')).toHaveCount(0)
  await page.getByRole('button', { name: 'Back to the rack' }).tap()
  await expect(rodNumber(page, 'sesame')).toHaveText('16')

  await expect.poll(async () => (await server.state()).keeps.size).toBe(0)
  const state = await server.state()
  expect([...state.account.values()][0]).toMatchObject({ sold: 6, wasted: 2, unexplained: -24 })
  expect(state.stock.get(varietyId('sesame'))?.kept).toBe(0)
})

test('given a phone, when a rod is sold there, then nothing sticks out sideways and the sale counts', async ({
  browser,
  server,
}) => {
  await server.start(bigSetUp(28))
  await server.act({ type: 'count', varietyId: varietyId('variety-1'), pieces: 24 })
  const page = await openCounter(browser, server, 'es', { width: 390, height: 844 })
  const isWider = () => page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
  expect(await isWider()).toBe(false)
  await rodKey(page, 'variety-1').tap()
  expect(await isWider()).toBe(false)
  await page.locator('.counter-sell button').nth(1).tap()
  await expect.poll(() => left(server, 'variety-1')).toBe(18)
})

import type { Page } from '@playwright/test'
import { varietyId } from '../../shared-core/ids.ts'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { axeFindings, CounterGlass, left, PHONE, unreadable } from './support/counter-glass.ts'
import { keysOn, offPage, tooSmall } from './support/keys-on-page.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

/** A thumb's key: about 8 mm on a six-inch phone. Apple's and WCAG 2.5.5's least is 44 CSS pixels. */
const THUMB_PX = 44

async function stocked(server: ShopServer, count: number): Promise<void> {
  await server.start(bigSetUp(count))
  for (let n = 1; n <= count; n++)
    await server.act({ type: 'count', varietyId: varietyId(`variety-${n}`), pieces: [0, 4, 24, 24, 18][n % 5] ?? 0 })
  await server.act({ type: 'keep', lines: [{ varietyId: varietyId('variety-3'), pieces: 8 }] })
  await server.act({ type: 'dayOldIn', lines: [{ varietyId: varietyId('variety-4'), pieces: 5 }] })
  await server.act({ type: 'sellUnnamed', pieces: 36 })
}

/** Everything can be read, touched with a thumb, and nothing must be dragged. */
async function fits(page: Page): Promise<void> {
  expect(await unreadable(page)).toEqual([])
  const keys = await keysOn(page)
  expect(tooSmall(keys, THUMB_PX)).toEqual([])
  expect(offPage(keys, PHONE)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollHeight > innerHeight + 1)).toBe(false)
}

const PHONES = [
  [12, 'en', {}],
  [28, 'es', {}],
  [28, 'en', { theme: 'dark' }],
  [12, 'es', { theme: 'dark', textPercent: 125 }],
] as const

for (const [n, [count, language, settings]] of PHONES.entries()) {
  test(`given a phone with ${count} varieties in ${language} ${JSON.stringify(settings)}, then the whole counter is under one thumb${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    await stocked(server, count)
    const glass = await CounterGlass.open(browser, server, { language, size: PHONE, settings })
    const { page } = glass
    const back = page.locator('.counter-back button')
    const seen = new Set<string>()
    const further = page.locator('.counter-pages button').last()
    for (;;) {
      await fits(page)
      const names = await page
        .locator('.counter-cell')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-variety')))
      for (const name of names) seen.add(name ?? '')
      if ((await further.count()) === 0 || (await further.getAttribute('aria-disabled')) === 'true') break
      await glass.touch(further)
      await expect(page.locator('.counter-cell').first()).not.toHaveAttribute('data-variety', names[0] ?? '')
    }
    expect(seen.size).toBe(count)
    if ((await page.locator('.counter-cell').count()) < 2)
      await glass.touch(page.locator('.counter-pages button').first())
    expect(await axeFindings(page)).toEqual([])
    await glass.touch(page.locator('.counter-cell button').first())
    await glass.touch(page.locator('.counter-cell button').nth(1))
    await fits(page)
    await glass.touch(page.locator('.counter-hand-keys .counter-small-key button').first())
    await fits(page)
    await glass.touch(back)
    await glass.touch(page.locator('.counter-hand-keys .counter-small-key button').last())
    await fits(page)
    await glass.touch(glass.foot('unnamed'))
    await fits(page)
    await glass.touch(page.locator('.counter-hand-keys .counter-small-key button').last())
    await glass.touch(glass.foot('sweep'))
    await fits(page)
    await glass.touch(page.locator('.counter-halves button').last())
    await fits(page)
    await glass.touch(back)
    await glass.touch(glass.foot('kept'))
    await fits(page)
    await glass.touch(back)
    for (const door of [0, 2]) {
      await glass.touch(glass.foot('more'))
      await fits(page)
      await glass.touch(page.locator('.counter-doors button').nth(door))
      await fits(page)
      await glass.touch(back)
    }
  })
}

test('given a phone, when a rod is touched and then a number, then the sale counts', async ({ browser, server }) => {
  await server.start(bigSetUp(28))
  await server.act({ type: 'count', varietyId: varietyId('variety-1'), pieces: 24 })
  const glass = await CounterGlass.open(browser, server, { language: 'es', size: PHONE })
  await glass.touch(glass.rod('variety-1'))
  await glass.touch(glass.page.locator('.counter-sell button').nth(1))
  await expect.poll(() => left(server, 'variety-1')).toBe(18)
})

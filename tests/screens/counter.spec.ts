import type { Browser, Page } from '@playwright/test'
import { varietyId } from '../../shared-core/ids.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { CounterGlass, GLASS, left, small, unreadable } from './support/counter-glass.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

async function openCounter(
  browser: Browser,
  server: ShopServer,
  language: Language = 'en',
  size = GLASS,
): Promise<Page> {
  return (await CounterGlass.open(browser, server, { language, size })).page
}

const rodKey = (page: Page, variety: string) => page.locator(`[data-variety="${variety}"] button`)
const rodNumber = (page: Page, variety: string) => page.locator(`[data-variety="${variety}"] .counter-number`)
const sellKey = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Sold', exact: true }).getByRole('button', { name, exact: true })

for (const [count, language] of [
  [12, 'en'],
  [12, 'es'],
  [28, 'en'],
  [28, 'es'],
] as const) {
  test(`given ${count} varieties with the longest names in ${language}, when the rack is paged and a rod is in hand, then all can be read and touched${lookMark(count === 28 && language === 'es' ? 0 : 1)}`, async ({
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
      const first = page.locator('.counter-cell').first()
      const before = await first.getAttribute('data-variety')
      // A touch that comes too soon after another at the same place is an echo to the screen.
      await expect(async () => {
        if ((await first.getAttribute('data-variety')) === before) await further.tap()
        await expect(first).not.toHaveAttribute('data-variety', before ?? '', { timeout: 2_000 })
      }).toPass()
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
  await page.getByRole('button', { name: 'Other', exact: true }).tap()
  await expect(page.locator('.counter-wide button').first()).toHaveText(/Sold.*choose how many/)
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
  await page.getByRole('button', { name: 'Other', exact: true }).tap()
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

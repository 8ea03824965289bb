import { WIPE_MS } from '../../client/parts/wipe-lock.tsx'
import { contrastRatio } from '../../client/theme/contrast.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { BenchTablet } from './support/bench-touch.ts'
import type { Crowd } from './support/crowded-shop.ts'
import { crowd, crowdedShop } from './support/crowded-shop.ts'
import { keysOn } from './support/keys-on-page.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

const PHONE = { width: 390, height: 844 } as const
const HELD_MS = 1_600
/** WCAG 2.2, 1.4.3. */
const CONTRAST_MIN = 4.5

test('given a sheet opened from the keyboard, when Escape is pressed, then the line or the rack is there again', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  await server.act({ type: 'openDay' })
  for (const screen of ['bench', 'counter']) {
    const page = await browser.newPage()
    await page.goto(`${server.address}/${screen}`)
    await page.getByRole('button', { name: 'More' }).last().press('Enter')
    await expect(page.getByRole('dialog'), screen).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(page.getByRole('dialog'), screen).toHaveCount(0)
    await page.close()
  }
})

test('given a glass that is locked to be wiped, when it is touched, then nothing is done, a pedal still works, and holding the band ends it', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  const plain = { doughId: doughId('plain'), varietyId: null } as const
  await server.act({ type: 'carryIn', ...plain, pieces: 120, stage: 'rack', sinceMs: null })
  const lines = [{ varietyId: varietyId('plain'), pieces: 36 }]
  await server.act({ type: 'setLoadList', loads: [{ shelfId: shelfId('s1'), inAtMs: null, lines }] })
  const bench = await BenchTablet.open(browser, server, { settings: { keys: { F9: 'kettle' } } })
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('wipe'))
  const band = bench.page.locator('.wipe-band')
  await expect(band).toContainText(/Glass locked 1\d s/)
  await expectNoViolations(bench.page, 'locked')
  const key = await bench.shelf('s1').boundingBox()
  if (key === null) throw new Error('The shelf has no key.')
  for (let touches = 0; touches < 3; touches++) await bench.page.touchscreen.tap(key.x + 40, key.y + 40)
  expect((await server.state()).loads.size).toBe(0)

  await bench.page.keyboard.press('F9')
  await expect
    .poll(async () => [...(await server.state()).batches.values()].some((one) => one.stage === 'kettle'))
    .toBe(true)
  expect((await server.state()).loads.size).toBe(0)
  await expect(band).toBeVisible()

  const box = await band.boundingBox()
  if (box === null) throw new Error('The band is not there.')
  await bench.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await bench.page.mouse.down()
  await expect(band).toBeHidden({ timeout: HELD_MS * 3 })
  await bench.page.mouse.up()
  await bench.touch(bench.shelf('s1'))
  await expect.poll(async () => (await server.state()).loads.size).toBe(1)
})

test('given a glass that is locked, when nobody does anything, then it unlocks by itself', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'es', changeoverIn: 240 }))
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.named('Más'))
  await bench.page.clock.install()
  await bench.touch(bench.cell('wipe'))
  await expect(bench.page.locator('.wipe-band')).toBeVisible()
  await bench.page.clock.fastForward(WIPE_MS - 2_000)
  await expect(bench.page.locator('.wipe-band')).toBeVisible()
  await bench.page.clock.fastForward(2_000)
  await expect(bench.page.locator('.wipe-band')).toBeHidden()
})

for (const [n, language] of (['en', 'es'] as const).entries()) {
  test(`given a crowded line in ${language}, when it is shown dark and in large print, then nothing overlaps or is cut off, and contrast holds${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    const shop: Crowd = { varieties: language === 'en' ? 12 : 28, shelves: language === 'en' ? 3 : 7, language }
    await server.start(crowdedShop(shop))
    await crowd(server, shop)
    for (const settings of [{ theme: 'dark' }, { textPercent: 125 }, { theme: 'dark', textPercent: 150 }]) {
      const bench = await BenchTablet.open(browser, server, { settings })
      const state = JSON.stringify(settings)
      const { dataset } = await bench.page.evaluate(() => ({ dataset: { ...document.documentElement.dataset } }))
      expect(dataset.theme).toBe(settings.theme ?? 'light')
      expect(dataset.print).toBe(settings.textPercent === undefined ? 'usual' : 'large')
      const texts = await textsOn(bench.page)
      expect(overlaps(texts), state).toEqual([])
      expect(cutOff(texts), state).toEqual([])
      const faint = texts.filter(({ ink, ground }) => contrastRatio(ink, ground) < CONTRAST_MIN)
      expect(
        faint.map(({ text }) => text),
        state,
      ).toEqual([])
      await expectNoViolations(bench.page, state)
    }
  })
}

test('given the settings of a bench, when dark and large print are chosen by touch, then both hold after a reload', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('settings'))
  await bench.touch(bench.cell('part look'))
  await bench.touch(bench.named('Dark'))
  await bench.touch(bench.page.getByRole('button', { name: 'Large', exact: true }))
  const html = bench.page.locator('html')
  await expect(html).toHaveAttribute('data-theme', 'dark')
  await bench.page.reload()
  await bench.page.locator('.bench-board').waitFor()
  await expect(html).toHaveAttribute('data-theme', 'dark')
  await expect(html).toHaveAttribute('data-print', 'large')
})

const LATER: ReadonlySet<string> = new Set(['opening', 'kettle', 'changeover', 'notes', 'settings'])

for (const [n, language] of (['en', 'es'] as const).entries()) {
  test(`given a phone in ${language}, when a load is put in, flipped and taken out and every sheet is opened, then all of it is within its width${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    await server.start(shiftShop({ language, changeoverIn: 30 }))
    const plain = { doughId: doughId('plain'), varietyId: null } as const
    await server.act({ type: 'carryIn', ...plain, pieces: 120, stage: 'rack', sinceMs: null })
    const lines = [{ varietyId: varietyId('sesame'), pieces: 36 }]
    await server.act({ type: 'setLoadList', loads: [{ shelfId: shelfId('s1'), inAtMs: null, lines }] })
    const bench = await BenchTablet.open(browser, server, { inches: 6.1, size: PHONE })
    const within = async (state: string) => {
      for (const { name, left, width } of await keysOn(bench.page)) {
        expect(left, `${state}: ${name}`).toBeGreaterThanOrEqual(0)
        expect(left + width, `${state}: ${name}`).toBeLessThanOrEqual(PHONE.width)
      }
      expect(overlaps(await textsOn(bench.page)), state).toEqual([])
      await expectNoViolations(bench.page, state)
    }
    await within('line')
    for (const act of ['load', 'flip', 'out']) {
      await expect(bench.page.locator('[data-shelf="s1"]')).toHaveAttribute('data-act', act)
      await bench.touch(bench.shelf('s1'))
    }
    await expect.poll(async () => (await server.state()).stock.size).toBeGreaterThan(0)
    const further = bench.page.locator('.bench-page button').last()
    for (const cell of ['line', 'pull', 'opening', 'kettle', 'changeover', 'notes', 'done', 'settings']) {
      await bench.touch(bench.page.locator('.bench-bottom-key button').last())
      while ((await bench.cell(cell).count()) === 0) await bench.touch(further)
      await bench.touch(bench.cell(cell))
      // Some sheets are fetched after the line stands.
      if (LATER.has(cell)) await bench.page.locator('.bench-mode, .bench-cell, .bench-notes').first().waitFor()
      await within(cell)
      await bench.touch(bench.page.locator('.bench-sheet-back button'))
    }
  })
}

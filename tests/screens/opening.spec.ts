import type { Browser, Page } from '@playwright/test'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { BenchTablet } from './support/bench-touch.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectLegible, expectNoViolations, openWall } from './support/wall-page.ts'

const MINUTE_MS = 60_000
const RYE = doughId('rye')

/** A day with dough in the cooler and a first load in 42 minutes. */
async function beforeOpening(server: ShopServer, first = 'sesame'): Promise<void> {
  await server.act({ type: 'openDay' })
  await server.act({ type: 'carryIn', doughId: RYE, varietyId: null, pieces: 90, stage: 'chill', sinceMs: null })
  const lines = [{ varietyId: varietyId(first), pieces: 36 }]
  const inAtMs = epochMs(Date.now() + 42 * MINUTE_MS)
  await server.act({ type: 'setLoadList', loads: [{ shelfId: shelfId('s1'), inAtMs, lines }] })
}

async function opened(browser: Browser, server: ShopServer): Promise<{ wall: Page; bench: BenchTablet }> {
  return { wall: await openWall(browser, server), bench: await BenchTablet.open(browser, server) }
}

const row = (bench: BenchTablet, id: string) => bench.page.locator(`[data-row="${id}"]`)

test('given an opening, when its list is done by touch, a float test fails and passes, a note is cleared and the first load goes in, then the wall follows each', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  await beforeOpening(server)
  const { wall, bench } = await opened(browser, server)
  await expect(wall.locator('.wall-steps-title')).toContainText(/First load in \d+ min/)
  await expect(wall.locator('.wall-step')).toHaveCount(3)
  await expectLegible(wall, 'opening')
  await expectNoViolations(wall, 'wall, opening')

  await bench.touch(bench.page.locator('.bench-shift-key button'))
  await bench.touch(bench.page.getByRole('button', { name: 'Who', exact: true }))
  await bench.touch(bench.cell('ana'))
  await bench.touch(bench.page.locator('.bench-shift-key button'))
  await expectNoViolations(bench.page, 'bench, opening')
  await bench.touch(row(bench, 'oven-on').getByRole('button', { name: 'Done' }))
  await expect(row(bench, 'oven-on')).toContainText(/done \d+:\d\d, Ana/)
  await expect(wall.locator('.wall-steps')).toContainText(/Oven-on done \d+:\d\d Ana/)

  // Given to Ben by name, then done by whoever stands at this tablet.
  await bench.touch(row(bench, 'kettle-lit').getByRole('button', { name: /^Who does/ }))
  await bench.touch(bench.cell('ben'))
  await expect(wall.locator('.wall-step', { hasText: 'Kettle-lit' })).toContainText('Ben')

  await bench.touch(row(bench, 'float rye').getByRole('button', { name: /^Not ready/ }))
  await bench.touch(bench.cell('look 15'))
  await expect(row(bench, 'float rye')).toContainText(/not ready, again \d+:\d\d/)
  await expect(wall.locator('.wall-step', { hasText: 'Float Rye' })).toContainText(/not ready, again/)
  const asked = (await server.state()).marks.get('float rye')
  expect(asked).toMatchObject({ kind: 'float', passed: false, personId: 'ana' })
  await bench.touch(row(bench, 'float rye').getByRole('button', { name: /^Passed/ }))
  await expect.poll(async () => (await server.state()).marks.get('float rye')).toMatchObject({ passed: true })
  await expect(wall.locator('.wall-step')).toHaveCount(1)

  await bench.touch(bench.page.locator('.bench-sheet-back button'))
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('notes'))
  await bench.page.getByRole('textbox').fill('rye slow')
  await expectNoViolations(bench.page, 'bench, notes')
  await bench.touch(bench.named('Leave the note'))
  await expect(wall.getByRole('button', { name: 'Clear: rye slow' })).toBeVisible()
  await expectLegible(wall, 'opening with a note')
  await wall.getByRole('button', { name: 'Clear: rye slow' }).tap()
  await expect(wall.getByRole('button', { name: 'Clear: rye slow' })).toBeHidden()
  await expect.poll(async () => (await server.state()).notes.size).toBe(0)

  await server.act({ type: 'writeNote', text: 'school moved' })
  await bench.touch(bench.page.locator('.bench-sheet-back button'))
  await bench.touch(bench.shelf('s1'))
  await expect(wall.locator('.wall-steps')).toBeHidden()
  // After the first load the note is a small mark.
  await expect(wall.locator('.wall-note')).toContainText('1 note')
  await expect(wall.locator('.wall-one-note')).toBeHidden()
  await expectLegible(wall, 'after the first load')
})

for (const { varieties, language } of [
  { varieties: 12, language: 'en' },
  { varieties: 28, language: 'es' },
] as const) {
  test(`given ${varieties} varieties in ${language}, long steps, late ones and many notes, when the opening is shown, then nothing overlaps or is cut off${lookMark(varieties === 12 ? 0 : 1)}`, async ({
    browser,
    server,
  }) => {
    await server.start(shiftShop({ language, changeoverIn: 240, varieties, isLong: true }))
    await beforeOpening(server, 'v0')
    for (let n = 0; n < 4; n++)
      await server.act({ type: 'writeNote', text: `centeno lento, la escuela pasa a las 7:30, ${n}` })
    const { wall, bench } = await opened(browser, server)
    await expect(wall.locator('.wall-step-late').first()).toBeVisible()
    await expectLegible(wall, 'opening')
    for (const settings of [{ theme: 'light' }, { textPercent: 150 }]) {
      const other = await openWall(browser, server, settings)
      await expect(other.locator('.wall-step').first()).toBeVisible()
      await expectLegible(other, JSON.stringify(settings), 4.5)
    }
    await bench.touch(bench.page.locator('.bench-shift-key button'))
    await expectNoViolations(bench.page, 'bench, long opening')
    const texts = await textsOn(bench.page)
    expect(overlaps(texts)).toEqual([])
    expect(cutOff(texts)).toEqual([])
  })
}

test('[I8] given a kettle that wants care, when it is topped up by one touch, then it recovers, and what touched it and the boards is told with a caution', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  const plain = { doughId: doughId('plain'), varietyId: null } as const
  await server.act({ type: 'carryIn', ...plain, pieces: 240, stage: 'rack', sinceMs: null })
  const load = { type: 'load', plannedId: null, lines: [{ varietyId: varietyId('sesame'), pieces: 48 }] } as const
  for (const shelf of ['s1', 's2']) await server.act({ ...load, shelfId: shelfId(shelf) }, 'bench')
  const { wall, bench } = await opened(browser, server)
  const key = bench.page.locator('.bench-shift-key button')
  await expect(key).toContainText('Top up')
  await expect(key).toContainText('96 boiled')
  await expect(wall.locator('.wall-care')).toContainText('Top up: 96 boiled')
  const before = bench.touches
  await bench.touch(key)
  expect(bench.touches - before).toBe(1)
  await expect.poll(async () => (await server.state()).cares.get('topUp')?.kind).toBe('topUp')
  await expect(bench.page.locator('.bench-kettle .ring-running')).toBeVisible()
  await expect(wall.locator('.wall-care')).toContainText(/boils again in \d+ min/)
  await expectLegible(wall, 'recovering')

  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('kettle'))
  await expectNoViolations(bench.page, 'bench, kettle')
  await bench.touch(bench.named('1 board fewer'))
  await expect.poll(async () => (await server.state()).marks.get('boards')).toMatchObject({ usable: 23 })
  await bench.touch(bench.named('In the water since its change'))
  await expect(bench.page.locator('.bench-list')).toContainText('Plain 96')
  await expect(bench.page.locator('.bench-list')).toContainText('contains wheat')
  await expect(bench.page.getByText('people here judge cross-contact')).toBeVisible()
  await bench.touch(bench.named('Care'))
  await bench.touch(bench.cell('boiling'))
  await expect.poll(async () => (await server.state()).cares.get('boiling')?.kind).toBe('boiling')
  await bench.touch(bench.cell('washBoards'))
  await bench.touch(bench.named('On the boards since their wash'))
  await expect(bench.page.locator('.bench-list')).toContainText('nothing on record')
  await bench.touch(bench.named('On trays, peel and stone'))
  await expect(bench.page.locator('.bench-list')).toContainText('Seed trays: Sesame 96')
  await expect(bench.page.locator('.bench-list')).toContainText('Peel: Sesame 96')
  await bench.touch(bench.named('Care'))
  await bench.touch(bench.cell('washTrays'))
  await bench.touch(bench.named('On trays, peel and stone'))
  await expect(bench.page.locator('.bench-list')).not.toContainText('Seed trays')
  await expect(bench.page.locator('.bench-list')).toContainText('Peel: Sesame 96')
})

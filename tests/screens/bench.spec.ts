import { doughId, shelfId, stationId, varietyId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { BenchTablet } from './support/bench-touch.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

const PLAIN = doughId('plain')
const EVERY_STAGE = shopWith({ stations: table(ALL_STATIONS) })
/** Three touches a load: one station, which loads, flips and takes out. */
const THREE = shopWith()

async function chilled(server: ShopServer, pieces = 150): Promise<void> {
  await server.act({ type: 'carryIn', doughId: PLAIN, varietyId: null, pieces, stage: 'chill', sinceMs: null })
}

async function listed(server: ShopServer, ...loads: readonly (readonly [string, ReturnType<typeof lines>])[]) {
  await server.act({
    type: 'setLoadList',
    loads: loads.map(([shelf, held]) => ({ shelfId: shelfId(shelf), inAtMs: null, lines: held })),
  })
}

/** Pieces by stage, of the server's state. */
async function stages(server: ShopServer): Promise<Record<string, number>> {
  const sums: Record<string, number> = {}
  for (const { stage, pieces } of (await server.state()).batches.values()) sums[stage] = (sums[stage] ?? 0) + pieces
  return sums
}

async function stockOf(server: ShopServer, variety: string): Promise<number> {
  const stock = (await server.state()).stock.get(varietyId(variety))
  return stock?.lots.reduce((sum, lot) => sum + lot.pieces, 0) ?? 0
}

test('[B1] given a shop that taps every stage, when a morning goes by touch, then each touch moves what it says', async ({
  browser,
  server,
}) => {
  await server.start(EVERY_STAGE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)])
  const bench = await BenchTablet.open(browser, server)

  await expect(bench.station('pull')).toHaveAccessibleName(/^Pull 3 trays Plain/)
  await bench.touch(bench.station('pull'))
  await expect.poll(() => stages(server)).toEqual({ chill: 105, rack: 45 })
  await expect(bench.station('kettle')).toContainText('Dip 36 Plain')
  await bench.touch(bench.station('kettle'))
  await expect.poll(() => stages(server)).toEqual({ chill: 105, rack: 9, kettle: 36 })
  await expect(bench.station('kettle')).toContainText(/Lift in \d+ s/)
  await bench.touch(bench.station('kettle'))
  await expect.poll(() => stages(server)).toEqual({ chill: 105, rack: 9, boards: 36 })
  await expect(bench.station('board')).toContainText('Sesame')
  await bench.touch(bench.station('board'))
  await expect
    .poll(async () => [...(await server.state()).batches.values()].some((one) => one.varietyId === 'sesame'))
    .toBe(true)

  await expect(bench.shelf('s1')).toContainText('Load 1')
  await expect(bench.shelf('s1')).toContainText('Sesame 36')
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('Flip 1')
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('Out of 1')
  await bench.touch(bench.shelf('s1'))
  await expect.poll(() => stockOf(server, 'sesame')).toBe(36)
  expect(await stages(server)).toEqual({ chill: 105, rack: 9 })
  // Every stage was tapped: nothing was presumed, so nothing waits for dry hands.
  expect((await server.state()).unsure.size).toBe(0)
  expect(bench.touches).toBe(7)
})

test('[B4] given a shop that taps load, flip and out, when three shelves are baked, then it took three touches each', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)], ['s2', lines('poppy', 24)], ['s3', lines('plain', 48)])
  const bench = await BenchTablet.open(browser, server)
  await expect(bench.page.locator('[data-station]')).toHaveCount(0)
  for (const act of ['Load', 'Flip', 'Out of']) {
    for (const shelf of ['1', '2', '3']) {
      await expect(bench.shelf(`s${shelf}`)).toContainText(`${act} ${shelf}`)
      await bench.touch(bench.shelf(`s${shelf}`))
    }
  }
  await expect.poll(() => stockOf(server, 'plain')).toBe(48)
  expect([await stockOf(server, 'sesame'), await stockOf(server, 'poppy')]).toEqual([36, 24])
  expect(bench.touches).toBe(9)
  expect((await server.state()).unsure.size).toBe(0)
})

test('[B5] given a load that differs, when it is said before the load and while it bakes, then a touch or two do it', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36, 'poppy', 12)])
  const bench = await BenchTablet.open(browser, server)

  await bench.touch(bench.differs('s1'))
  // The shelf takes 48 and is full: a board of plain is a board of sesame less.
  await bench.touch(bench.cell('plain'))
  await expect(bench.cell('take')).toContainText('48 of 48 pieces')
  await bench.touch(bench.cell('take'))
  await expect(bench.shelf('s1')).toContainText('Flip 1')
  await expect(bench.shelf('s1')).toHaveAccessibleName(/Sesame 30, Poppy 12, Plain 6/)

  await bench.touch(bench.differs('s1'))
  await bench.touch(bench.page.locator('[data-line="poppy"] button').first())
  await bench.touch(bench.page.locator('.bench-grid [data-cell="cheddar"] button'))
  await bench.touch(bench.cell('take'))
  await expect(bench.shelf('s1')).toHaveAccessibleName(/Sesame 30, Plain 6, Cheddar 12/)
  await expect
    .poll(async () => (await server.state()).traces.map((trace) => trace.told.type))
    .toEqual(['changeSetUp', 'carryIn', 'setLoadList', 'load', 'changeLoad'])
})

test('given a load drawn by colour, when some comes out, then the rest bakes on', async ({ browser, server }) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36, 'poppy', 12)])
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('Flip 1')
  await bench.touch(bench.differs('s1'))
  await bench.touch(bench.named('Some out'))
  await bench.touch(bench.page.locator('[data-line="poppy"] button').first())
  await bench.touch(bench.named('1 Sesame more'))
  await bench.touch(bench.cell('take'))
  await expect.poll(() => stockOf(server, 'poppy')).toBe(12)
  expect(await stockOf(server, 'sesame')).toBe(6)
  expect(await stages(server)).toEqual({ chill: 102, oven: 30 })
})

test('given a load on the wrong shelf, when it is moved and back onto boards, then the board follows', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)])
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.shelf('s1'))
  await bench.touch(bench.differs('s1'))
  await bench.touch(bench.named('Move it'))
  await bench.touch(bench.cell('s3'))
  await expect(bench.shelf('s3')).toContainText('Flip 3')
  await bench.touch(bench.differs('s3'))
  await bench.touch(bench.named('Move it'))
  await bench.touch(bench.cell('boards'))
  await expect(bench.shelf('s3')).toContainText('Load 3')
  await expect.poll(() => stages(server)).toEqual({ chill: 114, boards: 36 })
})

test('[B7] given a wrong touch, when it is taken back, then all is as before; what cannot be says why', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)])
  const bench = await BenchTablet.open(browser, server)
  const takeBack = bench.named('Take back')
  const told = bench.page.locator('.bench-told')
  await expect(takeBack).toHaveAttribute('aria-disabled', 'true')
  await expect(takeBack).toContainText('nothing yet')
  await bench.touch(bench.shelf('s1'))
  await expect(told).toContainText('loaded 1: Sesame 36')
  await bench.touch(takeBack)
  await expect(told).toContainText('taken back:')
  await expect.poll(() => stages(server)).toEqual({ chill: 150 })
  await expect(bench.shelf('s1')).toContainText('Load 1')
  // A while later it names what it would take back next: nothing.
  await expect(told).toContainText('nothing done here yet')

  await bench.touch(bench.shelf('s1'))
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('done'))
  const rows = bench.page.locator('.bench-list-row')
  await expect(rows.first()).toContainText('loaded 1: Sesame 36')
  await expect(rows.nth(1)).toContainText('cannot be taken back')
  await bench.touch(rows.first().getByRole('button'))
  await expect.poll(() => stages(server)).toEqual({ chill: 150 })
  await bench.touch(bench.named('Back to the line'))
  await expect(bench.shelf('s1')).toContainText('Load 1')
})

test('given dropped and split pieces, when told by touch, then they are accounted for', async ({ browser, server }) => {
  await server.start(EVERY_STAGE)
  await server.act({ type: 'carryIn', doughId: PLAIN, varietyId: null, pieces: 45, stage: 'rack', sinceMs: null })
  const bench = await BenchTablet.open(browser, server)
  const onLine = async () => {
    await bench.touch(bench.named('More'))
    await bench.touch(bench.cell('line'))
    await bench.touch(bench.named(/^Plain 4/))
  }
  await onLine()
  await bench.touch(bench.named('15 pieces fewer'))
  await bench.touch(bench.named('15 pieces fewer'))
  await bench.touch(bench.named('1 piece fewer'))
  await bench.touch(bench.cell('waste'))
  await expect.poll(() => stages(server)).toEqual({ rack: 31 })
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('line'))
  await bench.touch(bench.named(/^Plain 31/))
  await bench.touch(bench.named('1 piece fewer'))
  await bench.touch(bench.cell('chill'))
  await expect.poll(() => stages(server)).toEqual({ rack: 1, chill: 30 })
  expect((await server.state()).account.get(PLAIN)?.wasted).toBe(14)
})

test('given trays that nobody knew of, something unplanned and a load left out, when told by touch, then the board knows', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await listed(server, ['s1', lines('sesame', 36)], ['s2', lines('poppy', 24)])
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('carry-in'))
  await bench.touch(bench.named('15 pieces more'))
  await bench.touch(bench.cell('take'))
  await expect.poll(() => stages(server)).toEqual({ chill: 30 })
  const [batch] = (await server.state()).batches.values()
  // Typed in as chilled overnight: its window is already open.
  expect((await server.state()).recordedAtMs - (batch?.sinceMs ?? 0)).toBeGreaterThan(11 * 3_600_000)

  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('skip'))
  await bench.touch(bench.named(/Sesame 36/))
  await expect(bench.shelf('s1')).toContainText('choose what')
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('unplanned'))
  await bench.touch(bench.cell('s3'))
  await bench.touch(bench.cell('cheddar'))
  await bench.touch(bench.cell('take'))
  await expect(bench.shelf('s3')).toContainText('Flip 3')
  await expect.poll(() => stages(server)).toEqual({ chill: 24, oven: 6 })
})

test('[B8] given what was presumed, when hands are dry, then one touch confirms one and one confirms all', async ({
  browser,
  server,
}) => {
  await server.start(EVERY_STAGE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)], ['s2', lines('poppy', 24)], ['s3', lines('plain', 24)])
  const bench = await BenchTablet.open(browser, server)
  for (const shelf of ['s1', 's2', 's3']) await bench.touch(bench.shelf(shelf))
  await expect(bench.named(/Dry hands/)).toContainText('3 to confirm')
  await bench.touch(bench.named(/Dry hands/))
  const rows = bench.page.locator('.bench-list-row')
  await expect(rows.first()).toContainText('loaded 1: Sesame 36')
  await expect(rows.first()).toContainText('36 Plain: dipped?')
  await bench.touch(rows.first().getByRole('button').first())
  await expect(rows).toHaveCount(2)
  await bench.touch(bench.named('All are right'))
  await expect(rows).toHaveCount(0)
  await expect.poll(async () => (await server.state()).unsure.size).toBe(0)
})

test('given somebody else’s tap on the same load, when this screen’s comes second, then it is a kind word among dry hands', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)])
  const bench = await BenchTablet.open(browser, server)
  await server.stop()
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('not confirmed yet')
  await bench.page.close()
  await server.start()
  const [planned] = (await server.state()).planned.values()
  await server.act(
    { type: 'load', shelfId: shelfId('s1'), plannedId: planned?.id ?? null, lines: lines('sesame', 36) },
    'bench',
  )

  const page = await bench.page.context().newPage()
  const again = new BenchTablet(page)
  await page.goto(`${server.address}/bench`)
  await expect(page.locator('.bench-told')).toContainText('Already done')
  await expect(again.shelf('s1')).toContainText('Flip 1')
  await again.touch(again.named(/Dry hands/))
  await again.touch(again.named('Put away'))
  await again.touch(again.named('Back to the line'))
  await expect(again.named(/Dry hands/)).toContainText('nothing to confirm')
  expect((await server.state()).loads.size).toBe(1)
})

test('[B6] given no contact, when loads are tapped and the page is opened anew, then every tap arrives once, in order', async ({
  browser,
  server,
}) => {
  await server.start(THREE)
  await chilled(server)
  await listed(server, ['s1', lines('sesame', 36)], ['s2', lines('poppy', 24)])
  const bench = await BenchTablet.open(browser, server)
  await server.stop('SIGKILL')
  await expect(bench.page.locator('.bench-link')).toContainText('No contact since')
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('Flip 1')
  await bench.touch(bench.shelf('s1'))
  await expect(bench.shelf('s1')).toContainText('Out of 1')
  await bench.touch(bench.shelf('s2'))
  await expect(bench.shelf('s2')).toContainText('not confirmed yet')
  await expect(bench.page.locator('.bench-link')).toContainText('3 taps waiting')

  await bench.page.close()
  await server.start()
  const page = await bench.page.context().newPage()
  await page.goto(`${server.address}/bench`)
  const again = new BenchTablet(page)
  await expect(again.shelf('s1')).toContainText('Out of 1')
  await expect(again.shelf('s2')).toContainText('Flip 2')
  await expect
    .poll(async () => (await server.state()).traces.map((trace) => trace.told.type))
    .toEqual(['changeSetUp', 'carryIn', 'setLoadList', 'load', 'flip', 'load'])
  await expect(page.locator('.bench-link')).toContainText('linked')
  await expect(page.getByText('not confirmed yet')).toHaveCount(0)
})

test('[B9] given the kettle’s pedal, when it is pressed, then it does the kettle’s act on show, once a press', async ({
  browser,
  server,
}) => {
  await server.start(EVERY_STAGE)
  await server.act({ type: 'carryIn', doughId: PLAIN, varietyId: null, pieces: 48, stage: 'rack', sinceMs: null })
  await listed(server, ['s1', lines('sesame', 36)])
  const bench = await BenchTablet.open(browser, server, { settings: { keys: { F8: stationId('kettle') } } })
  const { page } = bench
  // Half a second on show is asked for: a press that comes too soon does nothing, and says so.
  const press = (then: string) =>
    expect(async () => {
      await page.keyboard.press('F8')
      await expect(bench.station('kettle')).toContainText(then, { timeout: 1_000 })
    }).toPass()
  await expect(bench.station('kettle')).toContainText('Dip 36 Plain')
  await press('Lift')
  await press('Dip')
  await expect.poll(() => stages(server)).toEqual({ rack: 12, boards: 36 })
  // A sheet over the line hides what the pedal would do.
  await bench.touch(bench.named('More'))
  await page.keyboard.press('F8')
  await bench.touch(bench.named('Back to the line'))
  expect(await stages(server)).toEqual({ rack: 12, boards: 36 })
})

test('given another station and language, when they are chosen on the tablet, then its keys and words follow', async ({
  browser,
  server,
}) => {
  await server.start(EVERY_STAGE)
  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.named('More'))
  await bench.touch(bench.cell('settings'))
  await bench.touch(bench.cell('part name'))
  await bench.page.getByRole('textbox').fill('Line left')
  await bench.touch(bench.named('Español'))
  await bench.touch(bench.named('Esta pantalla'))
  await bench.touch(bench.cell('part station'))
  await bench.touch(bench.cell('kettle'))
  await bench.touch(bench.named('Esta pantalla'))
  await bench.touch(bench.named('Volver a la línea'))
  await expect(bench.page.locator('.bench-link')).toContainText('Line left')
  await expect(bench.station('kettle')).toContainText('Hervir')
  await expect(bench.station('pull')).toHaveCount(0)
  await expect(bench.shelf('s1')).toContainText('Cargar 1')
})

import type { Batch } from '../../shared-core/day/state.ts'
import { dayPlan } from '../../shared-core/dough/day-plan.ts'
import type { Mix } from '../../shared-core/dough/mix.ts'
import { doughId, shelfId } from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { lines } from '../core/support/make.ts'
import { BenchTablet } from './support/bench-touch.ts'
import { expectWhole } from './support/bench-whole.ts'
import { busyRoom, dateIn, doughShop, noonIn } from './support/dough-shop.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

const HOUR_MS = 3_600_000
const AFTERNOON = 13

/** What is wanted for tomorrow, planned as the desk plans it. */
async function wantedTomorrow(server: ShopServer, shop: Shop, wanted: Readonly<Record<string, number>>): Promise<void> {
  const date = dateIn(shop, 1)
  const asked = Object.entries(wanted).map(([id, pieces]) => ({
    doughId: doughId(id),
    varietyId: null,
    pieces,
    ordered: 0,
  }))
  await server.act({ type: 'setWanted', date, lines: asked })
  const { mixes } = dayPlan(await server.state(), shop, date, noonIn(shop))
  await server.act({
    type: 'planMixes',
    date,
    mixes: mixes.map(({ formulaId, flourMilligrams, startAtMs, gives }) => ({
      formulaId,
      flourMilligrams,
      startAtMs,
      gives,
    })),
  })
}

async function onlyMix(server: ShopServer): Promise<Mix> {
  const [mix] = (await server.state()).mixes.values()
  if (mix === undefined) throw new Error('there is no mix')
  return mix
}

async function batches(server: ShopServer): Promise<readonly Batch[]> {
  return [...(await server.state()).batches.values()]
}

/** On the pad that is open. */
async function typed(bench: BenchTablet, digits: string): Promise<void> {
  for (const digit of digits) await bench.touch(bench.cell(`pad ${digit}`))
  await bench.touch(bench.cell('save'))
}

const station = (bench: BenchTablet, id: string) =>
  bench.page.locator(`[data-room-station="${id}"] [data-item] button`).first()

async function toTheRoom(bench: BenchTablet): Promise<void> {
  await bench.touch(bench.named(/^Dough room/))
  await bench.page.locator('.dough-way').waitFor()
}

test('given pieces wanted for tomorrow, when a baker goes by touch from the scale to the cooler, then the next morning pulls those very trays', async ({
  browser,
  server,
}) => {
  const shop = doughShop({ hour: AFTERNOON })
  await server.start(shop)
  await wantedTomorrow(server, shop, { plain: 45 })
  const bench = await BenchTablet.open(browser, server)
  await toTheRoom(bench)

  await bench.touch(station(bench, 'scale'))
  await expect(bench.cell('temp flour')).toContainText('assumed 68 °F')
  for (const temp of ['flour', 'room']) {
    await bench.touch(bench.cell(`temp ${temp}`))
    await typed(bench, '70')
    await expect(bench.cell(`temp ${temp}`)).toContainText('70 °F')
  }
  const { lines: sheet, id } = await onlyMix(server)
  for (const line of sheet) {
    await expect(bench.page.locator('.dough-figure').first()).toContainText(/\d (g|kg)$/)
    await bench.touch(bench.cell('weighed'))
    await expect(bench.cell(`line ${line.key}`)).toContainText('✓')
  }
  await bench.touch(bench.cell('start-mixer'))
  const on = bench.page.locator('[data-cell="on"] [data-block="act"]')
  for (const next of ['Mixer off', 'On to the bench']) {
    await expect(on).toContainText(next)
    await bench.touch(bench.cell('on'))
  }
  await bench.touch(bench.cell('temp dough'))
  await typed(bench, '80')
  await expect.poll(async () => (await server.state()).frictions.size).toBe(1)
  await bench.touch(bench.cell('place'))
  await typed(bench, '1-4')
  await expect(bench.cell('put')).toContainText('45 Plain onto trays')
  await bench.touch(bench.cell('put-last'))
  await expect(station(bench, 'proof')).toContainText('rack 1-4')
  await expect(bench.page.locator('.bench-told')).toContainText('45 Plain')
  expect((await onlyMix(server)).stage).toBe('ended')

  // A wrong touch: what was shaped is dough at the bench again.
  await bench.touch(bench.named(/^Take back/))
  await expect.poll(() => batches(server)).toEqual([])
  await bench.touch(station(bench, 'bench'))
  await bench.touch(bench.cell('put-last'))
  await expect.poll(async () => (await batches(server))[0]).toMatchObject({ pieces: 45, stage: 'proof', mixId: id })

  await server.stop()
  await server.start(undefined, 1.5 * HOUR_MS)
  await expect(bench.page.locator('[data-room-station="proof"] [data-block="act"]')).toContainText('ready')
  await bench.touch(station(bench, 'proof'))
  await expect(station(bench, 'cooler')).toContainText('Plain 45')
  const [chilled] = await batches(server)
  expect(chilled).toMatchObject({ stage: 'chill', pieces: 45, mixId: id })

  await server.stop()
  await server.start(undefined, 16 * HOUR_MS)
  await server.act({
    type: 'setLoadList',
    loads: [{ shelfId: shelfId('s1'), inAtMs: null, lines: lines('sesame', 36) }],
  })
  await bench.touch(bench.named('Back to the line'))
  await expect(bench.station('pull')).toHaveAccessibleName(/^Pull 3 trays Plain/)
  await bench.touch(bench.station('pull'))
  await expect.poll(async () => (await batches(server))[0]).toMatchObject({ stage: 'rack', pieces: 45, mixId: id })
  expect((await server.state()).day?.label).toBe(dateIn(shop, 1))
})

const LOOKS = [
  { language: 'en', inches: 10.1 },
  { language: 'es', inches: 10.1 },
  { language: 'es', inches: 11.6 },
] as const

/** What else can be opened from there, touch by touch. */
const FURTHER = [['preparations'], ['readings', 'read room'], ['readings', 'check', 'sour'], ['more cooler']] as const

for (const [n, { language, inches }] of LOOKS.entries()) {
  test(`given a busy dough room on ${inches} inches in ${language}, then a tablet opens on it, its keys are 20 mm and no text is lost on its pages${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    const shop = doughShop({ hour: AFTERNOON, language, isSlow: true })
    await server.start(shop)
    await busyRoom(server, shop)
    const bench = await BenchTablet.open(browser, server, { inches })
    await bench.page.locator('.dough-way').waitFor()
    const look = (page: string) => expectWhole(bench, inches, `${language}, ${page}`)
    await look('room')
    const back = bench.page.locator('.bench-sheet-back button')
    for (const id of n === 0 ? ['bench'] : ['scale', 'mixer', 'bench', 'proof', 'cooler']) {
      await bench.touch(bench.cell('differs'))
      await bench.touch(station(bench, id))
      await look(id)
      await bench.touch(back)
    }
    for (const [opens, ...further] of n === 0 ? [] : FURTHER) {
      await bench.touch(bench.cell(opens))
      for (const cell of further) await bench.touch(bench.cell(cell))
      await look([opens, ...further].join(', '))
      while ((await bench.page.locator('.dough-way').count()) === 0) await bench.touch(back)
    }
  })
}

import type { Page } from '@playwright/test'
import { arcMinutesOf } from '../../client/parts/legibility.ts'
import { contrastRatio } from '../../client/theme/contrast.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import { ALL_STATIONS, dough, dwell, shelf, shopWith, TRADE_WINDOWS, table, variety } from '../core/support/shop.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import type { PaintedText } from './support/texts-on-page.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'

const PANEL = { diagonalInch: 43, widthPx: 1920, heightPx: 1080 }
const DISTANCE_M = 3
/** The browser rounds font sizes to a 64th of a pixel. */
const ARC_SLACK = 0.05
/** WCAG 2.2, 1.4.6: text that is read from afar deserves the higher of the two. */
const CONTRAST_MIN = 7
/** Acts, countdowns and counts. */
const LARGE = ['wall-act', 'wall-calls', 'wall-when', 'wall-rod-count', 'ring-label', 'wall-bar-next', 'wall-title']

test.use({ viewport: { width: PANEL.widthPx, height: PANEL.heightPx } })

/** Twenty-four characters, as long as the set-up allows, in words as shops use them. */
const LONG_NAMES = [
  'Sun-dried Tomato & Basil',
  'Cinnamon Raisin & Walnut',
  'Blueberry Lemon Crumbled',
  'Pumpernickel with Onions',
  'Asiago and Roast Garlic',
  'Jalapeño Cheddar Special',
]

function longShop(varieties: number, language: Language): Shop {
  // No two may be called the same: each ends in a number of its own.
  const name = (n: number) => `${(LONG_NAMES[n % LONG_NAMES.length] ?? '').slice(0, 21).trimEnd()} ${n + 10}`
  // Hours before its changeover, whatever the machine's clock says.
  const { profile, hours } = shiftShop({ language, changeoverIn: 240 })
  return shopWith({
    profile,
    hours,
    stations: table(ALL_STATIONS),
    shelves: table(
      Array.from({ length: 12 }, (_, n) => shelf({ id: `s${n}`, order: n, name: `Hearth${n + 10}`, pieces: 72 })),
    ),
    doughs: table(LONG_NAMES.map((_, n) => dough({ id: `d${n}`, order: n, name: name(n) }))),
    varieties: table(
      Array.from({ length: varieties }, (_, n) =>
        variety({ id: `v${n}`, order: n, name: name(n), doughId: doughId(`d${n % LONG_NAMES.length}`) }),
      ),
    ),
  })
}

async function openWall(page: Page, server: ShopServer, settings: object = {}): Promise<void> {
  await page.addInitScript((kept) => localStorage.setItem('boilboard.wall.settings', kept), JSON.stringify(settings))
  await page.goto(`${server.address}/wall`)
  await page.evaluate(() => document.fonts.ready)
}

async function carryIn(server: ShopServer, count: number): Promise<void> {
  for (let n = 0; n < count; n++) {
    for (const stage of ['rack', 'chill', 'proof'] as const) {
      const id = doughId(`d${n}`)
      await server.act({ type: 'carryIn', doughId: id, varietyId: null, pieces: 240 + n, stage, sinceMs: null })
    }
  }
}

/** Twelve shelves at work, the kettle full, some out and sold down. */
async function fillLine(server: ShopServer, varieties: number): Promise<void> {
  const line = (n: number, pieces: number) => ({ varietyId: varietyId(`v${n % varieties}`), pieces })
  for (let n = 0; n < 12; n++) {
    const lines = [line(n, 36), line(n + 1, 24)]
    await server.act({ type: 'load', shelfId: shelfId(`s${n}`), plannedId: null, lines }, 'bench')
  }
  const state = await server.state()
  const loads = [...state.loads.values()]
  for (const load of loads.slice(0, 6)) await server.act({ type: 'flip', loadId: load.id }, 'bench')
  for (const load of loads.slice(0, 2)) {
    await server.act({ type: 'out', loadId: load.id, from: 'second-side', lines: null }, 'bench')
  }
  await server.act({ type: 'count', varietyId: varietyId('v0'), pieces: 30 }, 'counter')
  await server.act({ type: 'sell', lines: [line(0, 13), line(1, 24)] }, 'counter')
  const planned = [line(3, 24), line(4, 12)]
  await server.act({ type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: planned }] })
  await server.act({ type: 'dip', doughId: doughId('d3'), varietyId: null, pieces: 36 }, 'bench')
}

/** Holds what every state of the wall must hold. */
function expectLegible(texts: readonly PaintedText[], state: string): void {
  expect(texts.length, state).toBeGreaterThan(3)
  for (const { text, within, fontPx, ink, ground } of texts) {
    const arcMinutes = arcMinutesOf({ ...PANEL, distanceM: DISTANCE_M, fontPx })
    const least = LARGE.some((name) => within.includes(name)) ? 22 : 16
    expect(arcMinutes, `${state}: "${text}"`).toBeGreaterThanOrEqual(least - ARC_SLACK)
    expect(contrastRatio(ink, ground), `${state}: "${text}"`).toBeGreaterThanOrEqual(CONTRAST_MIN)
    if (LARGE.some((name) => within.includes(name))) expect(text, state).not.toContain('…')
  }
  expect(overlaps(texts), state).toEqual([])
  expect(cutOff(texts), state).toEqual([])
}

for (const [n, language] of (['en', 'es'] as const).entries()) {
  for (const [m, varieties] of [12, 28].entries()) {
    test(`[G1, G2, G4] given ${varieties} varieties with the longest names in ${language}, then every state of the wall is legible from 3 m, whole, and nothing overlaps${lookMark((n + m) % 2)}`, async ({
      page,
      server,
    }) => {
      await server.start(longShop(varieties, language))
      await openWall(page, server)
      await expect(page.locator('.wall-empty-title')).toBeVisible()
      expectLegible(await textsOn(page), 'before the day')

      await carryIn(server, 5)
      await expect(page.locator('.wall-item').first()).toBeVisible()
      expectLegible(await textsOn(page), 'quiet')

      await fillLine(server, varieties)
      await expect(page.locator('.wall-shelf').first()).toBeVisible()
      await expect(page.locator('.wall-kettle .ring-running')).toBeVisible()
      const busy = await textsOn(page)
      expectLegible(busy, 'busy')
      expect(busy.filter(({ within }) => within.includes('wall-act')).length).toBeGreaterThanOrEqual(6)
      expect(busy.filter(({ within }) => within.includes('wall-rod-count')).length).toBeGreaterThanOrEqual(2)

      const countdown = page.locator('.wall-kettle .ring-label')
      await server.stop()
      await expect(page.locator('.wall-status')).toContainText(
        language === 'en' ? 'No contact since' : 'Sin contacto desde',
      )
      const before = await countdown.textContent()
      await expect(countdown).not.toHaveText(before ?? '')
      expectLegible(await textsOn(page), 'away')
    })
  }
}

test('[G3] given a flip and a lift that nobody does, then they turn inside out and striped, in words too, and stay legible', async ({
  page,
  server,
}) => {
  const windows = { ...TRADE_WINDOWS, kettle: dwell(1, 2, 3, 's'), firstSide: dwell(1, 2, 3, 's') }
  await server.start(shopWith({ windows, stations: table(ALL_STATIONS) }))
  await openWall(page, server)
  const plain = { doughId: doughId('plain'), varietyId: null, pieces: 36 }
  await server.act({ type: 'carryIn', ...plain, pieces: 120, stage: 'rack', sinceMs: null })
  await loadSesame(server)
  await server.act({ type: 'dip', ...plain }, 'bench')

  await expect(page.locator('.wall-shelf[data-block="late"]')).toContainText(/Flip 1, \d+ s late/)
  await expect(page.locator('.wall-kettle[data-block="late"]')).toContainText(/Lift,? ?\d+ s late/)
  await expect(page.locator('.wall-bar[data-block="late"]')).toContainText('late')
  await expect(page.locator('.wall-shelf .ring-late')).toBeVisible()
  expectLegible(await textsOn(page), 'late')
})

test('[G5] given a kettle’s pedal, when it is pressed, then the act on show is done once, and a held key does no more', async ({
  page,
  server,
}) => {
  await server.start(shopWith({ stations: table(ALL_STATIONS) }))
  await openWall(page, server, { keys: { F9: 'kettle' } })
  const plain = { doughId: doughId('plain'), varietyId: null }
  const done = page.locator('.wall-bar-done')
  await server.act({ type: 'carryIn', ...plain, pieces: 120, stage: 'rack', sinceMs: null })
  await loadSesame(server)
  await expect(page.locator('.wall-bar')).toContainText('Flip 1')

  await page.keyboard.press('F9')
  await expect(done).toContainText('Kettle: nothing to do')
  expect((await server.state()).loads.size).toBe(1)

  await server.act({ type: 'dip', ...plain, pieces: 36 }, 'bench')
  const planned = [{ varietyId: varietyId('plain'), pieces: 72 }]
  await server.act({ type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: planned }] })
  await expect(page.locator('.wall-kettle .ring-running')).toBeVisible()
  await expect(done).toBeHidden()
  // Well over half a second after the dip came on show: the flash of the press before lasts longer.
  await page.keyboard.down('F9')
  await expect(done).toContainText('Done: lift')
  await expect.poll(() => stagesOf(server)).toEqual(['boards', 'rack'])

  await expect(done).toBeHidden()
  await expect(page.locator('.wall-kettle')).toContainText('Next')
  await page.keyboard.down('F9')
  await expect(page.locator('.wall-kettle .ring-idle')).toBeVisible()
  expect(await stagesOf(server)).toEqual(['boards', 'rack'])

  await page.keyboard.up('F9')
  await page.keyboard.press('F9')
  await expect(done).toContainText('Done: dip 36 Plain')
  await expect.poll(() => stagesOf(server)).toEqual(['boards', 'kettle'])
})

async function loadSesame(server: ShopServer): Promise<void> {
  const lines = [{ varietyId: varietyId('sesame'), pieces: 48 }]
  await server.act({ type: 'load', shelfId: shelfId('s1'), plannedId: null, lines }, 'bench')
}

async function stagesOf(server: ShopServer): Promise<string[]> {
  const { batches } = await server.state()
  return [...new Set([...batches.values()].filter(({ stage }) => stage !== 'oven').map(({ stage }) => stage))].sort()
}

test('given the settings of the wall, when a pedal is learnt and the distance set, then both hold after a reload, and the caution is there', async ({
  page,
  server,
}) => {
  await server.start(shopWith({ stations: table(ALL_STATIONS) }))
  await page.goto(`${server.address}/wall`)
  await expect(page.locator('.wall-empty-title')).toBeVisible()
  await page.keyboard.press('s')
  const sheet = page.getByRole('dialog')
  await expect(sheet).toContainText('not a safety device')
  await sheet.getByRole('button', { name: 'Kettle: Learn a key' }).click()
  await expect(sheet.getByRole('button', { name: 'Kettle: Learn a key' })).toBeHidden()
  await page.keyboard.press('F10')
  await expect(sheet.getByText('key F10')).toBeVisible()
  await sheet.getByRole('button', { name: '2 m', exact: true }).click()
  await page.keyboard.press('Escape')
  await expect(sheet).toBeHidden()

  await page.reload()
  await expect(page.locator('.wall-empty-title')).toBeVisible()
  const kept = await page.evaluate(() => JSON.parse(localStorage.getItem('boilboard.wall.settings') ?? '{}'))
  expect(kept).toMatchObject({ keys: { F10: 'kettle' }, viewingMetres: 2 })
  await page.locator('.wall-clock').click()
  await expect(page.getByRole('dialog').getByText('key F10')).toBeVisible()
})

test('given two late acts and a browser that wants a touch first, when the wall is touched, then it sounds one at a time, and the touch quiets the first', async ({
  page,
  server,
}) => {
  const windows = { ...TRADE_WINDOWS, kettle: dwell(1, 2, 3, 's'), firstSide: dwell(1, 2, 3, 's') }
  await server.start(shopWith({ windows, stations: table(ALL_STATIONS) }))
  await page.addInitScript(() => {
    const begun: number[] = []
    const start = OscillatorNode.prototype.start
    OscillatorNode.prototype.start = function (when = 0) {
      begun.push(this.context.currentTime)
      start.call(this, when)
    }
    Object.assign(window, { begun })
  })
  await openWall(page, server)
  await server.act({
    type: 'carryIn',
    doughId: doughId('plain'),
    varietyId: null,
    pieces: 120,
    stage: 'rack',
    sinceMs: null,
  })
  await loadSesame(server)
  await server.act({ type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 36 }, 'bench')
  await expect(page.locator('.wall-kettle[data-block="late"]')).toBeVisible()
  await expect(page.locator('.wall-note')).toHaveText('touch for sound')
  const begun = () =>
    page.evaluate((): number[] => ('begun' in window && Array.isArray(window.begun) ? window.begun.map(Number) : []))
  expect(await begun()).toEqual([])

  await page.locator('.wall-kettle').click()
  await expect(page.locator('.wall-bar-done')).toContainText('somebody is coming')
  await expect(page.locator('.wall-note')).toBeHidden()
  await expect.poll(async () => (await begun()).length).toBeGreaterThanOrEqual(2)
  const [first = 0, second = 0] = await begun()
  // A late figure lasts over a second, and the same act rests for five: nothing begins before what sounds has ended.
  expect(second - first).toBeGreaterThan(1)
})

import type { Page } from '@playwright/test'
import type { WantedLine } from '../../shared-core/dough/mix.ts'
import { doughId, ingredientId } from '../../shared-core/ids.ts'
import { NAME_MAX } from '../../shared-core/shop/set-up-limits.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { kg, roomShop } from '../core/dough/acts-shop.ts'
import { noonShop, openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

/** The dough room's shop at noon: plain, mini, sour and raisin dough, with room for whatever is mixed. */
function doughShop(profile: Partial<Shop['profile']> = {}): Shop {
  const { mixer, doughs, ingredients, preparations, formulas, doughRoom } = roomShop()
  const base = noonShop()
  const parts = { mixer, doughs, ingredients, preparations, formulas, doughRoom }
  return noonShop({ ...parts, profile: { ...base.profile, ...profile } })
}

/** The shop's date so many days from now; in a `noonShop` it is noon. */
function dateIn(days: number): string {
  const ahead = 12 - new Date().getUTCHours()
  return new Date(Date.now() + ahead * 3_600_000 + days * 86_400_000).toISOString().slice(0, 10)
}

const line = (id: string, pieces: number, ordered = 0): WantedLine => ({
  doughId: doughId(id),
  varietyId: null,
  pieces,
  ordered,
})

test('given pieces typed by keyboard while another desk types too, when the plan is used, ordered and printed, then mixes stand in the order that was chosen, one on each page', async ({
  browser,
  server,
}) => {
  await server.start(doughShop())
  const date = dateIn(1)
  const page = await openDeskByTouch(browser, server, { place: `dough/day/${date}` })
  const wanted = part(page, 'wanted')
  await wanted.getByLabel('Plain, for the counter').fill('20d')
  await wanted.getByLabel('Plain, for the counter').press('Enter')
  await expect(wanted.getByLabel('Mini, for the counter')).toBeFocused()
  // Another desk, meanwhile.
  await server.act({ type: 'setWanted', date, lines: [line('raisin', 90, 6)] })
  await expect(wanted.getByLabel('Raisin, for orders')).toHaveValue('6')
  await expect(wanted.getByLabel('Plain, for the counter')).toHaveValue('20d')
  const plan = part(page, 'plan')
  await expect(plan.getByRole('row', { name: /^Plain 240/ })).toBeVisible()
  await plan.getByRole('button', { name: 'Plain: one mix more' }).tap()
  await expect(plan.getByText('changed by hand', { exact: false })).toContainText('min in the mixer (+12 min)')
  await plan.getByRole('button', { name: 'Save and use this plan' }).tap()
  await expect(plan.getByRole('link', { name: 'To the mixing order' })).toBeVisible()
  const mixes = async () => [...(await server.state()).mixes.values()].sort((one, other) => one.order - other.order)
  await expect.poll(async () => (await mixes()).map(({ formula }) => formula.id)).toEqual(['plain', 'plain', 'raisin'])
  expect((await server.state()).wanted.get(date)?.lines).toEqual([line('plain', 240), line('raisin', 90, 6)])

  await plan.getByRole('link', { name: 'To the mixing order' }).tap()
  const order = page.locator('[data-part^="order-"]')
  await order.getByRole('button', { name: /^3\. .*: earlier$/ }).tap()
  await expect(order.getByText('This order is not saved yet.')).toBeVisible()
  await order.getByRole('button', { name: 'Save: begin as soon as can be' }).tap()
  await expect(order.getByText('This order and its times are saved.')).toBeVisible()
  await expect.poll(async () => (await mixes()).map(({ formula }) => formula.id)).toEqual(['plain', 'raisin', 'plain'])
  expect((await mixes()).every(({ startAtMs }) => startAtMs !== null)).toBe(true)

  await page.goto(`${server.address}/desk#dough/sheets/${date}`)
  await expect(page.locator('.dough-sheet')).toHaveCount(3)
  await page.emulateMedia({ media: 'print' })
  const breaks = () =>
    page.locator('.dough-sheet').evaluateAll((sheets) => sheets.map((sheet) => getComputedStyle(sheet).breakAfter))
  expect(await breaks()).toEqual(['page', 'page', 'auto'])
  const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1')
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(3)
  await page.emulateMedia({ media: 'screen' })
})

test('given ingredients counted and delivered and a reading typed, when a mix is begun, then what is on hand, the clocks and the account of the dough follow', async ({
  browser,
  server,
}) => {
  await server.start(doughShop())
  const page = await openDeskByTouch(browser, server, { place: 'dough/stock' })
  const stock = part(page, 'stock')
  await stock.getByLabel('flour: how much is there').fill('40')
  await stock.getByLabel('salt: how much is there').fill('500 g')
  await stock.getByRole('button', { name: 'Save the count of 2' }).tap()
  await stock.getByLabel('flour: how much came in').fill('25')
  await stock.getByRole('button', { name: 'flour: came in' }).tap()
  await expect(stock.getByRole('row', { name: /^flour/ })).toContainText('65 kg')

  const date = dateIn(1)
  const gives = [{ doughId: doughId('plain'), pieces: 120 }]
  const asked = { formulaId: [...roomShop().formulas.keys()][0] ?? must(), flourMilligrams: 10_000_000 }
  await server.act({ type: 'planMixes', date, mixes: [{ ...asked, startAtMs: null, gives }] })
  const mixId = [...(await server.state()).mixes.keys()][0] ?? must()
  await server.act({ type: 'moveMix', mixId, from: 'planned', to: 'mixing' })
  const shaped = { doughId: doughId('plain'), varietyId: null, pieces: 60, stage: 'proof', place: 'Rack 1' } as const
  await server.act({ type: 'shape', ...shaped, mixId })
  await expect(stock.getByRole('row', { name: /^flour/ })).toContainText('55 kg')

  await page.goto(`${server.address}/desk#dough/running`)
  await expect(part(page, 'clocks').getByRole('row', { name: /60 Plain.*Rack 1/ })).toContainText('not yet')
  await expect(part(page, 'dough-account').getByRole('row', { name: /Plain, 1 mix/ })).toContainText('15.7 kg')
  await part(page, 'temps').getByLabel('Room: new reading').fill('74')
  await part(page, 'temps').getByRole('button', { name: 'Room: Record' }).tap()
  await expect(part(page, 'temps').getByText(/^read 74 °F at/)).toBeVisible()
  await expect
    .poll(async () => (await server.state()).readings.get('room')?.read)
    .toEqual({
      thousandths: 74_000,
      unit: 'F',
    })
})

const PAGES = ['days', 'day', 'order', 'sheets', 'stock', 'running', 'learnt'] as const

const LOOKS = [
  { language: 'es', size: { width: 390, height: 844 }, settings: { theme: 'dark', textPercent: 125 } },
  { language: 'en', size: { width: 1440, height: 900 }, settings: {} },
] as const

for (const [index, { language, size, settings }] of LOOKS.entries()) {
  test(`given a desk in ${language}, when every page of the dough room is shown at ${size.width} px, then nothing overlaps, is cut off or sticks out, and axe finds nothing${lookMark(index)}`, async ({
    browser,
    server,
  }) => {
    await server.start(withLongNames(doughShop({ language, weight: 'lb-oz' })))
    await begin(server)
    const page = await openDeskByTouch(browser, server, { place: 'dough', settings, size })
    for (const name of PAGES) {
      await page.goto(`${server.address}/desk#dough/${name}`)
      await expect(page.locator('.desk-panel, .dough-sheet').first()).toBeVisible()
      await look(page, name)
    }
  })
}

/** Names as long as a set-up may have them, in one word. */
function withLongNames(shop: Shop): Shop {
  const long = <Id, Thing extends { readonly name: string }>(things: ReadonlyMap<Id, Thing>, most: number) =>
    new Map([...things].map(([id, thing]) => [id, { ...thing, name: thing.name.padEnd(most, 'Wn') }]))
  return {
    ...shop,
    doughs: long(shop.doughs, NAME_MAX.dough),
    formulas: long(shop.formulas, NAME_MAX.formula),
    ingredients: long(shop.ingredients, NAME_MAX.ingredient),
    preparations: long(shop.preparations, NAME_MAX.preparation),
  }
}

/** Something on every page. */
async function begin(server: ShopServer): Promise<void> {
  const date = dateIn(1)
  const lines = [line('plain', 240, 60), line('mini', 60), line('rye', 90), line('raisin', 60), line('old', 20)]
  await server.act({ type: 'setWanted', date, lines })
  const counts = [{ ingredientId: ingredientId('flour'), weight: kg(40) }]
  await server.act({ type: 'countIngredients', counts })
  const ids = [...roomShop().formulas.keys()]
  const mixes = ids.map((formulaId) => ({ formulaId, flourMilligrams: 9_000_000, startAtMs: null, gives: [] }))
  await server.act({ type: 'planMixes', date, mixes })
  const mixId = [...(await server.state()).mixes.keys()][0] ?? must()
  await server.act({ type: 'moveMix', mixId, from: 'planned', to: 'mixing' })
  await server.act({ type: 'readMix', mixId, temp: 'dough', read: { thousandths: 78_000, unit: 'F' } })
  for (const degrees of [70, 76])
    await server.act({ type: 'readPlace', place: 'room', read: { thousandths: degrees * 1_000, unit: 'F' } })
  const weights = [118, 120, 121, 124, 122].map((grams) => ({ thousandths: grams * 1_000, unit: 'g' }) as const)
  await server.act({ type: 'weighPieces', doughId: doughId('plain'), mixId: null, weights })
}

async function look(page: Page, name: string): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${name} sticks out sideways`).toBeLessThanOrEqual(0)
  const texts = (await textsOn(page)).filter(({ within }) => !APART.some((one) => within.includes(one)))
  expect(overlaps(texts), name).toEqual([])
  const shown = texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } }))
  expect(cutOff(shown), name).toEqual([])
  await expectNoViolations(page, name)
}

/** What is moved sideways by itself is looked at by itself. */
const APART = ['desk-head', 'desk-sideways', 'desk-sheet']

function must(): never {
  throw new Error('the shop has no such thing')
}

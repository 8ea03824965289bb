import type { Page } from '@playwright/test'
import { DateTime } from 'luxon'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { Preview } from '../../shared-core/live/sales-import.ts'
import { madeDays } from '../core/demand/made-days.ts'
import { tillCsv } from '../core/demand/till-csv.ts'
import { shopWith } from '../core/support/shop.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

const DAYS = 60

/** A shop whose till wrote what was sold up to yesterday. */
async function shopWithSales(server: ShopServer): Promise<readonly string[]> {
  const shop = shopWith()
  await server.start(shop)
  // Its own date: weeks are counted back from that, whatever the hour elsewhere.
  const today = DateTime.now().setZone(shop.profile.zone).toISODate() ?? ''
  const from = dateAfter(today, -DAYS - 1)
  const days = madeDays({ from, days: DAYS, customers: { sesame: 24, poppy: 7 } })
  const ask = async (method: string, path: string, type: string, body: string) => {
    const asked = await fetch(`${server.address}/api/v1/sales/${path}`, {
      method,
      headers: { 'content-type': type },
      body,
    })
    if (!asked.ok) throw new Error(await asked.text())
    return await asked.json()
  }
  const names = ['sesame', 'poppy'].map((id) => {
    return { name: id, meaning: { kind: 'variety', varietyId: id, pieces: 1 } }
  })
  const preview: Preview = await ask('POST', 'files?name=till.csv', 'text/csv', tillCsv(days))
  const { mapping } = preview
  await ask('POST', `files/${preview.file.id}/take`, 'application/json', JSON.stringify({ mapping }))
  await expect.poll(async () => (await stateOf(server, preview.file.id)).state).toBe('taken')
  await ask('PUT', 'names', 'application/json', JSON.stringify({ names }))
  return days.map(({ date }) => date)
}

async function stateOf(server: ShopServer, id: number): Promise<{ readonly state: string }> {
  return await (await fetch(`${server.address}/api/v1/sales/files/${id}`)).json()
}

async function expectTidy(page: Page, what: string): Promise<void> {
  const texts = await textsOn(page)
  expect(overlaps(texts), what).toEqual([])
  await expectNoViolations(page, what)
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${what} sticks out sideways`).toBeLessThanOrEqual(0)
}

test('[Q126, Q132] given weeks of a till, when they are looked at, then drawing and table tell each day, and a day gets a name by touch', async ({
  browser,
  server,
}) => {
  const dates = await shopWithSales(server)
  const page = await openDeskByTouch(browser, server, { place: 'history' })
  const days = part(page, 'days')
  const drawing = days.getByRole('img', { name: `Pieces sold by day, ${DAYS} days` })
  await expect(drawing.locator('canvas')).toBeVisible()
  // Something is drawn in the colour of what was sold.
  await expect.poll(() => drawing.locator('canvas').evaluate(inkOn)).toBeGreaterThan(0.1)
  await expectTidy(page, 'sales')

  await days.getByRole('button', { name: 'Show as a table' }).tap()
  await expect(days.locator('tbody tr')).toHaveCount(DAYS)
  await page.locator('.history-choose select').first().selectOption({ label: 'Poppy' })
  await page.locator('.history-choose select').nth(1).selectOption({ label: 'the last 4 weeks' })
  await expect(days.locator('tbody tr')).toHaveCount(27)
  await expect(page).toHaveURL(/#history\/sales\/variety:poppy\/28$/)

  // A day's page; it gets a name, and stands under it.
  const date = dates.at(-3) ?? ''
  await page.goto(`${server.address}/desk#history/day/${date}`)
  await expect(part(page, 'day').locator('tbody tr')).toHaveCount(2)
  const specials = part(page, 'specials')
  await specials.getByLabel('Something else').fill('Street fair')
  await specials.getByRole('button', { name: 'Name this day' }).tap()
  await expect(specials.getByRole('checkbox', { name: 'Street fair' })).toBeChecked()
  await expectTidy(page, 'day')
  const { shop } = await server.state()
  expect([...(shop?.specialDays.values() ?? [])]).toMatchObject([
    { name: 'Street fair', spans: [{ from: date, to: date }] },
  ])
  await page.getByRole('link', { name: 'All days' }).tap()
  await expect(part(page, 'learnt').getByText('Street fair', { exact: false })).toContainText('seen once')
})

test('[Q122, Q124] given weeks of a till, when it is asked how far to trust the forecasts, then in words first, then by variety, and one variety day by day', async ({
  browser,
  server,
}) => {
  await shopWithSales(server)
  const page = await openDeskByTouch(browser, server, { place: 'history/trust' })
  await expect(part(page, 'summary')).toContainText(/the board was off by \d+(\.\d)? pieces in \d+/)
  await expect(part(page, 'summary')).toContainText(`${DAYS} open days are known`)
  await expect(part(page, 'held').locator('tbody tr')).toHaveCount(4)
  await expect(part(page, 'cost').locator('tbody tr')).toHaveCount(3)
  await expectTidy(page, 'trust')
  await part(page, 'varieties').getByRole('link', { name: 'Look at the forecasts of sesame' }).tap()
  const one = part(page, 'variety')
  const drawing = one.getByRole('img', { name: /^Sesame: of \d+ days, \d+ fell inside/ })
  await expect.poll(() => drawing.locator('canvas').evaluate(inkOn)).toBeGreaterThan(0.02)

  // The same on a phone, in Spanish, in the dark.
  const size = { width: 390, height: 844 }
  const dark = await openDeskByTouch(browser, server, {
    ...{ place: 'history/trust', language: 'es', size, settings: { theme: 'dark' } },
  })
  await expect(part(dark, 'summary')).toContainText('la pizarra falló por')
  await expectTidy(dark, 'trust on a phone')
})

/** The part of a canvas that is drawn on. */
function inkOn(canvas: Element): number {
  if (!(canvas instanceof HTMLCanvasElement)) return 0
  const { width, height } = canvas
  const data = canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? []
  let inked = 0
  for (let at = 3; at < data.length; at += 4) if ((data[at] ?? 0) > 0) inked += 1
  return inked / (width * height)
}

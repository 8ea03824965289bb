import type { Page } from '@playwright/test'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { ago, noonShop, openDeskByTouch, part, twoLoads } from './support/desk-page.ts'
import { expect, test } from './support/shop-server.ts'

const SAID = {
  en: {
    counted: 'Counted 24',
    more: 'Sesame: 6 more',
    field: 'Pieces of Poppy that are there',
    allKnown: '✓ All is known well enough: nothing needs counting.',
    given: 'Sesame, given away: 6 more',
    wasted: 'Poppy, wasted: 1 more',
    book: 'Book: 6 given away, 2 wasted',
    unexplained: 'Unexplained today: +6',
    left: '36 day-old, 6 given away, 2 wasted',
    hours: 'in 8 crew hours',
    closed: /is closed$/,
    reopen: 'Reopen the day',
  },
  es: {
    counted: 'Contado: 24',
    more: 'Sesame: 6 más',
    field: 'Piezas de Poppy que hay',
    allKnown: '✓ Todo se sabe bien: no hay nada que contar.',
    given: 'Sesame, regaladas: 6 más',
    wasted: 'Poppy, basura: 1 más',
    book: 'Anotar: 6 regaladas, 2 a la basura',
    unexplained: 'Sin explicar hoy: +6',
    left: '36 para mañana, 6 regaladas, 2 a la basura',
    hours: 'en 8 horas de trabajo',
    closed: /está cerrado$/,
    reopen: 'Reabrir el día',
  },
} as const

for (const language of ['en', 'es'] as const) {
  test(`given a day's end in ${language}, when it is counted, given its fates and closed by touch, then every piece is told, it prints on one page, and it can be opened again`, async ({
    browser,
    server,
  }) => {
    const say = SAID[language]
    await server.start(noonShop())
    await twoLoads(server)
    await server.act({ type: 'sell', lines: [{ varietyId: varietyId('sesame'), pieces: 10 }] }, 'counter')
    const page = await openDeskByTouch(browser, server, { place: 'close', language })

    const count = part(page, 'count')
    for (let rings = 0; rings < 4; rings++) await count.getByRole('button', { name: say.more }).tap()
    await count.getByRole('button', { name: say.counted }).tap()
    await expect(count.getByText('Sesame')).toHaveCount(0)
    await count.getByLabel(say.field).fill('20')
    await count.getByRole('listitem').getByRole('button').nth(4).tap()
    await expect(count.getByText(say.allKnown)).toBeVisible()

    const fates = part(page, 'fates')
    await fates.getByRole('button', { name: say.given }).tap()
    for (let pieces = 0; pieces < 2; pieces++) await fates.getByRole('button', { name: say.wasted }).tap()
    await fates.getByRole('button', { name: say.book }).tap()
    await expect(fates.locator('tbody tr').first()).toContainText('18')
    await expect(part(page, 'account').getByText(say.unexplained)).toBeVisible()

    await part(page, 'crew').locator('input').fill('8')
    await part(page, 'notes').getByRole('textbox').fill('rye slow')
    await part(page, 'notes').locator('button[type=submit]').tap()
    await expect(part(page, 'notes').getByText('rye slow')).toBeVisible()
    await part(page, 'close').locator('.desk-large').tap()

    await expect(page.getByRole('region', { name: say.closed })).toBeVisible()
    const figures = part(page, 'figures')
    await expect(figures.getByText(say.left)).toBeVisible()
    await expect(figures.getByText('0.6')).toBeVisible()
    await expect(figures.getByText(say.hours)).toBeVisible()
    const { lastDay, day } = await server.state()
    expect([day, lastDay?.crewMinutes]).toEqual([null, 480])
    expect(lastDay?.account.find(({ doughId: id }) => id === doughId('plain'))?.account).toMatchObject({
      carriedIn: 90,
      sold: 10,
      given: 6,
      wasted: 2,
      dayOld: 36,
      unexplained: 6,
    })

    await expectOnePage(page)
    await page.getByRole('button', { name: say.reopen }).tap()
    await expect(part(page, 'fates').locator('tbody tr')).toHaveCount(2)
    expect((await server.state()).day?.label).toBe(lastDay?.label)
  })
}

/** Black on white, without the screen's own furniture, on one page of either paper. */
async function expectOnePage(page: Page): Promise<void> {
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.desk-sheet')).toBeVisible()
  for (const hidden of ['.desk-head', '.desk-nav', '.desk-noprint', '.desk-place']) {
    await expect(page.locator(hidden).first()).toBeHidden()
  }
  await expect(page.locator('.desk-sheet')).toHaveCSS('color', 'rgb(0, 0, 0)')
  await expect(page.locator('.desk-sheet')).toHaveCSS('background-color', 'rgb(255, 255, 255)')
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format })).toString('latin1')
    expect(pdf.match(/\/Type\s*\/Page\b/g), format).toHaveLength(1)
  }
  await page.emulateMedia({ media: 'screen' })
}

test('given fates that were said and not booked, when the day is closed, then they are what becomes of the pieces', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  const page = await openDeskByTouch(browser, server, { place: 'close', language: 'en' })
  await part(page, 'fates').getByRole('button', { name: SAID.en.given }).tap()
  await expect(part(page, 'close').getByText('Book: 6 given away')).toBeVisible()
  await part(page, 'close').locator('.desk-large').tap()
  await expect(page.getByRole('region', { name: SAID.en.closed })).toBeVisible()
  // The screen shows its own taps before the server has them.
  const given = async () =>
    (await server.state()).lastDay?.account.find(({ doughId: id }) => id === doughId('plain'))?.account.given
  await expect.poll(given).toBe(6)
})

test('given a closed day, when its files are fetched, then they are a table and the entries', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  await ago(server, 1, { type: 'closeDay' })
  const page = await openDeskByTouch(browser, server, { place: 'close' })
  const fetched = async (name: string) => {
    const downloading = page.waitForEvent('download')
    await page.getByRole('link', { name }).tap()
    const stream = await (await downloading).createReadStream()
    const chunks: Buffer[] = []
    for await (const chunk of stream) chunks.push(Buffer.from(chunk))
    return Buffer.concat(chunks).toString('utf8')
  }
  expect(await fetched('Account as CSV')).toMatch(/^day,row,dough,/)
  const entries = (await fetched('Everything that happened as JSON Lines')).trim().split('\n')
  expect(entries.map((line) => JSON.parse(line).told.type)).toContain('closeDay')
})

test('given a count that is far from what was known, when it is entered, then it is asked in sight and taken with yes', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  const page = await openDeskByTouch(browser, server, { place: 'close', size: { width: 390, height: 844 } })
  const row = part(page, 'count').getByRole('listitem').filter({ hasText: 'Poppy' })
  await row.getByLabel('Pieces of Poppy that are there').fill('400')
  await row.getByRole('button', { name: 'Poppy: Counted 400' }).tap()
  const notice = page.getByRole('alert').filter({ hasText: 'Poppy' })
  await expect(notice).toBeInViewport()
  await notice.getByRole('button').first().tap()
  await expect(row).toHaveCount(0)
  expect((await server.state()).stock.get(varietyId('poppy'))?.counted?.pieces).toBe(400)
})

test('given pieces still on boards, when the day is closed, then it is asked first, and kept open with no', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  await server.act({ type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 12 }, 'bench')
  const page = await openDeskByTouch(browser, server, { place: 'close' })
  await part(page, 'close').locator('.desk-large').tap()
  const notice = page.getByRole('alert').filter({ hasText: '12 pieces' })
  await notice.getByRole('button').last().tap()
  await expect(notice).toHaveCount(0)
  expect((await server.state()).day).not.toBeNull()
})

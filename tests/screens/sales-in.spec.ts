import type { Page } from '@playwright/test'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { shopWith } from '../core/support/shop.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

/** A till's file as tills write them: its dates can be read in two ways, a total stands in the middle, a number is a word. */
const TILL = [
  'Date,Time,Ticket,Item,Qty,Net',
  '3/2/2015,7:05 AM,1001,SESAME BGL,2,3.20',
  '3/2/2015,7:05 AM,1001,Coffee lg,1,2.75',
  'TOTAL,,,,,5.95',
  '3/2/2015,7:31 AM,1002,Dozen Bagels,1,15.00',
  '3/2/2015,8:02 AM,1003,SESAME BGL,two,3.20',
  '4/2/2015,8:15 AM,1004,Halloumi toast,1,6.50',
].join('\r\n')

const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })
const put = (page: Page, name: string, text: string) =>
  page.locator('input[type="file"]').setInputFiles(file(name, text))
const figure = (page: Page, name: string) => part(page, 'result').locator(`[data-figure="${name}"]`)

/** What sticks to the foot lies over what scrolls under it; the rest is looked at as if the page were all in sight. */
async function expectTidy(page: Page, what: string): Promise<void> {
  const texts = (await textsOn(page)).filter(({ within }) => !within.includes('sales-take'))
  expect(overlaps(texts), what).toEqual([])
  const shown = texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } }))
  expect(cutOff(shown), what).toEqual([])
  await expectNoViolations(page, what)
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(sideways, `${what} sticks out sideways`).toBeLessThanOrEqual(0)
}

test('[Q98] given a till’s file, when it is dropped, said, taken, mended and its names are matched, then all of it stands and is there again after a reload', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const page = await openDeskByTouch(browser, server, { place: 'sales-in' })
  await put(page, 'till.csv', TILL)
  const mapping = part(page, 'mapping')
  await expect(mapping.getByRole('cell', { name: 'Mon, Mar 2, 2015' }).first()).toBeVisible()
  await expectTidy(page, 'mapping')
  // Both readings are told; the other one is a touch away, and back.
  const doubt = mapping.locator('[data-doubt="day-or-month"]')
  await doubt.getByRole('button').tap()
  await expect(mapping.getByRole('cell', { name: 'Tue, Feb 3, 2015' }).first()).toBeVisible()
  await doubt.getByRole('button').tap()
  await expect(mapping.getByRole('cell', { name: 'Mon, Mar 2, 2015' }).first()).toBeVisible()
  // Without the names nothing is taken.
  await mapping.getByLabel('Item').selectOption({ label: 'not used' })
  await expect(mapping.getByRole('button', { name: 'Take this file' })).toBeDisabled()
  await mapping.getByLabel('Item').selectOption({ label: 'what was sold' })
  await mapping.getByRole('button', { name: 'Take this file' }).tap()

  await expect(figure(page, 'taken')).toHaveText('4')
  await expect(figure(page, 'bad')).toHaveText('2')
  const bad = part(page, 'bad')
  await expectTidy(page, 'result')
  await bad
    .locator('[data-line="4"]')
    .getByRole('button', { name: /No sale/ })
    .tap()
  await expect(bad.locator('[data-line="4"]')).toHaveCount(0)
  const word = bad.locator('[data-line="6"]')
  await word.getByRole('textbox').fill('3/2/2015,8:02 AM,1003,SESAME BGL,none,3.20')
  await word.getByRole('button', { name: 'Take it' }).tap()
  await expect(word).toContainText('"none"')
  await word.getByRole('textbox').fill('3/2/2015,8:02 AM,1003,SESAME BGL,2,3.20')
  await word.getByRole('button', { name: 'Take it' }).tap()
  await expect(figure(page, 'taken')).toHaveText('5')
  await expect(figure(page, 'bad')).toHaveText('0')

  await page.getByRole('link', { name: 'See what the names mean' }).tap()
  const names = part(page, 'names')
  await names.locator('[data-name="SESAME BGL"]').getByRole('button', { name: /Yes/ }).tap()
  await expect(names.locator('[data-name="SESAME BGL"]')).toHaveCount(0)
  await names.getByRole('button', { name: /Say yes to/ }).tap()
  const toast = names.locator('[data-name="Halloumi toast"]')
  await expect(names.locator('.sales-name')).toHaveCount(1)
  await toast.getByRole('button').tap()
  await toast.getByRole('combobox', { name: 'means', exact: true }).selectOption({ label: 'the kitchen uses it' })
  await toast
    .getByRole('combobox', { name: 'Variety', exact: true })
    .selectOption({ label: inUse(shopWith().varieties)[0]?.name ?? '' })
  await expectTidy(page, 'names')
  await toast.getByRole('button', { name: 'That is it' }).tap()
  await expect(names.getByText('Every name is said.')).toBeVisible()
  await page.reload()
  await expect(names.locator('[data-name="SESAME BGL"] .sales-meaning')).toHaveText('Sesame')
  await expect(names.locator('[data-name="Halloumi toast"] .sales-meaning')).toHaveText('kitchen: 1 × Sesame')

  // The same rows in another file are there already; its columns are remembered.
  await page.goto(`${server.address}/desk#sales-in`)
  await put(page, 'again.csv', TILL)
  await expect(mapping.getByText('Columns as the last file of this form had them.')).toBeVisible()
  await mapping.getByRole('button', { name: 'Take this file' }).tap()
  await expect(figure(page, 'doubled')).toHaveText('4')
  await page.getByRole('link', { name: '← Files' }).tap()
  const rows = part(page, 'files').locator('tbody tr')
  await expect(rows).toHaveCount(2)
  await rows
    .first()
    .getByRole('button', { name: /Remove/ })
    .tap()
  await part(page, 'files').getByRole('button', { name: 'Remove it' }).tap()
  await expect(rows).toHaveCount(1)
})

import type { Page } from '@playwright/test'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { shopWith } from '../core/support/shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

async function openDesk(page: Page, server: ShopServer, place: string): Promise<void> {
  await page.setViewportSize({ width: 1440, height: 900 })
  await page.goto(`${server.address}/desk#${place}`)
  await expect(page.locator('.desk-panel').first()).toBeVisible()
}

const goTo = (page: Page, name: string) => page.getByRole('navigation').getByRole('link', { name }).click()

const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

test('given a typed load list with a mistake, when it is put right, then the loads are planned and one can be left out', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server, 'loads')
  const loads = part(page, 'Load list')
  await loads.getByRole('textbox').fill('5:10 1 Sesame 36, Popy 12\n5:20 2 Rye 36')
  await loads.getByRole('button', { name: 'Take this list' }).click()
  await expect(loads.getByText('Line 1 The shop has no variety “Popy”.')).toBeVisible()
  await expect(loads.getByText('Right would be: Poppy?')).toBeVisible()
  expect((await server.state()).planned.size).toBe(0)

  await loads.getByRole('textbox').fill('5:10 1 Sesame 36, Poppy 12\n5:20 2 Rye 36')
  await loads.getByRole('button', { name: 'Take this list' }).click()
  await expect(loads.getByText('Taken: 2 loads.')).toBeVisible()
  const row = loads.getByRole('row', { name: /5:10 am.* 1 Sesame 36, Poppy 12/ })
  await row.getByRole('button', { name: 'Leave out' }).click()
  await expect(row.getByText('done or left out')).toBeVisible()
  await expect
    .poll(async () => [...(await server.state()).planned.values()].map((load) => load.done))
    .toEqual([true, false])
  await expect(loads.getByText('Taken: 2 loads.')).toBeVisible()
})

test('given a load list as a CSV file, when a row is wrong, then its line is told; when right, it is taken', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server, 'loads')
  const loads = part(page, 'Load list')
  const upload = async (rows: string) => {
    const buffer = Buffer.from(`in,shelf,variety,pieces\n${rows}`)
    await loads.getByLabel('Upload a file').setInputFiles({ name: 'loads.csv', mimeType: 'text/csv', buffer })
  }
  await upload('5:10,1,Sesame,36\n5:20,2,Rye,many')
  await expect(loads.getByText('/rows/3')).toBeVisible()
  await upload('5:10,1,Sesame,36\n5:20,2,Rye,36')
  await expect(loads.getByText('Taken: 2 loads.')).toBeVisible()
  await expect.poll(async () => (await server.state()).planned.size).toBe(2)
})

test('given trays in the cooler, when they are carried in, then the account says where every piece is', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server, 'loads')
  const trays = part(page, 'Trays')
  await trays.getByRole('spinbutton').fill('3')
  await trays.getByRole('button', { name: 'Carry in 45 Plain' }).click()
  await expect(trays.getByRole('row', { name: /in the cooler Plain 45/ })).toBeVisible()
  await server.act({ type: 'pull', doughId: doughId('plain'), varietyId: null, pieces: 15 })
  await server.act({ type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 15 })

  await goTo(page, 'Today')
  const account = part(page, 'Where every piece is')
  await expect(account.getByRole('row', { name: /Plain 0 45 45 0 0/ })).toBeVisible()
  await expect(account.getByText('Every piece is accounted for.')).toBeVisible()
})

test('given a screen elsewhere, when it acts, then the desk lists the screen and can take its act back', async ({
  page,
  browser,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server, 'screens')
  const counter = await (await browser.newContext()).newPage()
  await counter.goto(`${server.address}/counter`)
  await expect(
    part(page, 'Screens of this shop').getByRole('row', { name: /Counter \w{4} Counter all ● connected/ }),
  ).toBeVisible()
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 12 })
  await goTo(page, 'Today')
  const done = part(page, 'What was done').getByRole('row', { name: /counted Sesame 12/ })
  await done.getByRole('button', { name: 'Take back' }).click()
  await expect(done).toHaveCount(0)
  await expect.poll(async () => (await server.state()).stock.get(varietyId('sesame'))?.lots.length ?? 0).toBe(0)
  await goTo(page, 'Screens')
  await counter.close()
  await expect(part(page, 'Screens of this shop').getByText(/last seen at/)).toBeVisible()
})

test('given a link to a place, when it is opened and another is chosen, then the address leads there and the back key back', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server, 'screens')
  await expect(page.getByRole('heading', { level: 1, name: 'Screens' })).toBeVisible()
  await goTo(page, 'Past days')
  await expect(page).toHaveURL(/#past$/)
  await expect(page.getByText('No day is on record yet.')).toBeVisible()
  await page.goBack()
  await expect(page.getByRole('heading', { level: 1, name: 'Screens' })).toBeVisible()
  await expect(page.getByRole('link', { name: 'Screens' })).toHaveAttribute('aria-current', 'page')
})

test('given the first page, when a language and a screen are chosen, then that screen speaks it', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await page.goto(server.address)
  await page.getByRole('button', { name: 'Español' }).click()
  await page.getByRole('link', { name: /Mostrador/ }).click()
  await expect(page.getByText('Toque una varilla y luego cuántos se venden')).toBeVisible()
})

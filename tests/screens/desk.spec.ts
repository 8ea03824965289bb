import type { Page } from '@playwright/test'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { bigSetUp } from '../core/shop/big-set-up.ts'
import { shopWith } from '../core/support/shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

async function openDesk(page: Page, server: ShopServer): Promise<void> {
  await page.setViewportSize({ width: 1440, height: 900 })
  await page.goto(`${server.address}/desk`)
  await expect(page.getByRole('region', { name: 'The day' })).toBeVisible()
}

const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

test('given a typed load list with a mistake, when it is put right, then the loads are planned and one can be left out', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server)
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
  await openDesk(page, server)
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

test('given a set-up file, when it has a mistake, then its place is told; when it retires what there is of, then it is asked', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 12 })
  await openDesk(page, server)
  const setUp = part(page, 'Set-up')
  const downloading = page.waitForEvent('download')
  await setUp.getByRole('link', { name: 'Download the set-up' }).click()
  expect((await downloading).suggestedFilename()).toContain('.json')

  const upload = async (text: string) => {
    const buffer = Buffer.from(text)
    await setUp.getByLabel('Upload a set-up').setInputFiles({ name: 's.json', mimeType: 'application/json', buffer })
  }
  await upload('{ "format": ')
  await expect(setUp.getByText('This is no valid JSON.')).toBeVisible()
  const file = JSON.parse(JSON.stringify(toSetUpFile(shopWith())))
  await upload(JSON.stringify({ ...file, kettle: { ...file.kettle, pieces: 'many' } }))
  await expect(setUp.getByText('/kettle/pieces')).toBeVisible()

  const varieties = file.varieties.filter((variety: { id: string }) => variety.id !== 'sesame')
  await upload(JSON.stringify({ ...file, varieties }))
  await expect(setUp.getByText(/12 pieces of Sesame/)).toBeVisible()
  await setUp.getByRole('button', { name: 'Yes, retire it' }).click()
  await expect(setUp.getByText('The set-up was taken.')).toBeVisible()
  expect((await server.state()).shop?.varieties.get(varietyId('sesame'))?.retired).toBe(true)
})

test('given trays in the cooler, when they are carried in and the day is closed, then the account says where every piece is', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server)
  const trays = part(page, 'Trays')
  await trays.getByRole('spinbutton').fill('3')
  await trays.getByRole('button', { name: 'Carry in 45 Plain' }).click()
  await expect(trays.getByRole('row', { name: /in the cooler Plain 45/ })).toBeVisible()
  await server.act({ type: 'pull', doughId: doughId('plain'), varietyId: null, pieces: 15 })
  await server.act({ type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 15 })

  const day = part(page, 'The day')
  await expect(day.getByRole('row', { name: /Plain 0 45 45 0 0/ })).toBeVisible()
  await expect(day.getByText('Every piece is accounted for.')).toBeVisible()
  await day.getByRole('button', { name: 'Close the day' }).click()
  await expect(
    page.getByText('Close the day? 15 pieces are still in the kettle, on boards or in the oven.', { exact: true }),
  ).toBeVisible()
  await page.getByRole('button', { name: 'Yes, close the day' }).click()
  await expect(day.getByText(/Last closed/)).toBeVisible()
  await expect(day.getByRole('row', { name: /Plain 0 45 0 0 0 0 0 0 45/ })).toBeVisible()
  await expect.poll(async () => (await server.state()).day).toBeNull()
  await day.getByRole('button', { name: 'Open the day' }).click()
  await expect(day.getByText(/Open since/)).toBeVisible()
})

test('given a screen elsewhere, when it acts, then the desk lists the screen and can take its act back', async ({
  page,
  browser,
  server,
}) => {
  await server.start(shopWith())
  await openDesk(page, server)
  const counter = await (await browser.newContext()).newPage()
  await counter.goto(`${server.address}/counter`)
  await expect(part(page, 'Screens').getByRole('row', { name: /Counter \w{4} Counter all ● connected/ })).toBeVisible()
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 12 })
  const done = part(page, 'What was done').getByRole('row', { name: /counted Sesame 12/ })
  await done.getByRole('button', { name: 'Take back' }).click()
  await expect(done).toHaveCount(0)
  await expect.poll(async () => (await server.state()).stock.get(varietyId('sesame'))?.lots.length ?? 0).toBe(0)
  await counter.close()
  await expect(part(page, 'Screens').getByText(/last seen at/)).toBeVisible()
})

test('given the longest names in both languages, when the desk is shown wide and narrow, then nothing sticks out sideways', async ({
  page,
  server,
}) => {
  await server.start(bigSetUp(28))
  await openDesk(page, server)
  for (const language of ['es', 'en']) {
    await page.locator('header select').selectOption(language)
    await expect(page.locator('.desk')).toHaveAttribute('lang', language)
    for (const size of [
      { width: 1440, height: 900 },
      { width: 390, height: 844 },
    ]) {
      await page.setViewportSize(size)
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
    }
  }
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

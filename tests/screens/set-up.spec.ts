import { shelfId, varietyId } from '../../shared-core/ids.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { shopWith } from '../core/support/shop.ts'
import { BenchTablet } from './support/bench-touch.ts'
import { DeskTouch } from './support/set-up-touch.ts'
import { expect, test } from './support/shop-server.ts'

test('given an empty folder, when the steps are gone through by touch, then the shop is its own and a first load bakes', async ({
  browser,
  server,
}) => {
  await server.start()
  const desk = await DeskTouch.open(browser, server)
  const beganAt = Date.now()
  await expect(desk.page.getByRole('heading', { name: 'What is the shop called, and where is it?' })).toBeVisible()
  await desk.type(desk.field('Name of the shop'), 'Corner Bagels')
  await desk.type(desk.field('Time zone'), 'new york')
  await desk.tap(desk.button('America / New York'))
  await desk.tap(desk.button('Go on'))

  await desk.tap(desk.radio('Kind of oven', /^Rotating/))
  await desk.tap(desk.button('Shelves: more'))
  await desk.type(desk.field('Pieces on a shelf'), '60')
  await desk.tap(desk.button('Go on'))

  await desk.tap(desk.radio('Begin from', 'A big kettle'))
  await desk.tap(desk.button('Boards: less'))
  await desk.tap(desk.button('Go on'))

  await desk.tap(desk.button('Shop opens: more'))
  await desk.tap(desk.page.getByRole('checkbox', { name: 'The oven changes over to a second menu' }))
  await desk.type(desk.field('Second menu'), 'Pizza')
  await desk.tap(desk.radio('Monday', 'closed'))
  await desk.tap(desk.button('Go on'))

  await desk.tap(desk.page.getByRole('checkbox', { name: 'Salt', exact: true }))
  await desk.tap(desk.page.getByRole('checkbox', { name: 'Rye', exact: true }))
  for (const name of ['Plain', 'Sesame', 'Poppy', 'Everything', 'Onion', 'Garlic', 'Rye']) {
    await desk.type(desk.field(`Price: ${name}`), '1.75')
  }
  await desk.tap(desk.button('Go on'))

  await desk.tap(desk.radio('Fewest taps first. It can be changed any day.', /^Oven only/))
  await desk.tap(desk.button('Save and open the screens'))
  await expect(desk.page.getByText('✓ The shop is set up.')).toBeVisible()
  const seconds = Math.round((Date.now() - beganAt) / 1_000)

  await expect.poll(async () => (await server.state()).shop?.profile.name).toBe('Corner Bagels')
  const { shop } = await server.state()
  if (shop === null) throw new Error('no shop')
  expect(shop.profile.zone).toBe('America/New_York')
  expect([shop.oven.kind, shop.kettle.pieces, shop.boards.count]).toEqual(['rotating', 72, 30])
  expect(inUse(shop.shelves).map(({ name, pieces }) => `${name}: ${pieces}`)).toEqual([
    '1: 60',
    '2: 60',
    '3: 60',
    '4: 60',
    '5: 60',
  ])
  expect(shop.hours).toMatchObject({ openMinute: 375, secondMenu: 'Pizza' })
  expect([...shop.weekdays.values()]).toEqual([{ id: '1', hours: null, retired: false }])
  expect(inUse(shop.varieties).map(({ name, priceCents }) => `${name} ${priceCents}`)).toEqual(
    ['Plain', 'Sesame', 'Poppy', 'Everything', 'Onion', 'Garlic', 'Rye'].map((name) => `${name} 175`),
  )
  expect(inUse(shop.stations).map(({ acts }) => acts)).toEqual([['load', 'flip', 'out']])
  console.log(`a whole set-up: ${desk.touches} touches, ${desk.keystrokes} keystrokes, ${seconds} s for a program`)
  expect(desk.touches).toBeLessThan(60)

  const bench = await BenchTablet.open(browser, server)
  await bench.touch(bench.shelf('1'))
  await bench.touch(bench.cell('sesame'))
  await bench.touch(bench.cell('take'))
  await expect(bench.shelf('1')).toContainText('Flip 1')
  await expect
    .poll(async () => [...(await server.state()).loads.values()].map(({ shelfId: id }) => id))
    .toEqual([shelfId('1')])
  console.log(`the first load: ${bench.touches} touches`)
})

test('given nothing to say, when every step is left as it is, then six touches open a shop that bakes', async ({
  browser,
  server,
}) => {
  await server.start()
  const before = await server.hash()
  const desk = await DeskTouch.open(browser, server)
  for (let step = 1; step < 6; step++) {
    await expect(desk.page.getByText(`Step ${step} of 7`)).toBeVisible()
    await desk.tap(desk.button('Leave it as it is'))
  }
  await desk.tap(desk.button('Save and open the screens'))
  await expect(desk.page.getByText('✓ The shop is set up.')).toBeVisible()
  expect(await server.hash()).toBe(before)
  const bench = await BenchTablet.open(browser, server)
  await expect(bench.shelf('1')).toBeVisible()
  console.log(`a set-up left as it is: ${desk.touches} touches`)
  expect(desk.touches).toBe(6)
})

test('given Spanish, when the steps are gone through, then names, units and screens are Spanish', async ({
  browser,
  server,
}) => {
  await server.start()
  const desk = await DeskTouch.open(browser, server)
  await desk.tap(desk.radio('Language of the screens', 'Español'))
  await expect(desk.page.getByRole('heading', { name: '¿Cómo se llama el local y dónde está?' })).toBeVisible()
  await desk.type(desk.field('Nombre del local'), 'La Esquina')
  for (let step = 1; step < 6; step++) await desk.tap(desk.button('Seguir'))
  await desk.tap(desk.button('Guardar y abrir las pantallas'))
  await expect(desk.page.getByText('✓ El local está configurado.')).toBeVisible()
  await expect(desk.page.locator('.desk-head')).toContainText('La Esquina')
  await expect.poll(async () => (await server.state()).shop?.profile.language).toBe('es')
  const { shop } = await server.state()
  expect(shop?.profile).toMatchObject({ temperature: 'C', weight: 'g', clock: 24 })
  expect(shop?.varieties.get(varietyId('garlic'))?.name).toBe('Ajo')
  const bench = await BenchTablet.open(browser, server)
  await expect(bench.shelf('1')).toContainText('Cargar 1')
})

test('given a running shop, when a price is changed for later, then it is told, planned and can be dropped', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/varieties' })
  await desk.tap(desk.button(/^Sesame/))
  await desk.type(desk.field('Price'), '1.85')
  await desk.type(desk.field('Name'), 'Toasted sesame')
  await expect(desk.page.getByText('1 change, not saved yet')).toBeVisible()
  await desk.tap(desk.link('See and save'))
  await expect(desk.page.getByText('Name: Sesame → Toasted sesame')).toBeVisible()
  await expect(desk.page.getByText('Price: 1.60 → 1.85')).toBeVisible()
  await desk.tap(desk.radio('From when', /^From the next opening/))
  await desk.tap(desk.button('Save for then'))
  await expect(desk.page.getByText(/^✓ Saved for then/)).toBeVisible()
  await expect.poll(async () => (await server.state()).setUps.size).toBe(1)
  expect((await server.state()).shop?.varieties.get(varietyId('sesame'))?.name).toBe('Sesame')

  await desk.go('set-up/versions')
  await expect(desk.page.getByText('Price: 1.60 → 1.85')).toBeVisible()
  await desk.tap(desk.button('Drop it'))
  await expect(desk.page.getByText('No changes are planned.')).toBeVisible()
  await expect.poll(async () => (await server.state()).setUps.size).toBe(0)
})

test('given a change that was saved, when one goes back to the version before, then the shop is as it was', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/doughs' })
  await desk.tap(desk.button(/^Rye/))
  await desk.tap(desk.page.getByRole('checkbox', { name: 'egg', exact: true }))
  await desk.go('set-up/people')
  await desk.type(desk.field('A new name'), 'Ana')
  await desk.tap(desk.button('+ Add'))
  await desk.tap(desk.link('See and save'))
  await expect(desk.page.getByText('Person Ana is new')).toBeVisible()
  await expect(desk.page.getByText('Contains: – → egg')).toBeVisible()
  await desk.tap(desk.button('Save'))
  await expect(desk.page.getByText('✓ Saved.')).toBeVisible()
  await expect.poll(async () => (await server.state()).shop?.people.size).toBe(1)

  await desk.go('set-up/versions')
  await expect(desk.page.getByText('Dough Rye: Contains')).toBeVisible()
  await desk.tap(desk.button('Go back to this'))
  await desk.tap(desk.button('Yes, go back'))
  await expect(desk.page.getByText('✓ The set-up is as it was then.')).toBeVisible()
  await expect.poll(async () => inUse((await server.state()).shop?.people ?? new Map()).length).toBe(0)
  await expect(desk.page.getByText('Person Ana is retired')).toBeVisible()
})

test('given a mistake while typing, then it is told beside its field and nothing can be saved until it is put right', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/windows' })
  const bake = desk.page.getByRole('group', { name: 'whole bake' })
  await desk.type(bake.getByRole('textbox', { name: 'target' }), '2')
  await expect(desk.page.getByText(/^No time is longer than the next/)).toBeVisible()
  await desk.tap(desk.link('See and save'))
  await expect(desk.button('Save')).toHaveCount(0)
  await desk.tap(desk.link('Put it right').first())
  await desk.type(bake.getByRole('textbox', { name: 'target' }), '15.5')
  await desk.tap(desk.link('See and save'))
  await expect(desk.page.getByText('whole bake: 14 – 16 – 18 min → 14 – 15.5 – 18 min')).toBeVisible()
  await desk.tap(desk.button('Save'))
  await expect(desk.page.getByText('✓ Saved.')).toBeVisible()

  await desk.go('set-up/kettle')
  await desk.type(desk.field('Pieces in one dip'), '9000')
  await expect(desk.page.getByText('From 1 to 500.')).toBeVisible()
  await desk.tap(desk.page.getByRole('heading', { name: 'Kettle' }))
  await expect(desk.field('Pieces in one dip')).toHaveValue('36')
})

test('given pieces of a variety that is retired, when it is saved, then it is asked, and a no leaves the draft as it is', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 12 })
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/varieties' })
  await desk.tap(desk.button(/^Sesame/))
  await desk.tap(desk.button('Retire'))
  await desk.tap(desk.link('See and save'))
  await desk.tap(desk.button('Save'))
  await expect(desk.page.getByText(/12 pieces of Sesame/)).toBeVisible()
  await desk.tap(desk.button('No, leave it in use'))
  await expect(desk.page.getByText('Variety Sesame is retired')).toBeVisible()
  await desk.tap(desk.button('Save'))
  await desk.tap(desk.button('Yes, retire it'))
  await expect(desk.page.getByText('✓ Saved.')).toBeVisible()
  expect((await server.state()).shop?.varieties.get(varietyId('sesame'))?.retired).toBe(true)
})

test('given a set-up file, when it has a mistake, then its place is told; when it has none, then what it would change is seen before it is saved', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const { page } = await DeskTouch.open(browser, server, { hash: '#set-up/file' })
  const downloading = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Download the set-up' }).tap()
  expect((await downloading).suggestedFilename()).toContain('.json')
  const upload = async (text: string) => {
    const buffer = Buffer.from(text)
    const file = { name: 's.json', mimeType: 'application/json', buffer }
    await page.getByLabel('Read a set-up file').setInputFiles(file)
  }
  await upload('{ "format": ')
  await expect(page.getByText('This is no valid JSON.')).toBeVisible()
  const file = JSON.parse(JSON.stringify(toSetUpFile(shopWith())))
  await upload(JSON.stringify({ ...file, kettle: { ...file.kettle, pieces: 'many' } }))
  await expect(page.getByText('/kettle/pieces')).toBeVisible()
  await upload(JSON.stringify(file))
  await expect(page.getByText('Nothing would change.')).toBeVisible()
  const { seq } = await server.state()
  await upload(JSON.stringify({ ...file, kettle: { ...file.kettle, pieces: 48 } }))
  await page.getByRole('status').getByRole('link', { name: 'See and save' }).tap()
  await expect(page.getByText('Pieces in one dip: 36 → 48')).toBeVisible()
  expect((await server.state()).seq).toBe(seq)
  await page.getByRole('button', { name: 'Save', exact: true }).tap()
  await expect(page.getByText('✓ Saved.')).toBeVisible()
  expect((await server.state()).shop?.kettle.pieces).toBe(48)
})

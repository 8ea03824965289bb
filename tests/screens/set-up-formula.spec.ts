import { doughId, formulaId } from '../../shared-core/ids.ts'
import { toFormulaFile } from '../../shared-core/shop/formula-file.ts'
import { must } from '../../shared-core/support.ts'
import { shopWith } from '../core/support/shop.ts'
import { DeskTouch } from './support/set-up-touch.ts'
import { expect, test } from './support/shop-server.ts'

test('[D15] given a shop without formulas, when one is typed by touch, then its sums are told, it is saved, printed on a card and opened from a file', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  const desk = await DeskTouch.open(browser, server, { hash: '#set-up/ingredients' })
  const { page } = desk
  await desk.tap(desk.button(/^Begin from: High-gluten flour/))
  await desk.go('set-up/formulas')
  await desk.type(desk.field('A new formula'), 'Plain dough')
  await desk.tap(desk.button('+ Add'))
  await expect(page.getByText('✓ Flours 100 %')).toBeVisible()

  await desk.type(desk.field('High-gluten flour, % of flour'), '98.5')
  await expect(page.getByText('! Flours 98.5 %: 1.5 % is missing to 100 %')).toBeVisible()
  await page.getByLabel('Ingredient: Add…').selectOption({ label: 'Rye flour' })
  await expect(page.getByText('✓ Flours 100 %')).toBeVisible()
  await desk.type(desk.field('Water, % of flour'), '57')
  await expect(page.getByText('Hydration 57 % · Total 161 %')).toBeVisible()

  await desk.go('set-up/doughs')
  await desk.tap(page.locator('[data-entity=plain] .setup-row-head'))
  await desk.tap(desk.radio('Mixed by', 'Plain dough'))
  await desk.go('set-up/save')
  await desk.tap(desk.button('Save'))
  await expect.poll(async () => (await server.state()).shop?.formulas.size).toBe(1)
  const { shop } = await server.state()
  if (shop === null) throw new Error('no shop')
  const formula = must(shop.formulas, formulaId('plain-dough'))
  expect(formula.lines.map(({ ingredientId, percent }) => `${ingredientId} ${percent}`)).toEqual([
    'high-gluten 98500',
    'water 57000',
    'salt 2000',
    'malt 1500',
    'instant-yeast 500',
    'rye-flour 1500',
  ])
  expect(shop.doughs.get(doughId('plain'))).toMatchObject({ formulaId: 'plain-dough' })

  await desk.go('set-up/card/plain-dough')
  const card = page.locator('.formula-card')
  // 25 kg of flour at 161 %.
  await expect(card).toContainText('All flour 25 kg · Dough 40.25 kg')
  await expect(card.locator('dd').last()).toHaveText('wheat')
  await expect(card).toContainText('nothing here says that it is free from an allergen')

  const file = toFormulaFile(shop, formula.id)
  if (file === null) throw new Error('no file')
  const lines = file.formula.lines.map((line) => (line.ingredient === 'salt' ? { ...line, percent: 1.9 } : line))
  const body = Buffer.from(JSON.stringify({ ...file, formula: { ...file.formula, lines } }))
  await desk.go('set-up/formulas')
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'plain.json', mimeType: 'application/json', buffer: body })
  await expect(page.getByText('The file was read.')).toBeVisible()
  await expect(page.getByText('Hydration 57 % · Total 160.9 %')).toBeVisible()
  expect((await server.state()).shop?.formulas.get(formula.id)).toEqual(formula)
})

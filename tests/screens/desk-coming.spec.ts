import { doughId } from '../../shared-core/ids.ts'
import { NAME_MAX } from '../../shared-core/shop/set-up-limits.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { roomShop } from '../core/dough/acts-shop.ts'
import { table, variety } from '../core/support/shop.ts'
import { noonShop, openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import { expect, test } from './support/shop-server.ts'
import { cutOff, overlaps, textsOn } from './support/texts-on-page.ts'
import { expectNoViolations } from './support/wall-page.ts'

/** A new shop with guesses typed: plain dough becomes sesame and poppy, raisin dough is one variety. */
function guessedShop(): Shop {
  const { mixer, doughs, ingredients, preparations, formulas, doughRoom } = roomShop()
  const varieties = table([
    variety({ id: 'sesame', order: 1, usual: 90 }),
    variety({ id: 'poppy', order: 2, usual: 50 }),
    variety({ id: 'raisin', order: 3, doughId: doughId('raisin'), decidedAt: 'mixer', usual: 24 }),
  ])
  return noonShop({ mixer, doughs, ingredients, preparations, formulas, doughRoom, varieties })
}

/** Names as long as a set-up may have them, in one word. */
function withLongNames(shop: Shop): Shop {
  const long = <Id, Thing extends { readonly name: string }>(things: ReadonlyMap<Id, Thing>, most: number) =>
    new Map([...things].map(([id, thing]) => [id, { ...thing, name: thing.name.padEnd(most, 'Wn') }]))
  return { ...shop, doughs: long(shop.doughs, NAME_MAX.dough), varieties: long(shop.varieties, NAME_MAX.variety) }
}

test('[Q58] given typed guesses, when advice is looked into, changed and taken over in one touch, then the mixes have it, and the advice is remembered', async ({
  browser,
  server,
}) => {
  await server.start(guessedShop())
  const page = await openDeskByTouch(browser, server, { place: 'coming' })
  const dough = part(page, 'dough')
  // Today's dough is made; what is baked of it is advised today as well.
  const days = page.locator('.desk-pages a')
  await expect(days).toHaveCount(4)
  await days.first().tap()
  await expect(part(page, 'bake').getByRole('button', { name: 'Why so many of sesame', exact: false })).toBeVisible()
  await expect(dough).toHaveCount(0)
  await days.nth(1).tap()
  await expect(page.getByText('These are guesses', { exact: false })).toBeVisible()
  const yours = dough.getByLabel('Plain: pieces for the counter')
  const advised = Number(await yours.inputValue())
  expect(advised).toBeGreaterThan(100)
  await dough.getByRole('button', { name: 'Why so many of Plain' }).tap()
  await expect(dough.getByText('usual day')).toBeVisible()
  await yours.fill('12d')
  await expect(dough.getByText('1 number differs from the advice.', { exact: false })).toBeVisible()
  await dough.getByRole('button', { name: 'Take over and plan the mixes' }).tap()
  await expect(part(page, 'wanted').getByLabel('Plain, for the counter')).toHaveValue('144')
  const [wanted] = (await server.state()).wanted.values()
  expect(wanted?.lines.find(({ doughId: id }) => id === 'plain')).toMatchObject({ pieces: 144, advised })
})

for (const [index, [language, size]] of (
  [
    ['es', { width: 390, height: 844 }],
    ['en', { width: 1440, height: 900 }],
  ] as const
).entries()) {
  test(`[Q58] given coming days in ${language} at ${size.width}, then no text is cut off or covered, and axe finds nothing${lookMark(index)}`, async ({
    browser,
    server,
  }) => {
    await server.start(withLongNames(guessedShop()))
    const page = await openDeskByTouch(browser, server, { place: 'coming', language, size })
    await part(page, 'bake').locator('.coming-open').first().tap()
    await part(page, 'dough').locator('.coming-open').first().tap()
    await expect(page.locator('.coming-why')).toHaveCount(2)
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(sideways, 'sticks out sideways').toBeLessThanOrEqual(0)
    const texts = (await textsOn(page)).filter(({ within }) => !within.includes('desk-head'))
    expect(texts.length).toBeGreaterThan(20)
    expect(overlaps(texts)).toEqual([])
    // What lies below the fold is reached by scrolling.
    expect(cutOff(texts.map((text) => ({ ...text, clip: { ...text.clip, top: -1e6, bottom: 1e6 } })))).toEqual([])
    await expectNoViolations(page, 'coming days')
  })
}

import { doughId, varietyId } from '../../shared-core/ids.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import { table } from '../core/support/shop.ts'
import { axeFindings, CounterGlass, PHONE, unreadable } from './support/counter-glass.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { expectLegible, openWall } from './support/wall-page.ts'

const WORTH = { priceCents: 160, costCents: 40 }

/** A new shop an hour before its changeover: nobody has bought anything yet, and somebody has guessed what is usual. */
function guessedShop(language: Language, count: number): Shop {
  const shop = shiftShop({ language, changeoverIn: 50, varieties: count })
  const varieties = [...shop.varieties.values()].map((one, n) => ({ ...one, ...WORTH, usual: 40 + 2 * (n % 5) }))
  // Loads are not advised: what the last one should carry is people's to decide.
  return { ...shop, varieties: table(varieties), baking: { ...shop.baking, advice: false } }
}

/** Dough is there; some rods are full, some would not do for the afternoon. */
async function counted(server: ShopServer, count: number): Promise<void> {
  const dough = { doughId: doughId('plain'), varietyId: null, pieces: 240 } as const
  await server.act({ type: 'carryIn', ...dough, stage: 'chill', sinceMs: null })
  for (let n = 0; n < count; n += 1) await countedAs(server, n, [6, 72, 24][n % 3] ?? 0)
}

/** In steps, as a count that is far off is asked about. */
async function countedAs(server: ShopServer, n: number, pieces: number): Promise<void> {
  for (let some = Math.min(pieces, STEP); ; some = Math.min(pieces, some + STEP)) {
    await server.act({ type: 'count', varietyId: varietyId(`v${n}`), pieces: some })
    if (some === pieces) return
  }
}
const STEP = 24

test('[Q142] given a shop that guesses, when rods are counted before the changeover, then counter, wall and desk say what runs out and what the last load should carry', async ({
  browser,
  server,
}) => {
  await server.start(guessedShop('en', 3))
  await counted(server, 3)
  const counter = await CounterGlass.open(browser, server)
  const rod = (n: number) => counter.page.locator(`[data-variety="v${n}"]`)
  await expect(rod(0)).toContainText('gone about')
  await expect(rod(1)).toContainText(/lasts to close.*about \d+ left/)
  await expect(counter.line).toContainText(/Last load by .*: \d+ more Sun-dried Tomato 0/)
  await counter.touch(counter.rod('v0'))
  await expect(counter.line).toContainText(/gone about .*, a guess/)
  await counter.touch(counter.named('Put back'))

  await counter.touch(counter.foot('afternoon'))
  const first = counter.page.locator('.counter-table tbody tr').first()
  await expect(first).toContainText('Sun-dried Tomato 0')
  await expect(counter.page.getByText('Rests on guesses')).toBeVisible()
  expect(await unreadable(counter.page)).toEqual([])
  expect(await axeFindings(counter.page)).toEqual([])

  const wall = await openWall(browser, server)
  await expect(wall.locator('.wall-status')).toContainText(/Changeover in \d+ min · Last load by .* more Sun-dried/)
  const desk = await openDeskByTouch(browser, server)
  await expect(part(desk, 'afternoon').locator('tbody tr').first()).toContainText('+')
  await counter.touch(counter.named('Back to the rack'))
  // What is put on the rod is known on all of them at once.
  await countedAs(server, 0, 72)
  await expect(rod(0)).toContainText('lasts to close')
  await expect(part(desk, 'afternoon').locator('tbody tr').first()).not.toContainText('Sun-dried Tomato 0')
})

for (const [count, language] of [
  [28, 'es'],
  [12, 'en'],
] as const) {
  test(`[Q143] given ${count} varieties in ${language} before the changeover, then wall, counter and phone can be read${lookMark(count === 28 ? 0 : 1)}`, async ({
    browser,
    server,
  }) => {
    await server.start(guessedShop(language, count))
    await counted(server, count)
    const wall = await openWall(browser, server)
    await expect(wall.locator('.wall-status')).toContainText(/ · .*(\d+ (more|más de)|\+\d+) Sun-dried/)
    await expectLegible(wall, 'before the changeover')
    for (const size of [undefined, PHONE]) {
      const { page, ...glass } = await openedSheet(browser, server, { language, size })
      expect(await unreadable(page), JSON.stringify(glass)).toEqual([])
    }
  })
}

async function openedSheet(
  browser: Parameters<typeof CounterGlass.open>[0],
  server: ShopServer,
  { language, size }: { readonly language: Language; readonly size: typeof PHONE | undefined },
): Promise<CounterGlass> {
  const glass = await CounterGlass.open(browser, server, { language, ...(size === undefined ? {} : { size }) })
  await glass.foot('afternoon').waitFor()
  expect(await unreadable(glass.page)).toEqual([])
  await glass.touch(glass.foot('afternoon'))
  await glass.page.locator('.counter-table').waitFor()
  return glass
}

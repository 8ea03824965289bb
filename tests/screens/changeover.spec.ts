import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { BenchTablet } from './support/bench-touch.ts'
import { lookMark } from './support/looks.ts'
import { shiftShop } from './support/shift-shop.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'
import { expectLegible, expectNoViolations, openWall } from './support/wall-page.ts'

const QUARTER_MS = 15 * 60_000

async function lastLoads(server: ShopServer, variety = 'sesame'): Promise<void> {
  const plain = { doughId: doughId('plain'), varietyId: null } as const
  await server.act({ type: 'carryIn', ...plain, pieces: 96, stage: 'rack', sinceMs: null })
  const load = { type: 'load', plannedId: null, lines: [{ varietyId: varietyId(variety), pieces: 40 }] } as const
  for (const shelf of ['s1', 's2']) await server.act({ ...load, shelfId: shelfId(shelf) }, 'bench')
}

test('given a changeover in half an hour, when it is slipped, the oven changes shelf by shelf and its heat is typed, then wall and bench follow to what is left for the afternoon', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 30 }))
  await lastLoads(server)
  const wall = await openWall(browser, server)
  const bench = await BenchTablet.open(browser, server)
  await expect(wall.locator('.wall-status')).toContainText(/Changeover in (30|29) min/)
  await expect(wall.locator('.wall-status')).toContainText('3: bagels')
  await expectLegible(wall, 'before the changeover')
  await server.act({ type: 'care', care: 'topUp' }, 'bench')
  await server.act({ type: 'care', care: 'boiling' }, 'bench')

  await bench.touch(bench.page.locator('.bench-shift-key button'))
  await bench.touch(bench.named('Move it'))
  await expect(bench.cell('slip 15')).toContainText('last load in by')
  await expectNoViolations(bench.page, 'slip')
  await bench.touch(bench.cell('slip 15'))
  await expect.poll(async () => (await server.state()).marks.get('changeover')).toMatchObject({ slipMs: QUARTER_MS })
  await expect(wall.locator('.wall-status')).toContainText(/Changeover in 4[45] min/)

  await bench.touch(bench.named('Shelf by shelf'))
  await expectNoViolations(bench.page, 'shelves')
  await bench.touch(bench.named('Shelf 3: Done with bagels'))
  await expect(wall.locator('.wall-status')).toContainText('3: over')
  await bench.touch(bench.named('Shelf 3: Bagels again'))
  await expect(wall.locator('.wall-status')).toContainText('3: bagels')
  for (const shelf of [1, 2, 3]) await bench.touch(bench.named(`Shelf ${shelf}: Done with bagels`))
  await expect(wall.locator('.wall-status')).toContainText('1: emptying')

  await bench.touch(bench.named('Oven readings'))
  await bench.touch(bench.named('Type it: Shelf 1'))
  for (const digit of ['4', '8', '5']) await bench.touch(bench.cell(`digit ${digit}`))
  await bench.touch(bench.cell('save'))
  await expect(bench.page.locator('[data-row="s1"]')).toContainText(/485 °F at/)
  await bench.touch(bench.named('Type it: Whole oven'))
  for (const digit of ['4', '7', '0']) await bench.touch(bench.cell(`digit ${digit}`))
  await bench.touch(bench.cell('save'))
  await expect.poll(async () => (await server.state()).marks.get('oven')).toMatchObject({ milliCelsius: 243_333 })

  await bench.touch(bench.named('List'))
  for (const step of ['drain', 'stones']) {
    await bench.touch(bench.page.locator(`[data-row="${step}"]`).getByRole('button', { name: 'Done' }))
  }
  await bench.touch(bench.page.locator('.bench-sheet-back button'))
  for (const shelf of ['s1', 's2']) {
    for (const act of ['Flip', 'Out of']) {
      await expect(bench.shelf(shelf)).toContainText(act)
      await bench.touch(bench.shelf(shelf))
    }
  }
  await expect(wall.locator('.wall-afternoon')).toContainText('Left for the afternoon')
  await expect(wall.locator('.wall-afternoon')).toContainText('Sesame')
  await expect(wall.locator('.wall-afternoon')).toContainText('No more bagels are baked today.')
  await expect(wall.locator('.wall-rod').first()).toBeVisible()
  await expectLegible(wall, 'afternoon')
  await expectNoViolations(wall, 'wall, afternoon')
})

for (const { varieties, language, shelves } of [
  { varieties: 12, language: 'en', shelves: 4 },
  { varieties: 28, language: 'es', shelves: 12 },
] as const) {
  test(`given ${varieties} varieties and ${shelves} shelves in ${language}, when the changeover is near, then nothing overlaps or is cut off${lookMark(varieties === 12 ? 0 : 1)}`, async ({
    browser,
    server,
  }) => {
    await server.start(shiftShop({ language, changeoverIn: 20, varieties, shelves, isLong: true }))
    await lastLoads(server, 'v1')
    const wall = await openWall(browser, server)
    await expect(wall.locator('.wall-status')).toBeVisible()
    await expectLegible(wall, 'before')
    const bench = await BenchTablet.open(browser, server)
    await server.act({ type: 'care', care: 'topUp' }, 'bench')
    await server.act({ type: 'care', care: 'boiling' }, 'bench')
    await bench.touch(bench.page.locator('.bench-shift-key button'))
    for (const at of [0, 1, 2, 3]) {
      await bench.touch(bench.page.locator('.bench-mode button').nth(at))
      await expectNoViolations(bench.page, `part ${at}`)
    }
    for (const { id } of (await server.state()).loads.values()) {
      await server.act({ type: 'out', loadId: id, from: 'first-side', lines: null }, 'bench')
    }
    await expect(wall.locator('.wall-steps')).toBeVisible()
    await expectLegible(wall, 'list')
  })
}

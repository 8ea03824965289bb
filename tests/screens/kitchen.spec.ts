import type { Locator } from '@playwright/test'
import { portionId } from '../../shared-core/ids.ts'
import { BenchTablet } from './support/bench-touch.ts'
import { asked, kitchenShop, slip } from './support/kitchen-shop.ts'
import { expect, test } from './support/shop-server.ts'
import { expectLegible, expectNoViolations, openWall } from './support/wall-page.ts'

/** The ring of an order on its rod. */
function ring({ page }: BenchTablet, mark: string): Locator {
  return page.locator('.kitchen-ring button', { hasText: mark }).first()
}

const stageOf = ({ page }: BenchTablet, stage: string, mark: string): Locator =>
  page.locator(`.kitchen-ring-${stage} button`, { hasText: mark }).first()

test('[M142] given an afternoon rush at two stations and a wall that watches, when it is worked by touch and the server is away in the middle, then all that was touched has happened and the order is handed over', async ({
  browser,
  server,
}) => {
  await server.start(kitchenShop())
  await server.act({ type: 'countPortions', portionId: portionId('ball'), portions: 20 }, 'bench')
  const hands = await BenchTablet.open(browser, server, { settings: { kitchen: ['sandwiches'] } })
  const oven = await BenchTablet.open(browser, server, { settings: { kitchen: ['oven'] } })
  const wall = await openWall(browser, server)
  await slip(server, '41', [asked('flatbread')], 'cut in eight')
  await slip(server, '42', [asked('flatbread')])
  await slip(server, '43', [asked('melt', { on: 'poppy', allergies: ['milk'] })])

  await expect(hands.page.locator('[data-next]').first()).toContainText('cut in eight')
  await expect(hands.page.locator('.kitchen-rod .kitchen-allergy')).toHaveText('ALLERGY: milk')
  await expect(wall.locator('.wall-allergy')).toHaveText('ALLERGY: milk')
  await expect(oven.page.locator('.kitchen-ring-away')).toHaveCount(3)

  for (const mark of ['41', '42']) {
    await hands.touch(stageOf(hands, 'next', mark))
    await hands.touch(stageOf(hands, 'begun', mark))
  }
  await oven.touch(stageOf(oven, 'next', '41'))
  await oven.touch(stageOf(oven, 'next', '42'))
  await expect(oven.cell('shelf s3')).toContainText('2 places free')
  await oven.touch(oven.cell('shelf s3'))
  const group = oven.page.locator('[data-group="41 42"] button')
  await expect(group).toContainText('Turn 3')
  await expect(wall.locator('.wall-shelf')).toContainText('Turn 3')
  await expectLegible(wall, 'two in the oven')
  await expectNoViolations(oven.page, 'oven')

  await server.stop()
  await expect(hands.page.locator('.kitchen-room')).toBeVisible()
  await hands.touch(stageOf(hands, 'next', '43'))
  await hands.touch(stageOf(hands, 'begun', '43'))
  await oven.touch(group)
  await expect(group).toContainText('Out of 3')
  await server.start()
  await expect
    .poll(async () =>
      [...(await server.state()).orders.values()].map(({ mark, items }) => [
        mark,
        items[0]?.steps[0]?.madeAtMs !== null,
      ]),
    )
    .toEqual([
      ['41', true],
      ['42', true],
      ['43', true],
    ])
  await expect(stageOf(oven, 'next', '43')).toBeVisible()

  await oven.touch(group)
  await hands.touch(stageOf(hands, 'next', '41'))
  await hands.touch(hands.cell('take-back'))
  await hands.touch(stageOf(hands, 'next', '41'))
  await hands.touch(stageOf(hands, 'begun', '41'))
  await expect(wall.locator('.wall-made-ready')).toHaveText('ready: 41')
  await hands.touch(hands.cell('ready'))
  await hands.touch(hands.page.locator('.bench-cell button', { hasText: '41' }))
  await expect
    .poll(async () => [...(await server.state()).orders.values()].map(({ mark }) => mark))
    .toEqual(['42', '43'])
  await expect(ring(hands, '41')).toHaveCount(0)
  // Balls were counted once, and each flatbread took one.
  expect((await server.state()).portions.get(portionId('ball'))?.portions).toBe(18)
})

import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { ago } from './support/desk-page.ts'
import { shiftShop } from './support/shift-shop.ts'
import { expect, test } from './support/shop-server.ts'

const SCREENS = ['wall', 'bench', 'counter', 'desk#today', 'desk#loads', 'desk#close', 'desk#past', 'desk#past/today']
const SET_UP = ['desk#set-up', 'desk#set-up/oven', 'desk#screens']

test('given screens on which nothing happens, when seconds pass, then nothing is written that stands there already', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  await server.act({ type: 'openDay' })
  const tray = { doughId: doughId('plain'), varietyId: null, pieces: 30, stage: 'rack', sinceMs: null } as const
  await server.act({ type: 'carryIn', ...tray })
  const lines = [{ varietyId: varietyId('plain'), pieces: 24 }]
  await ago(server, 1, { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines })
  const context = await browser.newContext()
  for (const screen of [...SCREENS, ...SET_UP]) {
    const page = await context.newPage()
    await page.clock.install()
    await page.goto(`${server.address}/${screen}`)
    await expect(page.locator(thereOn(screen)).first(), screen).toBeVisible()
    await page.evaluate(watch)
    await page.clock.runFor(3_500)
    const { all, again } = await page.evaluate(() => Reflect.get(window, 'written')())
    expect(again, screen).toEqual([])
    if (screen === 'wall' || screen === 'bench') expect(all, 'the load counts down').toBeGreaterThan(0)
    await page.close()
  }
})

/** What stands there once the shop does: before that nothing counts down. */
function thereOn(screen: string): string {
  if (screen.startsWith('desk')) return '.desk-panel, .setup-overview, .setup-sheet'
  return { wall: '.wall-shelf .ring', bench: '.bench-act .ring' }[screen] ?? '[data-block], .rod'
}

/** Runs in the page: counts what is written from now on, and keeps what stood there already. */
function watch(): void {
  const again: string[] = []
  let all = 0
  const observer = new MutationObserver(keep)
  function keep(records: readonly MutationRecord[]): void {
    all += records.length
    for (const { type, target, attributeName, oldValue } of records) {
      const now = target instanceof Element ? target.getAttribute(attributeName ?? '') : target.nodeValue
      const at = target instanceof Element ? target : target.parentElement
      if (type !== 'childList' && now === oldValue) again.push(`${at?.tagName}.${at?.className}: "${now}"`)
    }
  }
  observer.observe(document.body, {
    subtree: true,
    attributes: true,
    attributeOldValue: true,
    characterData: true,
    characterDataOldValue: true,
  })
  Reflect.set(window, 'written', () => {
    keep(observer.takeRecords())
    return { all, again: [...new Set(again)] }
  })
}

import type { BrowserContext, Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { doughId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'
import { dwell, shopWith, TRADE_WINDOWS } from '../core/support/shop.ts'
import { chromiumPath } from '../run/chromium.mjs'
import { CHROMIUM_ARGS } from './support/browser-args.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

const PLAIN = doughId('plain')

/** A first side of under a minute counts in seconds from its first moment. */
const countingSeconds = () => shopWith({ windows: { ...TRADE_WINDOWS, firstSide: dwell(40, 55, 90, 's') } })

async function stocked(server: ShopServer): Promise<void> {
  await server.act({ type: 'carryIn', doughId: PLAIN, varietyId: null, pieces: 144, stage: 'rack', sinceMs: null })
  const loads = [lines('sesame', 24, 'poppy', 12), lines('plain', 48), lines('cheddar', 36)]
  await server.act({ type: 'setLoadList', loads: loads.map((one) => ({ shelfId: null, inAtMs: null, lines: one })) })
}

const shelfKey = (bench: Page, shelf: string) => bench.locator(`[data-shelf="${shelf}"] button`).first()

/** Touches a shelf's key while it says so, until it says something else: a touch within a quarter second is an echo. */
async function touch(bench: Page, shelf: string, says: string): Promise<void> {
  await expect(shelfKey(bench, shelf)).toContainText(says)
  await expect(async () => {
    const text = await shelfKey(bench, shelf).textContent()
    if (text?.includes(says)) await shelfKey(bench, shelf).tap()
    await expect(shelfKey(bench, shelf)).not.toContainText(says, { timeout: 1_000 })
  }).toPass()
}

test('given bench, wall and counter, when a load is put in, flipped and taken out by touch, then all three follow', async ({
  browser,
  server,
}) => {
  await server.start(shopWith())
  await stocked(server)
  const tablet = await browser.newContext({ viewport: { width: 1280, height: 800 }, hasTouch: true })
  const bench = await tablet.newPage()
  const wall = await (await browser.newContext({ viewport: { width: 1920, height: 1080 } })).newPage()
  const counter = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage()
  await Promise.all([
    bench.goto(`${server.address}/bench`),
    wall.goto(`${server.address}/wall`),
    counter.goto(`${server.address}/counter`),
  ])

  await touch(bench, 's1', 'Load 1')
  await expect(wall.getByText(/Flip 1/).first()).toBeVisible()
  await touch(bench, 's1', 'Flip 1')
  await expect(wall.getByText(/Out of 1/).first()).toBeVisible()
  await touch(bench, 's1', 'Out of 1')
  await expect(shelfKey(bench, 's1')).toContainText('Load 1')

  // Out puts the pieces to cool; the counter sees them coming without another tap.
  await expect(counter.getByText(/24 at \d/).first()).toBeVisible()
  const state = await server.state()
  expect([...state.stock.values()].map((one) => [one.varietyId, one.lots[0]?.pieces])).toEqual([
    ['poppy', 12],
    ['sesame', 24],
  ])
  // Three touches, and every piece is somewhere.
  expect([...state.batches.values()].reduce((sum, one) => sum + one.pieces, 0)).toBe(108)
})

/** The device's own clock is wrong by so much, from before the page's first script. */
async function withClock(context: BrowserContext, byMs: number): Promise<void> {
  await context.addInitScript((shift) => {
    const real = Date.now.bind(Date)
    Date.now = () => real() + shift
  }, byMs)
}

test('given two screens with clocks 90 s apart, when a load counts down, then both show the same second', async ({
  browser,
  server,
}) => {
  await server.start(countingSeconds())
  await stocked(server)
  const pages: Page[] = []
  for (const shift of [-45_000, 45_000]) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, hasTouch: true })
    await withClock(context, shift)
    const page = await context.newPage()
    await page.goto(`${server.address}/bench`)
    pages.push(page)
  }
  const [first, second] = pages
  if (first === undefined || second === undefined) throw new Error('two pages')
  await shelfKey(first, 's1').tap()
  await expect(shelfKey(second, 's1')).toContainText('Flip 1')

  const seconds = async (page: Page) => Number(/in (\d+) s/.exec((await shelfKey(page, 's1').textContent()) ?? '')?.[1])
  const apart: number[] = []
  // Over whole seconds: a burst of reads may fall just where one begins.
  const seen = new Set<number>()
  while (seen.size < 4) {
    const [one, other] = await Promise.all([seconds(first), seconds(second)])
    if (Number.isNaN(one) || Number.isNaN(other)) continue
    seen.add(one)
    apart.push(Math.abs(one - other))
  }
  // The two are read a few ms apart, and a second may begin between.
  expect(Math.max(...apart)).toBeLessThanOrEqual(1)
  expect(apart.filter((one) => one === 0).length).toBeGreaterThan(apart.length / 2)
})

test('given a name on the shop’s network instead of loopback, when the bench taps, then it works without a secure context', async ({
  server,
}) => {
  await server.start(shopWith())
  await stocked(server)
  const executablePath = chromiumPath()
  const browser = await chromium.launch({
    ...(executablePath === undefined ? {} : { executablePath }),
    args: [...CHROMIUM_ARGS, '--host-resolver-rules=MAP bagels.local 127.0.0.1'],
  })
  try {
    const bench = await browser.newPage({ viewport: { width: 1280, height: 800 }, hasTouch: true })
    await bench.goto(`http://bagels.local:${server.port}/bench`)
    expect(await bench.evaluate(() => isSecureContext)).toBe(false)
    await shelfKey(bench, 's2').tap()
    await expect(shelfKey(bench, 's2')).toContainText('Flip 2')
    await expect.poll(async () => (await server.state()).loads.size).toBe(1)
  } finally {
    await browser.close()
  }
})

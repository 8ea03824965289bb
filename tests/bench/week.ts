import { parseArgs } from 'node:util'
import type { CDPSession, Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { clockText } from '../../client/live/clock-text.ts'
import { pastDays } from '../../server/demo/past-days.ts'
import { shopClock } from '../../server/live/shop-clock.ts'
import { epochMs } from '../../shared-core/units.ts'
import { chromiumPath } from '../run/chromium.mjs'
import { CHROMIUM_ARGS } from '../screens/support/browser-args.ts'
import { ReplayedShop } from './replayed-shop.ts'

/**
 * A wall that is left on for a week: seven days of the demo's past are told to a real page, whose timers are moved along
 * with the shop's time in steps. Once a day, at the same hour, garbage is collected and what is left is counted. The
 * page's clock runs a thousandth too slow, twenty times as badly as any computer's: what it shows must be the shop's time.
 */
const DAYS = 7
const DAY_MS = 86_400_000
/** From before the first opening to that night, when a wall has little to show. */
const FIRST_DAY_MS = DAY_MS * (20 / 24)
/** Rings and texts change once a step; a day has some 5,800 of them. */
const STEP_MS = 15_000
const SLOW = 0.999
const MINUTE_MS = 60_000
const AIM_GROWTH = 1.1
const VIEWPORT = { width: 1920, height: 1080 }

const { values } = parseArgs({ options: { days: { type: 'string', default: String(DAYS) } } })
const days = Number(values.days)
if (!(days >= 2 && days <= DAYS)) throw new Error(`--days is "${values.days}"; it must be from 2 to ${DAYS}.`)

interface Sample {
  readonly day: number
  readonly heapMb: number
  readonly nodes: number
  readonly listeners: number
  readonly seq: number
  /** What the wall shows less what the shop's clock says, in whole minutes. */
  readonly offMinutes: number
}

const { entries } = pastDays({ nowMs: epochMs(Date.UTC(2026, 10, 26, 12)), seed: 1 })
const [first] = entries
if (first === undefined) throw new Error('there is no past')
// In the middle of a minute, so that what the wall shows is told apart from the minutes beside it.
const beginMs = epochMs(Math.ceil(first.recordedAtMs / MINUTE_MS) * MINUTE_MS + MINUTE_MS / 2)
const shop = new ReplayedShop(entries, beginMs)
const address = await shop.listen()
const executablePath = chromiumPath()
const browser = await chromium.launch({
  args: CHROMIUM_ARGS,
  ...(executablePath === undefined ? {} : { executablePath }),
})
try {
  const page = await (await browser.newContext({ viewport: VIEWPORT })).newPage()
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(error.message))
  await page.clock.install({ time: beginMs })
  await page.goto(`${address}/wall`)
  await page.clock.runFor(2_000)
  await page.waitForSelector('.wall-time')
  const session = await page.context().newCDPSession(page)
  const samples: Sample[] = []
  const beganMs = performance.now()
  for (let day = 1; day <= days; day += 1) {
    await liveThrough(page, day === 1 ? FIRST_DAY_MS : DAY_MS)
    samples.push(await sample(page, session, day))
  }
  report(samples, (performance.now() - beganMs) / 1_000, faults)
} finally {
  await browser.close()
  await shop.close()
}

async function liveThrough(page: Page, spanMs: number): Promise<void> {
  for (let passedMs = 0; passedMs < spanMs; passedMs += STEP_MS) {
    shop.moveTo(epochMs(shop.nowMs + STEP_MS))
    await page.clock.fastForward(Math.round(STEP_MS * SLOW))
  }
}

async function sample(page: Page, session: CDPSession, day: number): Promise<Sample> {
  await session.send('HeapProfiler.collectGarbage')
  await session.send('Performance.enable')
  const { metrics } = await session.send('Performance.getMetrics')
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN
  return {
    day,
    heapMb: of('JSHeapUsedSize') / 1024 / 1024,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
    seq: shop.seq,
    offMinutes: await offMinutes(page),
  }
}

async function offMinutes(page: Page): Promise<number> {
  const shown = await page.locator('.wall-time').textContent()
  for (let off = 0; off <= 60; off += 1) {
    for (const sign of [1, -1]) if (shown === shopText(off * sign)) return off * sign
  }
  return Number.NaN
}

function shopText(minutesLater: number): string {
  const { zone, clock } = shop.profile
  return clockText(shopClock(zone, shop.nowMs), epochMs(shop.nowMs + minutesLater * MINUTE_MS), clock)
}

function report(samples: readonly Sample[], tookSeconds: number, faults: readonly string[]): void {
  const [one, last] = [samples[0], samples.at(-1)]
  if (one === undefined || last === undefined) return
  console.log(
    `\nA wall through ${days} days (${last.seq} entries, in ${tookSeconds.toFixed(0)} s; after garbage collection at each day’s end)`,
  )
  for (const { day, heapMb, nodes, listeners, seq, offMinutes: off } of samples) {
    console.log(
      `  day ${day}  heap ${heapMb.toFixed(2)} MB  nodes ${nodes}  listeners ${listeners}  entries ${seq}  its clock is off by ${off} min`,
    )
  }
  console.log(
    `  day ${days} to day 1: heap ${(last.heapMb / one.heapMb).toFixed(2)}, nodes ${(last.nodes / one.nodes).toFixed(2)} (aim ≤ ${AIM_GROWTH}); errors of the page: ${faults.length}${faults.length > 0 ? ` (${faults[0]})` : ''}`,
  )
}

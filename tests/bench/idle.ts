import { setTimeout as wait } from 'node:timers/promises'
import type { Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { chromiumPath } from '../run/chromium.mjs'
import { CHROMIUM_ARGS } from '../screens/support/browser-args.ts'
import { median } from './figures.ts'
import { tickingPage } from './minimal-pages.ts'
import { startProcess } from './server-process.ts'

/**
 * What a screen costs while nobody touches anything: changes of its page a second, and processor time of the whole
 * browser, beside a page that changes as many texts a second and does nothing else.
 */
const WATCHED_MS = 15_000
const SETTLE_MS = 3_000
const AIM_SHARE = 0.05
const SIZES = {
  wall: { width: 1920, height: 1080 },
  bench: { width: 1280, height: 800 },
  counter: { width: 1280, height: 800 },
  desk: { width: 1440, height: 900 },
}

const demo = await startProcess(['dist/server.mjs', '--hands-off'])
console.log(
  `\nA screen while nobody touches it (the demo, ${WATCHED_MS / 1_000} s each; aim ≤ ${AIM_SHARE * 100} % of a core)`,
)
try {
  for (const [screen, viewport] of Object.entries(SIZES)) {
    const mine = await watched(viewport, (page) => page.goto(`${demo.address}/${screen}`))
    const bare = await watched(viewport, (page) => page.setContent(tickingPage(Math.round(mine.changesASecond))))
    console.log(
      `  ${screen.padEnd(8)} ${mine.changesASecond.toFixed(0)} changes a second, ${percent(mine.share)} of a core; a page with as many changing texts ${percent(bare.share)}`,
    )
  }
} finally {
  await demo.stop()
}

interface Watched {
  readonly changesASecond: number
  readonly share: number
}

async function watched(
  viewport: { width: number; height: number },
  open: (page: Page) => Promise<unknown>,
): Promise<Watched> {
  const executablePath = chromiumPath()
  const browser = await chromium.launch({
    args: CHROMIUM_ARGS,
    ...(executablePath === undefined ? {} : { executablePath }),
  })
  const page = await (await browser.newContext({ viewport })).newPage()
  await open(page)
  await wait(SETTLE_MS)
  await page.evaluate(() => {
    const counts: number[] = []
    Object.assign(window, { counts })
    let since = 0
    new MutationObserver((records) => {
      since += records.length
    }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true })
    setInterval(() => {
      counts.push(since)
      since = 0
    }, 1_000)
  })
  const session = await browser.newBrowserCDPSession()
  const cpuSeconds = async () => {
    const { processInfo } = await session.send('SystemInfo.getProcessInfo')
    return processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0)
  }
  const before = await cpuSeconds()
  await wait(WATCHED_MS)
  const share = ((await cpuSeconds()) - before) / (WATCHED_MS / 1_000)
  const counts: number[] = await page.evaluate(() => Reflect.get(window, 'counts'))
  await browser.close()
  return { changesASecond: median(counts), share }
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`
}

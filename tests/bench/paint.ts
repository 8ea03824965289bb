import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { SAME_TOUCH_MS } from '../../client/parts/press-guard.ts'
import { chromiumPath } from '../run/chromium.mjs'
import { CHROMIUM_ARGS } from '../screens/support/browser-args.ts'
import { median, ms, quantile } from './figures.ts'
import { startProcess } from './server-process.ts'

/**
 * A touch on one page → painted on another: our bench and wall beside the least pages over a bare server, in alternating
 * blocks of one run and one browser. And how much of the wall's page a touch changes.
 */
const BLOCKS = 8
const TAPS_A_BLOCK = 12
/** One frame of a 60 Hz screen. */
const AIM_MS = 1_000 / 60
/** Loads of all blocks, three touches each, and some to spare. */
const PIECES = 5_000

interface Side {
  readonly from: Page
  readonly to: Page
  /** What is touched next, and where its effect is seen. */
  readonly key: Locator
  readonly shown: string
}

const folder = mkdtempSync(join(tmpdir(), 'boilboard-bench-'))
const ours = await startProcess(['dist/server.mjs', '--open', '--shop', join(folder, 'shop')])
const floor = await startProcess(['--import', 'tsx', 'tests/bench/floor-server.ts', join(folder, 'floor.sqlite')])
const executablePath = chromiumPath()
const browser = await chromium.launch({
  args: CHROMIUM_ARGS,
  ...(executablePath === undefined ? {} : { executablePath }),
})
try {
  const sides = { ours: await ourSide(), floor: await floorSide() }
  const taken: Record<keyof typeof sides, number[][]> = { ours: [], floor: [] }
  const changes: number[] = []
  // The first block of each warms the engines up and is not counted.
  for (let block = 0; block <= BLOCKS; block += 1) {
    for (const name of ['ours', 'floor'] as const) {
      const times: number[] = []
      for (let n = 0; n < TAPS_A_BLOCK; n += 1) {
        const { paintedMs, mutations } = await tapOnce(sides[name])
        times.push(paintedMs)
        if (name === 'ours') changes.push(mutations)
      }
      if (block > 0) taken[name].push(times)
    }
  }
  report(taken, changes)
} finally {
  await browser.close()
  await ours.stop()
  await floor.stop()
  rmSync(folder, { recursive: true, force: true })
}

function report(taken: { readonly ours: number[][]; readonly floor: number[][] }, changes: readonly number[]): void {
  const differences = taken.ours.map((block, n) => median(block) - median(taken.floor[n] ?? []))
  console.log(
    `\nA touch on one page → painted on another (${BLOCKS} blocks of ${TAPS_A_BLOCK} touches each, alternating)`,
  )
  for (const name of ['ours', 'floor'] as const) {
    const all = taken[name].flat()
    console.log(`  ${name.padEnd(6)} p50 ${ms(quantile(all, 0.5))}  p90 ${ms(quantile(all, 0.9))}`)
  }
  console.log(`  difference of medians, median of blocks: ${ms(median(differences))} (aim ≤ ${ms(AIM_MS)}, one frame)`)
  console.log(`  changes of the wall's page by a touch: p50 ${median(changes)}, p90 ${quantile(changes, 0.9)}`)
}

async function tapOnce({ from, to, key, shown }: Side): Promise<{ paintedMs: number; mutations: number }> {
  await from.evaluate(() => {
    document.addEventListener(
      'pointerdown',
      (event) => {
        document.documentElement.dataset.touched = String(performance.timeOrigin + event.timeStamp)
      },
      { once: true, capture: true },
    )
  })
  const seen = to.evaluate((where) => {
    const node = document.querySelector(where)
    const before = node?.textContent
    return new Promise<{ paintedAtMs: number; mutations: number }>((resolve) => {
      let mutations = 0
      const observer = new MutationObserver((records) => {
        mutations += records.length
        if (document.querySelector(where)?.textContent === before) return
        observer.disconnect()
        // The second frame begins when the first is painted.
        requestAnimationFrame(() =>
          requestAnimationFrame((frameMs) => resolve({ paintedAtMs: performance.timeOrigin + frameMs, mutations })),
        )
      })
      observer.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true })
    })
  }, shown)
  await key.tap()
  const { paintedAtMs, mutations } = await seen
  const touchedAtMs = await from.evaluate(() => Number(document.documentElement.dataset.touched))
  // A touch that comes sooner at the same place is an echo to the screen.
  await from.waitForFunction(([sinceMs, afterMs]) => performance.timeOrigin + performance.now() - sinceMs > afterMs, [
    touchedAtMs,
    SAME_TOUCH_MS,
  ] as const)
  return { paintedMs: paintedAtMs - touchedAtMs, mutations }
}

async function ourSide(): Promise<Side> {
  const { state } = await (await fetch(`${ours.address}/api/v1/state`)).json()
  const [[doughId]] = state.shop.doughs
  const [[shelfId]] = state.shop.shelves
  const [[varietyId]] = state.shop.varieties
  await act(1, { type: 'carryIn', doughId, varietyId: null, pieces: PIECES, stage: 'rack', sinceMs: null })
  const load = { shelfId, inAtMs: null, lines: [{ varietyId, pieces: 12 }] }
  await act(2, { type: 'setLoadList', loads: Array.from({ length: 200 }, () => load) })
  const from = await opened(`${ours.address}/bench`, { width: 1280, height: 800 }, true)
  const to = await opened(`${ours.address}/wall`, { width: 1920, height: 1080 }, false)
  const key = from.locator(`[data-shelf="${shelfId}"] .bench-act button`).first()
  await key.waitFor()
  await to.locator('.wall-shelf strong').first().waitFor()
  return { from, to, key, shown: '.wall-shelf strong' }
}

async function floorSide(): Promise<Side> {
  const from = await opened(`${floor.address}/sender`, { width: 1280, height: 800 }, true)
  const to = await opened(`${floor.address}/hearer`, { width: 1920, height: 1080 }, false)
  return { from, to, key: from.locator('button'), shown: 'strong' }
}

async function opened(url: string, viewport: { width: number; height: number }, hasTouch: boolean): Promise<Page> {
  const page = await (await browser.newContext({ viewport, hasTouch })).newPage()
  await page.goto(url)
  return page
}

async function act(n: number, body: object): Promise<void> {
  const response = await fetch(`${ours.address}/api/v1/commands`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-device-role': 'desk' },
    body: JSON.stringify({ id: `benchpaint${n}`, deviceSeq: n, tappedAtMs: null, ...body }),
  })
  if (!response.ok) throw new Error(await response.text())
}

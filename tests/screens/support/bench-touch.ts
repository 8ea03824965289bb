import type { Browser, Locator, Page } from '@playwright/test'
import { SAME_TOUCH_MS } from '../../../client/parts/press-guard.ts'
import type { Language } from '../../../shared-core/shop/shop.ts'
import type { ShopServer } from './shop-server.ts'

export const TABLET = { width: 1280, height: 800 } as const

export interface BenchOn {
  readonly inches?: number
  readonly language?: Language | null
  readonly size?: { readonly width: number; readonly height: number }
  readonly settings?: object
}

/** A tablet at the line, opened by touch; every touch on its glass is counted. */
export class BenchTablet {
  readonly page: Page
  touches = 0

  constructor(page: Page) {
    this.page = page
  }

  static async open(browser: Browser, server: ShopServer, on: BenchOn = {}): Promise<BenchTablet> {
    const { inches = 10.1, language = null, size = TABLET, settings = {} } = on
    const context = await browser.newContext({ viewport: size, hasTouch: true })
    const kept = JSON.stringify({ diagonalInches: inches, language, ...settings })
    await context.addInitScript((text) => {
      if (localStorage.getItem('boilboard.bench.settings') === null) {
        localStorage.setItem('boilboard.bench.settings', text)
      }
    }, kept)
    const page = await context.newPage()
    await page.goto(`${server.address}/bench`)
    await page.locator('.bench-board, .dough-room, .kitchen-room').waitFor()
    await page.evaluate(() => document.fonts.ready)
    return new BenchTablet(page)
  }

  /** A touch of its own: two that come too soon at one place are one to the screen, as they are from a wet knuckle. */
  async touch(target: Locator): Promise<void> {
    this.touches += 1
    await target.waitFor()
    await this.page.waitForFunction((afterMs) => {
      const last = Number(document.documentElement.dataset.touchedAt ?? -1_000)
      return performance.now() - last > afterMs
    }, SAME_TOUCH_MS)
    await target.tap()
    await this.page.evaluate(() => {
      document.documentElement.dataset.touchedAt = String(performance.now())
    })
  }

  /** The one key of a shelf. */
  shelf(id: string): Locator {
    return this.page.locator(`[data-shelf="${id}"] .bench-act button`).first()
  }

  differs(id: string): Locator {
    return this.page.locator(`[data-shelf="${id}"] .bench-differs button`).first()
  }

  station(which: 'pull' | 'kettle' | 'board'): Locator {
    return this.page.locator(`[data-station="${which}"] .bench-act button`).first()
  }

  /** A key in a sheet, by what it is for. */
  cell(id: string): Locator {
    return this.page.locator(`[data-cell="${id}"] button`).first()
  }

  named(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name })
  }
}

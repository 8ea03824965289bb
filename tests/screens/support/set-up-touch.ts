import type { Browser, Locator, Page } from '@playwright/test'
import type { ShopServer } from './shop-server.ts'

export interface DeskOn {
  readonly size?: { readonly width: number; readonly height: number }
  readonly hash?: string
}

/** A desk on a screen that is touched; every touch and every key that is typed is counted. */
export class DeskTouch {
  readonly page: Page
  touches = 0
  keystrokes = 0

  constructor(page: Page) {
    this.page = page
  }

  static async open(browser: Browser, server: ShopServer, on: DeskOn = {}): Promise<DeskTouch> {
    const { size = { width: 1440, height: 900 }, hash = '' } = on
    const context = await browser.newContext({ viewport: size, hasTouch: true, timezoneId: 'America/Chicago' })
    const page = await context.newPage()
    await page.goto(`${server.address}/desk${hash}`)
    await page.locator('.setup').waitFor()
    await page.evaluate(() => document.fonts.ready)
    return new DeskTouch(page)
  }

  async tap(target: Locator): Promise<void> {
    this.touches += 1
    await target.tap()
  }

  /** Into a field that is touched: what was there is replaced. */
  async type(field: Locator, text: string): Promise<void> {
    await this.tap(field)
    await field.selectText()
    this.keystrokes += text.length
    await this.page.keyboard.type(text)
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: typeof name === 'string' })
  }

  link(name: string | RegExp): Locator {
    return this.page.getByRole('link', { name, exact: typeof name === 'string' })
  }

  radio(group: string, name: string | RegExp): Locator {
    return this.page.getByRole('group', { name: group, exact: true }).getByRole('radio', { name })
  }

  field(label: string | RegExp): Locator {
    return this.page.getByRole('textbox', { name: label, exact: typeof label === 'string' })
  }

  /** A page of the set-up by its address, as a bookmark would open it. */
  async go(place: string): Promise<void> {
    await this.page.evaluate((hash) => {
      window.location.hash = hash
    }, place)
    await this.page.locator('.setup-sheet').waitFor()
  }
}

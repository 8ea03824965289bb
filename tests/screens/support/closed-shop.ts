import type { Browser, Locator, Page } from '@playwright/test'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { expect, ShopServer } from './shop-server.ts'

const DESK = { width: 1440, height: 900 }
const TABLET = { width: 1280, height: 800 }

/** A shop into which a device comes by a code only, with the desk that its terminal's code has made. */
export class ClosedShop {
  readonly server: ShopServer
  readonly desk: Page
  #acts = 0

  private constructor(server: ShopServer, desk: Page) {
    this.server = server
    this.desk = desk
  }

  /** @param whileUnclaimed looks at the page on which the code is typed */
  static async claim(
    browser: Browser,
    shop: Shop,
    whileUnclaimed: (page: Page) => Promise<void> = async () => undefined,
  ): Promise<ClosedShop> {
    const server = new ShopServer([], false)
    await server.start(shop)
    await expect.poll(() => server.terminalCode).not.toBeNull()
    const desk = await touchPage(browser, DESK)
    await desk.goto(server.address)
    await whileUnclaimed(desk)
    await typeCode(desk, server.terminalCode ?? '')
    await desk.waitForURL('**/desk')
    return new ClosedShop(server, desk)
  }

  /** The desk's place for screens. */
  async screens(): Promise<Page> {
    await this.desk.goto(`${this.server.address}/desk#screens`)
    await this.desk.locator('[data-part="let-in"]').waitFor()
    return this.desk
  }

  part(name: string): Locator {
    return this.desk.locator(`[data-part="${name}"]`)
  }

  /** Six digits that the desk shows for a screen. */
  async code(role: string, name: string): Promise<string> {
    const letIn = this.part('let-in')
    const another = letIn.getByRole('button', { name: 'Let another one in' })
    if (await another.isVisible()) await another.tap()
    await letIn.getByRole('radio', { name: role }).tap()
    await letIn.getByLabel('What it is called').fill(name)
    await letIn.getByRole('button', { name: 'Make a code' }).tap()
    return ((await letIn.locator('.door-large').textContent()) ?? '').replace(/\D/g, '')
  }

  row(name: string): Locator {
    return this.part('screens').getByRole('row', { name: new RegExp(name) })
  }

  /** A device that has been let in; it stands on its page. */
  async device(browser: Browser, role: string, name: string, page: Role): Promise<Page> {
    const code = await this.code(role, name)
    const tablet = await touchPage(browser, TABLET)
    await tablet.goto(`${this.server.address}/#join=${code}`)
    await tablet.waitForURL(`**/${page}`)
    return tablet
  }

  /** An act at the desk. @throws when it is not taken */
  async act(act: Act): Promise<void> {
    this.#acts += 1
    const id = `closed${Date.now().toString(36)}${this.#acts.toString(36).padStart(4, '0')}`
    const data = { id, deviceSeq: this.#acts, tappedAtMs: null, ...act }
    const answer = await this.#ask('/api/v1/commands', JSON.stringify(data))
    if (!answer.ok) throw new Error(`${act.type}: ${JSON.stringify(answer.body)}`)
  }

  async state(): Promise<State> {
    const { body } = await this.#ask('/api/v1/state', null)
    return fromJson(body.state)
  }

  /** As the desk's own page asks: a cookie alone is not enough for what comes from elsewhere. */
  #ask(path: string, posted: string | null) {
    return this.desk.evaluate(
      async ([address, body]) => {
        const headers = { 'content-type': 'application/json' }
        const response = await fetch(address, body === null ? {} : { method: 'POST', headers, body })
        return { ok: response.ok, body: await response.json() }
      },
      [path, posted] as const,
    )
  }
}

/** A browser of its own, used by touch. */
export async function touchPage(
  browser: Browser,
  viewport: { readonly width: number; readonly height: number },
  options: { readonly locale?: string } = {},
): Promise<Page> {
  return (await browser.newContext({ viewport, hasTouch: true, ...options })).newPage()
}

export async function typeCode(page: Page, code: string): Promise<void> {
  await page.locator('.chooser-code input').fill(code)
}

import AxeBuilder from '@axe-core/playwright'
import type { Browser, Locator, Page } from '@playwright/test'
import { mmPerCssPx } from '../../../client/parts/legibility.ts'
import { SAME_TOUCH_MS } from '../../../client/parts/press-guard.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import { shopWith } from '../../core/support/shop.ts'
import { zoneAtHour } from '../../core/support/zone-at-hour.ts'
import type { ShopServer } from './shop-server.ts'

export const GLASS = { width: 1280, height: 800 }
export const PHONE = { width: 390, height: 844 }
const INCHES = 10.1
const MM = mmPerCssPx({ diagonalInch: INCHES, widthPx: GLASS.width, heightPx: GLASS.height })

export interface CounterOn {
  readonly language?: Language
  readonly size?: { readonly width: number; readonly height: number }
  readonly settings?: object
}

/** A ten-inch tablet on its side, or a phone, set to a language; every touch of its glass is counted. */
export class CounterGlass {
  readonly page: Page
  touches = 0

  constructor(page: Page) {
    this.page = page
  }

  static async open(browser: Browser, server: ShopServer, on: CounterOn = {}): Promise<CounterGlass> {
    const { language = 'en', size = GLASS, settings = {} } = on
    const context = await browser.newContext({ viewport: size, hasTouch: true })
    const inches = size.width < GLASS.width ? 6.1 : INCHES
    await context.addInitScript((kept) => localStorage.setItem('boilboard.counter.settings', JSON.stringify(kept)), {
      diagonalInches: inches,
      language,
      ...settings,
    })
    const page = await context.newPage()
    await page.goto(`${server.address}/counter`)
    await page.locator('.counter-cell').first().waitFor()
    await page.evaluate(() => document.fonts.ready)
    return new CounterGlass(page)
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

  rod(variety: string): Locator {
    return this.page.locator(`[data-variety="${variety}"] button`)
  }

  number(variety: string): Locator {
    return this.page.locator(`[data-variety="${variety}"] .counter-number`)
  }

  named(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: typeof name === 'string' })
  }

  /** A key of the foot, by what it is for. */
  foot(id: string): Locator {
    return this.page.locator(`[data-key="${id}"] button`)
  }

  /** The sentence over the keys. */
  get line(): Locator {
    return this.page.locator('.counter-hand')
  }
}

/** What a screen reader's users would stumble over, by axe; [] when nothing. */
export async function axeFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')}`))
}

/** A shop in whose zone it is now about so late: hours that count for a test, whenever it runs. */
export function shopAtHour(hour: number, parts: Partial<Shop> = {}): Shop {
  const shop = shopWith(parts)
  return { ...shop, profile: { ...shop.profile, zone: zoneAtHour(hour) } }
}

/** An act tapped so many minutes ago, on a screen that had no contact. */
export async function ago(server: ShopServer, minutes: number, act: Act): Promise<void> {
  const tapped = { ...act, tappedAtMs: Date.now() - minutes * 60_000 }
  await server.act(tapped, 'counter')
}

export async function left(server: ShopServer, variety: string): Promise<number> {
  const lots = (await server.state()).stock.get(varietyId(variety))?.lots ?? []
  return lots.reduce((sum, lot) => sum + lot.pieces, 0)
}

/** Texts that are cut off, stick out of their key or the glass, or lie on one another; [] when all can be read. */
export async function unreadable(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    // The ink of a line: a font's box is higher than its letters, and neighbouring boxes may overlap.
    const inked = (rect: DOMRect, fontPx: number, text: string) => ({
      left: rect.left,
      right: rect.right,
      top: rect.top + rect.height / 2 - fontPx * 0.42,
      bottom: rect.top + rect.height / 2 + fontPx * (/[gjpqy,()ç]/.test(text) ? 0.55 : 0.34),
    })
    const texts = [...document.querySelectorAll<HTMLElement>('.counter *')]
      .filter((one) => one.children.length === 0 && !(one instanceof SVGElement) && one.textContent?.trim() !== '')
      .flatMap((one) => {
        const range = document.createRange()
        range.selectNodeContents(one)
        const fontPx = Number.parseFloat(getComputedStyle(one).fontSize)
        const text = one.textContent ?? ''
        return [...range.getClientRects()].map((rect) => ({ one, text, box: inked(rect, fontPx, text) }))
      })
    for (const { one, text, box } of texts) {
      const holder = one.closest('button')?.getBoundingClientRect() ?? new DOMRect(0, 0, innerWidth, innerHeight)
      const isInside =
        box.left >= holder.left - 0.5 &&
        box.right <= holder.right + 0.5 &&
        box.top >= holder.top - 0.5 &&
        box.bottom <= holder.bottom + 0.5
      if (!isInside) found.push(`sticks out: ${text}`)
    }
    texts.forEach((a, index) => {
      for (const b of texts.slice(index + 1)) {
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        if (across > 0.5 && down > 0.5) found.push(`over each other: ${a.text} | ${b.text}`)
      }
    })
    for (const one of document.querySelectorAll<HTMLElement>('.counter-hand, .counter button')) {
      if (one.scrollWidth > one.clientWidth + 1) found.push(`cut off: ${one.textContent}`)
    }
    return found
  })
}

/** Keys under 20 mm one way, or under 3 mm from the next; [] when all can be touched. */
export async function small(keys: Locator): Promise<string[]> {
  const boxes = await keys.evaluateAll((all) =>
    all.map((one) => ({ text: one.textContent ?? '', ...one.getBoundingClientRect().toJSON() })),
  )
  return boxes
    .filter((box) => box.width * MM < 20 || box.height * MM < 20)
    .map((box) => `${box.text}: ${box.width} × ${box.height}`)
}

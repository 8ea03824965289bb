import type { Page } from '@playwright/test'
import { shiftShop } from './support/shift-shop.ts'
import { expect, test } from './support/shop-server.ts'

/**
 * What the language got after the oldest browsers that `vite.config.ts` builds for: Chrome 87, Safari 14, Firefox 78. A
 * build lowers syntax and leaves methods as they are, those of packages too. Source: MDN's browser-compat-data.
 */
const LATER: { readonly [owner: string]: readonly string[] } = {
  Object: ['hasOwn', 'groupBy'],
  'Array.prototype': ['at', 'findLast', 'findLastIndex', 'toSorted', 'toReversed', 'toSpliced', 'with'],
  'String.prototype': ['at', 'isWellFormed', 'toWellFormed'],
  'Crypto.prototype': ['randomUUID'],
  Intl: ['supportedValuesOf'],
  AbortSignal: ['timeout', 'any'],
  Promise: ['withResolvers', 'try'],
  globalThis: ['structuredClone', 'Iterator', 'HTMLDialogElement'],
}
const SCREENS = ['wall', 'bench', 'counter', 'desk#today', 'desk#loads', 'desk#close', 'desk#past', 'desk#past/today']
const SET_UP = ['desk#set-up', 'desk#set-up/shop', 'desk#set-up/oven', 'desk#screens']

test('given a browser of 2020, when every screen and every place of the desk is opened, then it is shown and nothing fails', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  await server.act({ type: 'openDay' })
  const context = await browser.newContext()
  await context.addInitScript((later) => {
    for (const [owner, names] of Object.entries(later)) {
      const path = owner === 'globalThis' ? [] : owner.split('.')
      const at = path.reduce<object>((from, name) => Reflect.get(from, name), globalThis)
      for (const name of names) Reflect.deleteProperty(at, name)
    }
  }, LATER)
  for (const screen of [...SCREENS, ...SET_UP]) {
    const page = await context.newPage()
    const failures = failuresOf(page)
    await page.goto(`${server.address}/${screen}`)
    await expect(
      page
        .locator(
          screen.startsWith('desk')
            ? '.desk-panel, .setup-overview, .setup-sheet'
            : 'h1, [data-block], [role="status"]',
        )
        .first(),
      screen,
    ).toBeVisible()
    expect(failures, screen).toEqual([])
    await page.close()
  }
})

function failuresOf(page: Page): readonly string[] {
  const failures: string[] = []
  page.on('pageerror', (error) => failures.push(String(error)))
  return failures
}

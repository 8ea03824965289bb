import { openDeskByTouch } from './support/desk-page.ts'
import { shiftShop } from './support/shift-shop.ts'
import { expect, test } from './support/shop-server.ts'

test('given a server that is away when a place is first opened, when it is asked for again, then the place is there with its style', async ({
  browser,
  server,
}) => {
  await server.start(shiftShop({ language: 'en', changeoverIn: 240 }))
  await server.act({ type: 'openDay' })
  const page = await openDeskByTouch(browser, server)
  await page.route(/\/assets\//, (route) => route.abort())
  await page.locator('.desk-nav a[href="#close"]').tap()
  const failed = page.locator('main .desk-line[role="alert"]')
  await expect(failed).toBeVisible()
  await page.unroute(/\/assets\//)
  await failed.getByRole('button').tap()
  await expect(page.locator('.desk-close, [data-step]').first()).toBeVisible()
  const unread = () =>
    page.evaluate(() => {
      const read = (sheet: CSSStyleSheet) => {
        try {
          return sheet.cssRules.length > 0
        } catch {
          return false
        }
      }
      return [...document.styleSheets].filter((sheet) => !read(sheet)).length
    })
  await expect.poll(unread).toBe(0)
})

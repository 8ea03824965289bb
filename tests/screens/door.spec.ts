import { once } from 'node:events'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Page } from '@playwright/test'
import type { RefusedAttempts, WhoIsIn } from '../../shared-core/live/devices.ts'
import { shopWith } from '../core/support/shop.ts'
import { ClosedShop } from './support/closed-shop.ts'
import { expect, test } from './support/shop-server.ts'

/** A page of somebody else's, on another port of the same host: the browser sends it our cookie all the same. */
async function foreignPage(): Promise<{ address: string; close: () => void }> {
  const server = createServer((_request, response) => {
    response.setHeader('content-type', 'text/html')
    response.end('<!doctype html><title>Elsewhere</title>')
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() }
}

/** What a page elsewhere can do to the shop, with the cookie of the desk in the same browser. */
function attack(page: Page, shop: string) {
  return page.evaluate(async (address) => {
    const blind = { method: 'POST', mode: 'no-cors', credentials: 'include' } as const
    await fetch(`${address}/api/v1/leave`, blind).catch(() => undefined)
    await fetch(`${address}/api/v1/devices/codes`, { ...blind, body: '{"role":"desk"}' }).catch(() => undefined)
    const read = await fetch(`${address}/api/v1/devices`, { credentials: 'include' }).then(
      (response) => response.text(),
      () => 'nothing',
    )
    const linked = await new Promise<string>((resolve) => {
      const socket = new WebSocket(`${address.replace('http', 'ws')}/socket.io/?EIO=4&transport=websocket`)
      socket.onopen = () => resolve('linked')
      socket.onerror = () => resolve('nothing')
    })
    const script = await new Promise<string>((resolve) => {
      const tag = document.createElement('script')
      tag.src = `${address}/api/v1/state`
      tag.onload = () => resolve('loaded')
      tag.onerror = () => resolve('nothing')
      document.head.append(tag)
    })
    return { read, linked, script }
  }, shop)
}

/** What a page of ours does with a script, a handler and a style that somebody got into it. */
function inject(page: Page) {
  return page.evaluate(async () => {
    const told: string[] = []
    document.addEventListener('securitypolicyviolation', (event) => told.push(event.effectiveDirective))
    const script = document.createElement('script')
    script.textContent = 'document.title = "taken over"'
    const image = document.createElement('div')
    image.innerHTML = '<img src="/none.png" onerror="document.title = \'taken over\'"><p style="color: red">x</p>'
    const style = document.createElement('style')
    style.textContent = 'body { display: none !important }'
    document.body.append(script, image, style)
    while (told.length < 4) await new Promise((resolve) => setTimeout(resolve, 20))
    return { told: told.sort(), title: document.title, shown: getComputedStyle(document.body).display !== 'none' }
  })
}

test('[E12, E14] given a desk that is let in, when a page elsewhere or a script in its own page tries, then neither gets anything, and no page of ours needs more', async ({
  browser,
}) => {
  const elsewhere = await foreignPage()
  const shop = await ClosedShop.claim(browser, shopWith())
  try {
    const { address } = shop.server
    const context = shop.desk.context()
    const said: string[] = []
    const own = await context.newPage()
    own.on('console', (message) => said.push(message.text()))
    for (const [path, root] of [
      ['/wall', '.wall'],
      ['/bench', '.bench'],
      ['/counter', '.counter'],
      ['/desk', '.desk'],
    ] as const) {
      await own.goto(`${address}${path}`)
      await expect(own.locator(root).first()).toBeVisible()
    }
    expect(said.filter((text) => /content security policy/i.test(text))).toEqual([])
    expect(await own.evaluate(() => document.cookie), 'no script sees the token').toBe('')
    const injected = await inject(own)
    expect(injected.told).toEqual(['script-src-attr', 'script-src-elem', 'style-src-attr', 'style-src-elem'])
    expect([injected.title === 'taken over', injected.shown]).toEqual([false, true])

    const other = await context.newPage()
    await other.goto(elsewhere.address)
    expect(await attack(other, address)).toEqual({ read: 'nothing', linked: 'nothing', script: 'nothing' })
    const ask = (path: string) => own.evaluate(async (asked) => (await fetch(asked)).json(), path)
    const { devices, codes }: WhoIsIn = await ask('/api/v1/devices')
    expect([devices.length, codes.length], 'the desk is still in, and made no code').toEqual([1, 0])
    const { attempts }: { attempts: RefusedAttempts[] } = await ask('/api/v1/refused')
    expect(attempts).toMatchObject([{ kind: 'foreign-origin', lastFrom: '127.0.0.1' }])
  } finally {
    elsewhere.close()
    await shop.server.remove()
  }
})

import { request } from 'node:http'
import { describe, expect, it, vi } from 'vitest'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { browserHeaders, codesFrom, joinedAt, letIn } from './support/join.ts'
import { command } from './support/room-world.ts'
import { connect, refusedBy, ScreenSocket } from './support/screen-socket.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const SELL = { type: 'sell', lines: lines('sesame', 1) } as const

async function closedShop(shop: Shop | null = null) {
  const closed = { file: ':memory:', isDeskLost: false, drawCode: codesFrom(0) }
  const server = await startServer({ shop, closed })
  return { server, desk: await joinedAt(server, '000000') }
}

/** A screen of this role at its page, with the id by which the desk knows it. */
async function screenOf(server: TestServer, role: 'wall' | 'bench' | 'counter') {
  const { id, token } = letIn(server, role)
  const device = { deviceId: `${role}-${id}`, name: role, role, stationId: null }
  const headers = { cookie: browserHeaders(server, token).cookie ?? '' }
  return { id, headers, device, screen: await connect(server, role, { device }, 'welcome', headers) }
}

function welcomeOf({ messages }: ScreenSocket): Extract<ToScreen, { type: 'welcome' }> {
  const found = messages.find((message) => message.type === 'welcome')
  if (found?.type !== 'welcome') throw new Error('a hello is answered')
  return found
}

describe('the desk and the links of others', () => {
  it('[E7] given a screen that is linked, when the desk shows it out, then it hears so, its link ends, and no tap of it is taken', async () => {
    const { server, desk } = await closedShop(shopWith())
    const [{ id, screen, headers, device }, other] = [await screenOf(server, 'bench'), await screenOf(server, 'wall')]
    screen.tap(command(SELL, { id: 'sell0000001' }))
    await screen.until(() => screen.answers.length === 1)
    const out = await ask(server, `/api/v1/devices/${id}`, { method: 'DELETE', headers: desk.headers })
    expect(out.status).toBe(200)
    screen.tap(command(SELL, { id: 'sell0000002', seq: 2 }))
    await screen.until(() => screen.isClosed)
    expect(screen.messages.at(-1)).toEqual({ type: 'refusedHello', reason: 'revoked' })
    const again = await connect(server, 'bench', { device }, 'refusedHello', headers)
    expect(again.messages).toEqual([{ type: 'refusedHello', reason: 'revoked' }])
    expect([server.journal.lastSeq(), other.screen.isClosed]).toEqual([2, false])
    await other.screen.close()
  })

  it('[E7] given a screen that is linked, when the desk moves it, then it hears where to, and is let in there', async () => {
    const { server, desk } = await closedShop()
    const { id, screen, headers, device } = await screenOf(server, 'bench')
    const body = { role: 'counter' }
    await ask(server, `/api/v1/devices/${id}`, { method: 'PATCH', headers: desk.headers, body })
    await screen.until(() => screen.isClosed)
    expect(screen.messages.at(-1)).toEqual({ type: 'refusedHello', reason: 'moved', role: 'counter' })
    const moved = { ...device, role: 'counter', deviceId: 'counter-page' }
    const there = await connect(server, 'counter', { device: moved }, 'welcome', headers)
    await there.close()
  })

  it('[E7, E9] given a screen that is linked, when the desk names it, then it greets again and hears its name and station', async () => {
    const { server, desk } = await closedShop(shopWith())
    const { id, screen, headers, device } = await screenOf(server, 'bench')
    expect(welcomeOf(screen).device).toEqual({ name: 'bench', stationId: null })
    const [stationId] = server.room.state.shop?.stations.keys() ?? []
    const body = { name: 'Left', stationId }
    const named = await ask(server, `/api/v1/devices/${id}`, { method: 'PATCH', headers: desk.headers, body })
    expect([named.status, named.json]).toMatchObject([200, body])
    await screen.until(() => screen.isClosed)
    const again = await connect(server, 'bench', { device }, 'welcome', headers)
    expect(welcomeOf(again).device).toEqual(body)
    await again.close()
  })

  it('[E6] given the only desk, when it would show out itself, or a station is named that there is not, then a sentence says why not', async () => {
    const { server, desk } = await closedShop()
    const path = `/api/v1/devices/${desk.id}`
    const { headers } = desk
    const out = await ask(server, path, { method: 'DELETE', headers })
    const odd = await ask(server, path, { method: 'PATCH', headers, body: { stationId: 'cellar' } })
    const empty = await ask(server, path, { method: 'PATCH', headers, body: {} })
    const none = await ask(server, '/api/v1/devices/none', { method: 'PATCH', headers, body: { name: 'x' } })
    expect([out, odd, empty, none].map(({ status, type }) => [status, type])).toEqual(
      [409, 422, 400, 404].map((status) => [status, 'application/problem+json']),
    )
    expect([out.text, odd.text].map((text) => /only desk|no station/.exec(text)?.[0])).toEqual([
      'only desk',
      'no station',
    ])
  })

  it('[E1, E7] given a desk whose request is still on its way, when it is shown out meanwhile, then it gets no token', async () => {
    const { server, desk } = await closedShop()
    const second = letIn(server, 'desk')
    const headers = {
      ...browserHeaders(server, second.token),
      expect: '100-continue',
      'content-type': 'application/json',
    }
    const body = JSON.stringify({ name: 'Mine', role: 'desk', days: null })
    const path = '/api/v1/devices/tokens'
    const late = request({ port: server.port, host: '127.0.0.1', path, method: 'POST', headers })
    late.flushHeaders()
    // The server has read who asks.
    await new Promise((resolve) => late.once('continue', resolve))
    await ask(server, `/api/v1/devices/${second.id}`, { method: 'DELETE', headers: desk.headers })
    const answered = new Promise<number | undefined>((resolve) =>
      late.once('response', (one) => resolve(one.statusCode)),
    )
    late.end(body)
    expect(await answered).toBe(401)
    expect(server.door.membership?.devices().map(({ id }) => id)).toEqual([desk.id])
  })

  it('[E7] given a device that gives its token back, when it does, then its link ends and the desk has it no more', async () => {
    const { server, desk } = await closedShop()
    const { screen, headers } = await screenOf(server, 'wall')
    const origin = { origin: `http://127.0.0.1:${server.port}` }
    const left = await ask(server, '/api/v1/leave', { method: 'POST', headers: { ...headers, ...origin } })
    expect(left.json).toEqual({ kind: 'unknown', why: 'no-token' })
    await screen.until(() => screen.isClosed)
    const { json } = await ask(server, '/api/v1/devices', { headers: desk.headers })
    expect((json as { devices: { id: string }[] }).devices.map(({ id }) => id)).toEqual([desk.id])
  })
})

describe('who has no business here', () => {
  it('[E16] given links that say nothing, when fifty stand, then no more of them come in, but the shop’s own do', async () => {
    const { server, desk } = await closedShop()
    const strangers = Array.from({ length: 51 }, () => new ScreenSocket(`http://127.0.0.1:${server.port}`))
    const linked = await Promise.all(strangers.map((one) => one.linked()))
    expect(linked.filter(Boolean)).toHaveLength(50)
    const device = { deviceId: 'desk-1', name: 'Office', role: 'desk', stationId: null }
    const own = await connect(server, 'desk', { device }, 'welcome', desk.headers)
    const first = strangers[linked.indexOf(true)]
    first?.sendRaw({ type: 'probe', t0: 1 })
    await first?.until(() => first.isClosed)
    const another = () => new ScreenSocket(`http://127.0.0.1:${server.port}`).linked()
    await vi.waitFor(async () => expect(await another()).toBe(true), { timeout: 20_000 })
    await Promise.all(strangers.map((one) => one.close()))
    await own.close()
  })

  it('[E16] given one device that opens link after link, when it has fifty, then no more of its, but others’ do', async () => {
    const { server, desk } = await closedShop()
    const links = Array.from({ length: 51 }, () => new ScreenSocket(`http://127.0.0.1:${server.port}`, desk.headers))
    const linked = await Promise.all(links.map((one) => one.linked()))
    expect(linked.filter(Boolean)).toHaveLength(50)
    const { screen } = await screenOf(server, 'wall')
    await Promise.all([...links, screen].map((one) => one.close()))
  })

  it('[E12] given a page from elsewhere or another name, when its browser brings the cookie along, then neither route nor socket', async () => {
    const { server, desk } = await closedShop()
    const host = `127.0.0.1:${server.port}`
    const { cookie = '' } = desk.headers
    const body = { role: 'desk' }
    const post = async (headers: Record<string, string>) =>
      (await ask(server, '/api/v1/devices/codes', { body, headers: { cookie, host, ...headers } })).status
    const read = async (headers: Record<string, string>) =>
      (await ask(server, '/api/v1/devices', { headers: { cookie, host, ...headers } })).status
    expect(await post({ origin: `http://${host}` })).toBe(200)
    expect(await post({ 'sec-fetch-site': 'same-origin' })).toBe(200)
    expect(await post({ origin: 'http://evil.example' })).toBe(403)
    expect(await post({ origin: 'null' })).toBe(403)
    expect(await post({ origin: 'http://127.0.0.1:1' })).toBe(403)
    expect(await post({}), 'no page at all').toBe(403)
    expect(await post({ 'sec-fetch-site': 'cross-site' })).toBe(403)
    expect(await read({})).toBe(200)
    expect(await read({ 'sec-fetch-site': 'none' }), 'an address that somebody typed').toBe(200)
    expect(await read({ 'sec-fetch-site': 'same-site' }), 'a page on another port').toBe(403)
    expect(await read({ host: `evil.example:${server.port}` }), 'a name that was pointed here').toBe(403)
    const rebound = { cookie, host: `evil.example:${server.port}`, origin: `http://evil.example:${server.port}` }
    expect([await refusedBy(server, rebound), await refusedBy(server, { cookie, host, origin: 'null' })]).toEqual([
      true,
      true,
    ])
  })

  it('[E13] given attempts of every kind, when the desk asks, then each is counted with where it came from', async () => {
    const { server, desk } = await closedShop()
    const { headers } = desk
    const gone = letIn(server, 'wall')
    server.door.membership?.showOut(gone.id)
    const bench = letIn(server, 'bench')
    const asking = (path: string, extra: Record<string, string>, body?: object) =>
      ask(server, path, { headers: extra, ...(body && { body }) })
    await asking('/api/v1/state', {})
    await asking('/api/v1/state', browserHeaders(server, 'x'.repeat(43)))
    await asking('/api/v1/state', browserHeaders(server, gone.token))
    await asking('/api/v1/devices', browserHeaders(server, bench.token))
    await asking('/api/v1/state', { host: 'evil.example' })
    await asking('/api/v1/state', { origin: 'http://evil.example' })
    await asking('/api/v1/join', {}, { code: '999999' })
    const malformed = await connect(server, 'desk', { device: null }, 'refusedHello', headers)
    await malformed.close()
    const { json } = await ask(server, '/api/v1/refused', { headers })
    const { sinceMs, attempts } = json as {
      sinceMs: number
      attempts: { kind: string; times: number; lastFrom: string }[]
    }
    const kinds = [
      'no-token',
      'forged',
      'revoked',
      'not-its-role',
      'foreign-host',
      'foreign-origin',
      'wrong-code',
      'malformed',
    ]
    expect(attempts.map(({ kind }) => kind).sort()).toEqual(kinds.sort())
    expect(attempts.every(({ times, lastFrom }) => times === 1 && lastFrom === '127.0.0.1')).toBe(true)
    expect(sinceMs).toBeGreaterThan(0)
  })

  it('[E13] given a wall that would sell, when it taps, then it is refused, and told at the desk by its name', async () => {
    const { server } = await closedShop()
    const { screen } = await screenOf(server, 'wall')
    screen.tap(command(SELL, { id: 'sell0000001' }))
    await screen.until(() => screen.answers.length === 1)
    expect(screen.answers[0]?.answer).toMatchObject({ kind: 'refused', refusal: { code: 'not-your-role' } })
    expect(server.door.refused.attempts()).toMatchObject([{ kind: 'not-its-role', times: 1, lastFrom: 'wall' }])
    await screen.close()
  })

  it('[E5] given wrong codes over HTTP, when the sixth comes, then 429 and when to try again', async () => {
    const { server } = await closedShop()
    const statuses: number[] = []
    for (let n = 0; n < 6; n += 1) {
      const asked = await ask(server, '/api/v1/join', { body: { code: '999 999' } })
      statuses.push(asked.status)
      if (asked.status === 429) expect(Number(asked.headers['retry-after'])).toBeGreaterThan(0)
    }
    expect(statuses).toEqual([403, 403, 403, 403, 403, 429])
  })

  it('[E4] given a body that is none, when posted, then 400 says what would be right', async () => {
    const { server, desk } = await closedShop()
    for (const [path, body] of BAD_BODIES) {
      const asked = await ask(server, `/api/v1/${path}`, { body, headers: desk.headers })
      expect([asked.status, asked.text], path).toEqual([400, expect.stringContaining('Send {')])
    }
  })
})

const BAD_BODIES = [
  ['join', { code: '12345' }],
  ['join', { code: 123_456 }],
  ['join', null],
  ['devices/codes', { role: 'owner' }],
  ['devices/tokens', { name: '', role: 'wall', days: null }],
  ['devices/tokens', { name: 'Till', role: 'wall', days: 0 }],
] as const

describe('an open shop', () => {
  it('[E15] given one, when devices are asked about, then everybody may come in, and nobody joins', async () => {
    const server = await startServer()
    expect((await ask(server, '/api/v1/me')).json).toEqual({ kind: 'open' })
    expect((await ask(server, '/api/v1/devices')).json).toEqual({ devices: [], codes: [], linked: [] })
    const posts = await Promise.all([
      ask(server, '/api/v1/join', { body: { code: '123456' } }),
      ask(server, '/api/v1/devices/codes', { body: { role: 'wall' } }),
      ask(server, '/api/v1/devices/tokens', { body: { name: 'Till', role: 'wall', days: 1 } }),
      ask(server, '/api/v1/devices/x', { method: 'DELETE' }),
    ])
    expect(posts.map(({ status }) => status)).toEqual([409, 409, 409, 409])
    const screen = await connect(server, 'wall-1')
    expect(welcomeOf(screen).device).toBeNull()
    await screen.close()
  })
})

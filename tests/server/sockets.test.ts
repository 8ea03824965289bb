import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../fixed-seed.ts'
import { Door } from '../../server/devices/door.ts'
import { isHostOurs, isOriginOurs } from '../../server/live/admission.ts'
import { parseFromScreen } from '../../server/live/parse-message.ts'
import { SocketServer } from '../../server/live/socket-server.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'
import { command } from './support/room-world.ts'
import { connect, refusedBy, ScreenSocket } from './support/screen-socket.ts'
import { ask, startServer, stopServer } from './support/start-server.ts'

const SELL = { type: 'sell', lines: lines('sesame', 1) } as const

describe('screens over sockets', () => {
  it('[V1] given fifty screens, when taps of three arrive together, then each screen gets one message and all agree', async () => {
    const server = await startServer()
    const screens = await Promise.all(Array.from({ length: 50 }, (_, n) => connect(server, `screen-${n}`)))
    for (const screen of screens) screen.messages.splice(0)
    for (const [n, screen] of screens.slice(0, 3).entries()) screen.tap(command(SELL, { id: `sell000000${n}` }))
    await Promise.all(screens.map((screen) => screen.until(() => screen.state.seq === 4)))
    const hash = hashState(server.room.state)
    for (const [n, screen] of screens.entries()) {
      const turns = screen.messages.filter(({ type }) => type === 'turn')
      // Three taps are three turns at most, when they did not arrive together.
      expect(turns.length).toBeLessThanOrEqual(3)
      expect(hashState(screen.state)).toBe(hash)
      expect(screen.answers).toHaveLength(n < 3 ? 1 : 0)
    }
    await Promise.all(screens.map((screen) => screen.close()))
  })

  it('[V8] given a server that restarts, when a screen comes back, then it goes on where it was', async () => {
    const first = await startServer()
    const screen = await connect(first, 'wall-1')
    const known = screen.state
    await screen.close()
    await ask(first, '/api/v1/commands', { body: command(SELL, { id: 'sell0000001' }) })
    await stopServer(first)
    const second = await startServer({ file: first.file })
    const back = await connect(second, 'wall-1', {
      afterSeq: known.seq,
      journalId: second.journal.journalId,
      course: '',
    })
    const [welcome] = back.messages
    if (welcome?.type !== 'welcome') throw new Error('a hello is answered')
    expect(welcome.state).toBeNull()
    expect(welcome.entries.map(({ seq }) => seq)).toEqual([2])
    for (const entry of welcome.entries) applyEntry(known, entry)
    expect(hashState(known)).toBe(hashState(second.room.state))
    await back.close()
  })

  it('[V10] given screens, when one leaves, then the others are told', async () => {
    const server = await startServer()
    const [one, other] = [await connect(server, 'wall-1'), await connect(server, 'bench-1')]
    await other.close()
    await one.until(() =>
      one.messages.some(
        (message) =>
          message.type === 'screens' &&
          message.screens.some(({ device, connected }) => device.name === 'bench-1' && !connected),
      ),
    )
    await one.close()
  })

  it('[V12] given a hello that does not make sense, when sent, then it is refused by name', async () => {
    const server = await startServer()
    const screen = await connect(
      server,
      'wall-1',
      { device: { deviceId: 'wall-1', name: '', role: 'wall', stationId: null } },
      'refusedHello',
    )
    expect(screen.messages).toEqual([{ type: 'refusedHello', reason: 'malformed' }])
    await screen.close()
  })

  it('[V12] given anything at all on the wire, when it is read, then it is a message or none, and nothing is thrown', async () => {
    const messages = fc.oneof(
      fc.anything(),
      fc.record({
        type: fc.constantFrom('hello', 'commands', 'probe', 'coming', 'turn'),
        device: fc.anything(),
        commands: fc.anything(),
        t0: fc.anything(),
        actKey: fc.anything(),
      }),
    )
    fc.assert(fc.property(messages, (raw) => typeof parseFromScreen(raw).ok === 'boolean'))
  })

  it('[V12] given a screen that sends rubbish, when it does, then it loses its link and the others go on', async () => {
    const server = await startServer()
    const good = await connect(server, 'bench-1')
    const rubbish: unknown[] = [
      null,
      7,
      'hello',
      [],
      {},
      { type: 'commands', commands: 'all' },
      { type: 'probe', t0: 'now' },
      { type: 'coming', actKey: 'x'.repeat(500) },
      { type: 'commands', commands: [null] },
    ]
    for (const raw of rubbish) {
      const bad = await connect(server, 'bench-2')
      bad.sendRaw(raw)
      await bad.until(() => bad.isClosed)
    }
    good.tap(command(SELL, { id: 'sell0000001' }))
    await good.until(() => good.answers.length === 1)
    expect(server.journal.lastSeq()).toBe(2)
    await good.close()
  })

  it('[V12] given as many links as there may be, when one more knocks, then it is turned away until one has gone', async () => {
    const http = createServer()
    const door = new Door(null, () => epochMs(Date.now()))
    const sockets = new SocketServer(http, { names: [], door, log: { error: () => undefined }, linksMax: 2 })
    await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve))
    const { port } = http.address() as AddressInfo
    const link = async () => {
      const screen = new ScreenSocket(`http://127.0.0.1:${port}`)
      return (await screen.linked()) ? screen : null
    }
    const first = await link()
    const second = await link()
    expect([first, second, await link()].map((one) => one !== null)).toEqual([true, true, false])
    await first?.close()
    await expect.poll(link).not.toBeNull()
    await sockets.close()
  })

  it('[V12] given a message larger than any tap, when sent, then the link is closed', async () => {
    const server = await startServer()
    const screen = await connect(server, 'bench-1')
    screen.sendRaw({ type: 'probe', t0: 1, padding: 'x'.repeat(300_000) })
    await screen.until(() => screen.isClosed)
  })
})

describe('who may speak to the server', () => {
  const names = ['oven-room']
  it.each([
    ['127.0.0.1:4610', true],
    ['192.168.1.20', true],
    ['[::1]:4610', true],
    ['localhost:4610', true],
    ['LOCALHOST', true],
    ['bakery.local:4610', true],
    ['oven-room:4610', true],
    ['evil.example', false],
    ['localhost.evil.example', false],
    ['127.0.0.1.evil.example', false],
    ['evil.example:80@127.0.0.1', false],
    ['', false],
    [undefined, false],
  ])('[H7] given the host %s, when asked, then ours: %s', (host, expected) => {
    expect(isHostOurs(host, { names })).toBe(expected)
  })

  it.each([
    ['http://192.168.1.20:4610', '192.168.1.20:4610', true],
    [undefined, '192.168.1.20:4610', true],
    ['http://192.168.1.20:8080', '192.168.1.20:4610', false],
    ['http://evil.example', '192.168.1.20:4610', false],
    ['null', '192.168.1.20:4610', false],
    ['', '192.168.1.20:4610', false],
    ['not a url', '192.168.1.20:4610', false],
  ])('[H7] given a page from %s at %s, when asked, then ours: %s', (origin, host, expected) => {
    expect(isOriginOurs(origin, host)).toBe(expected)
  })

  it('[H7] given another host or page, when it asks over HTTP, then it gets nothing, and a page may not post', async () => {
    const server = await startServer({ names: ['oven-room'] })
    const own = `127.0.0.1:${server.port}`
    const asking = async (headers: Record<string, string>, body?: object) =>
      (await ask(server, '/api/v1/state', { headers, ...(body && { body }) })).status
    expect(await asking({ host: own })).toBe(200)
    expect(await asking({ host: `oven-room:${server.port}` })).toBe(200)
    expect(await asking({ host: `evil.example:${server.port}` })).toBe(403)
    expect(await asking({ host: own, origin: 'http://evil.example' })).toBe(403)
    const post = await ask(server, '/api/v1/commands', {
      headers: { host: own, origin: 'http://evil.example', 'content-type': 'application/json' },
      body: command(SELL, { id: 'sell0000001' }),
    })
    expect([post.status, post.type]).toEqual([403, 'application/problem+json'])
    expect((await ask(server, '/', { headers: { host: 'evil.example' } })).status).toBe(403)
    expect(server.journal.lastSeq()).toBe(1)
  })

  it.each([
    ['another page', (own: string) => ({ host: own, origin: 'http://evil.example' })],
    [
      'another name',
      (own: string) => ({
        host: `evil.example:${own.split(':')[1]}`,
        origin: `http://evil.example:${own.split(':')[1]}`,
      }),
    ],
    ['another port of this machine', (own: string) => ({ host: own, origin: 'http://127.0.0.1:1' })],
    ['no page at all', (own: string) => ({ host: own, origin: 'null' })],
  ])('[H7] given a socket from %s, when it knocks, then it is refused', async (_what, headers) => {
    const server = await startServer()
    expect(await refusedBy(server, headers(`127.0.0.1:${server.port}`))).toBe(true)
  })

  it('[H7] given long polling, when asked for, then there is none', async () => {
    const server = await startServer()
    const asked = await ask(server, '/socket.io/?EIO=4&transport=polling')
    expect(asked.status).toBe(400)
  })
})

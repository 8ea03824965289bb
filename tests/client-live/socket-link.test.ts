import { createServer } from 'node:http'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Link } from '../../client/live/link.ts'
import { ScreenSync } from '../../client/live/screen-sync.ts'
import { socketLink } from '../../client/live/socket-link.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import type { Serving } from '../../server/serve.ts'
import { serve } from '../../server/serve.ts'
import { decide } from '../../shared-core/day/decide.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import { lines } from '../core/support/make.ts'
import type { TestServer } from '../server/support/start-server.ts'
import { startServer, stopServer } from '../server/support/start-server.ts'
import { FakeSaved } from './support/fake-device.ts'

const SELL = { type: 'sell', lines: lines('sesame', 6) } as const
/** A loaded machine may be slow; every wait here is for something that happens by itself. */
const PATIENCE = { timeout: 20_000, interval: 10 }

const closing: (() => Promise<void> | void)[] = []
afterEach(async () => {
  for (const close of closing.splice(0)) await close()
})

/** A screen's sync over a real socket. */
function screenAt(address: string): ScreenSync {
  let made = 0
  const sync = new ScreenSync({
    decide,
    openLink: (events) => socketLink(events, address),
    saved: new FakeSaved(),
    clock: { monotonicMs: () => performance.now(), wallMs: () => Date.now() },
    makeId: () => {
      made += 1
      return `overasocket${made}`
    },
    device: () => ({ name: '', role: 'counter', stationId: null }),
    buildId: 'test',
    reload: () => undefined,
    moveTo: () => undefined,
    named: () => undefined,
    onChange: () => undefined,
  })
  closing.push(() => sync.close())
  return sync
}

/** The same shop at the same address again, as after a power cut. */
async function startAgain(server: TestServer): Promise<Serving> {
  const journal = new SqliteJournal(await loadSqlite(), server.file, 'shop')
  const options = { port: server.port, bind: '127.0.0.1', names: [] }
  const again = await serve({
    journal,
    closed: null,
    historyFile: ':memory:',
    options,
    demo: null,
    say: () => undefined,
  })
  closing.push(() => again.stop())
  return again
}

const isLive = (sync: ScreenSync) => vi.waitFor(() => expect(sync.view().connection.phase).toBe('live'), PATIENCE)

describe('a screen over a real socket', () => {
  it('[C1, C4] given a server, then a tap is taken and the time is known', async () => {
    const server = await startServer()
    const screen = screenAt(server.address)
    await isLive(screen)
    screen.send(SELL)
    await vi.waitFor(() => expect(screen.view().pending).toEqual([]), PATIENCE)
    await vi.waitFor(() => expect(screen.serverClock.isKnown).toBe(true), PATIENCE)
    expect(screen.confirmed === null ? null : hashState(screen.confirmed)).toBe(hashState(server.room.state))
    expect(screen.view().shown?.stock.size).toBe(1)
    expect(Math.abs(screen.serverClock.serverNowMs() - Date.now())).toBeLessThanOrEqual(
      (screen.serverClock.errorMs() ?? 0) + 1,
    )
  })

  it('[C2, C6] given the server stops and starts again, then taps made meanwhile arrive, once', async () => {
    const server = await startServer()
    const screen = screenAt(server.address)
    await isLive(screen)
    await stopServer(server)
    await vi.waitFor(() => expect(screen.view().connection.phase).toBe('away'), PATIENCE)
    screen.send(SELL)
    screen.send(SELL)
    const again = await startAgain(server)
    await isLive(screen)
    await vi.waitFor(() => expect(screen.view().pending).toEqual([]), PATIENCE)
    expect([...again.room.state.stock.values()].map((stock) => stock.soldToday)).toEqual([12])
  })
})

describe('the link', () => {
  /** What it says, in order. */
  async function linked(server: TestServer) {
    const said: string[] = []
    const heard: ToScreen[] = []
    const link: Link = socketLink(
      { up: () => said.push('up'), down: () => said.push('down'), message: (message) => heard.push(message) },
      server.address,
    )
    closing.push(() => link.close())
    await vi.waitFor(() => expect(said).toEqual(['up']), PATIENCE)
    return { link, said, heard }
  }

  it('[C6] given no server, then each knock has a wait of its own, a quarter to half a second', async () => {
    const server = await startServer()
    await stopServer(server)
    const waits: number[] = []
    const timer = vi.spyOn(globalThis, 'setTimeout')
    closing.push(() => timer.mockRestore())
    const link = socketLink({ up: () => undefined, down: () => undefined, message: () => undefined }, server.address)
    closing.push(() => link.close())
    await vi.waitFor(() => {
      waits.splice(
        0,
        waits.length,
        ...timer.mock.calls.map(([, ms]) => ms ?? 0).filter((ms) => ms >= 250 && ms < 1_000),
      )
      expect(waits.length).toBeGreaterThanOrEqual(4)
    }, PATIENCE)
    expect(waits.filter((ms) => ms > 500)).toEqual([])
    expect(new Set(waits).size).toBe(waits.length)
  })

  it('[C6] given a server that is away or not ready, then one socket is tried, and another once it is ready', async () => {
    let isReady = false
    let [knocks, sockets] = [0, 0]
    const front = createServer((_request, response) => {
      knocks += 1
      response.writeHead(isReady ? 200 : 503).end()
    })
    front.on('upgrade', (_request, socket) => {
      sockets += 1
      socket.end('HTTP/1.1 503 Service Unavailable\r\n\r\n')
    })
    await new Promise<void>((resolve) => front.listen(0, '127.0.0.1', resolve))
    closing.push(() => void front.close())
    const address = front.address()
    const port = typeof address === 'object' ? address?.port : 0
    const nothing = () => undefined
    const link = socketLink({ up: nothing, down: nothing, message: nothing }, `http://127.0.0.1:${port}`)
    closing.push(() => link.close())
    await vi.waitFor(() => expect(knocks).toBeGreaterThanOrEqual(3), PATIENCE)
    expect(sockets).toBe(1)
    isReady = true
    await vi.waitFor(() => expect(sockets).toBeGreaterThanOrEqual(2), PATIENCE)
  })

  it('[C6] given the server hangs up, then it is made anew', async () => {
    const { link, said } = await linked(await startServer())
    // Without a hello first, commands are no way to begin.
    link.send({ type: 'commands', commands: [] })
    await vi.waitFor(() => expect(said).toEqual(['up', 'down', 'up']), PATIENCE)
  })

  it('[C6] given it is made anew on purpose, then both sides of it are told', async () => {
    const { link, said } = await linked(await startServer())
    link.restart()
    expect(said).toEqual(['up', 'down'])
    await vi.waitFor(() => expect(said).toEqual(['up', 'down', 'up']), PATIENCE)
  })

  it('[C3] given no contact, then what is sent is dropped, and not kept for the next contact', async () => {
    const { link, said, heard } = await linked(await startServer())
    link.restart()
    link.send({ type: 'probe', t0: 1 })
    await vi.waitFor(() => expect(said).toEqual(['up', 'down', 'up']), PATIENCE)
    link.send({ type: 'probe', t0: 2 })
    await vi.waitFor(() => expect(heard).toMatchObject([{ type: 'probed', t0: 2 }]), PATIENCE)
  })
})

import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Plugin } from 'esbuild'
import { build } from 'esbuild'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import type { createShopStore, ShopStore } from '../../client/live/shop-store.ts'
import type { socketLink } from '../../client/live/socket-link.ts'
import type { Decide } from '../../shared-core/day/decide-with.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { FakeSaved } from '../client-live/support/fake-device.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { bundleServer, ROOT, ServerRun } from './support/server-program.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

/**
 * Two releases of server and screen, made out of the code as it is now: "next" folds in another form. The screen is the
 * client's store with its real socket; after a reload it is the store of the release that is served, on the same device.
 */
const FOLDER = join(ROOT, 'node_modules', '.cache', `boilboard-update-test-${process.pid}`)
const STATE_FILE = /shared-core[\\/]day[\\/]state\.ts$/
const SELL = { type: 'sell', lines: lines('sesame', 6) } as const

const OF_NEXT: Plugin = {
  name: 'next-release',
  setup: ({ onLoad }) =>
    onLoad({ filter: STATE_FILE }, ({ path }) => {
      const text = readFileSync(path, 'utf8')
      const contents = text.replace(/FOLD_VERSION = (\d+)/, 'FOLD_VERSION = 1$1')
      if (contents === text) throw new Error('the fold version is not where it was')
      return { contents, loader: 'ts' }
    }),
}
const PLUGINS = { now: [], next: [OF_NEXT] } as const

type Release = keyof typeof PLUGINS
interface Client {
  readonly createShopStore: typeof createShopStore
  readonly decide: Decide
  readonly socketLink: typeof socketLink
}

let clients: Readonly<Record<Release, Client>>
beforeAll(async () => {
  mkdirSync(FOLDER, { recursive: true })
  const [now, next] = await Promise.all([
    clientOf('now'),
    clientOf('next'),
    bundleServer(join(FOLDER, 'server-now.mjs'), 'now'),
    bundleServer(join(FOLDER, 'server-next.mjs'), 'next', undefined, [OF_NEXT]),
  ])
  clients = { now, next }
})
afterAll(() => rmSync(FOLDER, { recursive: true, force: true }))

async function clientOf(release: Release): Promise<Client> {
  const outfile = join(FOLDER, `client-${release}.mjs`)
  await build({
    stdin: {
      contents:
        "export { decide } from './shared-core/day/decide.ts'; export { createShopStore } from './client/live/shop-store.ts'; export { socketLink } from './client/live/socket-link.ts'",
      resolveDir: ROOT,
    },
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    plugins: [...PLUGINS[release]],
  })
  return await import(pathToFileURL(outfile).href)
}

/** A device in the shop, with one page open. Its clock runs, and can be put on by hand. */
class Device {
  readonly saved = new FakeSaved()
  reloads = 0
  store: ShopStore
  #laterMs = 0

  constructor(port: number) {
    this.store = this.#open('now', port)
  }

  /** What the browser would do: the same device with the page of that release. */
  load(release: Release, port: number): void {
    this.store.stop()
    this.store = this.#open(release, port)
  }

  pass(ms: number): void {
    this.#laterMs += ms
  }

  phase(): string {
    return this.store.getState().connection.phase
  }

  async reaches(phase: string): Promise<void> {
    await expect.poll(() => this.phase(), { timeout: 20_000 }).toBe(phase)
  }

  #open(release: Release, port: number): ShopStore {
    const { createShopStore: open, decide, socketLink: link } = clients[release]
    let made = 0
    return open({
      role: 'counter',
      decide,
      saved: this.saved,
      openLink: (events) => link(events, `http://127.0.0.1:${port}`),
      clock: {
        monotonicMs: () => performance.now() + this.#laterMs,
        wallMs: () => Date.now() + this.#laterMs,
      },
      makeId: () => {
        made += 1
        return `${release}x${String(made).padStart(8, '0')}`
      },
      buildId: release,
      reload: () => {
        this.reloads += 1
      },
      moveTo: () => undefined,
      timers: { set: (run, afterMs) => setTimeout(run, afterMs) as never, clear: (timer) => clearTimeout(timer) },
      isHidden: () => false,
    })
  }
}

const started: ServerRun[] = []
const devices: Device[] = []
afterEach(async () => {
  for (const { store } of devices.splice(0)) store.stop()
  for (const server of started.splice(0)) await server.kill('SIGKILL')
})

async function serveBy(release: Release, shop: string, port = 0): Promise<{ server: ServerRun; port: number }> {
  const program = join(FOLDER, `server-${release}.mjs`)
  const server = new ServerRun({ program, args: ['--shop', shop], cwd: FOLDER, env: { PORT: String(port) } })
  started.push(server)
  return { server, port: await server.port() }
}

/** How often each sale of these ids was taken, by the journal. */
async function taken(port: number, ids: readonly (CommandId | null)[]): Promise<readonly number[]> {
  const { json } = await ask({ port }, '/api/v1/events?after=0')
  const { entries } = json as { entries: readonly { commandId: string }[] }
  return ids.map((id) => entries.filter(({ commandId }) => commandId === id).length)
}

async function openedShop(): Promise<{ shop: string; server: ServerRun; port: number; device: Device }> {
  const shop = join(tempFolder(), 'shop')
  const { server, port } = await serveBy('now', shop)
  await ask({ port }, '/api/v1/set-up?confirm=all', { body: toSetUpFile(shopWith()), headers: DESK })
  const device = new Device(port)
  devices.push(device)
  await device.reaches('live')
  return { shop, server, port, device }
}
const DESK = { 'x-device-id': 'desk-1', 'x-device-role': 'desk' }

describe('an update while the shop is at work', () => {
  it('[N15] given a release of another form, when it takes over, then the screen sends nothing, is loaded anew, and each tap counts once', async () => {
    const { shop, server, port, device } = await openedShop()
    const before = device.store.send(SELL)
    await expect.poll(() => device.store.getState().pending).toEqual([])
    await server.kill('SIGTERM')
    await device.reaches('away')
    const meanwhile = device.store.send(SELL)
    await serveBy('next', shop, port)
    await device.reaches('stale')
    const stale = device.store.send(SELL)
    await expect.poll(() => device.reloads, { timeout: 5_000 }).toBe(1)
    expect(await taken(port, [before, meanwhile, stale])).toEqual([1, 0, 0])
    device.load('next', port)
    await device.reaches('live')
    await expect.poll(() => device.store.getState().pending).toEqual([])
    expect(await taken(port, [before, meanwhile, stale])).toEqual([1, 1, 1])
  })
})

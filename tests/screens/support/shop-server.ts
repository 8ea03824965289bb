import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as base } from '@playwright/test'
import type { Answer } from '../../../shared-core/day/answers.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

const CLOCK_AHEAD = new URL('clock-ahead.mjs', import.meta.url).href

/** The built server on loopback with a shop's folder of its own: what a screen test opens its pages on. */
export class ShopServer {
  readonly #folder = mkdtempSync(join(tmpdir(), 'boilboard-screens-'))
  readonly #names: readonly string[]
  readonly #isOpen: boolean
  #child: ChildProcess | null = null
  #printed = ''
  #commands = 0
  port = 0

  /** @param isOpen everybody may choose a screen; else a device joins with a code */
  constructor(names: readonly string[] = [], isOpen = true) {
    this.#names = names
    this.#isOpen = isOpen
  }

  get address(): string {
    return `http://127.0.0.1:${this.port}`
  }

  /**
   * Starts, or starts again on the same port and folder.
   * @param aheadMs how far the machine's clock is ahead: a shop that is started again tomorrow
   */
  async start(shop?: Shop, aheadMs = 0): Promise<void> {
    const args = [
      ...(aheadMs === 0 ? [] : ['--import', CLOCK_AHEAD]),
      'dist/server.mjs',
      ...(this.#isOpen ? ['--open'] : []),
      '--shop',
      join(this.#folder, 'shop'),
      ...this.#names.flatMap((name) => ['--host', name]),
    ]
    if (shop !== undefined) {
      const file = join(this.#folder, 'set-up.json')
      writeFileSync(file, JSON.stringify(toSetUpFile(shop)))
      args.push('--setup', file)
    }
    const env = { ...process.env, PORT: String(this.port), BIND: '127.0.0.1', TEST_CLOCK_AHEAD_MS: String(aheadMs) }
    const child = spawn(process.execPath, args, { env, stdio: ['ignore', 'pipe', 'inherit'] })
    this.#child = child
    this.#printed = ''
    this.port = await new Promise<number>((resolve, reject) => {
      child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${this.#printed}`)))
      child.stdout.on('data', (chunk: Buffer) => {
        this.#printed += chunk
        const port = /http:\/\/[^\s/]+:(\d+)/.exec(this.#printed)?.[1]
        if (port !== undefined) resolve(Number(port))
      })
    })
  }

  /** The code in the terminal of a shop that no desk has joined; null: none was printed, or not yet. */
  get terminalCode(): string | null {
    const [, first, second] = /type (\d{3}) (\d{3})/.exec(this.#printed) ?? []
    return first === undefined || second === undefined ? null : `${first}${second}`
  }

  async stop(signal: NodeJS.Signals = 'SIGTERM'): Promise<void> {
    const child = this.#child
    this.#child = null
    if (child === null || child.exitCode !== null || child.signalCode !== null) return
    const closed = once(child, 'close')
    child.kill(signal)
    await closed
  }

  async remove(): Promise<void> {
    await this.stop()
    rmSync(this.#folder, { recursive: true, force: true })
  }

  /** One act over the API, as another device would do it. @throws when it is not taken */
  async act(act: Act, role: Role = 'desk'): Promise<void> {
    const answer = await this.ask(act, role)
    if (answer.kind !== 'taken') throw new Error(`${act.type}: ${JSON.stringify(answer)}`)
  }

  async ask(act: Act, role: Role = 'desk'): Promise<Answer> {
    this.#commands += 1
    const id = `screens${Date.now().toString(36)}${this.#commands.toString(36).padStart(4, '0')}`
    const response = await fetch(`${this.address}/api/v1/commands`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-device-role': role, 'x-device-id': 'screen-test' },
      body: JSON.stringify({ id, deviceSeq: this.#commands, tappedAtMs: null, ...act }),
    })
    const { answer } = await response.json()
    return answer
  }

  async state(): Promise<State> {
    return (await this.#read()).state
  }

  async hash(): Promise<string> {
    return (await this.#read()).hash
  }

  async #read(): Promise<{ state: State; hash: string }> {
    const body = await (await fetch(`${this.address}/api/v1/state`)).json()
    return { state: fromJson(body.state), hash: body.hash }
  }
}

/**
 * Playwright's `test` with a shop's server, stopped and removed after each test, as are the pages: one that is left open
 * goes on knocking at its server through all the tests to come.
 */
export const test = base.extend<{ server: ShopServer; noPageLeft: undefined }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures that one uses from this pattern.
  server: async ({}, use) => {
    const server = new ShopServer()
    await use(server)
    await server.remove()
  },
  noPageLeft: [
    async ({ browser }, use) => {
      await use(undefined)
      await Promise.all(browser.contexts().map((context) => context.close()))
    },
    { auto: true },
  ],
})
export { expect } from '@playwright/test'

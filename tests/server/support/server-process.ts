import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { afterAll, afterEach, beforeAll } from 'vitest'

const ROOT = fileURLToPath(new URL('../../../', import.meta.url))
/** Inside the project, so that the bundle finds its packages. */
const FOLDER = join(ROOT, 'node_modules', '.cache', `boilboard-server-test-${process.pid}`)
const SERVER = join(FOLDER, 'server.mjs')

const started: ServerProcess[] = []

/** Bundles the server as it is now, once for a test file, and ends what a test leaves running. */
export function withServerProcesses(): void {
  beforeAll(async () => {
    mkdirSync(FOLDER, { recursive: true })
    await build({
      absWorkingDir: ROOT,
      entryPoints: ['server/main.ts'],
      outfile: SERVER,
      bundle: true,
      platform: 'node',
      format: 'esm',
      target: 'node20',
      external: ['@photostructure/sqlite'],
      define: { __BUILD_ID__: '"process-test"' },
      banner: {
        js: "import { createRequire as __createRequire } from 'node:module'\nconst require = __createRequire(import.meta.url)",
      },
      logLevel: 'warning',
    })
  })
  afterEach(async () => {
    for (const one of started.splice(0)) await one.kill('SIGKILL')
  })
  afterAll(() => rmSync(FOLDER, { recursive: true, force: true }))
}

/** The real server in a process of its own. */
export class ServerProcess {
  output = ''
  code: number | null = null
  readonly #child: ChildProcess
  readonly #ended: Promise<unknown>
  readonly #heard = new Set<() => void>()

  /**
   * @param args those of `npm start`; "--closed" is ours: without --open
   * @param cwd where it is started: the demo makes its folder there
   */
  constructor(args: readonly string[], env: NodeJS.ProcessEnv = {}, cwd: string = FOLDER) {
    // A shop lets in whom its desk let in; most tests are about something else.
    const open = args.includes('--shop') && !args.includes('--closed') ? ['--open'] : []
    const own = args.filter((arg) => arg !== '--closed')
    this.#child = spawn(process.execPath, [SERVER, ...own, ...open], {
      cwd,
      env: { ...process.env, PORT: '0', BIND: '127.0.0.1', LOG_LEVEL: 'silent', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    started.push(this)
    const hear = (chunk: Buffer) => {
      this.output += chunk
      for (const look of [...this.#heard]) look()
    }
    this.#child.stdout?.on('data', hear)
    this.#child.stderr?.on('data', hear)
    this.#ended = once(this.#child, 'close').then(([code]) => {
      this.code = code
      for (const look of [...this.#heard]) look()
    })
  }

  /** The port, once it serves. @throws with what it printed when it ends instead */
  async port(): Promise<number> {
    const printed = () => /localhost:(\d+)/.exec(this.output)?.[1]
    await this.until(() => printed() !== undefined || this.code !== null)
    const port = printed()
    if (port === undefined) throw new Error(`the server ended with ${this.code}:\n${this.output}`)
    return Number(port)
  }

  /** Its exit code, once it has ended by itself. */
  async ended(): Promise<number | null> {
    await this.#ended
    return this.code
  }

  async kill(signal: NodeJS.Signals): Promise<number | null> {
    if (this.#child.exitCode === null && this.#child.signalCode === null) this.#child.kill(signal)
    return this.ended()
  }

  until(isSo: () => boolean): Promise<void> {
    return new Promise((resolve) => {
      const look = () => {
        if (!isSo()) return
        this.#heard.delete(look)
        resolve()
      }
      this.#heard.add(look)
      look()
    })
  }
}

import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { basename, dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'esbuild'
import { build } from 'esbuild'

export const ROOT = fileURLToPath(new URL('../../../', import.meta.url))

const SQLITE = '@photostructure/sqlite'

/**
 * Bundles the server as it is now.
 * @param outfile a name ending in .mjs, within the project, so that the bundle finds its packages
 * @param sqlite a file that takes the place of the SQLite package
 * @param plugins what makes another release of it
 */
export async function bundleServer(
  outfile: string,
  buildId: string,
  sqlite?: string,
  plugins: Plugin[] = [],
): Promise<void> {
  await build({
    absWorkingDir: ROOT,
    plugins,
    // The threads for copies and advice are programs of their own beside the server.
    entryPoints: {
      [basename(outfile, '.mjs')]: 'server/main.ts',
      'copies-worker': 'server/copies/copies-worker.ts',
      'work-worker': 'server/work/work-worker.ts',
    },
    outdir: dirname(outfile),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    ...(sqlite === undefined ? { external: [SQLITE] } : { alias: { [SQLITE]: sqlite } }),
    define: { __BUILD_ID__: JSON.stringify(buildId) },
    banner: {
      js: "import { createRequire as __createRequire } from 'node:module'\nconst require = __createRequire(import.meta.url)",
    },
    logLevel: 'warning',
  })
}

export interface RunParts {
  /** The bundled server. */
  readonly program: string
  /** Those of `npm start`; "--closed" is ours: without --open. */
  readonly args: readonly string[]
  readonly env?: NodeJS.ProcessEnv
  /** Where it is started: the demo makes its folder there. */
  readonly cwd: string
  /** Those of Node itself, e.g. something to be loaded before the server. */
  readonly nodeArgs?: readonly string[]
  /** A command that starts it, e.g. as another user: Node and its arguments follow. */
  readonly through?: readonly string[]
}

/** None outlives who started it, also when that ends in the middle. */
const running = new Set<ChildProcess>()
process.once('exit', () => {
  for (const child of running) child.kill('SIGKILL')
})

/** The real server in a process of its own. */
export class ServerRun {
  output = ''
  code: number | null = null
  hasEnded = false
  readonly #child: ChildProcess
  readonly #ended: Promise<unknown>
  readonly #heard = new Set<() => void>()

  constructor({ program, args, env = {}, cwd, nodeArgs = [], through = [] }: RunParts) {
    // A shop lets in whom its desk let in; most tests are about something else.
    const open = args.includes('--shop') && !args.includes('--closed') ? ['--open'] : []
    const own = args.filter((arg) => arg !== '--closed')
    const [command = process.execPath, ...rest] = [...through, process.execPath, ...nodeArgs, program, ...own, ...open]
    this.#child = spawn(command, rest, {
      cwd,
      env: { ...process.env, PORT: '0', BIND: '127.0.0.1', LOG_LEVEL: 'silent', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    running.add(this.#child)
    const hear = (chunk: Buffer) => {
      this.output += chunk
      this.#tell()
    }
    this.#child.stdout?.on('data', hear)
    this.#child.stderr?.on('data', hear)
    this.#ended = once(this.#child, 'close').then(([code]) => {
      running.delete(this.#child)
      this.code = code
      this.hasEnded = true
      this.#tell()
    })
  }

  /** 0 when it could not be started. */
  get pid(): number {
    return this.#child.pid ?? 0
  }

  /** The port, once it serves. @throws with what it printed when it ends instead */
  async port(): Promise<number> {
    const printed = () => /localhost:(\d+)/.exec(this.output)?.[1]
    await this.until(() => printed() !== undefined || this.hasEnded)
    const port = printed()
    if (port === undefined) throw new Error(`the server ended with ${this.code}:\n${this.output}`)
    return Number(port)
  }

  /** Its exit code, once it has ended by itself; null when a signal ended it. */
  async ended(): Promise<number | null> {
    await this.#ended
    return this.code
  }

  async kill(signal: NodeJS.Signals): Promise<number | null> {
    this.signal(signal)
    return this.ended()
  }

  signal(signal: NodeJS.Signals): void {
    if (this.#child.exitCode === null && this.#child.signalCode === null) this.#child.kill(signal)
  }

  /** Resolves as soon as something that it printed, or its end, makes it true. */
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

  #tell(): void {
    for (const look of [...this.#heard]) look()
  }
}

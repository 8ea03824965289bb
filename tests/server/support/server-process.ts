import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll } from 'vitest'
import type { RunParts } from './server-program.ts'
import { bundleServer, ROOT, ServerRun } from './server-program.ts'

/** Inside the project, so that the bundle finds its packages. */
const FOLDER = join(ROOT, 'node_modules', '.cache', `boilboard-server-test-${process.pid}`)
export const SERVER = join(FOLDER, 'server.mjs')

const started: ServerRun[] = []

/**
 * Bundles the server as it is now, once for a test file, and ends what a test leaves running.
 * @param sqlite a file that takes the place of the SQLite package
 */
export function withServerProcesses(sqlite?: string): void {
  beforeAll(async () => {
    mkdirSync(FOLDER, { recursive: true })
    await bundleServer(SERVER, 'process-test', sqlite)
  })
  afterEach(async () => {
    for (const one of started.splice(0)) await one.kill('SIGKILL')
  })
  afterAll(() => rmSync(FOLDER, { recursive: true, force: true }))
}

/** The real server in a process of its own, ended with the test. */
export class ServerProcess extends ServerRun {
  /**
   * @param args those of `npm start`; "--closed" is ours: without --open
   * @param cwd where it is started: the demo makes its folder there
   */
  constructor(
    args: readonly string[],
    env: NodeJS.ProcessEnv = {},
    cwd: string = FOLDER,
    how: Pick<RunParts, 'nodeArgs' | 'through'> = {},
  ) {
    super({ program: SERVER, args, env, cwd, ...how })
    started.push(this)
  }
}

import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { SafeCopies } from '../../shared-core/live/devices.ts'
import { freeMbOf } from '../operation/free-space.ts'
import type { Copies } from './copies.ts'
import { copiesReasons, NO_COPIES } from './copies.ts'
import { copiesFolderOf, noteCopiesFolder } from './copy-folder.ts'

/** What the thread is given. */
export interface ThreadStart {
  readonly journalFile: string
  readonly folder: string
}

/** What the thread is told. */
export type ToThread = { readonly type: 'archive'; readonly date: string } | { readonly type: 'stop' }

/** What the thread tells after each round. */
export type FromThread = SafeCopies

/** Built beside the server; see `server/start/build.mjs`. */
const PROGRAM = new URL('./copies-worker.mjs', import.meta.url)
/** A thread that ended is begun anew: what ended it may be over. */
const BEGUN_AGAIN_MS = 60_000
/**
 * The last entries take milliseconds, a first whole copy of some years a few seconds, and it cannot be cut short: a process
 * that ends in the middle of it is ended by Node itself as a crash. A drive that hangs is not waited for.
 */
const STOPPED_MS = 20_000
const DISK_ASKED_EVERY_MS = 30_000

/**
 * The copies in a thread of their own: writing to a slow drive, copying the whole journal and folding it for proof all
 * take time that no tap may wait for, and SQLite waits for a drive where it is called.
 * @param chosen by --copies; null: where they were kept the last time, else in the shop's own folder
 */
export function copiesThreadFor(shopFolder: string, journalFile: string, chosen: string | null): Copies {
  const folder = copiesFolderOf(shopFolder, chosen)
  noteCopiesFolder(shopFolder, chosen)
  return new CopiesThread({ journalFile, folder })
}

class CopiesThread implements Copies {
  readonly #start: ThreadStart
  readonly #startedAtMs = Date.now()
  #standing: SafeCopies
  #worker: Worker | null = null
  #begunAtMs = Number.NEGATIVE_INFINITY
  #askedAtMs = Number.NEGATIVE_INFINITY
  #freeMb: number | null = null

  constructor(start: ThreadStart) {
    this.#start = start
    this.#standing = { ...NO_COPIES, folder: start.folder }
    this.tick()
  }

  standing(): SafeCopies {
    return this.#standing
  }

  reasons() {
    const freeMb = this.#standing.isSameDrive ? null : this.#freeMb
    return copiesReasons(this.#standing, { nowMs: Date.now(), startedAtMs: this.#startedAtMs, freeMb })
  }

  tick(): void {
    const nowMs = performance.now()
    if (this.#worker === null && nowMs - this.#begunAtMs >= BEGUN_AGAIN_MS) {
      this.#begunAtMs = nowMs
      this.#worker = this.#begin()
    }
    if (nowMs - this.#askedAtMs < DISK_ASKED_EVERY_MS) return
    this.#askedAtMs = nowMs
    void freeMbOf(this.#start.folder).then((mb) => {
      this.#freeMb = mb
    })
  }

  lull(date: string): void {
    this.#tell({ type: 'archive', date })
  }

  async stop(): Promise<void> {
    const worker = this.#worker
    if (worker === null) return
    const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
    this.#tell({ type: 'stop' })
    let timer: NodeJS.Timeout | undefined
    const tooLong = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, STOPPED_MS)
    })
    await Promise.race([ended, tooLong])
    clearTimeout(timer)
  }

  #begin(): Worker | null {
    if (!existsSync(PROGRAM)) {
      this.#troubled(`${fileURLToPath(PROGRAM)} is missing; build again`)
      return null
    }
    const worker = new Worker(PROGRAM, { workerData: this.#start })
    // A thread that hangs on a drive must not keep a stopped server alive.
    worker.unref()
    worker.on('message', (standing: FromThread) => {
      this.#standing = standing
    })
    worker.on('error', (error) => this.#troubled(error.message))
    worker.on('exit', () => {
      this.#worker = null
    })
    return worker
  }

  #tell(message: ToThread): void {
    this.#worker?.postMessage(message)
  }

  #troubled(why: string): void {
    this.#standing = { ...this.#standing, trouble: `the copying stopped: ${why}.` }
  }
}

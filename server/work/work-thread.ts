import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthReason } from '../../shared-core/live/health.ts'
import type { Log } from '../live/room-parts.ts'
import type { Answered, Asked, Kind } from './questions.ts'
import type { WorkStart } from './work.ts'
import type { WorkDesk } from './work-desk.ts'
import { WorkFault, WorkStopped } from './work-desk.ts'

/** What the thread is told; `asked` and `answer` are of the kind. */
export type ToWorker =
  | { readonly type: 'ask'; readonly id: number; readonly kind: string; readonly asked: unknown }
  /** Answered between any two chunks of work: it goes on. */
  | { readonly type: 'ping' }
  | { readonly type: 'end' }

export type FromWorker =
  | 'pong'
  | { readonly id: number; readonly ok: true; readonly answer: unknown }
  | { readonly id: number; readonly ok: false; readonly fault: string }

interface Waiting {
  readonly kind: string
  readonly resolve: (answer: never) => void
  readonly reject: (error: Error) => void
}

/** Built beside the server; see `server/start/build.mjs`. */
const PROGRAM = new URL('./work-worker.mjs', import.meta.url)
/** A thread that ended is begun anew: what ended it may be over. One that ends at once must not take a core. */
const BEGUN_AGAIN_MS = 15_000
/** The longest chunk of work is a second or two on a weak machine: one that says nothing for so long never will. */
const SILENT_MS_MAX = 60_000
/** The longest chunk of work between two messages is far shorter; what it writes it can write again. */
const ENDED_MS_MAX = 5_000

interface ThreadParts {
  readonly start: WorkStart
  readonly log: Log & { warn(details: object, message: string): void }
  /** Left out: the one that is built beside the server. */
  readonly program?: URL
  /** Whether one that ended so long ago is begun again; left out: after a while. */
  readonly isDue?: (sinceMs: number) => boolean
  /** Whether one that has not answered for so long is ended; left out: after a while. */
  readonly isHung?: (sinceMs: number) => boolean
}

/** Asks a thread of its own, so that no tap waits for a forecast. */
export function workThread(parts: ThreadParts): WorkDesk {
  return new WorkThread(parts)
}

class WorkThread implements WorkDesk {
  readonly #parts: ThreadParts
  readonly #waiting = new Map<number, Waiting>()
  readonly #onBegun: (() => void)[] = []
  #worker: Worker | null = null
  #begunAtMs = Number.NEGATIVE_INFINITY
  #lastId = 0
  /** Since when a ping has had no answer; null: none is out. */
  #pingedAtMs: number | null = null
  /** Why it ended the last time; null while it runs. */
  #ended: string | null = null
  #isClosed = false

  constructor(parts: ThreadParts) {
    this.#parts = parts
    this.tick()
  }

  ask<K extends Kind>(kind: K, asked: Asked<K>): Promise<Answered<K>> {
    const worker = this.#worker
    if (worker === null) return Promise.reject(new WorkStopped(this.#ended ?? 'closed'))
    const id = ++this.#lastId
    return new Promise<Answered<K>>((resolve, reject) => {
      this.#waiting.set(id, { kind, resolve, reject })
      worker.postMessage({ type: 'ask', id, kind, asked } satisfies ToWorker)
    })
  }

  onBegun(run: () => void): void {
    this.#onBegun.push(run)
    if (this.#worker !== null) run()
  }

  tick(): void {
    const nowMs = performance.now()
    this.#watch(nowMs)
    const { isDue = (sinceMs: number) => sinceMs >= BEGUN_AGAIN_MS } = this.#parts
    const isFirst = this.#begunAtMs === Number.NEGATIVE_INFINITY
    if (this.#isClosed || this.#worker !== null || (!isFirst && !isDue(nowMs - this.#begunAtMs))) return
    this.#begunAtMs = nowMs
    this.#begin()
  }

  /** A question that never ends would keep all others waiting, and nobody would know. */
  #watch(nowMs: number): void {
    const worker = this.#worker
    const { isHung = (sinceMs: number) => sinceMs >= SILENT_MS_MAX } = this.#parts
    if (worker === null || this.#isClosed) return
    if (this.#pingedAtMs === null) {
      this.#pingedAtMs = nowMs
      worker.postMessage({ type: 'ping' } satisfies ToWorker)
    } else if (isHung(nowMs - this.#pingedAtMs) && this.#ended === null) {
      this.#ended = 'it did not answer any more'
      void worker.terminate()
    }
  }

  reasons(): readonly HealthReason[] {
    return this.#ended === null ? [] : [healthReason('advice-stopped', 'warning', { why: this.#ended })]
  }

  async close(): Promise<void> {
    this.#isClosed = true
    const worker = this.#worker
    if (worker === null) return
    let timer: NodeJS.Timeout | undefined
    const tooLong = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, ENDED_MS_MAX)
    })
    const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
    worker.postMessage({ type: 'end' } satisfies ToWorker)
    await Promise.race([ended, tooLong])
    clearTimeout(timer)
    await worker.terminate()
  }

  #begin(): void {
    const { start, program = PROGRAM } = this.#parts
    if (!existsSync(program)) {
      this.#ended = `${fileURLToPath(program)} is missing; build again`
      return
    }
    const worker = new Worker(program, { workerData: start })
    this.#worker = worker
    // A server that has stopped does not wait for it.
    worker.unref()
    worker.on('message', (message: FromWorker) => this.#hear(message))
    worker.on('error', (error) => this.#troubled(error))
    worker.on('exit', (code) => this.#gone(code))
    this.#ended = null
    this.#pingedAtMs = null
    for (const run of this.#onBegun) run()
  }

  #hear(message: FromWorker): void {
    if (message === 'pong') {
      this.#pingedAtMs = null
      return
    }
    const waiting = this.#waiting.get(message.id)
    if (waiting === undefined) return
    this.#waiting.delete(message.id)
    if (message.ok) {
      // It is the answer to the kind that was asked under this number.
      waiting.resolve(message.answer as never)
      return
    }
    this.#parts.log.error({ kind: waiting.kind, fault: message.fault }, 'a question to the advice thread failed')
    waiting.reject(new WorkFault(message.fault.split('\n')[0] ?? ''))
  }

  #troubled(error: Error): void {
    this.#ended = error.message
    this.#parts.log.error({ error }, 'the advice thread ended by a fault')
  }

  #gone(code: number): void {
    this.#worker = null
    if (!this.#isClosed) {
      this.#ended ??= `it ended with code ${code}`
      this.#parts.log.warn({ why: this.#ended }, 'the advice thread has ended; it is begun again')
    }
    const stopped = new WorkStopped(this.#ended ?? 'closed')
    for (const { reject } of this.#waiting.values()) reject(stopped)
    this.#waiting.clear()
  }
}

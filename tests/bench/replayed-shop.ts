import { createServer } from 'node:http'
import express from 'express'
import type { Socket } from 'socket.io'
import { Server } from 'socket.io'
import { pages } from '../../server/http/pages.ts'
import { shopClock } from '../../server/live/shop-clock.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { toJson } from '../../shared-core/day/state-json.ts'
import type { FromScreen, ToScreen } from '../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../shared-core/live/protocol.ts'
import type { Profile } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/** A silence that is longer than any that a sped-up page may believe in. */
const NEVER_MS = 1_000_000_000

/**
 * A server whose time a bench moves: it serves the built pages and tells them the entries of a journal as their time
 * comes. Nothing can be tapped. A page whose own timers are moved along with it lives through days in minutes.
 */
export class ReplayedShop {
  readonly #state = emptyState()
  readonly #entries: readonly Entry[]
  readonly #http = createServer()
  readonly #io = new Server(this.#http, {
    transports: ['websocket'],
    serveClient: false,
    pingInterval: NEVER_MS,
    pingTimeout: NEVER_MS,
  })
  #told = 0
  #nowMs: EpochMs

  /** @param entries oldest first; those up to `nowMs` are folded before anybody comes */
  constructor(entries: readonly Entry[], nowMs: EpochMs) {
    this.#entries = entries
    this.#nowMs = nowMs
    this.#takeDue()
    this.#io.on('connection', (socket) => {
      socket.on('m', (message: FromScreen) => this.#hear(socket, message))
    })
  }

  get seq(): number {
    return this.#state.seq
  }

  get profile(): Profile {
    const { shop } = this.#state
    if (shop === null) throw new Error('the journal begins without a set-up')
    return shop.profile
  }

  get nowMs(): EpochMs {
    return this.#nowMs
  }

  /** @returns its address */
  async listen(): Promise<string> {
    const app = express()
    pages(app, 'dist/client')
    this.#http.on('request', app)
    await new Promise<void>((resolve) => this.#http.listen(0, '127.0.0.1', resolve))
    const address = this.#http.address()
    return `http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`
  }

  /** Moves its time on; what has happened by then is told in one message. */
  moveTo(nowMs: EpochMs): void {
    this.#nowMs = nowMs
    const entries = this.#takeDue()
    if (entries.length > 0) this.#io.emit('m', { type: 'turn', entries, answers: [] } satisfies ToScreen)
  }

  async close(): Promise<void> {
    await this.#io.close()
  }

  #takeDue(): readonly Entry[] {
    const from = this.#told
    for (let next = this.#entries[this.#told]; next !== undefined && next.recordedAtMs <= this.#nowMs; ) {
      applyEntry(this.#state, next)
      this.#told += 1
      next = this.#entries[this.#told]
    }
    return this.#entries.slice(from, this.#told)
  }

  #hear(socket: Socket, message: FromScreen): void {
    const say = (answer: ToScreen) => socket.emit('m', answer)
    if (message.type === 'probe') say({ type: 'probed', t0: message.t0, t1: this.#nowMs, t2: this.#nowMs })
    if (message.type !== 'hello') return
    say({
      type: 'welcome',
      protocol: PROTOCOL_VERSION,
      foldVersion: FOLD_VERSION,
      buildId: message.buildId,
      journalId: 'replayed',
      course: '',
      device: null,
      seq: this.#state.seq,
      state: toJson(this.#state),
      entries: [],
      clock: shopClock(this.profile.zone, this.#nowMs),
      demo: null,
      version: '',
    })
  }
}

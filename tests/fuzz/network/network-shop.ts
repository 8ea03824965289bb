import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { loadSqlite } from '../../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../../server/journal/sqlite-journal.ts'
import type { Serving } from '../../../server/serve.ts'
import { serve } from '../../../server/serve.ts'
import { takeSetUp } from '../../../server/shop/take-set-up.ts'
import { accountGaps } from '../../../shared-core/day/account.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { shopWith } from '../../core/support/shop.ts'
import { Find } from '../fuzz.ts'
import { sendRaw } from './raw-http.ts'

/** Requests from one address in a row: below what a minute allows, so that all of them are looked at. */
const REQUESTS_FROM_ONE = 500

/** A whole server on a port, and what must hold of it. */
export class NetworkShop {
  readonly serving: Serving
  readonly #folder: string
  #sent = 0
  #seq: number
  #hash: string

  private constructor(serving: Serving, folder: string) {
    this.serving = serving
    this.#folder = folder
    this.#seq = serving.room.state.seq
    this.#hash = hashState(serving.room.state)
  }

  static async open(): Promise<NetworkShop> {
    const folder = mkdtempSync(join(tmpdir(), 'boilboard-fuzz-'))
    const journal = new SqliteJournal(await loadSqlite(), join(folder, 'journal.sqlite'), 'shop')
    const options = { port: 0, bind: '127.0.0.1', names: [] }
    const serving = await serve({ journal, closed: null, historyFile: ':memory:', options, demo: null, say: () => {} })
    await takeSetUp(serving.room, shopWith(), [])
    return new NetworkShop(serving, folder)
  }

  /** An address of the loopback network for the next request. */
  nextAddress(): string {
    const block = Math.floor(this.#sent / REQUESTS_FROM_ONE)
    this.#sent += 1
    return `127.1.${Math.floor(block / 250) % 250}.${(block % 250) + 1}`
  }

  get seq(): number {
    return this.serving.room.state.seq
  }

  /** @param isTaken whether an answer said that something was done @throws Find */
  assertAsAnswered(isTaken: boolean): void {
    const { state } = this.serving.room
    if (state.seq === this.#seq) return
    this.#seq = state.seq
    this.#hash = hashState(state)
    if (!isTaken) throw new Find(`not taken, but entry ${state.seq} is there`)
    if (accountGaps(state).size > 0) throw new Find('pieces are not accounted for')
  }

  /** What is slow to look at: the whole state, and whether a good request is answered. @throws Find */
  async assertWell(): Promise<void> {
    const { state } = this.serving.room
    if (state.seq === this.#seq && hashState(state) !== this.#hash) throw new Find('the shop is not as it was')
    const head = `GET /api/health HTTP/1.1\r\nhost: 127.0.0.1:${this.serving.port}\r\nconnection: close\r\n\r\n`
    const { status, body } = await sendRaw(this.serving.port, Buffer.from(head), this.nextAddress())
    if (status !== 200 || !body.includes('"ok"')) throw new Find(`a good request is answered with ${status}: ${body}`)
  }

  async close(): Promise<void> {
    await this.serving.stop()
    rmSync(this.#folder, { recursive: true, force: true })
  }
}

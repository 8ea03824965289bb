import { mkdirSync, writeFileSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { Chance } from '../days/chance.ts'
import { ServerRun } from '../server/support/server-program.ts'
import { compareAtRest } from './at-rest.ts'
import { checkFile } from './file-check.ts'
import { Ledger } from './ledger.ts'
import type { Moment } from './moments.ts'
import { drawMoment, envOf, MOMENT_MS_MAX } from './moments.ts'
import { takeBackForm } from './older-form.ts'
import { KillsScreen } from './screen.ts'
import { Till } from './till.ts'

export const BUILD_ID = 'kills'
/** What the server under test has for the SQLite package. */
export const KILLING_SQLITE = fileURLToPath(new URL('./killing-sqlite.mjs', import.meta.url))
const SCREENS = ['bench', 'bench', 'counter', 'desk', 'wall'] as const
/** Longest wait for the screens: far more than any machine needs. */
const RIGHT_MS_MAX = 60_000
const LOOK_EVERY_MS = 5
/** Longest time from a process's end to our hearing of it. */
const HEARD_MS = 5_000

export interface UnderLoadParts {
  readonly sqlite: Sqlite
  readonly program: string
  readonly folder: string
  readonly port: number
  readonly seed: number
}

export interface Round {
  readonly moment: Moment
  /** The moment came; else the kill came from outside, since what it waits for did not happen. */
  readonly isMet: boolean
  /** From the process's beginning to its port's first answer; null: killed before. */
  readonly startMs: number | null
  /** From the port's first answer to the moment when the last screen was up to date; null: killed before. */
  readonly rightMs: number | null
  /** What it ended with; null: a kill. */
  readonly code: number | null
}

/** One shop that is killed again and again while people tap, and what must hold after each kill. */
export class ShopUnderLoad {
  readonly ledger = new Ledger()
  readonly #parts: UnderLoadParts
  readonly #chance: Chance
  readonly #screens: readonly KillsScreen[]
  readonly #till: Till
  readonly #file: string
  #isFirst = true

  constructor(parts: UnderLoadParts) {
    const { folder, port, seed } = parts
    this.#parts = parts
    this.#chance = new Chance(seed)
    this.#file = join(folder, 'shop', 'journal.sqlite')
    mkdirSync(folder, { recursive: true })
    const shop = shopWith({ stations: table(ALL_STATIONS) })
    writeFileSync(join(folder, 'set-up.json'), JSON.stringify(toSetUpFile(shop)))
    const told = this.ledger.told.bind(this.ledger)
    this.#till = new Till(port, this.#chance, told)
    const address = `http://127.0.0.1:${port}`
    this.#screens = SCREENS.map((role, at) => {
      const who = `${role}-${at}`
      return new KillsScreen({ who, role, address, buildId: BUILD_ID, chance: this.#chance, told })
    })
  }

  /** A start, some work, a kill, and a look at what it left. */
  async round(moment = drawMoment(this.#chance)): Promise<Round> {
    if (moment.kind === 'migration') takeBackForm(this.#parts.sqlite, this.#file, this.#chance)
    const beganMs = performance.now()
    const server = this.#start(moment)
    const outside = 'afterMs' in moment && moment.kind === 'start' ? wait(moment.afterMs) : new Promise(() => undefined)
    let answeredMs: number | null = null
    let rightMs: number | null = null
    let isMet = false
    try {
      answeredMs = await Promise.race([this.#answers(server), outside.then(() => null)])
      if (answeredMs !== null && moment.kind !== 'start') {
        rightMs = await this.#right(server, answeredMs)
        if (rightMs !== null && !server.hasEnded) await this.#work(server, moment)
      }
      isMet = !('at' in moment) || server.hasEnded
    } catch (error) {
      this.ledger.fail(`${error instanceof Error ? error.stack : String(error)}\n${server.output}`)
    } finally {
      await server.kill('SIGKILL')
    }
    // A signal leaves no code; one that was asked to stop may have done so in time.
    if (server.code !== null && !(server.code === 0 && isAtStop(moment)))
      this.ledger.fail(`it ended with ${server.code} by itself: ${server.output}`)
    await this.#until(() => this.#screens.every(({ isLive }) => !isLive), 'hear that the server is gone')
    if (this.#chance.permille(150)) this.#chance.oneOf(this.#screens).reload()
    checkFile(this.#parts.sqlite, this.#file, this.ledger, false)
    if (this.ledger.entries > 0) this.#isFirst = false
    return { moment, isMet, startMs: answeredMs === null ? null : answeredMs - beganMs, rightMs, code: server.code }
  }

  /** Starts once more, lets all come to rest, stops as one should, and reads the whole file again. */
  async end(): Promise<void> {
    const server = this.#start(null)
    const answeredMs = await this.#answers(server)
    if (answeredMs === null || (await this.#right(server, answeredMs)) === null)
      this.ledger.fail(`the last start failed: ${server.output}`)
    for (const screen of this.#screens) screen.stop()
    const code = await server.kill('SIGTERM')
    if (code !== 0) this.ledger.fail(`it was stopped and ended with ${code}: ${server.output}`)
    checkFile(this.#parts.sqlite, this.#file, this.ledger, true)
  }

  #start(moment: Moment | null): ServerRun {
    const { program, folder, port } = this.#parts
    return new ServerRun({
      program,
      args: ['--shop', join(folder, 'shop'), ...(this.#isFirst ? ['--setup', join(folder, 'set-up.json')] : [])],
      cwd: folder,
      env: { PORT: String(port), ...(moment === null ? {} : envOf(moment)) },
    })
  }

  /** When the port answered for the first time; null when the server ended before. */
  async #answers(server: ServerRun): Promise<number | null> {
    while (!server.hasEnded) {
      if (await isListening(this.#parts.port)) return performance.now()
      await wait(LOOK_EVERY_MS)
    }
    return null
  }

  /** Until all screens are up to date and nothing is unanswered; then everything is compared. */
  async #right(server: ServerRun, answeredMs: number): Promise<number | null> {
    const isRight = () => this.#screens.every(({ isLive }) => isLive)
    await this.#until(() => server.hasEnded || isRight(), 'be right again')
    if (server.hasEnded) return null
    const rightMs = Math.max(0, ...this.#screens.map(({ liveAtMs }) => (liveAtMs ?? 0) - answeredMs))
    await this.#until(() => {
      void this.#till.send(null)
      return server.hasEnded || (isRight() && !this.#till.isWaiting && this.#screens.every((one) => one.pending === 0))
    }, 'have all their taps answered')
    const { sqlite: _, ...parts } = this.#parts
    if (!server.hasEnded)
      await compareAtRest(
        { ...parts, screens: this.#screens, till: this.#till, ledger: this.ledger, chance: this.#chance },
        // Its port is gone a moment before its end is heard of.
        () => Promise.race([server.ended().then(() => true), wait(HEARD_MS).then(() => false)]),
      )
    return rightMs
  }

  async #work(server: ServerRun, moment: Moment): Promise<void> {
    for (const screen of this.#screens) screen.tidyUp()
    const untilMs =
      performance.now() + (moment.kind === 'load' ? moment.afterMs : isAtStop(moment) ? 60 : MOMENT_MS_MAX)
    while (!server.hasEnded && performance.now() < untilMs) {
      this.#chance.oneOf(this.#screens).tap()
      if (this.#chance.permille(200)) void this.#till.send(this.ledger.state)
      await wait(this.#chance.between(1, 12))
    }
    if (!isAtStop(moment)) return
    server.signal('SIGTERM')
    await Promise.race([server.ended(), wait('afterMs' in moment ? moment.afterMs : MOMENT_MS_MAX)])
  }

  async #until(isSo: () => boolean, what: string): Promise<void> {
    const untilMs = performance.now() + RIGHT_MS_MAX
    while (!isSo()) {
      if (performance.now() > untilMs) {
        const each = this.#screens.map(({ who, isLive, pending }) => `${who} ${isLive ? 'live' : 'away'} ${pending}`)
        throw new Error(`the screens do not ${what}: ${each.join(', ')}`)
      }
      await wait(LOOK_EVERY_MS)
    }
  }
}

function isAtStop(moment: Moment): boolean {
  return moment.kind === 'stop' || ('isAtStop' in moment && moment.isAtStop)
}

function isListening(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
    socket.once('connect', () => {
      socket.destroy()
      resolve(true)
    })
    socket.once('error', () => resolve(false))
  })
}

/** A port that nobody listens at: the screens know it before the first server does. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0))
    })
  })
}

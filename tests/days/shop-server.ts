import type { Journal } from '../../server/journal/journal.ts'
import { Chores } from '../../server/live/chores.ts'
import { parseFromScreen } from '../../server/live/parse-message.ts'
import { Room } from '../../server/live/room.ts'
import type { ScreenLink } from '../../server/live/room-parts.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Chance } from './chance.ts'
import { clockOf, dateOn } from './day-plan.ts'
import type { AppendFate, AppendPlan, Copy, Disk } from './disk.ts'
import { APPEND_FATES, faultyJournal, PlannedFault } from './disk.ts'
import type { Faults } from './faults.ts'
import type { ServerEnd } from './network.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'

const SNAPSHOT_PERMILLE = 150

export interface ServerParts {
  readonly disk: Disk
  readonly schedule: Schedule
  readonly chance: Chance
  readonly faults: Faults
  readonly story: Story
  /** Appends that go wrong in one way or another. */
  readonly appendFaultPermille: number
  readonly forgetsAnswers: boolean
  readonly miscounts: boolean
  /** The process is gone: contacts break. */
  readonly onStop: () => void
  /** A copy has taken the place of the journal; the server is about to start. */
  readonly onPutBack: (copy: Copy) => void
  /** Something that must never happen. */
  readonly onTrouble: (what: string) => void
}

interface Process {
  readonly room: Room
  readonly chores: Chores
  readonly snapshot: () => Promise<void>
  readonly drop: () => void
}

/** The machine that the shop's server runs on: the real room on a disk with faults, stopped and started again. */
export class ShopServer implements ServerEnd {
  buildId = 'build-1'
  /** The server's clock rules, right or wrong; somebody may set it. */
  clockAheadMs = 0
  readonly #parts: ServerParts
  readonly #links = new Map<string, ScreenLink>()
  readonly #shownOut = new Set<string>()
  #process: Process | null = null
  /** Tells the process that runs, or starts, from the ones before it. */
  #run = 0
  #toPutBack: { readonly copy: Copy; readonly course: string } | null = null
  #fullUntilMs = 0
  #slowUntilMs = 0

  constructor(parts: ServerParts) {
    this.#parts = parts
    this.#start()
  }

  /** The running room; null while the server is down. */
  get room(): Room | null {
    return this.#process?.room ?? null
  }

  get course(): string {
    return this.#parts.disk.course
  }

  nowMs(): EpochMs {
    return epochMs(this.#parts.schedule.nowMs + this.clockAheadMs)
  }

  accept(link: ScreenLink, who: string): ReturnType<ServerEnd['accept']> {
    const { room } = this
    if (room === null) return null
    this.#links.set(who, link)
    return {
      hear: (raw) => {
        if (room !== this.room) return
        const parsed = parseFromScreen(raw)
        if (!parsed.ok) this.#parts.onTrouble(`the server cannot read ${JSON.stringify(raw)}`)
        else if (this.#shownOut.has(who)) {
          if (parsed.message.type === 'hello') link.send({ type: 'refusedHello', reason: 'revoked' })
        } else room.handle(link, parsed.message)
      },
      lost: () => {
        if (room === this.room) room.leave(link)
      },
    }
  }

  /** From now on nothing that this screen says counts, until it is let in again. */
  showOut(who: string): void {
    this.#shownOut.add(who)
    this.#links.get(who)?.close()
  }

  letIn(who: string): void {
    this.#shownOut.delete(who)
  }

  /** Nothing can be written, or only slowly, for a while. */
  trouble(what: 'disk-full' | 'disk-slow', forMs: number): void {
    const untilMs = this.#parts.schedule.nowMs + forMs
    if (what === 'disk-full') this.#fullUntilMs = untilMs
    else this.#slowUntilMs = untilMs
  }

  stop(): void {
    const running = this.#process
    if (running === null) return
    const { schedule, chance, onStop } = this.#parts
    this.#process = null
    this.#run += 1
    this.#links.clear()
    running.drop()
    onStop()
    schedule.in(chance.between(500, 8_000), () => this.#start())
  }

  /** Somebody puts a copy back: the server is stopped, and what starts is the shop as of then, on a course of its own. */
  restore(copy: Copy, course: string): void {
    this.#toPutBack = { copy, course }
    this.stop()
  }

  /** Now and then: chores, as the real server does them. */
  beat(): void {
    const running = this.#process
    if (running === null) return
    const { schedule, chance, faults, onTrouble } = this.#parts
    schedule.owe()
    running.chores.tick().catch((error: unknown) => onTrouble(`a chore failed: ${String(error)}`))
    if (faults.calm || !chance.permille(SNAPSHOT_PERMILLE)) return
    running.snapshot().catch((error: unknown) => onTrouble(String(error)))
  }

  #start(): void {
    const { disk, schedule, onPutBack, onTrouble } = this.#parts
    schedule.owe()
    if (this.#toPutBack !== null) {
      const { copy, course } = this.#toPutBack
      this.#toPutBack = null
      disk.putBack(copy, course)
      onPutBack(copy)
    }
    this.#run += 1
    this.#boot(this.#run).catch((error: unknown) => onTrouble(`the server does not start: ${String(error)}`))
  }

  async #boot(run: number): Promise<void> {
    const { disk, schedule, story, forgetsAnswers } = this.#parts
    const isRunning = () => this.#run === run
    const { journal: plain, drop } = await disk.open()
    const journal = faultyJournal({
      journal: plain,
      disk,
      plan: () => this.#planAppend(),
      in: (afterMs, then) =>
        schedule.in(afterMs, () => {
          schedule.owe()
          then()
        }),
      isRunning,
      stop: () => this.stop(),
      forgetsAnswers,
    })
    const state = await wake(journal, () => undefined)
    const room = this.#roomOn({ journal, state, isRunning })
    const now = () => this.nowMs()
    const chores = new Chores({ room, journal, now, snapshotSeq: state.seq })
    const snapshot = () => room.read((its) => saveSnapshot(journal, its))
    this.#process = { room, chores, snapshot, drop }
    story.tell('server', `runs from seq ${state.seq}, ${this.buildId}`)
  }

  #roomOn({ journal, state, isRunning }: { journal: Journal; state: State; isRunning: () => boolean }): Room {
    const { schedule, miscounts } = this.#parts
    const zone = () => state.shop?.profile.zone ?? 'UTC'
    return new Room({
      journal,
      state,
      now: () => this.nowMs(),
      // Whatever arrives within the same millisecond is one turn.
      endOfTurn: (turn) =>
        schedule.in(1, () => {
          if (!isRunning()) return
          schedule.owe()
          turn()
        }),
      broadcast: (links, message) => {
        for (const link of links) link.send(message)
      },
      localDate: (atMs) => dateOn(zone(), atMs),
      clock: () => clockOf(zone()),
      buildId: this.buildId,
      version: '0.0.0',
      demo: null,
      log: { error: (details, message) => this.#logged(details, message) },
      ...(miscounts ? { onEntries: (entries) => miscount(state, entries) } : {}),
    })
  }

  #planAppend(): AppendPlan {
    const { schedule, chance, faults, appendFaultPermille } = this.#parts
    const isSlow = !faults.calm && schedule.nowMs < this.#slowUntilMs
    const afterMs = isSlow ? chance.between(400, 3_000) : chance.permille(20) ? chance.between(100, 900) : 2
    const drawn = chance.oneOf(APPEND_FATES)
    let fate: AppendFate = 'written'
    if (faults.fires(chance, appendFaultPermille, drawn, 'server')) fate = drawn
    if (!faults.calm && schedule.nowMs < this.#fullUntilMs) fate = 'append-fails'
    return { afterMs, fate }
  }

  /** Failed appends are logged and expected; a broken rule or a journal that cannot be read is not. */
  #logged(details: object, message: string): void {
    const isPlanned = 'error' in details && details.error instanceof PlannedFault
    if (message === 'a turn could not be written' && isPlanned) return
    this.#parts.onTrouble(`the server logs: ${message} ${JSON.stringify(details, errorsAsText)}`)
  }
}

/** A planted bug: now and then a sale is booked one piece short. */
function miscount(state: State, entries: readonly Entry[]): void {
  for (const { seq, told } of entries) {
    if (told.type !== 'sell' || seq % 3 !== 0) continue
    for (const [doughId, account] of state.account) state.account.set(doughId, { ...account, sold: account.sold - 1 })
  }
}

function errorsAsText(_key: string, value: unknown): unknown {
  return value instanceof Error ? value.stack : value
}

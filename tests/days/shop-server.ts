import { MemoryDisk } from '../../server/journal/memory-journal.ts'
import { Chores } from '../../server/live/chores.ts'
import { ClockDesk } from '../../server/live/clock-desk.ts'
import { parseFromScreen } from '../../server/live/parse-message.ts'
import { Room } from '../../server/live/room.ts'
import type { ScreenLink } from '../../server/live/room-parts.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Chance } from './chance.ts'
import type { AppendPlan } from './disk.ts'
import { simJournal } from './disk.ts'
import type { ServerEnd } from './network.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'

const FATES = [
  'append-fails',
  'append-unsure',
  'stop-before-append',
  'stop-after-append',
  'stop-before-answer',
] as const

export interface ServerParts {
  readonly schedule: Schedule
  readonly chance: Chance
  readonly story: Story
  /** Appends that go wrong in one way or another. */
  readonly appendFaultPermille: number
  readonly forgetsAnswers: boolean
  /** The process is gone: contacts break. */
  readonly onStop: () => void
  /** Something that must never happen. */
  readonly onTrouble: (what: string) => void
}

/** The machine that the shop's server runs on: the real room on a simulated disk, stopped and started again. */
export class ShopServer implements ServerEnd {
  readonly disk = new MemoryDisk('simulated-shop')
  calm = false
  buildId = 'build-1'
  /** The server's clock rules, right or wrong; somebody may set it. */
  clockAheadMs = 0
  readonly #parts: ServerParts
  #process: Process | null = null

  constructor(parts: ServerParts) {
    this.#parts = parts
    this.#start()
  }

  /** The running room; null while the server is down. */
  get room(): Room | null {
    return this.#process?.room ?? null
  }

  nowMs(): EpochMs {
    return epochMs(this.#parts.schedule.nowMs + this.clockAheadMs)
  }

  accept(link: ScreenLink): ReturnType<ServerEnd['accept']> {
    const room = this.room
    if (room === null) return null
    return {
      hear: (raw) => {
        if (room !== this.room) return
        const parsed = parseFromScreen(raw)
        if (parsed.ok) room.handle(link, parsed.message)
        else this.#parts.onTrouble(`the server cannot read ${JSON.stringify(raw)}`)
      },
      lost: () => {
        if (room === this.room) room.leave(link)
      },
    }
  }

  stop(): void {
    if (this.#process === null) return
    const { schedule, chance, onStop } = this.#parts
    this.#process = null
    onStop()
    schedule.in(chance.between(500, 8_000), () => this.#start())
  }

  /** Now and then: chores, as the real server does them. */
  beat(): void {
    const running = this.#process
    if (running === null) return
    running.chores.tick().catch((error: unknown) => this.#parts.onTrouble(`a chore failed: ${String(error)}`))
    if (this.calm || !this.#parts.chance.permille(200)) return
    running.room
      .read((state) => saveSnapshot(running.journal, state))
      .catch((error: unknown) => this.#parts.onTrouble(String(error)))
  }

  #start(): void {
    const { schedule, story, onTrouble } = this.#parts
    const flag = {}
    const isRunning = () => this.#process?.flag === flag
    const journal = simJournal({
      disk: this.disk,
      plan: () => this.#planAppend(),
      in: (afterMs, run) => schedule.in(afterMs, run),
      isRunning,
      stop: () => this.stop(),
      forgetsAnswers: this.#parts.forgetsAnswers,
    })
    const { buildId } = this
    wake(journal, () => undefined).then(
      (state) => {
        const now = () => this.nowMs()
        const clock = new ClockDesk(state, now)
        const room = new Room({
          journal,
          state,
          now,
          // Whatever arrives within the same millisecond is one turn.
          endOfTurn: (run) => schedule.in(1, () => (isRunning() ? run() : undefined)),
          broadcast: (links, message) => {
            for (const link of links) link.send(message)
          },
          localDate: (atMs) => clock.date(atMs),
          clock: () => clock.table(),
          buildId,
          version: '0.0.0',
          demo: null,
          log: { error: (details, message) => this.#logged(details, message) },
        })
        const chores = new Chores({ room, journal, now, snapshotSeq: state.seq })
        this.#process = { room, journal, chores, flag }
        story.tell('server', `runs from seq ${state.seq}, ${buildId}`)
      },
      (error: unknown) => onTrouble(`the server does not start: ${String(error)}`),
    )
  }

  #planAppend(): AppendPlan {
    const { chance, story, appendFaultPermille } = this.#parts
    const afterMs = chance.permille(20) ? chance.between(100, 900) : chance.between(1, 4)
    if (this.calm || !chance.permille(appendFaultPermille)) return { afterMs, fate: 'written' }
    const fate = chance.oneOf(FATES)
    story.fault(fate, 'server')
    return { afterMs, fate }
  }

  /** Failed appends are logged and expected; a broken rule or a journal that cannot be read is not. */
  #logged(details: object, message: string): void {
    if (message === 'a turn could not be written' && 'error' in details && isPlanned(details.error)) return
    this.#parts.onTrouble(`the server logs: ${message} ${JSON.stringify(details, errorsAsText)}`)
  }
}

interface Process {
  readonly room: Room
  readonly journal: ReturnType<typeof simJournal>
  readonly chores: Chores
  /** Tells this process from the one before it. */
  readonly flag: object
}

function isPlanned(error: unknown): boolean {
  return error instanceof Error && (error.message === 'the disk is full' || error.message === 'the machine stopped')
}

function errorsAsText(_key: string, value: unknown): unknown {
  return value instanceof Error ? value.stack : value
}

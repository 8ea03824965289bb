import type { DemoSeam, RunningDemo } from '../../../server/demo/start-demo.ts'
import { startDemo } from '../../../server/demo/start-demo.ts'
import { MemoryDisk, MemoryJournal } from '../../../server/journal/memory-journal.ts'
import { Room } from '../../../server/live/room.ts'
import { localDate, shopClock } from '../../../server/live/shop-clock.ts'
import { accountGaps } from '../../../shared-core/day/account.ts'
import type { Answer } from '../../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Command } from '../../../shared-core/day/commands.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { DeviceHello } from '../../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

export interface Tapped {
  readonly device: DeviceHello
  readonly command: Command
  readonly answer: Answer
  readonly nowMs: EpochMs
}

interface Waiting {
  readonly atMs: number
  readonly run: () => void
}

/** The real room and the demo's people at work in it, with a clock that the test moves from one look to the next. */
export class DemoWorld {
  readonly journal: MemoryJournal
  readonly state: State = emptyState()
  readonly room: Room
  readonly tapped: Tapped[] = []
  readonly errors: string[] = []
  nowMs: EpochMs
  /** Pieces that the account could not place, at any moment that somebody tapped. */
  gapsSeen = 0
  #waiting: Waiting | null = null
  #underWay: Promise<unknown> = Promise.resolve()

  constructor(entries: readonly Entry[], nowMs: EpochMs) {
    this.nowMs = nowMs
    this.journal = new MemoryJournal(new MemoryDisk('demo-world'))
    this.#underWay = this.journal.append({ entries, refusals: [] })
    for (const entry of entries) applyEntry(this.state, entry)
    const zone = this.state.shop?.profile.zone ?? 'Etc/GMT'
    this.room = new Room({
      journal: this.journal,
      state: this.state,
      now: () => this.nowMs,
      endOfTurn: setImmediate,
      broadcast: () => undefined,
      localDate: (atMs) => localDate(zone, atMs),
      clock: () => shopClock(zone, this.nowMs),
      buildId: 'build-1',
      version: '0.0.0',
      demo: { handsOff: false, speed: 1 },
      log: { error: (_details, message) => this.errors.push(message) },
    })
  }

  start(change: Partial<DemoSeam> = {}): RunningDemo {
    return startDemo({
      submit: (device, commands) => this.#submit(device, commands),
      read: (look) => this.#during(this.room.read(look)),
      nowMs: () => this.nowMs,
      schedule: (delayMs, run) => {
        const one = { atMs: this.nowMs + delayMs, run }
        this.#waiting = one
        return () => {
          if (this.#waiting === one) this.#waiting = null
        }
      },
      seed: 1,
      handsOff: false,
      lookEveryMs: 1_000,
      onTrouble: (error) => this.errors.push(String(error)),
      ...change,
    })
  }

  /** Moves the clock from look to look until so much time has passed; stands still where nobody will look again. */
  async run(spanMs: number): Promise<void> {
    const untilMs = this.nowMs + spanMs
    await this.#underWay
    while (this.#waiting !== null && this.#waiting.atMs <= untilMs) {
      const { atMs, run } = this.#waiting
      this.#waiting = null
      this.nowMs = epochMs(Math.max(this.nowMs, atMs))
      run()
      await this.#settled()
    }
    this.nowMs = epochMs(Math.max(this.nowMs, untilMs))
  }

  get isWaiting(): boolean {
    return this.#waiting !== null
  }

  entries(): readonly Entry[] {
    return [...this.journal.entriesAfter(0)]
  }

  async #submit(device: DeviceHello, commands: readonly Command[]) {
    const answers = await this.#during(this.room.submit(device, commands))
    commands.forEach((command, index) => {
      const answer = answers[index]?.answer
      if (answer !== undefined) this.tapped.push({ device, command, answer, nowMs: this.nowMs })
    })
    this.gapsSeen += accountGaps(this.state).size
    return answers
  }

  #during<Result>(work: Promise<Result>): Promise<Result> {
    this.#underWay = work
    return work
  }

  /** Until a look has said when the next one is: everything that it waited for is then done. */
  async #settled(): Promise<void> {
    while (this.#waiting === null) {
      const before = this.#underWay
      await before.catch(() => undefined)
      // What follows on an answer runs in the microtasks of this turn; without a new step the look is over.
      await new Promise((resolve) => setImmediate(resolve))
      if (this.#waiting === null && this.#underWay === before) return
    }
  }
}

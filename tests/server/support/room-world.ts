import type { Fault } from '../../../server/journal/memory-journal.ts'
import { MemoryDisk, MemoryJournal } from '../../../server/journal/memory-journal.ts'
import { Room } from '../../../server/live/room.ts'
import type { ScreenLink } from '../../../server/live/room-parts.ts'
import type { DetailsPlace } from '../../../server/orders/put-down.ts'
import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act, Command } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { fromJson } from '../../../shared-core/day/state-json.ts'
import { commandId, deviceId } from '../../../shared-core/ids.ts'
import type { CommandAnswer, DeviceHello, Role, ToScreen, Welcome } from '../../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at } from '../../core/support/make.ts'
import { shopWith } from '../../core/support/shop.ts'

/** What one screen was sent, as it would arrive: through JSON. */
export class FakeScreen implements ScreenLink {
  readonly device: DeviceHello
  isClosed = false
  readonly #messages: ToScreen[] = []

  constructor(name: string, role: Role) {
    this.device = { deviceId: deviceId(name), name, role, stationId: null }
  }

  send(message: ToScreen): void {
    this.#messages.push(JSON.parse(JSON.stringify(message)))
  }

  close(): void {
    this.isClosed = true
  }

  /** What came since this was last asked. */
  take(): ToScreen[] {
    return this.#messages.splice(0)
  }

  takeOnly<Type extends ToScreen['type']>(type: Type): Extract<ToScreen, { type: Type }>[] {
    return this.take().filter((message): message is Extract<ToScreen, { type: Type }> => message.type === type)
  }

  takeAnswers(): CommandAnswer[] {
    return this.takeOnly('turn').flatMap((turn) => turn.answers)
  }
}

/** A journal that counts what is asked of it. */
class CountingJournal extends MemoryJournal {
  appends = 0
  snapshots = 0

  override append(...args: Parameters<MemoryJournal['append']>): Promise<void> {
    this.appends += 1
    return super.append(...args)
  }

  override saveSnapshot(...args: Parameters<MemoryJournal['saveSnapshot']>): void {
    this.snapshots += 1
    super.saveSnapshot(...args)
  }
}

/** The real room with a clock, a disk and turns that the test moves by hand. */
export class RoomWorld {
  readonly disk: MemoryDisk
  readonly state: State
  readonly room: Room
  readonly journal: CountingJournal
  readonly errors: string[] = []
  /** What was told with them. */
  readonly logged: string[] = []
  nowMs = at('6:47')
  fault: Fault = null
  broadcasts = 0
  readonly #turns: (() => void)[] = []

  constructor(disk = new MemoryDisk('room-world'), details?: DetailsPlace) {
    this.disk = disk
    this.journal = new CountingJournal(disk, () => this.fault)
    this.state = emptyState()
    for (const entry of this.journal.entriesAfter(0)) applyEntry(this.state, entry)
    this.room = new Room({
      journal: this.journal,
      state: this.state,
      now: () => this.nowMs,
      endOfTurn: (run) => this.#turns.push(run),
      broadcast: (links, message) => {
        this.broadcasts += 1
        for (const link of links) link.send(message)
      },
      localDate: () => '2026-11-24',
      clock: () => ({ zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }),
      buildId: 'build-1',
      version: '0.0.0',
      demo: null,
      log: {
        error: (told, message) => {
          this.errors.push(message)
          this.logged.push(JSON.stringify(told))
        },
      },
      ...(details === undefined ? {} : { details }),
    })
  }

  /** A world whose shop is set up, its day not open yet. */
  static async started(details?: DetailsPlace): Promise<RoomWorld> {
    const world = new RoomWorld(undefined, details)
    await world.submit({ type: 'changeSetUp', changes: setUpChanges(null, shopWith()) })
    return world
  }

  /** Lets everything that has arrived be dealt with, turn after turn. */
  async turn(): Promise<void> {
    for (let run = this.#turns.shift(); run !== undefined; run = this.#turns.shift()) {
      run()
      // The memory journal answers within the microtasks of this one.
      await new Promise((resolve) => setImmediate(resolve))
    }
  }

  async submit(act: Act, id = this.newId()): Promise<CommandAnswer | undefined> {
    const { device } = new FakeScreen('desk-1', 'desk')
    const [[answered]] = await Promise.all([this.room.submit(device, [command(act, { id })]), this.turn()])
    return answered
  }

  newId(): string {
    this.#made += 1
    return `world${String(this.#made).padStart(7, '0')}`
  }
  #made = 0

  hello(screen: FakeScreen, afterSeq: number | null = null, change: object = {}): void {
    this.room.handle(screen, {
      type: 'hello',
      protocol: PROTOCOL_VERSION,
      foldVersion: FOLD_VERSION,
      buildId: 'build-1',
      device: screen.device,
      isRenamed: false,
      afterSeq,
      journalId: this.disk.journalId,
      course: this.disk.course,
      ...change,
    })
  }

  /** A screen that has been welcomed and has heard all that came with it. */
  async joined(name: string, role: Role = 'bench'): Promise<FakeScreen> {
    const screen = new FakeScreen(name, role)
    this.hello(screen)
    await this.turn()
    screen.take()
    return screen
  }

  tap(screen: FakeScreen, ...commands: readonly Command[]): void {
    this.room.handle(screen, { type: 'commands', commands })
  }
}

export function command(act: Act, { id, seq = 1 }: { id: string; seq?: number }): Command {
  return { id: commandId(id), deviceSeq: seq, tappedAtMs: null, ...act }
}

/** The state that a screen has after a welcome. */
export function stateOf(welcome: Welcome, known?: State): State {
  const state = welcome.state === null ? (known ?? emptyState()) : fromJson(welcome.state)
  for (const entry of welcome.entries) applyEntry(state, entry)
  return state
}

import type { Command } from '../../shared-core/day/commands.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import { healthSentence } from '../../shared-core/live/health.ts'
import type { CommandAnswer, DeviceHello, FromScreen, ToScreen, Welcome } from '../../shared-core/live/protocol.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import { unreachable } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { Attendance } from './attendance.ts'
import { greet } from './greeting.ts'
import { readCommands } from './read-commands.ts'
import type { RoomParts, ScreenLink } from './room-parts.ts'
import { RoomFailure } from './room-parts.ts'
import { Turn } from './turn.ts'

/** Commands that may wait for one turn; a busy shop has a handful. More is a fault or an attack: the link is closed. */
export const WAITING_COMMANDS_MAX = 5_000
/** Greetings, looks and words for all that may wait for the end of one turn: every device of a large shop, many times. */
const WAITING_QUIET_MAX = 2_000
/** Longest rest of a sound after "coming": time to walk from the counter to the oven and finish a sale. */
const COMING_MS = 45_000

interface Waiting {
  readonly device: DeviceHello
  readonly link: ScreenLink | null
  readonly commands: readonly Command[]
  /** Answers to what could not be read, with the commands' ids where these could. */
  readonly unread: readonly CommandAnswer[]
  readonly settle: {
    readonly resolve: (answers: readonly CommandAnswer[]) => void
    readonly reject: (error: Error) => void
  } | null
}

/** Something that must not see the state in the middle of a turn, and what becomes of it when it cannot be done. */
interface Quiet {
  readonly run: () => void
  readonly giveUp: (error: unknown) => void
}

/**
 * The one place where commands become history. All that arrives in one turn of the event loop is decided in order,
 * applied to the state in place, written in one commit, and only then answered and broadcast, one message for each
 * screen. Nothing reads the state between the first change and the end of the commit. The room knows no socket, timer
 * or file: simulated days drive the same code.
 */
export class Room {
  readonly #parts: RoomParts
  readonly #attendance: Attendance
  #waiting: Waiting[] = []
  #waitingCommands = 0
  #afterTurn: Quiet[] = []
  #isTurnDue = false
  #isBusy = false
  #failure: string | null = null
  #isDiskFailing = false

  constructor(parts: RoomParts) {
    this.#parts = parts
    this.#attendance = new Attendance(parts)
  }

  /** Why nothing is taken until a restart, in a sentence; null while all is well. */
  get failure(): string | null {
    return this.#failure
  }

  /** What a person should see to, in a sentence: a failure, or a disk that took nothing the last time. */
  get trouble(): string | null {
    return this.#failure ?? (this.#isDiskFailing ? DISK_FAILING : null)
  }

  /** The state between turns. It is changed in place: look, do not keep. */
  get state(): State {
    return this.#parts.state
  }

  /** What a screen calls itself; null for one that was not seen since the start, and for scripts. */
  nameOf(deviceId: DeviceId): string | null {
    return this.#attendance.nameOf(deviceId)
  }

  /** @param known with a hello: what the server calls the device; null: it names itself */
  handle(link: ScreenLink, message: FromScreen, known: Welcome['device'] = null): void {
    switch (message.type) {
      case 'hello':
        this.#whenQuiet(
          () => this.#welcome(link, message, known),
          () => link.close(),
        )
        break
      case 'probe': {
        const t1 = this.#parts.now()
        link.send({ type: 'probed', t0: message.t0, t1, t2: this.#parts.now() })
        break
      }
      case 'coming':
        if (this.#attendance.deviceOf(link) !== null) this.#coming(message.actKey)
        break
      case 'commands':
        this.#commands(link, message.commands)
        break
      default:
        unreachable(message)
    }
  }

  /** In its order: a link that was lost right after its hello must not be greeted afterwards. */
  leave(link: ScreenLink): void {
    const leave = () => this.#attendance.leave(link)
    this.#whenQuiet(leave, leave)
  }

  /** For what is no screen: scripts, the demo's helpers. @throws RoomFailure when it could not be written */
  submit(device: DeviceHello, commands: readonly Command[]): Promise<readonly CommandAnswer[]> {
    return new Promise((resolve, reject) => {
      this.#wait({ device, link: null, commands, unread: [], settle: { resolve, reject } })
    })
  }

  /** Runs when no turn is under way, so that what it reads is on disk. */
  read<Result>(look: (state: State) => Result): Promise<Result> {
    return new Promise((resolve, reject) => this.#whenQuiet(() => resolve(look(this.#parts.state)), reject))
  }

  /** The state's fingerprint to all screens: one that differs fetches the state anew. Off the path of a tap. */
  check(hash: (state: State) => string): void {
    this.#whenQuiet(() => {
      const { state } = this.#parts
      this.#attendance.sendAll({ type: 'check', seq: state.seq, hash: hash(state) })
    })
  }

  /** Values outside the fold, latest only. */
  sendAll(message: ToScreen): void {
    this.#whenQuiet(() => this.#attendance.sendAll(message))
  }

  #commands(link: ScreenLink, raw: readonly unknown[]): void {
    const device = this.#attendance.deviceOf(link)
    // Not greeted, or more than it may send at once: it starts afresh with a hello.
    if (device === null || raw.length > COMMANDS_PER_MESSAGE_MAX) {
      link.close()
      return
    }
    const { commands, unread, nameless } = readCommands(raw)
    // What has no id cannot be answered, and no screen of ours sends it.
    if (nameless > 0) link.close()
    else this.#wait({ device, link, commands, unread, settle: null })
  }

  #wait(waiting: Waiting): void {
    if (this.#waitingCommands + waiting.commands.length > WAITING_COMMANDS_MAX) {
      waiting.link?.close()
      waiting.settle?.reject(tooMuch())
      return
    }
    this.#waiting.push(waiting)
    this.#waitingCommands += waiting.commands.length
    this.#turnDue()
  }

  #whenQuiet(run: () => void, giveUp: (error: unknown) => void = () => {}): void {
    if (this.#afterTurn.length >= WAITING_QUIET_MAX) {
      giveUp(tooMuch())
      return
    }
    this.#afterTurn.push({ run, giveUp })
    this.#turnDue()
  }

  /** One that fails must not take the room with it. */
  #runQuiet({ run, giveUp }: Quiet): void {
    try {
      run()
    } catch (error) {
      this.#parts.log.error({ error }, 'something between two turns failed')
      giveUp(error)
    }
  }

  #turnDue(): void {
    if (this.#isTurnDue || this.#isBusy) return
    this.#isTurnDue = true
    this.#parts.endOfTurn(() => void this.#runTurn())
  }

  async #runTurn(): Promise<void> {
    this.#isTurnDue = false
    this.#isBusy = true
    const waiting = this.#waiting
    const quiet = this.#afterTurn
    this.#waiting = []
    this.#waitingCommands = 0
    this.#afterTurn = []
    if (waiting.length > 0) await this.#takeTurn(waiting)
    for (const one of quiet) this.#runQuiet(one)
    this.#runQuiet({ run: () => this.#attendance.tellPresence(), giveUp: () => {} })
    this.#isBusy = false
    if (this.#waiting.length > 0 || this.#afterTurn.length > 0) this.#turnDue()
  }

  async #takeTurn(waiting: readonly Waiting[]): Promise<void> {
    const turn = new Turn(this.#parts)
    try {
      if (this.#failure !== null) throw new RoomFailure(this.#failure)
      const answered = waiting.map((one) => [
        ...one.unread.map((unread) => turn.knownAnswer(unread.commandId) ?? unread),
        ...one.commands.map((command) => turn.take(one.device, command)),
      ])
      await turn.write()
      this.#isDiskFailing &&= !turn.hasNews
      this.#acknowledge(waiting, answered, turn.entries)
    } catch (error) {
      this.#failed(turn, waiting, error)
    }
  }

  #acknowledge(waiting: readonly Waiting[], answered: readonly CommandAnswer[][], entries: readonly Entry[]): void {
    const answersOf = new Map<ScreenLink, CommandAnswer[]>()
    waiting.forEach(({ link, settle }, index) => {
      const answers = answered[index] ?? []
      if (link !== null) answersOf.set(link, [...(answersOf.get(link) ?? []), ...answers])
      settle?.resolve(answers)
    })
    this.#attendance.sendTurn(entries, answersOf)
  }

  /**
   * Nothing is acknowledged. What was applied is rolled back, then the disk decides: entries that are on it after all are
   * folded in. Screens lose their link, greet again and send what was not answered once more.
   */
  #failed(turn: Turn, waiting: readonly Waiting[], error: unknown): void {
    this.#parts.log.error({ error }, 'a turn could not be written')
    this.#isDiskFailing = true
    try {
      turn.rollBack()
      for (const entry of this.#parts.journal.entriesAfter(this.#parts.state.seq)) turn.foldFromDisk(entry)
    } catch (again) {
      this.#failure = healthSentence('journal-failed', {})
      this.#parts.log.error({ error: again }, 'the journal could not be read after a failed write')
    }
    const failure = new RoomFailure(this.trouble ?? DISK_FAILING)
    for (const { settle } of waiting) settle?.reject(failure)
    this.#attendance.closeAll()
  }

  #coming(actKey: string): void {
    const untilMs = epochMs(this.#parts.now() + COMING_MS)
    this.#whenQuiet(() => this.#attendance.sendAll({ type: 'coming', actKey, untilMs }))
  }

  #welcome(link: ScreenLink, hello: Extract<FromScreen, { type: 'hello' }>, known: Welcome['device']): void {
    if (this.#failure !== null) {
      link.close()
      return
    }
    this.#attendance.join(link, hello.device)
    link.send(greet(this.#parts, hello, known))
    link.send(this.#attendance.presence())
    for (const told of this.#parts.advice?.() ?? []) link.send(told)
  }
}

const DISK_FAILING = healthSentence('disk-failing', {})

function tooMuch(): RoomFailure {
  return new RoomFailure('Too much at once. Send it again in a moment.')
}

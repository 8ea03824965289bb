import { assertAccounted } from '../../shared-core/day/account.ts'
import type { Answer, Refusal } from '../../shared-core/day/answers.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import type { Context, Decision } from '../../shared-core/day/decide.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { Undo } from '../../shared-core/day/recorder.ts'
import { undoAll } from '../../shared-core/day/recorder.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import { mayDo } from '../devices/permissions.ts'
import type { Refused } from '../journal/journal.ts'
import { FIRST_COURSE } from '../journal/journal.ts'
import { putDown, withoutDetails } from '../orders/put-down.ts'
import type { RoomParts } from './room-parts.ts'

/** All commands of one turn of the event loop: applied one after the other, written together. */
export class Turn {
  readonly entries: Entry[] = []
  readonly #parts: RoomParts
  readonly #refusals: Refused[] = []
  readonly #undos: Undo[] = []
  readonly #answers = new Map<CommandId, Answer>()

  constructor(parts: RoomParts) {
    this.#parts = parts
  }

  /** Decides and applies a command. A repeat gets the first answer, whether from disk or from this very turn. */
  take(device: DeviceHello, command: Command): CommandAnswer {
    const known = this.knownAnswer(command.id)
    if (known !== null) return known
    const answer = this.#answer(device, command)
    // A question is no answer yet: the same command comes again with its yes.
    if (answer.kind !== 'ask') this.#answers.set(command.id, answer)
    if (answer.kind === 'refused') {
      this.#refusals.push({ commandId: command.id, answer, recordedAtMs: this.#recordedAtMs() })
    }
    return { commandId: command.id, answer }
  }

  /** Whether there is anything to write: repeats and questions leave nothing. */
  get hasNews(): boolean {
    return this.entries.length > 0 || this.#refusals.length > 0
  }

  /** The first answer to a command, also to one whose form this release reads no more; null when it is new. */
  knownAnswer(commandId: CommandId): CommandAnswer | null {
    const answer = this.#answers.get(commandId) ?? this.#parts.journal.answerOf(commandId)
    return answer === null ? null : { commandId, answer }
  }

  /** @throws when it could not be written */
  async write(): Promise<void> {
    if (!this.hasNews) return
    await this.#parts.journal.append({ entries: this.entries, refusals: this.#refusals })
    this.#parts.onEntries?.(this.entries)
  }

  rollBack(): void {
    for (const undo of this.#undos.toReversed()) undoAll(this.#parts.state, undo)
  }

  foldFromDisk(entry: Entry): void {
    applyEntry(this.#parts.state, entry)
  }

  #answer(device: DeviceHello, command: Command): Answer {
    if (!mayDo(device.role, command.type)) {
      this.#parts.onNotYourRole?.(device)
      return refused('not-your-role', { role: device.role, type: command.type })
    }
    try {
      const decision = decide(this.#parts.state, this.#inThisCourse(command), this.#context(device))
      return decision.kind === 'taken' ? this.#apply(device, command, decision) : decision
    } catch (error) {
      // A broken rule of ours: this command changed nothing, the others go on.
      this.#parts.log.error({ error, command: withoutDetails(command) }, 'a command broke a rule')
      return refused('internal', { commandId: command.id })
    }
  }

  #apply(device: DeviceHello, command: Command, decision: Extract<Decision, { kind: 'taken' }>): Answer {
    const { state } = this.#parts
    const entry: Entry = {
      seq: state.seq + 1,
      commandId: command.id,
      deviceId: device.deviceId,
      recordedAtMs: this.#recordedAtMs(),
      told: decision.told,
      events: decision.events,
    }
    const undo = applyEntry(state, entry)
    try {
      assertAccounted(state)
    } catch (error) {
      undoAll(state, undo)
      throw error
    }
    if (!this.#putDown(command, entry)) {
      undoAll(state, undo)
      return refused('details-not-written', {})
    }
    this.#undos.push(undo)
    this.entries.push(entry)
    return { kind: 'taken', seq: entry.seq }
  }

  /** Whom an order is for is on disk before the order is taken. */
  #putDown(command: Command, entry: Entry): boolean {
    const { details: place, localDate, log } = this.#parts
    if (place === undefined) return true
    try {
      putDown({ place, command, entry, localDate })
      return true
    } catch (error) {
      log.error({ error }, 'details of an order could not be written')
      return false
    }
  }

  /** Tapped before a copy was put back: what its screen saw beyond that is gone, and other entries have the numbers now. */
  #inThisCourse(command: Command): Command {
    const { course, courseFromSeq } = this.#parts.journal
    const { seenSeq, seenCourse = FIRST_COURSE } = command
    if (seenSeq === undefined || seenCourse === course) return command
    return { ...command, seenSeq: Math.min(seenSeq, courseFromSeq) }
  }

  #context({ deviceId }: DeviceHello): Context {
    const nowMs = this.#recordedAtMs()
    const { localDate, clock } = this.#parts
    return { nowMs, deviceId, localDate: localDate(nowMs), noonOf: (label) => noonOf(clock(), label) }
  }

  /** The server's clock may be set back; recorded time does not go with it. */
  #recordedAtMs() {
    return epochMs(Math.max(this.#parts.now(), this.#parts.state.recordedAtMs))
  }
}

function refused(code: Refusal['code'], params: Refusal['params']): Extract<Answer, { kind: 'refused' }> {
  return { kind: 'refused', refusal: { code, params } }
}

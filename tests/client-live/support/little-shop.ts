import { applyEntry, emptyState } from '../../../shared-core/day/apply.ts'
import type { Act, Command } from '../../../shared-core/day/commands.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { toJson } from '../../../shared-core/day/state-json.ts'
import { commandId, deviceId } from '../../../shared-core/ids.ts'
import type { CommandAnswer, ToScreen, Welcome } from '../../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at } from '../../core/support/make.ts'
import { shopWith } from '../../core/support/shop.ts'

type Turn = Extract<ToScreen, { type: 'turn' }>

/** A server in miniature: real rules, its answers handed to the test, which decides what becomes of them. */
export class LittleShop {
  readonly state: State = emptyState()
  readonly entries: Entry[] = []
  readonly journalId: string
  nowMs: EpochMs
  #answers = new Map<string, CommandAnswer>()
  #made = 0

  constructor(journalId = 'journal-1', nowMs = at('6:47')) {
    this.journalId = journalId
    this.nowMs = nowMs
    this.does({ type: 'changeSetUp', changes: setUpChanges(null, shopWith()) })
    this.does({ type: 'openDay' })
  }

  pass(ms: number): void {
    this.nowMs = epochMs(this.nowMs + ms)
  }

  /** An act of somebody else. */
  does(act: Act): Turn {
    this.#made += 1
    return this.take([
      { id: commandId(`else-${this.journalId}-${this.#made}`), deviceSeq: this.#made, tappedAtMs: null, ...act },
    ])
  }

  /** Decides commands as the server does; a repeat gets the first answer. */
  take(commands: readonly Command[], device = 'somebody'): Turn {
    const before = this.entries.length
    const answers = commands.map((command) => this.#answer(command, device))
    return { type: 'turn', entries: this.entries.slice(before), answers }
  }

  welcome(afterSeq: number | null, change: Partial<Welcome> = {}): Welcome {
    return {
      type: 'welcome',
      protocol: PROTOCOL_VERSION,
      foldVersion: FOLD_VERSION,
      buildId: 'build-1',
      journalId: this.journalId,
      course: '',
      device: null,
      seq: this.state.seq,
      state: afterSeq === null ? toJson(this.state) : null,
      entries: afterSeq === null ? [] : this.entries.slice(afterSeq),
      clock: { zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] },
      demo: null,
      version: '0.0.0',
      ...change,
    }
  }

  check(): ToScreen {
    return { type: 'check', seq: this.state.seq, hash: hashState(this.state) }
  }

  #answer(command: Command, device: string): CommandAnswer {
    const known = this.#answers.get(command.id)
    if (known !== undefined && (known.answer.kind !== 'ask' || command.confirmed === undefined)) return known
    const decision = decide(this.state, command, {
      nowMs: this.nowMs,
      deviceId: deviceId(device),
      localDate: '2026-11-24',
    })
    const answer: CommandAnswer = {
      commandId: command.id,
      answer: decision.kind === 'taken' ? { kind: 'taken', seq: this.state.seq + 1 } : decision,
    }
    if (decision.kind === 'taken') {
      const { told, events } = decision
      const head = {
        seq: this.state.seq + 1,
        commandId: command.id,
        deviceId: deviceId(device),
        recordedAtMs: this.nowMs,
      }
      const entry = { ...head, told, events }
      applyEntry(this.state, entry)
      this.entries.push(entry)
    }
    this.#answers.set(command.id, answer)
    return answer
  }
}

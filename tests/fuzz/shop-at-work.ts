import { isDeepStrictEqual } from 'node:util'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { readCommands } from '../../server/live/read-commands.ts'
import type { RoomParts } from '../../server/live/room-parts.ts'
import { Turn } from '../../server/live/turn.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId, deviceId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { ACT_TYPES, anyAct, startedShop } from '../core/support/any-act.ts'
import { at } from '../core/support/make.ts'
import { Find } from './fuzz.ts'

const DESK = { deviceId: deviceId('fuzz'), name: 'fuzz', role: 'desk', stationId: null } as const
/** Acts that bring the shop into the middle of a morning, and those from which examples are drawn. */
const ACTS_BEFORE = 160
const ACTS_DRAWN = 400

/** A shop in the middle of a morning, for whatever comes in: it is decided and applied by the server's own turn. */
export class ShopAtWork {
  readonly state: State = startedShop()
  readonly #parts: RoomParts
  readonly #errors: unknown[] = []
  #made = 0
  #nowMs = at('4:40')
  #hash = ''

  constructor(journal = new MemoryJournal(new MemoryDisk('fuzz'))) {
    this.#parts = {
      journal,
      state: this.state,
      now: () => this.#nowMs,
      endOfTurn: () => undefined,
      broadcast: () => undefined,
      localDate: () => '2026-11-24',
      clock: () => ({ zone: 'America/Chicago', offsets: [{ fromMs: epochMs(0), offsetMinutes: -360 }] }),
      buildId: 'fuzz',
      version: '0.0.0',
      demo: null,
      log: { error: ({ error }: { error?: unknown }) => this.#errors.push(error) },
    }
    for (let n = 0; n < ACTS_BEFORE; n += 1) {
      this.#nowMs = epochMs(this.#nowMs + 20_000)
      const act = anyAct(this.state, n)
      if (act.type !== 'closeDay') new Turn(this.#parts).take(DESK, this.command(act))
    }
    this.#hash = hashState(this.state)
  }

  /** One that the shop's own screens could send now. */
  command(act: Act, id = this.#newId()) {
    return { id: commandId(id), deviceSeq: 1, tappedAtMs: null, ...act }
  }

  /** Commands of every type, as likely as can be to be taken. */
  examples(): readonly object[] {
    const drawn = Array.from({ length: ACTS_DRAWN }, (_, n) => this.command(anyAct(this.state, 1_000 + n)))
    return drawn.filter(({ type }) => ACT_TYPES.some((known) => known === type))
  }

  /**
   * What a message of commands comes to, and the shop as it was again.
   * @returns each command's answer in a word @throws Find
   */
  submit(raw: readonly unknown[]): string {
    const { commands, unread, nameless } = readCommands(raw)
    if (commands.length + unread.length + nameless !== raw.length) throw new Find('a command was lost')
    const turn = new Turn(this.#parts)
    const words = commands.map((command) => turn.take(DESK, command).answer)
    turn.rollBack()
    for (const entry of turn.entries) assertJson(entry)
    const error = this.#errors.pop()
    this.#errors.splice(0)
    if (error !== undefined) throw error
    const [first] = words
    if (first === undefined) return nameless > 0 ? 'nameless' : 'unreadable'
    return first.kind === 'refused' ? `refused: ${first.refusal.code}` : first.kind
  }

  /** @throws Find when something of a case has stayed */
  assertAsBefore(): void {
    if (hashState(this.state) !== this.#hash) throw new Find('the shop is not as it was: a case left something behind')
  }

  #newId(): string {
    this.#made += 1
    return `fuzz${String(this.#made).padStart(8, '0')}`
  }
}

/** What goes to the journal comes back from it: no NaN, no −0, nothing undefined. @throws Find */
export function assertJson(entry: unknown): void {
  if (isDeepStrictEqual(JSON.parse(JSON.stringify(entry)), entry)) return
  throw new Find(`no JSON holds this entry: ${JSON.stringify(entry).slice(0, 500)}`)
}

import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer, Role } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { NoticeBoard } from './notice-board.ts'
import { Outbox, QUEUE_MAX } from './outbox.ts'
import { QueueStore } from './queue-store.ts'
import type { SavedText } from './saved-text.ts'
import type { ServerClock } from './server-clock.ts'
import type { Notice } from './shop-store.ts'

/** What people tapped on this screen and what became of it: the queue, and the notices that answers turn into. */
export class Taps {
  readonly outbox: Outbox
  readonly deviceId: DeviceId
  readonly #role: Role
  readonly #board: NoticeBoard
  readonly #store: QueueStore
  readonly #clock: ServerClock
  readonly #makeId: () => string
  #journalId: string | null = null

  constructor(parts: { saved: SavedText; role: Role; clock: ServerClock; makeId: () => string }) {
    this.#role = parts.role
    this.#store = new QueueStore(parts.saved, parts.role)
    this.outbox = new Outbox(this.#store)
    this.#board = new NoticeBoard(this.#store)
    this.#clock = parts.clock
    this.#makeId = parts.makeId
    this.deviceId = this.#store.deviceId(parts.makeId)
  }

  get pending(): readonly Command[] {
    return this.outbox.pending
  }

  get waiting(): { readonly pending: number; readonly hasUnsaved: boolean } {
    return { pending: this.pending.length, hasUnsaved: this.outbox.hasUnsaved }
  }

  get notices(): readonly Notice[] {
    return this.#board.notices
  }

  /** Turns to a shop's journal: what was tapped for another one stays on this device, and a person is told. */
  open(journalId: string): void {
    if (journalId === this.#journalId) return
    this.#journalId = journalId
    this.outbox.open(journalId)
    this.#board.open(journalId)
    for (const aside of this.#store.others(journalId)) {
      this.notice({ id: `aside ${aside.journalId}`, kind: 'kept-aside', ...aside })
    }
    const left = this.#store.leftBehind(journalId)
    if (left !== null) this.notice({ id: 'left-behind', kind: 'left-behind', ...left })
  }

  /** This device is another screen from now on. What waits here goes out when it is this one again. */
  leaveFor(role: Role): void {
    if (role !== this.#role) this.#store.leaveFor(role)
  }

  /** Makes the command of an act and saves it. `seen`: what the screen was showing. @returns null when no more may wait */
  add(act: Act, seen: Pick<Command, 'seenSeq' | 'seenCourse'>): CommandId | null {
    const waiting = this.pending.length + this.#board.notices.filter((notice) => notice.kind === 'ask').length
    if (waiting >= QUEUE_MAX) {
      this.notice({ id: 'queue-full', kind: 'queue-full', most: QUEUE_MAX })
      return null
    }
    const id = commandId(this.#makeId())
    const deviceSeq = this.#store.nextDeviceSeq(this.pending[this.pending.length - 1]?.deviceSeq ?? 0)
    const tappedAtMs = this.#clock.isKnown ? this.#clock.serverNowMs() : null
    this.#queue({ id, deviceSeq, tappedAtMs, ...seen, ...act })
    return id
  }

  /** Yes to a question: the same command goes again with every asked code confirmed. */
  confirm(noticeId: string): void {
    const notice = this.#board.find(noticeId)
    if (notice?.kind !== 'ask') return
    const confirmed = new Set([...(notice.command.confirmed ?? []), ...notice.asks.map((ask) => ask.code)])
    // Queued first: a page that is closed in between has the command twice rather than not at all.
    this.#queue({ ...notice.command, confirmed: [...confirmed] })
    this.#board.remove(noticeId)
  }

  dismiss(noticeId: string): void {
    const notice = this.#board.find(noticeId)
    if (notice?.kind === 'kept-aside') this.#store.forget(notice.journalId)
    if (notice?.kind === 'left-behind') this.#store.forgetCameFrom()
    this.#board.remove(noticeId)
  }

  /** Taps that are in the state are answered, whether or not their answer was heard; nothing is left to ask about them. */
  happened(entries: readonly Entry[], state: State): void {
    if (this.pending.length === 0 && this.#board.notices.length === 0) return
    for (const { seq, commandId: id } of entries) if (seq <= state.seq) this.#isDone(id)
    for (const { commandId: id } of state.traces) this.#isDone(id)
  }

  answered({ commandId: id, answer }: CommandAnswer): void {
    const command = this.#settle(id)
    if (command === null || answer.kind === 'taken') return
    if (answer.kind === 'ask') this.notice({ id, kind: 'ask', command, asks: answer.asks })
    else this.notice({ id, kind: 'refused', command, refusal: answer.refusal })
  }

  notice(notice: WithoutTime<Notice>): void {
    this.#board.put({ ...notice, atMs: this.#clock.serverNowMs() })
  }

  #queue(command: Command): void {
    if (this.#journalId === null) return
    if (!this.outbox.add(this.#journalId, command)) this.notice({ id: 'not-saved', kind: 'not-saved' })
  }

  #isDone(id: CommandId): void {
    this.#settle(id)
    if (this.#board.find(id)?.kind === 'ask') this.#board.remove(id)
  }

  #settle(id: CommandId): Command | null {
    const command = this.outbox.settle(id)
    // There is room again, and nothing is at risk any more.
    if (command !== null) this.#board.remove('queue-full')
    if (!this.outbox.hasUnsaved) this.#board.remove('not-saved')
    return command
  }
}

type WithoutTime<Told> = Told extends { readonly atMs: EpochMs } ? Omit<Told, 'atMs'> : never

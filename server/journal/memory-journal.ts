import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { upcastEntry } from '../../shared-core/day/upcast.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Group, Journal, Snapshot } from './journal.ts'
import { assertFollows, SET_UP_MARK, SNAPSHOTS_KEPT } from './journal.ts'

/** What outlives a restart in a simulated shop. Texts, as on a real disk, so that nothing is shared by reference. */
export class MemoryDisk {
  readonly journalId: string
  course = ''
  courseFromSeq = 0
  readonly entries: string[] = []
  readonly seqOf = new Map<CommandId, number>()
  readonly refusals = new Map<CommandId, { readonly answer: string; readonly recordedAtMs: EpochMs }>()
  snapshots: Snapshot[] = []

  constructor(journalId: string) {
    this.journalId = journalId
  }
}

/** What the test wants to go wrong with an append: before anything is written, or after all of it is. */
export type Fault = 'fails-before' | 'stops-after' | null

/** A journal for simulated days, held to the same contract as the real one. Its disk keeps what was appended whole. */
export class MemoryJournal implements Journal {
  readonly remedy = 'The disk is a simulated one.'
  readonly #disk: MemoryDisk
  readonly #faultOf: () => Fault

  constructor(disk: MemoryDisk, faultOf: () => Fault = () => null) {
    this.#disk = disk
    this.#faultOf = faultOf
  }

  get journalId(): string {
    return this.#disk.journalId
  }

  get course(): string {
    return this.#disk.course
  }

  get courseFromSeq(): number {
    return this.#disk.courseFromSeq
  }

  lastSeq(): number {
    return this.#disk.entries.length
  }

  async append({ entries, refusals }: Group): Promise<void> {
    const fault = this.#faultOf()
    if (fault === 'fails-before') throw new Error('the disk is full')
    this.#check({ entries, refusals })
    for (const entry of entries) {
      this.#disk.entries.push(JSON.stringify(entry))
      this.#disk.seqOf.set(entry.commandId, entry.seq)
    }
    for (const { commandId, answer, recordedAtMs } of refusals) {
      this.#disk.refusals.set(commandId, { answer: JSON.stringify(answer), recordedAtMs })
    }
    if (fault === 'stops-after') throw new Error('the machine stopped')
  }

  answerOf(commandId: CommandId): Answer | null {
    const seq = this.#disk.seqOf.get(commandId)
    if (seq !== undefined) return { kind: 'taken', seq }
    const refusal = this.#disk.refusals.get(commandId)
    return refusal === undefined ? null : JSON.parse(refusal.answer)
  }

  *entriesAfter(seq: number, most = Number.MAX_SAFE_INTEGER): Iterable<Entry> {
    for (const text of this.#disk.entries.slice(seq, Math.min(this.#disk.entries.length, seq + most))) {
      yield upcastEntry(JSON.parse(text))
    }
  }

  *setUpEntries(): Iterable<Entry> {
    for (const text of this.#disk.entries) if (text.includes(SET_UP_MARK)) yield upcastEntry(JSON.parse(text))
  }

  newestSnapshot(foldVersion: number, beforeSeq = Number.MAX_SAFE_INTEGER): Snapshot | null {
    return this.#disk.snapshots.findLast((one) => one.foldVersion === foldVersion && one.seq < beforeSeq) ?? null
  }

  saveSnapshot(snapshot: Snapshot): void {
    const others = this.#disk.snapshots.filter((one) => one.seq !== snapshot.seq)
    this.#disk.snapshots = [...others, snapshot].sort((one, other) => one.seq - other.seq).slice(-SNAPSHOTS_KEPT)
  }

  pruneRefusals(beforeMs: EpochMs): number {
    const old = [...this.#disk.refusals].filter(([, { recordedAtMs }]) => recordedAtMs < beforeMs)
    for (const [id] of old) this.#disk.refusals.delete(id)
    return old.length
  }

  async backupTo(): Promise<void> {
    throw new Error('a simulated disk is copied by the test itself')
  }

  close(): void {
    // Nothing is open.
  }

  /** The same refusals as a table's keys give, before anything is written. */
  #check({ entries, refusals }: Group): void {
    const ids = new Set<CommandId>()
    assertFollows(this.lastSeq(), { entries, refusals })
    for (const { commandId } of entries) {
      if (this.#disk.seqOf.has(commandId) || ids.has(commandId)) throw new Error(`${commandId} is taken`)
      ids.add(commandId)
    }
    for (const { commandId } of refusals) {
      if (this.#disk.refusals.has(commandId) || ids.has(commandId)) throw new Error(`${commandId} is answered`)
      ids.add(commandId)
    }
  }
}

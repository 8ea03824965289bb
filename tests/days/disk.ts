import type { Group, Journal } from '../../server/journal/journal.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { CommandId } from '../../shared-core/ids.ts'

/** A copy of a shop's journal, to be put back some time. */
export interface Copy {
  readonly seq: number
}

/** What outlives the server's process: the simulated disk, or a real file. */
export interface Disk {
  readonly course: string
  /** Something may have been written since this was asked last. */
  takeNews(): boolean
  /** Entries after a seq as they lie on the disk, whether or not a process runs. */
  entriesAfter(seq: number): Iterable<Entry>
  answerOf(id: CommandId): Answer | null
  /** One process's journal. `drop` is the end of that process. */
  open(): Promise<{ readonly journal: Journal; drop(): void }>
  copy(): Promise<Copy>
  /** @param course "" is a planted bug: the old one goes on */
  putBack(copy: Copy, course: string): void
  /** Planted bugs: the last entry is gone; what was answered is not known again. */
  loseLast(): void
  forget(group: Group): void
  end(): void
}

/** What befalls one append: how long the disk takes, and whether the machine survives it. */
export interface AppendPlan {
  readonly afterMs: number
  readonly fate: AppendFate
}
export const APPEND_FATES = [
  'append-fails',
  'append-unsure',
  'stop-before-append',
  'stop-after-append',
  'stop-before-answer',
] as const
export type AppendFate = (typeof APPEND_FATES)[number] | 'written'

export interface DiskParts {
  readonly journal: Journal
  readonly disk: Disk
  readonly plan: () => AppendPlan
  readonly in: (afterMs: number, run: () => void) => void
  /** Whether the process that this journal belongs to still runs; `stop` ends it. */
  readonly isRunning: () => boolean
  readonly stop: () => void
  /** A planted bug. */
  readonly forgetsAnswers: boolean
}

/** What the planned faults throw; everything else that is thrown is trouble. */
export class PlannedFault extends Error {
  override name = 'PlannedFault'
}

/**
 * The journal of one server process on a disk that outlives it, with faults. Only what an append had written when the
 * process stopped is there for the next: this is how power loss is tested, which a killed process cannot test.
 */
export function faultyJournal(parts: DiskParts): Journal {
  const { journal, disk } = parts
  const write = async (group: Group, fate: AppendFate): Promise<void> => {
    if (fate === 'append-fails') throw new PlannedFault('the disk is full')
    if (parts.forgetsAnswers) disk.forget(group)
    await journal.append(group)
    if (fate === 'append-unsure') throw new PlannedFault('the machine does not know')
  }
  const append = (group: Group): Promise<void> =>
    new Promise((resolve, reject) => {
      const { afterMs, fate } = parts.plan()
      parts.in(afterMs, () => {
        // The process is gone in the middle of its append: nothing of the group is on disk.
        if (!parts.isRunning()) return
        if (fate === 'stop-before-append') {
          parts.stop()
          return
        }
        const written = write(group, fate)
        if (fate === 'stop-after-append') written.then(parts.stop, reject)
        else if (fate === 'stop-before-answer') written.then(() => answerInto(parts.stop, resolve), reject)
        else written.then(resolve, reject)
      })
    })
  return {
    journalId: journal.journalId,
    course: journal.course,
    courseFromSeq: journal.courseFromSeq,
    remedy: journal.remedy,
    append,
    answerOf: (id: CommandId): Answer | null => (parts.forgetsAnswers ? null : journal.answerOf(id)),
    lastSeq: () => journal.lastSeq(),
    entriesAfter: (seq, most) => journal.entriesAfter(seq, most),
    setUpEntries: () => journal.setUpEntries(),
    newestSnapshot: (foldVersion, beforeSeq) => journal.newestSnapshot(foldVersion, beforeSeq),
    saveSnapshot: (snapshot) => journal.saveSnapshot(snapshot),
    pruneRefusals: (beforeMs) => journal.pruneRefusals(beforeMs),
    backupTo: (file) => journal.backupTo(file),
    close: () => journal.close(),
  }
}

/** The room answers, but the process is gone before a word of it is on the wire. */
function answerInto(stop: () => void, resolve: () => void): void {
  stop()
  resolve()
}

interface MemoryCopy extends Copy {
  readonly disk: MemoryDisk
}

/** The simulated disk. */
export class SimDisk implements Disk {
  #disk = new MemoryDisk('simulated-shop')
  #seenLength = 0

  get course(): string {
    return this.#disk.course
  }

  takeNews(): boolean {
    const { length } = this.#disk.entries
    const isNew = length !== this.#seenLength
    this.#seenLength = length
    return isNew
  }

  *entriesAfter(seq: number): Iterable<Entry> {
    const { entries } = this.#disk
    for (let at = seq; at < entries.length; at += 1) yield JSON.parse(entries[at] ?? '')
  }

  answerOf(id: CommandId): Answer | null {
    return new MemoryJournal(this.#disk).answerOf(id)
  }

  async open(): Promise<{ readonly journal: Journal; drop(): void }> {
    return { journal: new MemoryJournal(this.#disk), drop: () => undefined }
  }

  async copy(): Promise<MemoryCopy> {
    const disk = copyOf(this.#disk, this.#disk.course)
    return { seq: disk.entries.length, disk }
  }

  putBack(copy: Copy, course: string): void {
    if (!isMemoryCopy(copy)) throw new Error('a copy of another disk')
    this.#disk = copyOf(copy.disk, course)
    this.#disk.courseFromSeq = copy.seq
    this.#seenLength = -1
  }

  loseLast(): void {
    const text = this.#disk.entries.pop()
    if (text !== undefined) this.#disk.seqOf.delete(JSON.parse(text).commandId)
  }

  forget({ entries, refusals }: Group): void {
    for (const { commandId } of entries) this.#disk.seqOf.delete(commandId)
    for (const { commandId } of refusals) this.#disk.refusals.delete(commandId)
  }

  end(): void {
    // Nothing is open.
  }
}

function isMemoryCopy(copy: Copy): copy is MemoryCopy {
  return 'disk' in copy && copy.disk instanceof MemoryDisk
}

function copyOf(disk: MemoryDisk, course: string): MemoryDisk {
  const copy = new MemoryDisk(disk.journalId)
  copy.course = course
  copy.entries.push(...disk.entries)
  for (const [id, seq] of disk.seqOf) copy.seqOf.set(id, seq)
  for (const [id, refusal] of disk.refusals) copy.refusals.set(id, refusal)
  copy.snapshots = [...disk.snapshots]
  return copy
}

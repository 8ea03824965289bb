import type { Group, Journal } from '../../server/journal/journal.ts'
import type { Fault, MemoryDisk } from '../../server/journal/memory-journal.ts'
import { MemoryJournal } from '../../server/journal/memory-journal.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import type { CommandId } from '../../shared-core/ids.ts'

/** What befalls one append: how long the disk takes, and whether the machine survives it. */
export interface AppendPlan {
  readonly afterMs: number
  readonly fate:
    | 'written'
    | 'append-fails'
    | 'append-unsure'
    | 'stop-before-append'
    | 'stop-after-append'
    | 'stop-before-answer'
}

export interface DiskParts {
  readonly disk: MemoryDisk
  readonly plan: () => AppendPlan
  readonly in: (afterMs: number, run: () => void) => void
  /** Whether the process that this journal belongs to still runs; `stop` ends it. */
  readonly isRunning: () => boolean
  readonly stop: () => void
  /** A planted bug: what was answered is not known again. */
  readonly forgetsAnswers: boolean
}

/**
 * The journal of one server process on a disk that outlives it. Only what an append had written when the process
 * stopped is there for the next: this is how power loss is tested, which a killed process on a real disk cannot test.
 */
export function simJournal(parts: DiskParts): Journal {
  let fault: Fault = null
  const memory = new MemoryJournal(parts.disk, () => fault)
  const write = async (group: Group, fate: AppendPlan['fate']): Promise<void> => {
    fault = fate === 'append-fails' ? 'fails-before' : fate === 'append-unsure' ? 'stops-after' : null
    if (parts.forgetsAnswers) for (const { commandId } of group.entries) parts.disk.seqOf.delete(commandId)
    if (parts.forgetsAnswers) for (const { commandId } of group.refusals) parts.disk.refusals.delete(commandId)
    await memory.append(group)
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
    journalId: memory.journalId,
    course: memory.course,
    append,
    answerOf: (id: CommandId): Answer | null => (parts.forgetsAnswers ? null : memory.answerOf(id)),
    lastSeq: () => memory.lastSeq(),
    entriesAfter: (seq, most) => memory.entriesAfter(seq, most),
    setUpEntries: () => memory.setUpEntries(),
    newestSnapshot: (foldVersion) => memory.newestSnapshot(foldVersion),
    saveSnapshot: (snapshot) => memory.saveSnapshot(snapshot),
    pruneRefusals: (beforeMs) => memory.pruneRefusals(beforeMs),
    backupTo: () => memory.backupTo(),
    close: () => memory.close(),
  }
}

/** The room answers, but the process is gone before a word of it is on the wire. */
function answerInto(stop: () => void, resolve: () => void): void {
  stop()
  resolve()
}

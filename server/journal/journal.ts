import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { assert } from '../../shared-core/support.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/**
 * The append-only journal of one shop: the truth on disk. `append` writes all that one turn of the event loop brought,
 * together or not at all; what it has resolved for is on disk. Every journal passes one contract suite
 * (`tests/server/journal-contract.ts`).
 */
export interface Journal {
  /** Random, made once: a screen that knows another journal starts afresh. */
  readonly journalId: string
  /** `FIRST_COURSE` until a copy was put back; then random, and another each time: what screens know may have been lost. */
  readonly course: string
  /** The last entry that this course has in common with those before it; 0: there was none. */
  readonly courseFromSeq: number
  /** Which file it is and what to do when it is damaged, as the last sentences of a message. */
  readonly remedy: string
  lastSeq(): number
  /** @throws when it could not be written: then nothing of the group is in the journal */
  append(group: Group): Promise<void>
  /** The first answer to a command that was taken or refused; null when it is new. */
  answerOf(commandId: CommandId): Answer | null
  /** Entries after a seq, in order. @throws on a row that cannot be read, naming it: none is ever skipped */
  entriesAfter(seq: number, most?: number): Iterable<Entry>
  /**
   * Entries in which the set-up was changed, or a change of it planned or dropped, in order; found by an index, not by
   * reading the journal through. @throws as `entriesAfter`
   */
  setUpEntries(): Iterable<Entry>
  /** @param beforeSeq looks further back, for when the newest turned out not to be good */
  newestSnapshot(foldVersion: number, beforeSeq?: number): Snapshot | null
  saveSnapshot(snapshot: Snapshot): void
  /** Forgets refusals from before an instant; a taken command is known for ever. @returns how many */
  pruneRefusals(beforeMs: EpochMs): number
  /**
   * A copy that opens by itself, taken while the journal goes on. Archives go beside it, unless they lie there already.
   * @throws JournalError when another journal's archive lies there
   */
  backupTo(file: string): Promise<void>
  close(): void
}

export interface Group {
  readonly entries: readonly Entry[]
  readonly refusals: readonly Refused[]
}

export interface Refused {
  readonly commandId: CommandId
  readonly answer: Extract<Answer, { kind: 'refused' }>
  readonly recordedAtMs: EpochMs
}

export interface Snapshot {
  readonly seq: number
  readonly foldVersion: number
  /** JSON of `toJson(state)`. */
  readonly json: string
  readonly hash: string
}

/** A repeat can come as late as a device's queue is old (36 h, then a person is asked); two weeks is plenty. */
export const REFUSALS_KEPT_MS = 14 * 24 * 3_600_000
/** An older snapshot is the way back when the newest cannot be read. */
export const SNAPSHOTS_KEPT = 2

/** Of a journal into which no copy was ever put back. */
export const FIRST_COURSE = ''

/** @throws AssertionError when a group leaves a gap: a broken order must never reach the disk */
export function assertFollows(lastSeq: number, { entries }: Group): void {
  entries.forEach((entry, index) => {
    assert(entry.seq === lastSeq + index + 1, `entry ${entry.seq} does not follow ${lastSeq + index}`)
  })
}

/** What is wrong with a shop's folder or file, in a sentence for the person at the terminal. */
export class JournalError extends Error {
  override name = 'JournalError'
}

/**
 * What the text of every entry with an event of the set-up has in it, and no other: in what people write each quotation
 * mark is escaped. An index over it costs an insert nothing to speak of, and a year's journal needs no second table.
 */
export const SET_UP_MARK = '"type":"setUp'

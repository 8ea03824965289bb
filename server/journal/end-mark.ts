import { closeSync, constants, existsSync, fsyncSync, openSync, readFileSync, statSync, writeSync } from 'node:fs'
import { JournalError } from './journal.ts'
import { remedyFor } from './journal-words.ts'

/** What a journal's file has beside it: the log of SQLite, its index in memory, and our mark of where it ends. */
export const FILE_ENDS = ['', '-wal', '-shm', '-end'] as const

export interface End {
  readonly journalId: string
  readonly course: string
  readonly seq: number
  /** Of the last entry; null when it is from before there were sums. */
  readonly sum: number | null
}

/** Longer than any mark, so that a new one covers the old one whole. */
const MARK_BYTES = 160

/**
 * Where the journal ends, in a small file beside it. A journal whose last commits are gone – its log deleted or cut off,
 * an old page come back – is a good journal by itself, only shorter: something outside has to know. It is written after
 * each commit and not synced until the end, which costs some microseconds: a mark that is behind proves less, and one
 * that is ahead of the journal proves that something is lost, as a commit is on disk before its mark is written.
 */
export class EndMark {
  readonly #file: string
  #handle: number | null = null

  /** @param file the journal's */
  constructor(file: string) {
    this.#file = `${file}-end`
  }

  /** @returns null when there is none, or none that can be read: then it proves nothing */
  read(): End | null {
    try {
      const { journalId, course, seq, sum } = JSON.parse(readFileSync(this.#file, 'utf8'))
      return typeof journalId === 'string' && Number.isSafeInteger(seq) ? { journalId, course, seq, sum } : null
    } catch {
      return null
    }
  }

  write(end: End): void {
    try {
      this.#handle ??= openSync(this.#file, constants.O_RDWR | constants.O_CREAT)
      writeSync(this.#handle, JSON.stringify(end).padEnd(MARK_BYTES), 0)
    } catch {
      // The entries are safe: this start's loss is only that their loss would not be noticed.
    }
  }

  close(): void {
    if (this.#handle === null) return
    try {
      fsyncSync(this.#handle)
    } catch {
      // As above.
    }
    closeSync(this.#handle)
    this.#handle = null
  }
}

/**
 * A file that is gone or empty while what belongs to it is still there is no new shop.
 * @throws JournalError
 */
export function refuseGone(file: string): void {
  if (existsSync(file)) return
  const seq = new EndMark(file).read()?.seq ?? 0
  if (seq > 0)
    throw new JournalError(`The journal is gone: it had ${seq} entries when it was last written. ${remedyFor(file)}`)
  if (existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0)
    throw new JournalError(`The journal is gone, only its log is there. ${remedyFor(file)}`)
}

/**
 * Compares where a journal ends with where it ended.
 * @param sumAt the sum of an entry of the journal
 * @throws JournalError when entries are gone, or are others
 */
export function assertEndsAsMarked(
  mark: End | null,
  now: End,
  sumAt: (seq: number) => number | null,
  file: string,
): void {
  // Another course: a copy was put back since.
  if (mark === null || mark.course !== now.course) return
  if (mark.journalId !== now.journalId)
    throw new JournalError(`The journal is not the one that was here before. ${remedyFor(file)}`)
  if (mark.seq > now.seq)
    throw new JournalError(
      `The end of the journal is missing: it had ${mark.seq} entries when it was last written, and has ${now.seq} now. ${remedyFor(file)}`,
    )
  if (mark.seq > 0 && sumAt(mark.seq) !== mark.sum)
    throw new JournalError(`Entries of the journal up to ${mark.seq} are not as they were written. ${remedyFor(file)}`)
}

import type { Sqlite } from '../journal/sqlite.ts'
import type { DayBook } from './day-book.ts'

/** What the thread is begun with. */
export interface WorkStart {
  /** Where past sales from tills are kept; ":memory:" for a journal that has no folder. */
  readonly salesFile: string
}

/** What the handlers of the thread share. */
export interface Work {
  readonly start: WorkStart
  readonly sqlite: Sqlite
  /** The shop, its days, and what they taught. */
  readonly book: DayBook
  /** Lets other questions have a turn when they have waited for some time; cheap enough for every round of a loop. */
  readonly breathe: () => Promise<unknown>
  /** To be done before the thread ends: files to be closed. */
  readonly atEnd: (run: () => void) => void
}

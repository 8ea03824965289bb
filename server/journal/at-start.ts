import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { EntryTable } from './entry-table.ts'
import { JournalError } from './journal.ts'
import { remedyFor } from './journal-words.ts'

/**
 * Entries at the journal's end that each start looks at: some days' repeats of a small shop, half a day's of a busy one,
 * in a few milliseconds however old the journal is. All of it is looked at by `verifyJournal`.
 */
const TAIL_ENTRIES = 2_000

/** The index that finds a command's entry is made by SQLite for `UNIQUE`; it has to be told to use this one. */
const TAIL_OUT_OF_INDEX = `
  SELECT seq FROM entries AS row
  WHERE seq > ? AND (
    instr(entry, '"commandId":"' || command_id || '"') = 0
    OR NOT EXISTS (
      SELECT 1 FROM entries INDEXED BY sqlite_autoindex_entries_1
      WHERE entries.command_id = row.command_id AND entries.seq = row.seq
    )
  )
  ORDER BY seq LIMIT 1`

/**
 * What a start can afford to check: the newest entries are as they were written, and found by their commands, so that a
 * repeat gets its first answer.
 * @throws JournalError that says what is wrong with which entry
 */
export function assertTailFits(db: DatabaseSyncInstance, table: EntryTable, file: string): void {
  const afterSeq = Math.max(table.before.seq, table.last().seq - TAIL_ENTRIES)
  let seq = afterSeq
  for (const entry of table.after(afterSeq, TAIL_ENTRIES)) ({ seq } = entry)
  const lost = db.prepare(TAIL_OUT_OF_INDEX).get(afterSeq)
  if (lost !== undefined)
    throw new JournalError(`Entry ${lost.seq} of the journal is not found by its command. ${remedyFor(file)}`)
  if (seq !== table.last().seq) throw new JournalError(`Entry ${seq + 1} of the journal is missing. ${remedyFor(file)}`)
}

import type { EntryTable } from './entry-table.ts'

/**
 * Entries at the journal's end that each start looks at: some days' repeats of a small shop, half a day's of a busy one,
 * in a few milliseconds however old the journal is. All of it is looked at by `verifyJournal`.
 */
const TAIL_ENTRIES = 2_000

/**
 * What a start can afford to check: the newest entries are as they were written, and found by their commands, so that a
 * repeat gets its first answer.
 * @throws JournalError that says what is wrong with which entry
 */
export function assertTailFits(table: EntryTable): void {
  const afterSeq = Math.max(table.before.seq, table.last().seq - TAIL_ENTRIES)
  for (const _entry of table.eachAfter(afterSeq));
  table.assertFoundByCommand(afterSeq)
}

import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { Entry } from '../../shared-core/day/events.ts'
import { upcastEntry } from '../../shared-core/day/upcast.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { JournalError, SET_UP_MARK } from './journal.ts'
import { orInWords, remedyFor } from './journal-words.ts'
import { runOn } from './running-sum.ts'

/** Rows fetched at once: a fold of everything takes a third less than row by row (400,000 rows: 0.23 s against 0.58 s). */
const PAGE_ROWS = 1_000

/** The condition stands as it does in the index (`migrations.ts`): SQLite uses a partial index for the very same one. */
export const SET_UP_ENTRIES = `SELECT seq, entry FROM entries WHERE instr(entry, '${SET_UP_MARK}') > 0 ORDER BY seq`

/** What comes before a table's first row: its sum runs on from there. */
export interface Before {
  readonly seq: number
  /** Null before there were sums. */
  readonly sum: number | null
}

interface Row {
  readonly seq: number
  readonly entry: string
  readonly sum: number | null
}

/** The index that finds a command's entry is made by SQLite for `UNIQUE`; it has to be told to use this one. */
const OUT_OF_INDEX = `
  SELECT seq FROM entries AS row
  WHERE seq > ? AND (
    instr(entry, '"commandId":"' || command_id || '"') = 0
    OR NOT EXISTS (
      SELECT 1 FROM entries INDEXED BY sqlite_autoindex_entries_1
      WHERE entries.command_id = row.command_id AND entries.seq = row.seq
    )
  )
  ORDER BY seq LIMIT 1`

/** Reads the entries of one file, a journal or an archive, and checks each against the running sum. */
export class EntryTable {
  readonly before: Before
  readonly #db: DatabaseSyncInstance
  readonly #file: string
  readonly #readPage: StatementSyncInstance
  readonly #readRows: StatementSyncInstance
  readonly #readSetUps: StatementSyncInstance
  readonly #findSum: StatementSyncInstance
  readonly #findEntry: StatementSyncInstance
  readonly #findLast: StatementSyncInstance

  /** @param hasSums false: a file of a form before there were any, read as it is */
  constructor(db: DatabaseSyncInstance, file: string, before: Before, hasSums = true) {
    const sum = hasSums ? 'sum' : 'NULL AS sum'
    this.#db = db
    this.#file = file
    this.before = before
    // One text a page, not one a row: a year is over a million rows, and each crossing into JavaScript costs.
    // `last_sum` is that of the row with the highest seq: https://sqlite.org/lang_select.html#bareagg
    this.#readPage = db.prepare(
      `SELECT count(*) AS rows, count(sum) AS sums, max(seq) AS last_seq, sum AS last_sum,
         group_concat(entry, ',' ORDER BY seq) AS page
       FROM (SELECT seq, entry, ${sum} FROM entries WHERE seq > ? ORDER BY seq LIMIT ?)`,
    )
    this.#readRows = db.prepare(`SELECT seq, entry, ${sum} FROM entries WHERE seq > ? ORDER BY seq LIMIT ?`)
    this.#readSetUps = db.prepare(SET_UP_ENTRIES)
    this.#findSum = db.prepare(`SELECT seq, ${sum} FROM entries WHERE seq = ?`)
    this.#findEntry = db.prepare('SELECT seq, entry FROM entries WHERE command_id = ?')
    this.#findLast = db.prepare(`SELECT seq, ${sum} FROM entries ORDER BY seq DESC LIMIT 1`)
  }

  /** The last row, or what comes before an empty table. */
  last(): Before {
    const row = orInWords(this.#file, () => this.#findLast.get())
    return row === undefined ? this.before : { seq: Number(row.seq), sum: numberOrNull(row.sum) }
  }

  /** @throws JournalError when there is no such row */
  sumAt(seq: number): number | null {
    if (seq === this.before.seq) return this.before.sum
    const row = orInWords(this.#file, () => this.#findSum.get(seq))
    if (row === undefined) throw this.#broken(seq, 'it is missing')
    return numberOrNull(row.sum)
  }

  /** The seq of a command's entry; null when it has none here. */
  find(commandId: CommandId): number | null {
    const row = orInWords(this.#file, () => this.#findEntry.get(commandId))
    if (row === undefined) return null
    const seq = Number(row.seq)
    if (readEntry(String(row.entry), seq, this.#file).commandId !== commandId)
      throw this.#broken(seq, `command ${commandId} is found under it`)
    return seq
  }

  /** Entries after a seq, in order. @throws JournalError that names the first row that is not as it was written */
  *after(seq: number, most: number): Generator<Entry> {
    let last: Before = { seq, sum: this.sumAt(seq) }
    while (last.seq - seq < most) {
      const rows = Math.min(PAGE_ROWS, most - (last.seq - seq))
      const page = orInWords(this.#file, () => this.#readPage.get(last.seq, rows))
      if (Number(page?.rows) === 0) return
      const entries = checkedPage(page ?? {}, last)
      const next = { seq: last.seq + Number(page?.rows), sum: numberOrNull(page?.last_sum) }
      if (entries === null) yield* this.#rowByRow(last, rows)
      else for (let n = 0; n < entries.length; n += 1) yield readEntry(entries[n], last.seq + n + 1, this.#file)
      last = next
    }
  }

  /**
   * The same, with each row's own sum looked at and not only a page's last: a third slower.
   * @throws JournalError as `after`, and when the last row is missing
   */
  *eachAfter(seq: number): Generator<Entry> {
    const end = this.last().seq
    let last: Before = { seq, sum: this.sumAt(seq) }
    while (last.seq < end) last = yield* this.#rowByRow(last, PAGE_ROWS)
  }

  /** @throws JournalError when an entry after a seq is not found by its command: a repeat would be taken again */
  assertFoundByCommand(seq: number): void {
    const lost = orInWords(this.#file, () => this.#db.prepare(OUT_OF_INDEX).get(seq))
    if (lost !== undefined) throw this.#broken(Number(lost.seq), 'it is not found by its command')
  }

  /** https://sqlite.org/pragma.html#pragma_integrity_check: one row, "ok", or a row for each thing that is wrong. */
  assertPagesFit(): void {
    const rows = orInWords(this.#file, () => this.#db.prepare('PRAGMA integrity_check(5)').all())
    const told = rows.map((row) => String(row.integrity_check)).join('; ')
    if (told !== 'ok') throw new JournalError(`The journal is damaged: ${told}. ${remedyFor(this.#file)}`)
  }

  /** Those that the index finds; each is looked at, as the index may be damaged. */
  *setUps(): Generator<Entry> {
    for (const row of orInWords(this.#file, () => this.#readSetUps.all())) {
      const text = String(row.entry)
      const seq = Number(row.seq)
      if (!text.includes(SET_UP_MARK)) throw this.#broken(seq, 'it is no entry of the set-up')
      yield readEntry(text, seq, this.#file)
    }
  }

  /** Good rows, then the sentence that names the first bad one. @returns the last row */
  *#rowByRow(before: Before, most: number): Generator<Entry, Before> {
    let last = before
    const rows = orInWords(this.#file, () => this.#readRows.all(before.seq, most)) as unknown as readonly Row[]
    if (rows.length === 0) throw this.#broken(before.seq + 1, 'it is missing')
    for (const { seq, entry, sum } of rows) {
      if (seq !== last.seq + 1) throw this.#broken(last.seq + 1, `entry ${seq} stands in its place`)
      if (last.sum !== null && sum === null) throw this.#broken(seq, 'its sum is missing')
      if (sum !== null && runOn(last.sum ?? 0, entry) !== sum) throw this.#broken(seq, 'it is not as it was written')
      last = { seq, sum }
      yield readEntry(entry, seq, this.#file)
    }
    return last
  }

  #broken(seq: number, why: string): JournalError {
    return broken(seq, why, this.#file)
  }
}

/** A page of entries; null when it has to be looked at row by row: some sums are missing or wrong, or it is no JSON. */
function checkedPage(page: { [column: string]: unknown }, before: Before): readonly Entry[] | null {
  const text = String(page.page)
  const rows = Number(page.rows)
  if (Number(page.last_seq) !== before.seq + rows) return null
  const isUnsummed = before.sum === null && page.sums === 0
  if (!isUnsummed && (page.sums !== rows || runOn(before.sum ?? 0, text) !== page.last_sum)) return null
  try {
    const entries = JSON.parse(`[${text}]`)
    return entries.length === rows ? entries : null
  } catch {
    return null
  }
}

/** @param seq what follows the row before: a row that says something else is not the one that is missing */
function readEntry(raw: unknown, seq: number, file: string): Entry {
  try {
    const entry = upcastEntry(typeof raw === 'string' ? JSON.parse(raw) : raw)
    if (entry.seq !== seq) throw new Error(`entry ${entry.seq} stands in its place`)
    return entry
  } catch (error) {
    throw broken(seq, error instanceof Error ? error.message : String(error), file)
  }
}

/**
 * Entries of the set-up in all of a journal's files.
 * @param known how many there are, as the journal counted them
 * @throws JournalError when the index finds more or fewer
 */
export function* setUpsOf(tables: readonly EntryTable[], known: number, file: string): Generator<Entry> {
  let count = 0
  for (const table of tables) {
    for (const entry of table.setUps()) {
      yield entry
      count += 1
    }
  }
  if (count !== known)
    throw new JournalError(`The journal finds ${count} of its ${known} entries of the set-up. ${remedyFor(file)}`)
}

export function broken(seq: number, why: string, file: string): JournalError {
  return new JournalError(`Entry ${seq} of the journal cannot be read: ${why}. ${remedyFor(file)}`)
}

function numberOrNull(value: unknown): number | null {
  return value === null || value === undefined ? null : Number(value)
}

import { createReadStream, existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type * as z from 'zod'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { upcastEntry } from '../../shared-core/day/upcast.ts'
import { giveNewCourse } from '../journal/give-new-course.ts'
import type { Refused } from '../journal/journal.ts'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { SqliteJournal } from '../journal/sqlite-journal.ts'
import { saveSnapshot } from '../shop/wake.ts'
import type { ExportAbout } from './export-form.ts'
import { EXPORT_ABOUT, EXPORT_FILES, EXPORTED_ENTRY, EXPORTED_REFUSAL } from './export-form.ts'
import { moveWhole } from './journal-file.ts'
import { sha256Of } from './manifest.ts'

/** Written in one commit. */
const LINES_A_GROUP = 1_000

export interface Imported extends ExportAbout {
  /** False: it was written by a release that folds otherwise, so that the two fingerprints say nothing to each other. */
  readonly isHashCompared: boolean
}

/**
 * Makes a journal of an export, and proves that it comes to the same state.
 * @param folder of the export
 * @param file the journal to be made; it is not there yet.
 * @throws JournalError that names the line which is not right, or says what does not agree
 */
export async function importJournal(sqlite: Sqlite, folder: string, file: string): Promise<Imported> {
  const about = readAbout(folder)
  const work = workFileOf(file)
  const journal = new SqliteJournal(sqlite, work, 'shop')
  const state = emptyState()
  try {
    await readLines(join(folder, EXPORT_FILES.entries), async (lines, first) => {
      const entries = lines.map((line, n) => readEntry(line, first + n, state.seq + 1 + n))
      for (const [n, entry] of entries.entries())
        orNamed(first + n, EXPORT_FILES.entries, () => applyEntry(state, entry))
      await journal.append({ entries, refusals: [] })
    })
    await readLines(join(folder, EXPORT_FILES.refusals), async (lines, first) => {
      const refusals = lines.map((line, n) => readLine(line, first + n, EXPORT_FILES.refusals, EXPORTED_REFUSAL))
      await journal.append({ entries: [], refusals: refusals as unknown as Refused[] })
    })
    assertAccounted(state)
    saveSnapshot(journal, state)
  } finally {
    journal.close()
  }
  const hash = hashState(state)
  const isHashCompared = about.foldVersion === FOLD_VERSION
  if (state.seq !== about.seq)
    throw new JournalError(
      `${EXPORT_FILES.entries} has ${state.seq} entries; the export says that it has ${about.seq}.`,
    )
  if (isHashCompared && hash !== about.hash)
    throw new JournalError(`The entries come to the fingerprint ${hash}; the export says ${about.hash}.`)
  for (const name of ['entries', 'refusals'] as const)
    if ((await sha256Of(join(folder, EXPORT_FILES[name]))) !== about.sha256[name])
      throw new JournalError(`${EXPORT_FILES[name]} is not as it was exported: its SHA-256 is another.`)
  keepItsId(sqlite, work, about.journalId)
  await moveWhole(sqlite, work, file)
  return { ...about, hash, isHashCompared }
}

/** Where it is put together, with a log; what is left of it after a failure is the caller's to remove. */
export function workFileOf(file: string): string {
  return `${file}-work`
}

function readAbout(folder: string): ExportAbout {
  const file = join(folder, EXPORT_FILES.about)
  if (!existsSync(file))
    throw new JournalError(`${folder} is no whole export: it has no ${EXPORT_FILES.about}, which is written last.`)
  return readLine(readFileSync(file, 'utf8'), 1, EXPORT_FILES.about, EXPORT_ABOUT)
}

/** Screens know the journal by its id; its course tells them to look at it afresh. */
function keepItsId(sqlite: Sqlite, file: string, journalId: string): void {
  const db = new sqlite.DatabaseSync(file)
  try {
    db.prepare("UPDATE about SET value = ? WHERE key = 'journal_id'").run(journalId)
  } finally {
    db.close()
  }
  giveNewCourse(sqlite, file)
}

/** @param take hears groups of lines, with the number of the first one, counted from 1 */
async function readLines(
  file: string,
  take: (lines: readonly string[], first: number) => Promise<void>,
): Promise<void> {
  if (!existsSync(file)) throw new JournalError(`${file} is missing.`)
  let group: string[] = []
  let first = 1
  for await (const line of createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY })) {
    group.push(line)
    if (group.length < LINES_A_GROUP) continue
    await take(group, first)
    first += group.length
    group = []
  }
  if (group.length > 0) await take(group, first)
}

function readEntry(line: string, number: number, seq: number): Entry {
  const raw = readLine(line, number, EXPORT_FILES.entries, EXPORTED_ENTRY)
  return orNamed(number, EXPORT_FILES.entries, () => {
    if (raw.seq !== seq) throw new Error(`it has seq ${raw.seq}; here ${seq} belongs`)
    return upcastEntry(raw as unknown as Entry)
  })
}

function readLine<Schema extends z.ZodType>(
  line: string,
  number: number,
  file: string,
  schema: Schema,
): z.infer<Schema> {
  return orNamed(number, file, () => {
    const read = schema.safeParse(JSON.parse(line))
    if (read.success) return read.data
    const [issue] = read.error.issues
    throw new Error(`${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'not of its form'}`)
  })
}

function orNamed<Result>(number: number, file: string, work: () => Result): Result {
  try {
    return work()
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new JournalError(`Line ${number} of ${file} cannot be taken: ${why}.`)
  }
}

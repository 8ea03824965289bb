import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import { upcastEntry } from '../../shared-core/day/upcast.ts'
import { commandId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { archivesOf } from '../journal/archives.ts'
import { EndMark } from '../journal/end-mark.ts'
import type { Journal, Refused } from '../journal/journal.ts'
import { refusalSum, runOn } from '../journal/running-sum.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { openToRead } from './journal-file.ts'

/** What a broken file still gave. */
export interface Carried {
  readonly entries: number
  /** Entries that it is known to have had after those; null: it cannot be told. */
  readonly lost: number | null
}

interface CarryOver {
  readonly sqlite: Sqlite
  /** The broken file; it is not touched. */
  readonly broken: string
  /** A folder of this command's own, made and taken away again. */
  readonly workFolder: string
  /** The copy, open, and what it folds to: both go on with what is carried over. */
  readonly journal: Journal
  readonly state: State
  /** The sum of the copy's last entry; null where it has none. */
  readonly sum: number | null
}

/** Written in one commit. */
const ENTRIES_A_GROUP = 500

/**
 * What a broken journal holds after a copy's last entry and is good beyond doubt: rows in order, each with the sum that
 * runs on from the copy's own, which no other history gives, and each fitting what came before. The first that is not
 * ends it: an entry without the one before it is no history.
 */
export async function carryOver(parts: CarryOver): Promise<Carried> {
  const { broken, journal } = parts
  const mark = new EndMark(broken).read()
  const marked = mark !== null && mark.course === journal.course ? mark.seq : null
  const told = (entries: number, last: number | null): Carried => {
    const most = Math.max(marked ?? 0, last ?? 0)
    return { entries, lost: marked === null && last === null ? null : Math.max(0, most - journal.lastSeq()) }
  }
  if (!existsSync(broken)) return told(0, null)
  try {
    const work = openCopyOf(parts)
    try {
      const before = journal.lastSeq()
      const yearly = openYearly(work, parts)
      try {
        await takeEntries([work, ...yearly], parts)
      } finally {
        for (const one of yearly) one.close()
      }
      await takeRefusals(work, journal)
      return told(journal.lastSeq() - before, lastIn(work))
    } finally {
      work.close()
    }
  } catch {
    // A file that cannot be opened at all gives nothing.
    return told(0, null)
  } finally {
    rmSync(parts.workFolder, { recursive: true, force: true })
  }
}

/** Opening a journal writes to its log: a copy is opened, so that the broken files are kept as they were found. */
function openCopyOf({ sqlite, broken, workFolder }: CarryOver): DatabaseSyncInstance {
  rmSync(workFolder, { recursive: true, force: true })
  mkdirSync(workFolder)
  for (const end of ['', '-wal']) {
    if (existsSync(`${broken}${end}`)) copyFileSync(`${broken}${end}`, join(workFolder, `${basename(broken)}${end}`))
  }
  return new sqlite.DatabaseSync(join(workFolder, basename(broken)))
}

/** A copy may be from before entries of past years were moved out of the journal. */
function openYearly(work: DatabaseSyncInstance, { sqlite, broken }: CarryOver): readonly DatabaseSyncInstance[] {
  try {
    const files = archivesOf(work).map(({ name }) => join(dirname(broken), name))
    return files.filter((file) => existsSync(file)).map((file) => openToRead(sqlite, file))
  } catch {
    return []
  }
}

async function takeEntries(
  sources: readonly DatabaseSyncInstance[],
  { journal, state, sum: first }: CarryOver,
): Promise<void> {
  let sum = first
  let group: Entry[] = []
  const write = async () => {
    await journal.append({ entries: group, refusals: [] })
    group = []
  }
  for (;;) {
    const found = next(sources, state, sum)
    if (found === null) break
    group.push(found.entry)
    sum = found.sum
    if (group.length === ENTRIES_A_GROUP) await write()
  }
  if (group.length > 0) await write()
}

/** @returns null where it is not there, or not good: then the state is not to be used any more */
function next(sources: readonly DatabaseSyncInstance[], state: State, before: number | null) {
  try {
    const seq = state.seq + 1
    let row: ReturnType<StatementSyncInstance['get']>
    for (const one of sources) row ??= one.prepare('SELECT entry, sum FROM entries WHERE seq = ?').get(seq)
    if (row === undefined) return null
    const text = String(row.entry)
    const sum = runOn(before ?? 0, text)
    if (row.sum !== sum) return null
    const entry = upcastEntry(JSON.parse(text))
    if (entry.seq !== seq) return null
    applyEntry(state, entry)
    assertAccounted(state)
    return { entry, sum }
  } catch {
    return null
  }
}

/** Answers that were given are given again. */
async function takeRefusals(work: DatabaseSyncInstance, journal: Journal): Promise<void> {
  const refusals: Refused[] = []
  try {
    for (const row of work.prepare('SELECT * FROM refusals').iterate()) {
      const one = {
        commandId: String(row.command_id),
        recordedAtMs: Number(row.recorded_at_ms),
        answer: String(row.answer),
      }
      const isKnown = journal.answerOf(commandId(one.commandId)) !== null
      if (isKnown || row.sum !== refusalSum(one)) continue
      refusals.push({
        commandId: commandId(one.commandId),
        recordedAtMs: epochMs(one.recordedAtMs),
        answer: JSON.parse(one.answer),
      })
    }
  } catch {
    // As many as could be read.
  }
  if (refusals.length > 0) await journal.append({ entries: [], refusals })
}

function lastIn(work: DatabaseSyncInstance): number | null {
  try {
    return Number(work.prepare('SELECT max(seq) AS seq FROM entries').get()?.seq ?? 0)
  } catch {
    return null
  }
}

import { createWriteStream, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { dayAccount } from '../../shared-core/day/day-account.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import type { DayRow } from '../history/day-store.ts'
import { History } from '../history/history.ts'
import type { Journal } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { wake } from '../shop/wake.ts'
import { dayLine, daysHeader } from './days-csv.ts'
import type { ExportAbout } from './export-form.ts'
import { EXPORT_FILES } from './export-form.ts'
import { sync } from './journal-file.ts'
import { sha256Of } from './manifest.ts'

export interface ExportParts {
  readonly sqlite: Sqlite
  /** Nobody writes to it meanwhile. */
  readonly journal: Journal
  readonly refusals: () => Iterable<ExportedRefusal>
  /** Empty, and there. */
  readonly folder: string
  readonly nowMs: number
}

export interface ExportedRefusal {
  readonly commandId: string
  readonly recordedAtMs: number
  readonly answer: unknown
}

/** Writes everything that a journal holds in open formats, what says what it is last. */
export async function exportJournal(parts: ExportParts): Promise<ExportAbout> {
  const { journal, folder, nowMs } = parts
  const state = await wake(journal, () => undefined)
  const file = (name: keyof typeof EXPORT_FILES) => join(folder, EXPORT_FILES[name])
  const seq = await writeLines(file('entries'), jsonLines(journal.entriesAfter(0)))
  const refusals = await writeLines(file('refusals'), jsonLines(parts.refusals()))
  if (state.shop !== null) writeJson(file('setUp'), toSetUpFile(state.shop))
  await writeLines(file('days'), dayLines(parts))
  const { journalId } = journal
  const sha256 = { entries: await sha256Of(file('entries')), refusals: await sha256Of(file('refusals')) }
  const folded = { foldVersion: FOLD_VERSION, hash: hashState(state) }
  const about: ExportAbout = { form: 1, journalId, seq, refusals, ...folded, sha256, writtenAtMs: nowMs }
  writeJson(file('about'), about)
  return about
}

function* jsonLines(values: Iterable<object>): Generator<string> {
  for (const value of values) yield `${JSON.stringify(value)}\n`
}

async function* dayLines({ sqlite, journal }: ExportParts): AsyncGenerator<string> {
  yield daysHeader()
  const history = new History({ journal, sqlite, file: ':memory:', breathe: async () => undefined })
  try {
    await history.catchUp()
    for (const row of allDays(history)) {
      const { start, entries } = history.record(row)
      yield dayLine(row, dayAccount(fromJson(start), entries))
    }
  } finally {
    await history.close()
  }
}

const DAYS_A_PAGE = 100

/** Oldest first. */
function allDays(history: History): readonly DayRow[] {
  const all: DayRow[] = []
  for (;;) {
    const page = history.days(all.at(-1)?.openedAtMs ?? Number.MAX_SAFE_INTEGER, DAYS_A_PAGE)
    if (page.length === 0) return all.reverse()
    all.push(...page)
  }
}

/** No faster than the disk takes it. @returns how many lines */
async function writeLines(file: string, lines: Iterable<string> | AsyncIterable<string>): Promise<number> {
  let count = 0
  async function* counted() {
    for await (const line of lines) {
      count += 1
      yield line
    }
  }
  await pipeline(Readable.from(counted()), createWriteStream(file))
  sync(file)
  return count
}

function writeJson(file: string, value: object): void {
  writeFileSync(file, `${JSON.stringify(value, null, 2)}\n`)
  sync(file)
}

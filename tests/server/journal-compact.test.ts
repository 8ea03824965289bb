import { cpSync, existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { CompactStep } from '../../server/journal/compact.ts'
import { compact } from '../../server/journal/compact.ts'
import { archiveName, lastToMove, STAYS_DAYS } from '../../server/journal/compact-policy.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { isDate } from '../../shared-core/day/label.ts'
import { commandId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { journalContract } from './journal-contract.ts'
import { drawnMorning, refusedAt, setUpEntries, someEntries } from './support/made-entries.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()
const MORNING = drawnMorning(300, 4)
const DAY_MS = 86_400_000
const STEPS: readonly CompactStep[] = ['written', 'checked', 'named', 'moved', 'made small']

/** A disk whose entries, but for some, lie in archives whenever it is opened. */
function compactedDisk(staying: number) {
  const file = join(tempFolder(), 'journal.sqlite')
  let opened = 0
  const open = async () => {
    if (existsSync(file)) {
      const journal = new SqliteJournal(sqlite, file, 'shop')
      const lastSeq = journal.lastSeq() - staying
      journal.close()
      opened += 1
      compact(sqlite, { file, lastSeq, name: `entries-${opened}.sqlite`, onStep: () => undefined })
    }
    return new SqliteJournal(sqlite, file, 'shop')
  }
  return { open }
}

journalContract('on SQLite, all in archives', () => compactedDisk(0))
journalContract('on SQLite, but for two in archives', () => compactedDisk(2))

async function shopWith(entries: readonly Entry[]) {
  const file = join(tempFolder(), 'journal.sqlite')
  const journal = new SqliteJournal(sqlite, file, 'shop')
  await journal.append({ entries, refusals: [refusedAt('refused0001', '5:00')] })
  saveSnapshot(journal, await wake(journal, () => undefined))
  journal.close()
  return file
}

function compactQuietly(file: string, lastSeq: number, name = 'entries-to-2025.sqlite') {
  return compact(sqlite, { file, lastSeq, name, onStep: () => undefined })
}

/** All that a journal says, refolded from its first entry. */
async function allOf(file: string) {
  const journal = new SqliteJournal(sqlite, file, 'shop')
  const entries = [...journal.entriesAfter(0)]
  const setUps = [...journal.setUpEntries()]
  const answers = entries.map(({ commandId: id }) => journal.answerOf(id))
  const refused = journal.answerOf(commandId('refused0001'))
  const hash = hashState(await wake(journal, () => undefined))
  journal.close()
  return { entries, setUps, answers, refused, hash, verified: await verifyJournal(sqlite, file) }
}

describe('old entries in an archive', () => {
  it('[J22] given entries moved in two goes, when read, then all is as before, for the fold, the answers and the set-up', async () => {
    const file = await shopWith(setUpEntries())
    const before = await allOf(file)
    expect(before.verified).toMatchObject({ ok: true, seq: 8 })
    expect(compactQuietly(file, 3)).toBe(3)
    expect(await allOf(file)).toEqual(before)
    expect(compactQuietly(file, 6, 'entries-to-2026.sqlite')).toBe(3)
    expect(compactQuietly(file, 6, 'entries-to-2026.sqlite')).toBe(0)
    expect(await allOf(file)).toEqual(before)
    const journal = new SqliteJournal(sqlite, file, 'shop')
    expect([...journal.entriesAfter(2, 5)]).toEqual(before.entries.slice(2, 7))
    expect([...journal.entriesAfter(3, 1)]).toEqual(before.entries.slice(3, 4))
    journal.close()
  })

  it('[J22] given a year moved out, when looked at, then the journal is small and the archive is one file', async () => {
    const file = await shopWith(MORNING)
    const bytes = statSync(file).size
    compactQuietly(file, 290)
    expect(statSync(file).size).toBeLessThan(bytes / 2)
    const archives = readdirSync(dirname(file)).filter((name) => name.startsWith('entries'))
    expect(archives).toEqual(['entries-to-2025.sqlite'])
    expect(() => new SqliteJournal(sqlite, join(dirname(file), 'entries-to-2025.sqlite'), 'shop')).toThrow(
      'old entries',
    )
  })

  it('[J3] given a command whose entry is in an archive, when it is taken again, then the group is thrown out whole', async () => {
    const file = await shopWith(MORNING.slice(0, 100))
    compactQuietly(file, 60)
    const journal = new SqliteJournal(sqlite, file, 'shop')
    const [known, next] = [MORNING[10], MORNING[100]]
    if (known === undefined || next === undefined) throw new Error('a short morning')
    const again = { ...next, seq: 102, commandId: known.commandId }
    await expect(journal.append({ entries: [next, again], refusals: [] })).rejects.toThrow('is taken')
    expect(journal.lastSeq()).toBe(100)
    await journal.append({ entries: [next], refusals: [] })
    expect([...journal.entriesAfter(100)]).toEqual([next])
    journal.close()
  })

  it('[J23] given a stop at any step, when opened and done again, then nothing is lost or there twice', async () => {
    const file = await shopWith(MORNING)
    const before = await allOf(file)
    const folder = tempFolder()
    // What a kill leaves: the files as they are at that moment, SQLite's log among them.
    const onStep = (step: CompactStep) => cpSync(dirname(file), join(folder, step), { recursive: true })
    compact(sqlite, { file, lastSeq: 200, name: 'entries-to-2025.sqlite', onStep })
    expect(readdirSync(folder).sort()).toEqual([...STEPS].sort())
    for (const [n, step] of STEPS.entries()) {
      const left = join(folder, step, 'journal.sqlite')
      expect(await allOf(left)).toEqual(before)
      expect(compactQuietly(left, 200)).toBe(n < STEPS.indexOf('moved') ? 200 : 0)
      expect(await allOf(left)).toEqual(before)
      expect(statSync(left).size).toBe(statSync(file).size)
    }
  })

  it.each([
    ['is missing', (path: string) => rmSync(path), 'is missing: entries 101 to 200 are in it'],
    ['is another', (path: string) => cpSync(path.replace('2025', '2024'), path), 'should end with entry 200'],
    ['is garbage', (path: string) => writeFileSync(path, 'garbage'.repeat(1_000)), 'not a journal'],
  ])('[J24] given an archive that %s, when opened, then it is named', async (_what, harm, words) => {
    const file = await shopWith(MORNING)
    const archive = join(dirname(file), 'entries-to-2025.sqlite')
    compactQuietly(file, 100, 'entries-to-2024.sqlite')
    compactQuietly(file, 200)
    harm(archive)
    const open = () => new SqliteJournal(sqlite, file, 'shop')
    expect(open).toThrow(words)
    expect(open).toThrow(archive)
    expect(open).toThrow('npm run restore')
    expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false, why: expect.stringContaining(words) })
  })

  it('[J24] given another file with the archive’s name, when compacted, then nothing is done to either', async () => {
    const file = await shopWith(MORNING)
    const other = await shopWith(someEntries(5))
    const before = await allOf(file)
    cpSync(other, join(dirname(file), 'entries-to-2025.sqlite'))
    expect(() => compactQuietly(file, 200)).toThrow('no archive of this journal')
    expect(await allOf(file)).toEqual(before)
  })

  it('[J12] given a journal with archives, when backed up twice, then the copy opens with them beside it', async () => {
    const file = await shopWith(MORNING)
    compactQuietly(file, 200)
    const before = await allOf(file)
    const folder = tempFolder()
    const journal = new SqliteJournal(sqlite, file, 'shop')
    await journal.backupTo(join(folder, 'monday.sqlite'))
    await journal.backupTo(join(folder, 'tuesday.sqlite'))
    journal.close()
    for (const name of ['monday.sqlite', 'tuesday.sqlite']) expect(await allOf(join(folder, name))).toEqual(before)
  })
})

describe('which entries are old', () => {
  const entries = someEntries(9).map((entry, n) => ({ ...entry, recordedAtMs: epochMs(n * DAY_MS) }))
  const now = 1_000 * DAY_MS
  it.each([
    ['all are from before, none newer than the snapshot', 900 * DAY_MS, now, 9, 8],
    ['some are from before', 4 * DAY_MS, now, 9, 4],
    ['one was recorded at that very instant', 4 * DAY_MS + 1, now, 9, 5],
    ['some are younger than two months', 900 * DAY_MS, (STAYS_DAYS + 2) * DAY_MS, 9, 2],
    ['the snapshot is old', 900 * DAY_MS, now, 3, 2],
    ['there is no snapshot', 900 * DAY_MS, now, 0, 0],
    ['none is from before', 0, now, 9, 0],
  ])(
    '[J25] given that %s, when asked, then those are moved that are old in every way',
    async (_what, beforeMs, nowMs, snapshotSeq, last) => {
      const journal = new MemoryJournal(new MemoryDisk('old'))
      await journal.append({ entries, refusals: [] })
      const state = await wake(journal, () => undefined)
      if (snapshotSeq > 0) saveSnapshot(journal, { ...state, seq: snapshotSeq })
      expect(lastToMove(journal, beforeMs, nowMs)).toBe(last)
    },
  )

  it.each([
    ['2026-01-01', [], 'entries-to-2025.sqlite'],
    ['2026-01-01', ['entries-to-2025.sqlite'], 'entries-to-2025-2.sqlite'],
    ['2026-03-01', ['entries-to-2025.sqlite'], 'entries-to-2026-02-28.sqlite'],
    ['2024-03-01', [], 'entries-to-2024-02-29.sqlite'],
  ])('[J25] given the day %s and the archives %j, when named, then the name says up to when', (date, taken, name) => {
    expect(archiveName(date, taken)).toBe(name)
  })

  it('[J25] given a text, when looked at, then only a day of the calendar is one', () => {
    expect(['2026-01-01', '2024-02-29'].every(isDate)).toBe(true)
    expect(['2026-02-29', '2026-13-01', '1.1.2026', '2026', '', '2026-01-01T00:00'].some(isDate)).toBe(false)
  })
})

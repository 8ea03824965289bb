import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { SET_UP_ENTRIES } from '../../server/journal/entry-table.ts'
import { MemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts'
import { MIGRATIONS } from '../../server/journal/migrations.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import type { JournalKind } from '../../server/journal/sqlite-journal.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { eventVersion } from '../../shared-core/day/upcast.ts'
import { journalContract } from './journal-contract.ts'
import { drawnMorning, setUpEntries, someEntries } from './support/made-entries.ts'
import { takeBackTo } from './support/older-forms.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()
let disks = 0

journalContract('in memory', () => {
  disks += 1
  const disk = new MemoryDisk(`memory-disk-${disks}`)
  return { open: async () => new MemoryJournal(disk) }
})

journalContract('on SQLite', () => {
  const file = join(tempFolder(), 'journal.sqlite')
  return { open: async () => new SqliteJournal(sqlite, file, 'shop') }
})

describe('the journal in memory', () => {
  it('[J7] given an append that fails before, when it is tried again, then nothing of the first is there', async () => {
    const faults = ['fails-before', null] as ('fails-before' | null)[]
    const journal = new MemoryJournal(new MemoryDisk('memory-disk'), () => faults.shift() ?? null)
    await expect(journal.append({ entries: someEntries(2), refusals: [] })).rejects.toThrow('disk is full')
    expect(journal.lastSeq()).toBe(0)
    await journal.append({ entries: someEntries(2), refusals: [] })
    expect([...journal.entriesAfter(0)]).toEqual(someEntries(2))
  })

  it('[J7] given a machine that stops after an append, when opened again, then all of it is there', async () => {
    const disk = new MemoryDisk('memory-disk')
    const journal = new MemoryJournal(disk, () => 'stops-after')
    await expect(journal.append({ entries: someEntries(2), refusals: [] })).rejects.toThrow('stopped')
    expect([...new MemoryJournal(disk).entriesAfter(0)]).toEqual(someEntries(2))
  })
})

describe('the journal on SQLite', () => {
  const opened: SqliteJournal[] = []
  afterEach(() => {
    for (const journal of opened.splice(0)) journal.close()
  })
  const open = (file: string, kind: JournalKind = 'shop') => {
    const journal = new SqliteJournal(sqlite, file, kind)
    opened.push(journal)
    return journal
  }
  /** Something done to the file behind the journal's back. */
  const tamper = (file: string, sql: string) => {
    const db = new sqlite.DatabaseSync(file)
    db.exec(sql)
    db.close()
  }
  const journalWith = async (count: number) => {
    const file = join(tempFolder(), 'journal.sqlite')
    const journal = open(file)
    await journal.append({ entries: someEntries(count), refusals: [] })
    for (const one of opened.splice(0)) one.close()
    return file
  }

  it('[J8] given a disk that will not keep a log, when opened, then it says so and does not start', () => {
    const broken: Sqlite = {
      ...sqlite,
      DatabaseSync: class extends sqlite.DatabaseSync {
        override exec(sql: string): void {
          super.exec(sql.replace('journal_mode = WAL', 'journal_mode = DELETE'))
        }
      } as Sqlite['DatabaseSync'],
    }
    expect(() => new SqliteJournal(broken, join(tempFolder(), 'journal.sqlite'), 'shop')).toThrow(
      'does not keep the journal safe',
    )
  })

  it('[J8] given commits that would not be synced, when opened, then it says so and does not start', () => {
    const broken: Sqlite = {
      ...sqlite,
      DatabaseSync: class extends sqlite.DatabaseSync {
        override exec(sql: string): void {
          super.exec(sql.replace('synchronous = FULL', 'synchronous = NORMAL'))
        }
      } as Sqlite['DatabaseSync'],
    }
    expect(() => new SqliteJournal(broken, join(tempFolder(), 'journal.sqlite'), 'shop')).toThrow('synchronous 1')
  })

  it.each([
    ['is no JSON', 'UPDATE entries SET entry = \'{"seq":3\' WHERE seq = 3', 'Entry 3 of the journal'],
    ['is missing', 'DELETE FROM entries WHERE seq = 3', 'entry 4 stands in its place'],
    ['is no entry', "UPDATE entries SET entry = 'null' WHERE seq = 3", 'Entry 3 of the journal'],
    [
      'was written by a newer release',
      `UPDATE entries SET entry = replace(entry, '"v":${eventVersion('dayClosed')}', '"v":9') WHERE seq = 3`,
      'a newer release wrote this journal',
    ],
  ])('[J9] given a row that %s, when read, then it is named and not skipped', async (_what, sql, words) => {
    const file = await journalWith(5)
    // As of a release that wrote no sums: only the row itself can say what is wrong with it.
    takeBackTo(sqlite, file, 2)
    tamper(file, sql)
    expect(() => [...open(file).entriesAfter(0)]).toThrow(words)
  })

  it.each([
    ['demo', 'shop', "is a demo's journal"],
    ['shop', 'demo', "is a real shop's journal"],
  ] as const)('[J10] given the journal of a %s, when opened as a %s, then it is refused', (made, asked, words) => {
    const file = join(tempFolder(), 'journal.sqlite')
    open(file, made).close()
    opened.splice(0)
    expect(() => new SqliteJournal(sqlite, file, asked)).toThrow(words)
    expect(() => open(file, made)).not.toThrow()
  })

  it('[J11] given a file of a newer form, when opened, then it is refused and left as it is', async () => {
    const file = await journalWith(1)
    tamper(file, 'PRAGMA user_version = 99')
    expect(() => new SqliteJournal(sqlite, file, 'shop')).toThrow('newer release')
    tamper(file, `PRAGMA user_version = ${MIGRATIONS.length}`)
    expect(open(file).lastSeq()).toBe(1)
  })

  it('[U10] given a file of the first release, when opened, then entries of the set-up are found by an index', async () => {
    const file = join(tempFolder(), 'journal.sqlite')
    const journal = open(file)
    await journal.append({ entries: setUpEntries(), refusals: [] })
    const found = [...journal.setUpEntries()]
    for (const one of opened.splice(0)) one.close()
    takeBackTo(sqlite, file, 1)
    expect([...open(file).setUpEntries()]).toEqual(found)
    const db = new sqlite.DatabaseSync(file)
    // https://sqlite.org/eqp.html: SCAN … USING INDEX reads the index's rows, plain SCAN all rows of the table.
    const plan = db.prepare(`EXPLAIN QUERY PLAN ${SET_UP_ENTRIES}`).all()
    db.close()
    expect(plan.map(({ detail }) => detail)).toEqual(['SCAN entries USING INDEX entries_of_set_up'])
  })

  it('[J12] given a running journal, when backed up, then the copy has every entry and goes on by itself', async () => {
    const folder = tempFolder()
    const journal = open(join(folder, 'journal.sqlite'))
    const morning = drawnMorning(60, 7)
    await journal.append({ entries: morning.slice(0, 59), refusals: [] })
    const copy = join(folder, 'copy.sqlite')
    await journal.backupTo(copy)
    expect(existsSync(copy)).toBe(true)
    const other = open(copy)
    expect([...other.entriesAfter(0)]).toEqual(morning.slice(0, 59))
    expect(other.journalId).toBe(journal.journalId)
    await other.append({ entries: morning.slice(59), refusals: [] })
    expect(journal.lastSeq()).toBe(59)
  })

  it('[J2] given entries of every kind, when read from the file, then they are as they were', async () => {
    const file = join(tempFolder(), 'journal.sqlite')
    const morning = drawnMorning(300, 11)
    await open(file).append({ entries: morning, refusals: [] })
    expect(new Set(morning.flatMap((entry) => entry.events.map((event) => event.type))).size).toBeGreaterThan(10)
    expect([...open(file).entriesAfter(0)]).toEqual(morning)
    expect(readFileSync(file).subarray(0, 15).toString()).toBe('SQLite format 3')
  })
})

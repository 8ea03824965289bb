import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { crc32 } from 'node:zlib'
import { afterEach, describe, expect, it } from 'vitest'
import { giveNewCourse } from '../../server/journal/give-new-course.ts'
import { inWords } from '../../server/journal/journal-words.ts'
import { runOn } from '../../server/journal/running-sum.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { saveSnapshot, wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { commandId } from '../../shared-core/ids.ts'
import { drawnMorning, refusedAt } from './support/made-entries.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()
const MORNING = drawnMorning(300, 11)
const opened: SqliteJournal[] = []
afterEach(() => {
  for (const journal of opened.splice(0)) journal.close()
})

function open(file: string): SqliteJournal {
  const journal = new SqliteJournal(sqlite, file, 'shop')
  opened.push(journal)
  return journal
}

function close(): void {
  for (const journal of opened.splice(0)) journal.close()
}

async function shopWith(entries: readonly Entry[] = MORNING): Promise<string> {
  const file = join(tempFolder(), 'journal.sqlite')
  const journal = open(file)
  const refusals = [refusedAt('refused0001', '5:00'), refusedAt('refused0002', '6:00')]
  await journal.append({ entries, refusals })
  close()
  return file
}

/** Something done to the file behind the journal's back. */
function tamper(file: string, sql: string): void {
  const db = new sqlite.DatabaseSync(file)
  db.exec(`${sql}; PRAGMA wal_checkpoint(TRUNCATE)`)
  db.close()
}

describe('the running sum', () => {
  it('[J13] given the check value of CRC-32, when summed, then it is that', () => {
    // CRC-32/ISO-HDLC in the Catalogue of parametrised CRC algorithms (reveng.sourceforge.io): check = 0xcbf43926.
    expect(crc32('123456789')).toBe(0xcbf43926)
  })

  it('[J13] given rows, when summed one by one or a page at once, then the sum is the same, and the order counts', () => {
    const sum = ['one', 'two', 'three'].reduce(runOn, 0)
    expect(runOn(0, 'one,two,three')).toBe(sum)
    expect(sum).toBe(crc32(',one,two,three'))
    expect(runOn(0, 'two,one,three')).not.toBe(sum)
  })

  it.each([
    ['another number in it', 'UPDATE entries SET entry = replace(entry, \'"seq":7,\', \'"seq":7 ,\') WHERE seq = 7', 7],
    ['the text of another', 'UPDATE entries SET entry = (SELECT entry FROM entries WHERE seq = 8) WHERE seq = 7', 7],
    ['no sum', 'UPDATE entries SET sum = NULL WHERE seq = 7', 7],
    ['another sum', 'UPDATE entries SET sum = sum + 1 WHERE seq = 7', 7],
    ['no row', 'DELETE FROM entries WHERE seq = 7', 7],
    ['another command', "UPDATE entries SET command_id = 'another0001' WHERE seq = 7", 7],
  ])('[J14] given an entry with %s, when opened, then it is named with what to do', async (_what, sql, seq) => {
    const file = await shopWith()
    tamper(file, sql)
    const words = `Entry ${seq} of the journal`
    expect(() => open(file)).toThrow(words)
    expect(() => open(file)).toThrow(
      `The file is ${file}. Put back the newest good copy: npm run restore -- --shop FOLDER`,
    )
    expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false })
  })

  it('[J14] given an old entry that a start does not look at, when read, then those before it come and it is named', async () => {
    const file = await shopWith(drawnMorning(2_400, 3))
    tamper(file, 'UPDATE entries SET entry = replace(entry, \'"seq":7,\', \'"seq":7 ,\') WHERE seq = 7')
    const read: number[] = []
    const journal = open(file)
    expect(() => {
      for (const { seq } of journal.entriesAfter(0)) read.push(seq)
    }).toThrow('Entry 7 of the journal cannot be read: it is not as it was written.')
    expect(read).toEqual([1, 2, 3, 4, 5, 6])
    expect([...journal.entriesAfter(7, 3)]).toHaveLength(3)
    expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false, why: expect.stringContaining('Entry 7') })
  })

  it.each([
    ['changed', "UPDATE refusals SET answer = replace(answer, 'gone', 'here') WHERE command_id = 'refused0001'"],
    ['gone', "DELETE FROM refusals WHERE command_id = 'refused0001'"],
    ['of another command', "UPDATE refusals SET command_id = 'refused0009' WHERE command_id = 'refused0001'"],
  ])('[J14] given a refusal that is %s, when opened, then it is told', async (_what, sql) => {
    const file = await shopWith()
    tamper(file, sql)
    expect(() => open(file)).toThrow(/[Rr]efusal.*npm run restore/)
  })

  it('[J14] given refusals pruned, when opened again, then what is left is in order', async () => {
    const file = await shopWith()
    const journal = open(file)
    expect(journal.pruneRefusals(refusedAt('refused0002', '6:00').recordedAtMs)).toBe(1)
    close()
    expect(open(file).answerOf(commandId('refused0002'))).not.toBeNull()
  })
})

describe('the mark of a journal’s end', () => {
  it('[J15] given commits that are gone from the file, when opened, then it says how many there were', async () => {
    const file = await shopWith(MORNING.slice(0, 290))
    copyFileSync(file, `${file}.older`)
    await open(file).append({ entries: MORNING.slice(290), refusals: [] })
    close()
    copyFileSync(`${file}.older`, file)
    expect(() => open(file)).toThrow('it had 300 entries when it was last written, and has 290 now')
    expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false, why: expect.stringContaining('290 now') })
  })

  it('[J15] given other entries as many as there were, when opened, then they are not taken for those', async () => {
    const file = await shopWith()
    const other = await shopWith(drawnMorning(300, 12))
    tamper(other, `UPDATE about SET value = '${open(file).journalId}' WHERE key = 'journal_id'`)
    close()
    copyFileSync(other, file)
    expect(() => open(file)).toThrow('up to 300 are not as they were written')
  })

  it('[J15] given another journal in its place, when opened, then it is not taken for this one', async () => {
    const [file, other] = [await shopWith(), await shopWith(MORNING.slice(0, 20))]
    copyFileSync(other, file)
    expect(() => open(file)).toThrow('not the one that was here before')
  })

  it.each([
    ['is behind', (end: string) => end.replace('"seq":300', '"seq":0')],
    ['is gone', () => ''],
    ['is garbage', () => 'garbage'],
  ])(
    '[J15] given a mark that %s, when opened, then it proves nothing and the next commit makes it good',
    async (_what, change) => {
      const file = await shopWith(MORNING.slice(0, 299))
      writeFileSync(`${file}-end`, change(readFileSync(`${file}-end`, 'utf8')))
      await open(file).append({ entries: MORNING.slice(299), refusals: [] })
      close()
      expect(JSON.parse(readFileSync(`${file}-end`, 'utf8'))).toMatchObject({ seq: 300, course: '' })
    },
  )

  it('[J16] given a copy that was put back, when given a new course, then it opens, keeps its id and says the course', async () => {
    const file = await shopWith(MORNING.slice(0, 290))
    copyFileSync(file, `${file}.older`)
    const journal = open(file)
    const { journalId } = journal
    expect(journal.course).toBe('')
    await journal.append({ entries: MORNING.slice(290), refusals: [] })
    close()
    copyFileSync(`${file}.older`, file)
    const course = giveNewCourse(sqlite, file)
    expect(course).toMatch(/^[0-9a-f]{24}$/)
    expect(open(file)).toMatchObject({ journalId, course, courseFromSeq: 290 })
    expect(giveNewCourse(sqlite, `${file}.older`)).not.toBe(course)
  })
})

describe('a file that is no journal', () => {
  it.each([
    ['is gone', (file: string) => rmSync(file), 'is gone: it had 300 entries'],
    ['is empty', (file: string) => writeFileSync(file, ''), 'an empty file'],
    ['is text', (file: string) => writeFileSync(file, 'text'.repeat(5_000)), 'what is there is not a journal'],
    ['is cut off', (file: string) => writeFileSync(file, readFileSync(file).subarray(0, 8_192)), 'is damaged'],
    [
      'is a folder',
      (file: string) => {
        rmSync(file)
        mkdirSync(file)
      },
      'cannot be opened',
    ],
  ])(
    '[J17] given a file that %s, when opened, then it says what is wrong, with which file, and what to do',
    async (_what, harm, words) => {
      const file = await shopWith()
      harm(file)
      expect(() => open(file)).toThrow(words)
      expect(() => open(file)).toThrow(`The file is ${file}. Put back the newest good copy: npm run restore`)
      expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false })
    },
  )

  it.each([
    [8, 'may not be written to'],
    [10, 'does not read or write'],
    [522, 'does not read or write'],
    [11, 'do not fit together'],
    [13, 'is full'],
    [14, 'cannot be opened'],
    [26, 'not a journal'],
    [1, 'cannot be read as one'],
  ])('[J17] given result code %i of SQLite, when put in words, then they say what is wrong', (errcode, words) => {
    const error = Object.assign(new Error('said by SQLite'), { code: 'ERR_SQLITE_ERROR', errcode })
    expect(String(inWords(error, 'the.sqlite'))).toMatch(new RegExp(`${words}.*said by SQLite.*the.sqlite`))
  })

  it('[J17] given a new shop, when its making was stopped in the middle, then the next start makes it', async () => {
    const file = join(tempFolder(), 'journal.sqlite')
    writeFileSync(`${file}-new`, 'half of a file')
    expect(open(file).lastSeq()).toBe(0)
    expect(existsSync(`${file}-new`)).toBe(false)
  })
})

describe('a journal verified whole', () => {
  it('[J18] given a good one, in use or not, when verified, then it says what it comes to', async () => {
    const file = await shopWith()
    const journal = open(file)
    const state = await wake(journal, () => undefined)
    saveSnapshot(journal, state)
    const { journalId } = journal
    const verified = { ok: true, journalId, course: '', seq: 300, entries: 300, hash: hashState(state) }
    expect(await verifyJournal(sqlite, file)).toEqual(verified)
    close()
    expect(await verifyJournal(sqlite, file)).toEqual(verified)
  })

  it.each([
    ['a snapshot that is not the fold', "UPDATE snapshots SET hash = 'other'", 'snapshot at entry 300'],
    ['one entry of the set-up uncounted', "UPDATE about SET value = value + 1 WHERE key = 'set_ups'", 'of the set-up'],
  ])('[J18] given %s, when verified, then it is told', async (_what, sql, words) => {
    const file = await shopWith()
    saveSnapshot(open(file), await wake(open(file), () => undefined))
    close()
    tamper(file, sql)
    expect(await verifyJournal(sqlite, file)).toMatchObject({ ok: false, why: expect.stringContaining(words) })
  })

  it('[J18] given a flipped bit anywhere in what is used, when verified, then it is told', async () => {
    const file = await shopWith(MORNING.slice(0, 120))
    const good = readFileSync(file)
    const known = await verifyJournal(sqlite, file)
    let told = 0
    for (let at = 8_192; at < good.length; at += 4_111) {
      const bad = Buffer.from(good)
      bad[at] = (bad[at] ?? 0) ^ 0x10
      writeFileSync(file, bad)
      const verified = await verifyJournal(sqlite, file)
      // A byte that nothing uses: then all is as it was.
      if (verified.ok) expect(verified).toEqual(known)
      else told += 1
    }
    expect(told).toBeGreaterThan(5)
  })
})

import { cpSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { MIGRATIONS } from '../../server/journal/migrations.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { wake } from '../../server/shop/wake.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { commandId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { tempFolder } from './support/temp-folder.ts'

const sqlite = await loadSqlite()
const REFUSED = { kind: 'refused', refusal: { code: 'unknown-load', params: { loadId: 'gone' } } } as const

/** A golden journal's lines: what the release of that fold wrote, character by character. */
function golden(fold: number): { readonly hash: string; readonly texts: readonly string[] } {
  const path = fileURLToPath(new URL(`./golden/fold-${fold}.jsonl`, import.meta.url))
  const [head = '', ...texts] = readFileSync(path, 'utf8').trim().split('\n')
  return { hash: JSON.parse(head).hash, texts }
}

/** A file as a release with that many steps left it: tables by its steps, rows by its statements. */
function fileOfForm(form: number, fold: number): string {
  const file = join(tempFolder(), 'journal.sqlite')
  const db = new sqlite.DatabaseSync(file)
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL')
  for (const step of MIGRATIONS.slice(0, form)) db.exec(step)
  db.exec(`PRAGMA user_version = ${form}; BEGIN;
    INSERT INTO about (key, value) VALUES ('journal_id', '0123456789abcdef01234567'), ('kind', 'shop');`)
  const insert = db.prepare('INSERT INTO entries (seq, command_id, entry) VALUES (?, ?, ?)')
  for (const text of golden(fold).texts) {
    const { seq, commandId: id } = JSON.parse(text) as Entry
    insert.run(seq, id, text)
  }
  const refuse = db.prepare('INSERT INTO refusals (command_id, recorded_at_ms, answer) VALUES (?, ?, ?)')
  refuse.run('refused0001', 1, JSON.stringify(REFUSED))
  db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)')
  db.close()
  return file
}

/** A SQLite that stops before it runs a statement that has such words in it: what is on disk then is copied. */
function stoppingAt(words: string, copy: () => void): Sqlite {
  return {
    ...sqlite,
    DatabaseSync: class extends sqlite.DatabaseSync {
      override exec(sql: string): void {
        const at = sql.indexOf(words)
        super.exec(at === -1 ? sql : sql.slice(0, at))
        if (at === -1) return
        copy()
        throw new Error('stopped')
      }
    } as Sqlite['DatabaseSync'],
  }
}

describe('journals of earlier forms', () => {
  it.each([
    [1, 1],
    [1, 2],
    [2, 1],
    [2, 2],
  ])(
    '[J19] given a file of form %i with entries of fold %i, when opened, then all is there and goes on with sums',
    async (form, fold) => {
      const file = fileOfForm(form, fold)
      const { hash, texts } = golden(fold)
      const asItIs = await verifyJournal(sqlite, file)
      expect(asItIs).toMatchObject({ ok: true, seq: texts.length, journalId: '0123456789abcdef01234567', course: '' })
      const journal = new SqliteJournal(sqlite, file, 'shop')
      const entries = [...journal.entriesAfter(0)]
      const state = await wake(journal, () => undefined)
      expect(entries).toHaveLength(texts.length)
      if (fold === FOLD_VERSION) {
        expect(entries).toEqual(texts.map((text) => JSON.parse(text)))
        expect(hashState(state)).toBe(hash)
      }
      expect(asItIs).toMatchObject({ hash: hashState(state) })
      expect([...journal.setUpEntries()].length).toBe(texts.filter((text) => text.includes('"type":"setUp')).length)
      expect(journal.answerOf(commandId('refused0001'))).toEqual(REFUSED)
      const [first] = entries
      if (first === undefined) throw new Error('no entries')
      const next = { ...first, seq: texts.length + 1, commandId: commandId('afterwards01'), events: [] }
      await journal.append({ entries: [next], refusals: [] })
      expect(journal.pruneRefusals(epochMs(2))).toBe(1)
      journal.close()
      const again = new SqliteJournal(sqlite, file, 'shop')
      expect([...again.entriesAfter(0)]).toEqual([...entries, next])
      again.close()
      const db = new sqlite.DatabaseSync(file)
      expect(db.prepare('SELECT count(*) AS rows, count(sum) AS sums FROM entries').get()).toEqual({
        rows: texts.length + 1,
        sums: 1,
      })
      db.exec(`UPDATE entries SET entry = replace(entry, 'afterwards01', 'afterwards02') WHERE sum IS NOT NULL`)
      db.close()
      expect(() => new SqliteJournal(sqlite, file, 'shop')).toThrow(`Entry ${texts.length + 1} of the journal`)
    },
  )

  it.each([
    ['the first step', 'PRAGMA user_version = 2'],
    ['the second step', 'CREATE TABLE archives'],
    ['the second step’s end', 'PRAGMA user_version = 3'],
  ])('[J19] given a stop in %s, when opened again, then nothing is lost', async (_what, words) => {
    const file = fileOfForm(1, FOLD_VERSION)
    const left = join(tempFolder(), 'journal.sqlite')
    const copy = () => {
      for (const end of ['', '-wal']) cpSync(`${file}${end}`, `${left}${end}`)
    }
    expect(() => new SqliteJournal(stoppingAt(words, copy), file, 'shop')).toThrow('stopped')
    const db = new sqlite.DatabaseSync(left)
    const form = db.prepare('PRAGMA user_version').get()?.user_version
    db.close()
    expect(form).toBe(words.endsWith('2') ? 1 : 2)
    const journal = new SqliteJournal(sqlite, left, 'shop')
    expect([...journal.entriesAfter(0)]).toHaveLength(golden(FOLD_VERSION).texts.length)
    expect(hashState(await wake(journal, () => undefined))).toBe(golden(FOLD_VERSION).hash)
    journal.close()
  })
})

import { copyFileSync, existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import type { Ledger } from './ledger.ts'

/**
 * Looks at a dead server's journal: at a copy of the file and its log, since opening the real one would put in order
 * what the next server is to find as it was left.
 */
export function checkFile(sqlite: Sqlite, file: string, ledger: Ledger, isWhole: boolean): void {
  const copy = copied(file)
  if (copy === null) return
  const db = new sqlite.DatabaseSync(copy)
  try {
    const integrity = db.prepare('PRAGMA integrity_check').all()
    if (integrity.length !== 1 || integrity[0]?.integrity_check !== 'ok')
      ledger.fail(`integrity_check: ${JSON.stringify(integrity)}`)
    // A server that was killed before it had made its tables.
    if (db.prepare("SELECT 1 AS one FROM sqlite_schema WHERE name = 'snapshots'").get() === undefined) {
      if (ledger.entries > 0) ledger.fail('the tables are gone')
      return
    }
    const after = isWhole ? 0 : ledger.entries
    const rows = db.prepare('SELECT seq, entry FROM entries WHERE seq > ? ORDER BY seq').all(after)
    const texts = rows.map(({ entry }) => String(entry))
    ledger.read(texts, after + 1, 'on disk')
    const refusals = db.prepare('SELECT command_id, answer FROM refusals').all()
    const lastSeq = Number(db.prepare('SELECT max(seq) AS seq FROM entries').get()?.seq ?? 0)
    ledger.compare(new Map(refusals.map((one) => [String(one.command_id), String(one.answer)])), lastSeq)
  } finally {
    db.close()
  }
}

/** A copy of the file and its log to look at; null when there is no file. */
export function copied(file: string): string | null {
  if (!existsSync(file)) return null
  const copy = join(file, '..', '..', 'looked-at.sqlite')
  for (const end of ['', '-wal', '-shm']) {
    rmSync(`${copy}${end}`, { force: true })
    if (end !== '-shm' && existsSync(`${file}${end}`)) copyFileSync(`${file}${end}`, `${copy}${end}`)
  }
  return copy
}

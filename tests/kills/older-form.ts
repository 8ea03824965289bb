import { rmSync } from 'node:fs'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import type { Chance } from '../days/chance.ts'
import { copied } from './file-check.ts'

/** What undoes a step of `server/journal/migrations.ts`, by the form that it led to. */
const BACK: Readonly<Record<number, string>> = {
  2: 'DROP INDEX IF EXISTS entries_of_set_up;',
  3: `ALTER TABLE entries DROP COLUMN sum; ALTER TABLE refusals DROP COLUMN sum; DROP TABLE archives;
      DELETE FROM about WHERE key IN ('refusals', 'set_ups');`,
}

/**
 * Gives a dead server's file the form of an earlier release, so that the next start has steps to take. Nothing is lost
 * by it: a step adds what can be made from the entries.
 */
export function takeBackForm(sqlite: Sqlite, file: string, chance: Chance): void {
  const copy = copied(file)
  if (copy === null) return
  const version = formOf(sqlite, copy)
  if (version < 2) return
  const to = chance.between(1, version - 1)
  // Without a prepared statement: the package for Node 20 keeps a file open until each of these is forgotten, and puts
  // its log in order only then, in the middle of the next server's start.
  const db = new sqlite.DatabaseSync(file)
  try {
    for (let form = version; form > to; form -= 1) {
      const back = BACK[form]
      if (back === undefined) throw new Error(`nothing undoes the step to form ${form}`)
      db.exec(back)
    }
    db.exec(`PRAGMA user_version = ${to}`)
  } finally {
    db.close()
  }
  // The mark of where the journal ends came with the sums.
  rmSync(`${file}-end`, { force: true })
}

function formOf(sqlite: Sqlite, copy: string): number {
  const db = new sqlite.DatabaseSync(copy)
  try {
    return Number(db.prepare('PRAGMA user_version').get()?.user_version)
  } finally {
    db.close()
  }
}

import { existsSync } from 'node:fs'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import type { Chance } from '../days/chance.ts'

/**
 * Gives a dead server's file the form of an earlier release, so that the next start has steps to take. Nothing is lost
 * by it: a step adds what can be made from the entries.
 */
export function takeBackForm(sqlite: Sqlite, file: string, chance: Chance): void {
  if (!existsSync(file)) return
  const db = new sqlite.DatabaseSync(file)
  try {
    const version = Number(db.prepare('PRAGMA user_version').get()?.user_version)
    if (version < 2) return
    const to = chance.between(1, version - 1)
    if (to < 2) db.exec('DROP INDEX IF EXISTS entries_of_set_up')
    db.exec(`PRAGMA user_version = ${to}`)
  } finally {
    db.close()
  }
}

import { rmSync } from 'node:fs'
import type { Sqlite } from '../../../server/journal/sqlite.ts'

/** What each step of `MIGRATIONS` added, taken away again; a step never changes once it is released. */
const BACK_FROM: { readonly [form: number]: string } = {
  2: 'DROP INDEX entries_of_set_up',
  3: `ALTER TABLE entries DROP COLUMN sum;
      ALTER TABLE refusals DROP COLUMN sum;
      DROP TABLE archives;
      DELETE FROM about WHERE key IN ('refusals', 'set_ups')`,
}

/** Gives a journal that nobody has open the form that an earlier release wrote: 1 or 2. Its rows stay. */
export function takeBackTo(sqlite: Sqlite, file: string, form: number): void {
  const db = new sqlite.DatabaseSync(file)
  try {
    const now = Number(db.prepare('PRAGMA user_version').get()?.user_version)
    for (let from = now; from > form; from -= 1) db.exec(`BEGIN; ${BACK_FROM[from]}; COMMIT`)
    db.exec(`PRAGMA user_version = ${form}`)
  } finally {
    db.close()
  }
  // Earlier releases made no mark.
  rmSync(`${file}-end`, { force: true })
}

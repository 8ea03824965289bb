import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { Meaning, NamedMeaning, TillName } from '../../shared-core/live/sales-import.ts'
import { dateOf } from './local-times.ts'
import type { Named } from './suggest-meaning.ts'
import { suggestMeaning } from './suggest-meaning.ts'

/** What a name means, and since when the till sells it. */
export interface NameMeaning {
  readonly id: number
  readonly meaning: Meaning | null
  /** Day of its first row; null: no row has it. */
  readonly firstDay: number | null
}

/** The table of names. */
export class SalesNames {
  readonly #db: DatabaseSyncInstance

  constructor(db: DatabaseSyncInstance) {
    this.#db = db
  }

  /** Those of which most was sold first. */
  list(varieties: readonly Named[]): readonly TillName[] {
    return this.#db
      .prepare(`SELECT n.name, n.meaning, coalesce(sum(c.rows), 0) AS rows, coalesce(sum(c.pieces), 0) AS sold,
        max(c.last_day) AS last_day FROM names AS n LEFT JOIN name_counts AS c ON c.name = n.id
        GROUP BY n.id HAVING sum(c.rows) > 0 ORDER BY sold DESC, n.name`)
      .all()
      .map((row) => {
        const name = String(row.name)
        const meaning = row.meaning === null ? null : (JSON.parse(String(row.meaning)) as Meaning)
        const lastDate = row.last_day === null ? null : dateOf(Number(row.last_day))
        const suggested = meaning === null ? suggestMeaning(name, varieties) : null
        return { name, rows: Number(row.rows), sold: Number(row.sold), lastDate, meaning, suggested }
      })
  }

  /** @returns how many were known before or are now */
  mean(meanings: readonly NamedMeaning[]): number {
    const set = this.#db.prepare(
      'INSERT INTO names (name, meaning) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET meaning = excluded.meaning',
    )
    this.#db.exec('BEGIN IMMEDIATE')
    try {
      for (const { name, meaning } of meanings) set.run(name, meaning === null ? null : JSON.stringify(meaning))
      this.#db.exec('COMMIT')
    } finally {
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
    }
    return meanings.length
  }

  meaningOf(name: string): Meaning | null {
    const text = this.#db.prepare('SELECT meaning FROM names WHERE name = ?').get(name)?.meaning
    return text == null ? null : JSON.parse(String(text))
  }

  meanings(): ReadonlyMap<number, NameMeaning> {
    const rows = this.#db
      .prepare(`SELECT n.id, n.meaning, min(c.first_day) AS first_day FROM names AS n
        LEFT JOIN name_counts AS c ON c.name = n.id GROUP BY n.id`)
      .all()
    return new Map(
      rows.map((row) => {
        const meaning = row.meaning === null ? null : (JSON.parse(String(row.meaning)) as Meaning)
        return [
          Number(row.id),
          { id: Number(row.id), meaning, firstDay: row.first_day === null ? null : Number(row.first_day) },
        ]
      }),
    )
  }
}

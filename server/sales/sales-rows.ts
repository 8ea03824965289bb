import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { TillRow } from './read-row.ts'
import { FEED } from './sales-tables.ts'

/** Ids of names are looked up once; a file with more different names than this is no file of sales. */
const NAMES_KEPT = 20_000

/** Dates of which another file has rows. */
export interface DaySpan {
  readonly file: number
  readonly fromDay: number
  readonly toDay: number
}

interface NameCount {
  rows: number
  pieces: number
  firstDay: number
  lastDay: number
}

/** Puts rows into the table. What of them was there from another file is told as doubled. */
export class RowWriter {
  readonly #insert: StatementSyncInstance
  readonly #nextNth: StatementSyncInstance
  readonly #elsewhere: StatementSyncInstance
  readonly #findName: StatementSyncInstance
  readonly #addName: StatementSyncInstance
  readonly #addCount: StatementSyncInstance
  readonly #names = new Map<string, number>()
  readonly #counts = new Map<number, NameCount>()
  readonly #onNewName: (name: string) => string | null

  /** @param onNewName what a name means that was never seen before, as JSON; null: nobody has said */
  constructor(db: DatabaseSyncInstance, onNewName: (name: string) => string | null) {
    this.#onNewName = onNewName
    const same = 'day = ? AND second = ? AND purchase = ? AND name = ? AND pieces = ? AND row_id = ?'
    this.#insert = db.prepare('INSERT OR IGNORE INTO rows VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)')
    this.#nextNth = db.prepare(`SELECT max(nth) + 1 AS nth FROM rows WHERE ${same} AND file = ?`)
    this.#elsewhere = db.prepare(`SELECT 1 FROM rows WHERE ${same} AND nth = ? AND file <> ? LIMIT 1`)
    this.#findName = db.prepare('SELECT id FROM names WHERE name = ?')
    this.#addName = db.prepare('INSERT INTO names (name, meaning) VALUES (?, ?)')
    this.#addCount = db.prepare(`INSERT INTO name_counts VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET
      rows = rows + excluded.rows, pieces = pieces + excluded.pieces,
      first_day = min(first_day, excluded.first_day), last_day = max(last_day, excluded.last_day)`)
  }

  /** @returns `new`, or `doubled` where it was there already */
  write(row: TillRow, file: number, others: readonly DaySpan[]): 'new' | 'doubled' {
    const name = this.#nameId(row.item)
    const { day, second, purchase, pieces, rowId } = row
    let nth = 0
    const voided = row.voided ? 1 : 0
    if (this.#insert.run(day, second, purchase, name, pieces, rowId, nth, file, voided).changes === 0) {
      // The same id twice is the same row twice; without one it is a second bagel like the first.
      if (rowId !== '') return 'doubled'
      nth = Number(this.#nextNth.get(day, second, purchase, name, pieces, rowId, file)?.nth)
      this.#insert.run(day, second, purchase, name, pieces, rowId, nth, file, voided)
    }
    const isElsewhere = others.some(({ fromDay, toDay }) => day >= fromDay && day <= toDay)
    if (isElsewhere && this.#elsewhere.get(day, second, purchase, name, pieces, rowId, nth, file) !== undefined)
      return 'doubled'
    if (!row.voided) this.#count(name, pieces, day)
    return 'new'
  }

  /** Writes down what was counted by name since the last time. */
  flush(file: number): void {
    for (const [name, { rows, pieces, firstDay, lastDay }] of this.#counts)
      this.#addCount.run(file, name, rows, pieces, firstDay, lastDay)
    this.#counts.clear()
  }

  /** After a rollback nothing that was kept here may be believed. */
  forget(): void {
    this.#names.clear()
    this.#counts.clear()
  }

  #nameId(name: string): number {
    const known = this.#names.get(name)
    if (known !== undefined) return known
    if (this.#names.size >= NAMES_KEPT) this.#names.clear()
    const found = this.#findName.get(name)?.id
    const id = Number(found ?? this.#addName.run(name, this.#onNewName(name)).lastInsertRowid)
    this.#names.set(name, id)
    return id
  }

  #count(name: number, pieces: number, day: number): void {
    const known = this.#counts.get(name)
    if (known === undefined) {
      this.#counts.set(name, { rows: 1, pieces, firstDay: day, lastDay: day })
      return
    }
    known.rows += 1
    known.pieces += pieces
    if (day < known.firstDay) known.firstDay = day
    if (day > known.lastDay) known.lastDay = day
  }
}

/** Of which dates other files, and the till's feed, have rows. */
export function spansOfOthers(db: DatabaseSyncInstance, file: number): readonly DaySpan[] {
  const files = db
    .prepare('SELECT id, from_day, to_day FROM files WHERE id <> ? AND from_day IS NOT NULL')
    .all(file)
    .map((row) => ({ file: Number(row.id), fromDay: Number(row.from_day), toDay: Number(row.to_day) }))
  const fed = db.prepare('SELECT min(first_day) AS a, max(last_day) AS b FROM name_counts WHERE file = ?').get(FEED)
  return fed?.a == null ? files : [...files, { file: FEED, fromDay: Number(fed.a), toDay: Number(fed.b) }]
}

/** Rows that were doubled of a file that is gone count by name for the next that has them. */
export function countAgain(
  db: DatabaseSyncInstance,
  gone: { readonly fromDay: number | null; readonly toDay: number | null },
): void {
  if (gone.fromDay === null || gone.toDay === null) return
  const doubled = db
    .prepare('SELECT id FROM files WHERE doubled > 0 AND from_day <= ? AND to_day >= ?')
    .all(gone.toDay, gone.fromDay)
  for (const { id } of doubled) {
    db.prepare('DELETE FROM name_counts WHERE file = ?').run(Number(id))
    db.prepare(`INSERT INTO name_counts SELECT file, name, count(*), sum(pieces), min(day), max(day) FROM rows AS r
      WHERE file = ? AND voided = 0 AND NOT EXISTS (SELECT 1 FROM rows AS o WHERE o.day = r.day AND o.second = r.second
        AND o.purchase = r.purchase AND o.name = r.name AND o.pieces = r.pieces AND o.row_id = r.row_id
        AND o.nth = r.nth AND o.file < r.file) GROUP BY name`).run(Number(id))
  }
}

import type { DatabaseSyncInstance, StatementSyncInstance } from '@photostructure/sqlite'
import type { Answer } from '../../shared-core/day/answers.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Refused } from './journal.ts'
import { JournalError } from './journal.ts'
import { orInWords, remedyFor } from './journal-words.ts'
import { refusalSum } from './running-sum.ts'

/**
 * Commands that were refused, with their answers. Each has a sum of its own, and `about` keeps all sums of the table
 * taken together by exclusive or, so that one that is gone is missed too; those from before there were sums are not
 * checked, and pruned within two weeks.
 */
export class RefusalTable {
  readonly #db: DatabaseSyncInstance
  readonly #file: string
  readonly #insert: StatementSyncInstance
  readonly #find: StatementSyncInstance
  readonly #readAll: StatementSyncInstance
  readonly #readOld: StatementSyncInstance
  readonly #deleteOld: StatementSyncInstance
  readonly #readTogether: StatementSyncInstance
  readonly #writeTogether: StatementSyncInstance

  constructor(db: DatabaseSyncInstance, file: string) {
    this.#db = db
    this.#file = file
    this.#insert = db.prepare('INSERT INTO refusals (command_id, recorded_at_ms, answer, sum) VALUES (?, ?, ?, ?)')
    this.#find = db.prepare('SELECT * FROM refusals WHERE command_id = ?')
    this.#readAll = db.prepare('SELECT * FROM refusals')
    this.#readOld = db.prepare('SELECT sum FROM refusals WHERE recorded_at_ms < ?')
    this.#deleteOld = db.prepare('DELETE FROM refusals WHERE recorded_at_ms < ?')
    this.#readTogether = db.prepare("SELECT value FROM about WHERE key = 'refusals'")
    this.#writeTogether = db.prepare("UPDATE about SET value = ? WHERE key = 'refusals'")
  }

  /** Within the caller's transaction. */
  insert(refusals: readonly Refused[]): void {
    if (refusals.length === 0) return
    let together = this.#together()
    for (const { commandId, recordedAtMs, answer } of refusals) {
      const row = { commandId, recordedAtMs, answer: JSON.stringify(answer) }
      const sum = refusalSum(row)
      this.#insert.run(commandId, recordedAtMs, row.answer, sum)
      together = xor(together, sum)
    }
    this.#writeTogether.run(String(together))
  }

  /** @throws JournalError when the row is not as it was written */
  find(commandId: CommandId): Answer | null {
    const row = orInWords(this.#file, () => this.#find.get(commandId))
    if (row === undefined) return null
    this.#sumOf(row)
    return JSON.parse(String(row.answer))
  }

  /** @throws JournalError when one is missing or not as it was written */
  assertAllThere(): void {
    let together = 0
    for (const row of this.#readAll.all()) together = xor(together, this.#sumOf(row))
    if (together !== this.#together()) throw new JournalError(`Refusals of the journal are missing. ${this.#remedy}`)
  }

  prune(beforeMs: EpochMs): number {
    const old = this.#readOld.all(beforeMs)
    if (old.length === 0) return 0
    this.#db.exec('BEGIN IMMEDIATE')
    try {
      const left = old.reduce((together, { sum }) => xor(together, Number(sum ?? 0)), this.#together())
      this.#writeTogether.run(String(left))
      this.#deleteOld.run(beforeMs)
      this.#db.exec('COMMIT')
    } catch (error) {
      if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
      throw error
    }
    return old.length
  }

  /** A row's sum, 0 where it has none. @throws JournalError when it is not the row's */
  #sumOf(row: { [column: string]: unknown }): number {
    if (row.sum === null) return 0
    const commandId = String(row.command_id)
    if (row.sum !== refusalSum({ commandId, recordedAtMs: Number(row.recorded_at_ms), answer: String(row.answer) }))
      throw new JournalError(`The refusal of command ${commandId} is not as it was written. ${this.#remedy}`)
    return row.sum
  }

  #together(): number {
    return Number(this.#readTogether.get()?.value)
  }

  get #remedy(): string {
    return remedyFor(this.#file)
  }
}

/** Sums are whole numbers of 32 bits without a sign. */
function xor(one: number, other: number): number {
  return (one ^ other) >>> 0
}

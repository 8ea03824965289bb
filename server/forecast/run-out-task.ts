import { runOut } from '../../shared-core/demand/run-out.ts'
import { dateOf, minuteOf, piecesOf } from './fields.ts'
import { InputError, wrongAt } from './input-error.ts'
import { readCsv } from './read-csv.ts'
import type { Till } from './till.ts'
import { walk } from './walk.ts'

/** What was left of an item at a minute of a day. */
export interface RunOutCase {
  readonly date: string
  readonly item: string
  readonly asOf: number
  readonly stock: number
  /** When the shop closes that day; null: when it usually does. */
  readonly close: number | null
}

export interface RunOutRow extends RunOutCase {
  /** Gone by then with 10, 50 and 90 % chance; null: not before close. */
  readonly t10: number | null
  readonly t50: number | null
  readonly t90: number | null
}

/** When each case is gone, from the days before and that day's sales until then. */
export function* runOutTask(till: Till, cases: readonly RunOutCase[]): Generator<RunOutRow, void> {
  const byDate = new Map<string, RunOutCase[]>()
  for (const one of cases) byDate.set(one.date, [...(byDate.get(one.date) ?? []), one])
  for (const { learner, asked, upTo } of walk(till, byDate.keys())) {
    for (const one of byDate.get(asked.date) ?? []) {
      const closeMinute = Math.max(one.close ?? asked.closeMinute, asked.openMinute + 1)
      const day = { ...asked, closeMinute }
      const rest = learner.rest(learner.ahead(day), { ...upTo(one.asOf), closeMinute }, one.asOf).get(one.item)
      const stock = { mean: one.stock, doubt: 0 }
      const { t10, t50, t90 } =
        rest === undefined
          ? { t10: null, t50: null, t90: null }
          : runOut(rest, stock, [], one.asOf, Math.max(closeMinute, one.asOf))
      yield { ...one, t10, t50, t90 }
    }
  }
}

/** Cases of a file date,item,asof,stock, with close where it is known. */
export async function readCases(path: string): Promise<readonly RunOutCase[]> {
  const cases: RunOutCase[] = []
  for await (const row of readCsv(path, ['date', 'item', 'asof', 'stock'])) {
    const wrong = (column: string, right: string) =>
      wrongAt(path, row.line, `${column} is '${row.maybe(column)}'; it would be ${right}`)
    const date = dateOf(row.text('date'))
    if (date === null) throw wrong('date', 'like 2026-11-26')
    const asOf = minuteOf(row.text('asof'))
    if (asOf === null) throw wrong('asof', 'a time like 10:00')
    const stock = piecesOf(row.text('stock'))
    if (stock === null || stock < 0) throw wrong('stock', 'a whole number of pieces, 0 or more')
    const close = row.maybe('close') === '' ? null : minuteOf(row.maybe('close'))
    if (close === null && row.maybe('close') !== '') throw wrong('close', 'a time like 17:15, or empty')
    cases.push({ date, item: row.text('item'), asOf, stock, close })
  }
  if (cases.length === 0) throw new InputError(`${path}: there is no case; a line would follow the header`)
  return cases
}

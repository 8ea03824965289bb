import type { Span } from '../../shared-core/demand/sales-day.ts'
import { dateOf, minuteOf } from './fields.ts'
import { InputError, wrongAt } from './input-error.ts'
import { readCsv } from './read-csv.ts'
import type { Till } from './till.ts'
import { walk } from './walk.ts'

/** An item's day: when it sold out, null where it did not. */
export interface SoldOutCase {
  readonly date: string
  readonly item: string
  readonly soldOutAt: number | null
}

export interface SoldOutRow {
  readonly date: string
  readonly item: string
  /** Pieces that would have gone. */
  readonly demand: number
}

const DAY_MINUTES = 1440

/** The true demand of each item's day that is listed, from that day and the days before it. */
export function* soldOutTask(till: Till, cases: readonly SoldOutCase[]): Generator<SoldOutRow, void> {
  const byDate = new Map<string, SoldOutCase[]>()
  for (const one of cases) byDate.set(one.date, [...(byDate.get(one.date) ?? []), one])
  const goneBy = new Map([...byDate].map(([date, some]) => [date, goneOf(some)]))
  for (const { learner, upTo } of walk(till, byDate.keys(), goneBy)) {
    const day = upTo()
    const listed = byDate.get(day.date)
    if (listed === undefined) continue
    const demands = learner.trueDemand(day)
    for (const { date, item } of listed) yield { date, item, demand: demands.get(item) ?? 0 }
  }
}

function goneOf(cases: readonly SoldOutCase[]): ReadonlyMap<string, readonly Span[]> {
  return new Map(
    cases.flatMap(({ item, soldOutAt }) =>
      soldOutAt === null ? [] : [[item, [{ fromMinute: soldOutAt, toMinute: DAY_MINUTES }]] as const],
    ),
  )
}

/** The lines of one mechanism (A or B) of a file mechanism,date,item,sold_out_at. */
export async function readSoldOut(path: string, mechanism: string): Promise<readonly SoldOutCase[]> {
  const cases = new Map<string, SoldOutCase>()
  for await (const row of readCsv(path, ['mechanism', 'date', 'item', 'sold_out_at'])) {
    if (row.text('mechanism') !== mechanism) continue
    const date = dateOf(row.text('date'))
    if (date === null) throw wrongAt(path, row.line, `date is '${row.text('date')}'; it would be like 2026-11-26`)
    const at = row.maybe('sold_out_at')
    const soldOutAt = at === '' ? null : minuteOf(at)
    if (at !== '' && soldOutAt === null) {
      throw wrongAt(path, row.line, `sold_out_at is '${at}'; it would be a time like 13:40, or empty`)
    }
    const item = row.text('item')
    const key = JSON.stringify([date, item])
    if (cases.has(key)) throw wrongAt(path, row.line, `'${item}' on ${date} stands there twice`)
    cases.set(key, { date, item, soldOutAt })
  }
  if (cases.size === 0) throw new InputError(`${path}: no line has the mechanism '${mechanism}'`)
  return [...cases.values()]
}

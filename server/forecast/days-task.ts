import { dateOf } from './fields.ts'
import { InputError, wrongAt } from './input-error.ts'
import { quantilesOf } from './quantiles.ts'
import { readCsv } from './read-csv.ts'
import type { Till } from './till.ts'
import { walk } from './walk.ts'

export interface DaysAsked {
  readonly from: string
  readonly to: string
  /** Minutes of the day. */
  readonly asOf: readonly number[]
}

/** A forecast of one item on one day: of the whole day (asOf null) or from that minute on. */
export interface DaysRow {
  readonly date: string
  readonly item: string
  readonly asOf: number | null
  /** At `LEVELS`. */
  readonly quantiles: readonly number[]
}

/** @throws InputError where no day of the window is open */
export function checkWindow({ dates }: Till, { from, to }: Pick<DaysAsked, 'from' | 'to'>): void {
  if (dates.some((date) => date >= from && date <= to)) return
  const there =
    dates.length === 0 ? 'the files have none at all' : `the files have sales from ${dates[0]} to ${dates.at(-1)}`
  throw new InputError(`no day from ${from} to ${to} has a sale; ${there}`)
}

/** Forecasts of each open day in the window, by item in the order given, the whole day first. */
export function* daysTask(
  till: Till,
  items: readonly string[],
  { from, to, asOf }: DaysAsked,
): Generator<DaysRow, void> {
  for (const { learner, asked, upTo } of walk(till, [])) {
    const { date } = asked
    if (date > to) return
    if (date < from) continue
    const ahead = learner.ahead(asked)
    for (const item of items) yield { date, item, asOf: null, quantiles: quantilesOf(ahead.get(item)) }
    for (const minute of asOf) {
      const rest = learner.rest(ahead, upTo(minute), minute)
      for (const item of items) yield { date, item, asOf: minute, quantiles: quantilesOf(rest.get(item)) }
    }
  }
}

/** Items to forecast, of a file with a column `item` and, where only some are, `evaluated` (1 or 0). */
export async function readItems(path: string): Promise<readonly string[]> {
  const items: string[] = []
  for await (const row of readCsv(path, ['item'])) {
    const item = row.text('item')
    if (items.includes(item)) throw wrongAt(path, row.line, `item '${item}' stands there twice`)
    const evaluated = row.maybe('evaluated')
    if (evaluated !== '' && evaluated !== '0' && evaluated !== '1') {
      throw wrongAt(path, row.line, `evaluated is '${evaluated}'; it would be 1 or 0`)
    }
    if (evaluated !== '0') items.push(item)
  }
  if (items.length === 0)
    throw new InputError(`${path}: no item is to be forecast; at least one line would have evaluated 1`)
  return items
}

/** A date option. */
export function checkedDate(name: string, text: string): string {
  const date = dateOf(text)
  if (date === null) throw new InputError(`--${name} is '${text}'; it would be a date like 2026-11-26`)
  return date
}

import type { Writable } from 'node:stream'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { stringify } from 'csv-stringify'
import { checkedDate, checkWindow, daysTask, readItems } from './days-task.ts'
import { minuteOf, timeText } from './fields.ts'
import { HELP } from './help.ts'
import { InputError } from './input-error.ts'
import type { Options } from './options.ts'
import { readOptions, UsageError } from './options.ts'
import { readCases, runOutTask } from './run-out-task.ts'
import { readSoldOut, soldOutTask } from './sold-out-task.ts'
import type { Till } from './till.ts'
import { readTill } from './till.ts'

/** Columns and rows of what a task writes. */
interface Table {
  readonly columns: readonly string[]
  readonly rows: Iterable<readonly (string | number)[]>
}

/** Where the command writes. */
export interface Outlets {
  readonly data: Writable
  say(sentence: string): void
}

/**
 * Runs the command.
 * @returns exit status: 0, 1 for bad input, 2 where the command itself cannot be read
 */
export async function forecastCommand(args: readonly string[], { data, say }: Outlets): Promise<number> {
  try {
    const options = readOptions(args)
    if (options === null) {
      data.write(HELP)
      return 0
    }
    const { columns, rows } = await tableOf(options, say)
    await pipeline(Readable.from(rows), stringify({ header: true, columns: [...columns] }), data)
    return 0
  } catch (error) {
    // Whoever reads has enough: `… | head`.
    if ((error as NodeJS.ErrnoException).code === 'EPIPE') return 0
    if (!(error instanceof InputError) && !(error instanceof UsageError)) throw error
    say(error.message)
    return error instanceof UsageError ? 2 : 1
  }
}

async function tableOf(options: Options, say: Outlets['say']): Promise<Table> {
  switch (options.task) {
    case 'days':
      return daysTable(options, say)
    case 'soldout':
      return soldOutTable(options, say)
    default:
      return runOutTable(options, say)
  }
}

async function daysTable(options: Options, say: Outlets['say']): Promise<Table> {
  const from = checkedDate('from', options.one('from'))
  const to = checkedDate('to', options.one('to'))
  if (to < from) throw new InputError(`--to is ${to}; it would not be before --from, ${from}`)
  const asOf = [...new Set(options.many('asof', 'optional'))].map(asOfMinute)
  const items = await readItems(options.one('items'))
  const till = await tillOf(options, say)
  checkWindow(till, { from, to })
  const hasAsOf = asOf.length > 0
  return {
    columns: ['date', 'item', 'q10', 'q50', 'q80', 'q90', ...(hasAsOf ? ['asof'] : [])],
    rows: mapped(daysTask(till, items, { from, to, asOf }), ({ date, item, quantiles, asOf: minute }) => [
      date,
      item,
      ...quantiles,
      ...(hasAsOf ? [timeOrEmpty(minute)] : []),
    ]),
  }
}

async function soldOutTable(options: Options, say: Outlets['say']): Promise<Table> {
  const mechanism = options.one('mechanism')
  const cases = await readSoldOut(options.one('soldout'), mechanism)
  const rows = soldOutTask(await tillOf(options, say), cases)
  return {
    columns: ['mechanism', 'date', 'item', 'est_demand'],
    rows: mapped(rows, ({ date, item, demand }) => [mechanism, date, item, Math.round(demand * 1000) / 1000]),
  }
}

async function runOutTable(options: Options, say: Outlets['say']): Promise<Table> {
  const cases = await readCases(options.one('cases'))
  return {
    columns: ['date', 'item', 'asof', 'stock', 't10', 't50', 't90'],
    rows: mapped(runOutTask(await tillOf(options, say), cases), (row) => [
      row.date,
      row.item,
      timeText(row.asOf),
      row.stock,
      timeOrEmpty(row.t10),
      timeOrEmpty(row.t50),
      timeOrEmpty(row.t90),
    ]),
  }
}

async function tillOf(options: Options, say: Outlets['say']): Promise<Till> {
  const till = await readTill(options.many('sales', 'needed'), say)
  say(`${till.dates.length} open days`)
  return till
}

function asOfMinute(text: string): number {
  const minute = minuteOf(text)
  if (minute === null) throw new InputError(`--asof is '${text}'; it would be a time like 10:00`)
  return minute
}

function timeOrEmpty(minute: number | null): string {
  return minute === null ? '' : timeText(minute)
}

function* mapped<From, To>(values: Iterable<From>, to: (value: From) => To): Generator<To, void> {
  for (const value of values) yield to(value)
}

import { existsSync } from 'node:fs'
import { minuteOf } from '../../server/forecast/fields.ts'
import { readCsv } from '../../server/forecast/read-csv.ts'
import type { Till } from '../../server/forecast/till.ts'
import { readTill } from '../../server/forecast/till.ts'
import type { CameOut, Truth } from './forecast-score.ts'

/**
 * The open data beside the checkout; their README names source, licence and where they may be used. They are never copied
 * into the repository: whoever uses them says that it was skipped when the folder is not there.
 */
/** As it is named relative to the checkout. */
export const FOLDER_NAME = '../shared/data'
const FOLDER = new URL('../../../shared/data/', import.meta.url)

/** The days kept for validation, and training days that are walked over as well. */
export const VALIDATION = { from: '2017-02-05', to: '2017-02-28' } as const
export const TRAINING_END = { from: '2016-12-10', to: '2017-02-04' } as const

export function hasData(): boolean {
  return existsSync(new URL('sales_public.csv.gz', FOLDER))
}

export function pathOf(name: string): string {
  return new URL(name, FOLDER).pathname
}

export async function tillOf(name: string): Promise<Till> {
  return readTill([pathOf(name)], () => undefined)
}

/** True demand under a mechanism, A or B. */
export async function truthsOf(mechanism: string): Promise<Truth[]> {
  const truths: Truth[] = []
  for await (const row of readCsv(pathOf('censored_public_truth.csv'), ['mechanism', 'date', 'item', 'demand'])) {
    if (row.text('mechanism') !== mechanism) continue
    const isCut = row.maybe('sold_out_at') !== ''
    truths.push({ date: row.text('date'), item: row.text('item'), demand: Number(row.text('demand')), isCut })
  }
  return truths
}

/** What came of each case of run-out, in the file's order. */
export async function cameOut(): Promise<CameOut[]> {
  const came: CameOut[] = []
  for await (const row of readCsv(pathOf('runout_public_truth.csv'), ['close', 'runout'])) {
    const runOut = row.maybe('runout') === '' ? null : minuteOf(row.maybe('runout'))
    came.push({ close: minuteOf(row.text('close')) ?? Number.NaN, runOut })
  }
  return came
}

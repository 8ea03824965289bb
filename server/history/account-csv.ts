import { stringify } from 'csv-stringify/sync'
import type { DayAccount, DoughAccount, VarietyAccount } from '../../shared-core/day/day-account.ts'
import type { FormulaAccount } from '../../shared-core/day/dough-account.ts'
import { asText } from './csv-text.ts'

/**
 * A day's account as a table for a spreadsheet (RFC 4180: commas, CRLF, a header line): a row for each dough, in which
 * every piece is accounted for, one for each variety, from the oven on, and one for each formula, its dough in grams. What a row has no meaning for is empty. A
 * name that a spreadsheet would take for a formula is escaped.
 */
export function accountCsv(label: string, { doughs, varieties, formulas }: DayAccount): string {
  const rows = [
    ...doughs.map((dough) => doughRow(label, dough)),
    ...varieties.map((one) => varietyRow(label, one)),
    ...formulas.map((one) => formulaRow(label, one)),
  ]
  return stringify(rows, { header: true, columns: COLUMNS, record_delimiter: 'windows', quote_record_delimiter: true })
}

const COLUMNS = [
  'day',
  'row',
  'dough',
  'variety',
  'shaped',
  'carried_in',
  'baked',
  'sold',
  'sold_unnamed',
  'day_old_sold',
  'kitchen',
  'wasted',
  'given',
  'left_day_old',
  'unexplained',
  'still_there',
  'price',
  'sales',
  'formula',
  'mixed_g',
  'carried_in_g',
  'shaped_g',
  'lost_g',
  'spoilt_g',
  'unexplained_g',
  'left_g',
]

function doughRow(day: string, { name, account, stillThere }: DoughAccount): object {
  const { shaped, carriedIn, sold, kitchen, wasted, given, dayOld, unexplained } = account
  return {
    ...{ day, row: 'dough', dough: asText(name), shaped, carried_in: carriedIn, sold, kitchen, wasted, given },
    ...{ left_day_old: dayOld, unexplained, still_there: stillThere },
  }
}

function varietyRow(day: string, one: VarietyAccount): object {
  const { name, dough, baked, sold, soldUnnamed, dayOldSold, kitchen, wasted, given, left, unexplained } = one
  return {
    ...{ day, row: 'variety', dough: asText(dough), variety: asText(name), baked, sold, sold_unnamed: soldUnnamed },
    ...{ day_old_sold: dayOldSold, kitchen, wasted, given, left_day_old: left, unexplained },
    ...{ price: money(one.priceCents), sales: money(one.salesCents) },
  }
}

/** In the words of the account: mixed + carried in = shaped + lost + spoilt + unexplained + left. */
function formulaRow(day: string, one: FormulaAccount): object {
  return {
    ...{
      day,
      row: 'formula',
      formula: asText(one.name),
      mixed_g: one.mixed / 1_000,
      carried_in_g: one.carriedIn / 1_000,
    },
    ...{ shaped_g: one.shaped / 1_000, lost_g: one.lost / 1_000, spoilt_g: one.spoilt / 1_000 },
    ...{ unexplained_g: one.unexplained / 1_000, left_g: one.left / 1_000 },
  }
}

/** In the shop's money with a point, as no currency or locale is known. */
function money(cents: number): string {
  return (cents / 100).toFixed(2)
}

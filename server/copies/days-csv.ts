import { stringify } from 'csv-stringify/sync'
import type { DayAccount, DoughAccount } from '../../shared-core/day/day-account.ts'
import type { Account } from '../../shared-core/day/state.ts'
import type { DayRow } from '../history/day-store.ts'

/** The columns of `days.csv`: pieces of all doughs together; in each row they add up as in the account. */
export const DAYS_COLUMNS = [
  'day',
  'opened',
  'closed',
  'shaped',
  'carried_in',
  'sold',
  'kitchen',
  'wasted',
  'given',
  'day_old',
  'unexplained',
  'still_there',
  'sales',
] as const

/** The header line (RFC 4180: commas, CRLF). */
export function daysHeader(): string {
  return line([...DAYS_COLUMNS])
}

/** A day's line. Instants are UTC; `closed` is empty for a day that is open; `sales` is the shop's money with a point. */
export function dayLine(
  { label, openedAtMs, closedAtMs }: Pick<DayRow, 'label' | 'openedAtMs' | 'closedAtMs'>,
  { doughs, varieties }: DayAccount,
): string {
  const pieces = (column: keyof Account) => total(doughs, ({ account }) => account[column])
  const cents = varieties.reduce((sum, { salesCents }) => sum + salesCents, 0)
  return line([
    ...[label, instant(openedAtMs), closedAtMs === null ? '' : instant(closedAtMs)],
    ...[pieces('shaped'), pieces('carriedIn'), pieces('sold'), pieces('kitchen'), pieces('wasted'), pieces('given')],
    ...[
      pieces('dayOld'),
      pieces('unexplained'),
      total(doughs, ({ stillThere }) => stillThere),
      (cents / 100).toFixed(2),
    ],
  ])
}

function total(doughs: readonly DoughAccount[], of: (dough: DoughAccount) => number): number {
  return doughs.reduce((sum, dough) => sum + of(dough), 0)
}

function instant(atMs: number): string {
  return new Date(atMs).toISOString()
}

function line(values: readonly (string | number)[]): string {
  return stringify([values], { record_delimiter: 'windows' })
}

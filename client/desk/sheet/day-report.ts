import { EMPTY_ACCOUNT } from '../../../shared-core/day/account.ts'
import type { ClosedDay } from '../../../shared-core/day/closed-day.ts'
import type { DayFigures } from '../../../shared-core/day/figures.ts'
import type { Note } from '../../../shared-core/day/said.ts'
import type { Account, Line, State } from '../../../shared-core/day/state.ts'
import type { DoughId } from '../../../shared-core/ids.ts'
import { carriedOn } from '../account-view.ts'

/** All that one page tells of a day. */
export interface DayReport {
  readonly label: string
  readonly openedAtMs: ClosedDay['openedAtMs']
  readonly closedAtMs: ClosedDay['closedAtMs'] | null
  readonly rows: readonly ReportRow[]
  readonly total: Omit<ReportRow, 'doughId'>
  /** Left for sale at the close; null while it is open. */
  readonly left: readonly Line[] | null
  /** Null while nobody has worked them out. */
  readonly figures: DayFigures | null
  readonly notes: readonly Note[]
}

export interface ReportRow extends Account {
  readonly doughId: DoughId
  /** In a stage, for sale or kept at the end. */
  readonly stillThere: number
}

/** The day closed last, as the state remembers it. */
export function reportOfClosed(day: ClosedDay, figures: DayFigures | null, notes: readonly Note[]): DayReport {
  const rows = day.account.map(({ doughId, account }) => rowOf(doughId, account))
  const { label, openedAtMs, closedAtMs, left } = day
  return { label, openedAtMs, closedAtMs, rows, total: totalOf(rows), left, figures, notes }
}

/** The day that is open. @returns null when none is */
export function reportOfOpen(
  { day, account }: State,
  figures: DayFigures | null,
  notes: readonly Note[],
): DayReport | null {
  if (day === null) return null
  const rows = [...account].map(([doughId, booked]) => rowOf(doughId, booked))
  const { label, openedAtMs } = day
  return { label, openedAtMs, closedAtMs: null, rows, total: totalOf(rows), left: null, figures, notes }
}

function rowOf(doughId: DoughId, account: Account): ReportRow {
  return { doughId, ...account, stillThere: carriedOn(account) }
}

function totalOf(rows: readonly ReportRow[]): DayReport['total'] {
  const sum = { ...EMPTY_ACCOUNT, stillThere: 0 }
  return rows.reduce<DayReport['total']>(
    (so, row) => ({
      shaped: so.shaped + row.shaped,
      carriedIn: so.carriedIn + row.carriedIn,
      sold: so.sold + row.sold,
      kitchen: so.kitchen + row.kitchen,
      wasted: so.wasted + row.wasted,
      given: so.given + row.given,
      dayOld: so.dayOld + row.dayOld,
      unexplained: so.unexplained + row.unexplained,
      stillThere: so.stillThere + row.stillThere,
    }),
    sum,
  )
}

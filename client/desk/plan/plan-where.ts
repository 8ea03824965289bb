import { isDate } from '../../../shared-core/day/label.ts'

/** A page of the plan's place. */
export interface PlanWhere {
  /** Null: whichever day comes next. */
  readonly date: string | null
  readonly page: 'day' | 'what-if'
}

/** @example planWhere('2026-11-25/what-if') // { date: '2026-11-25', page: 'what-if' } */
export function planWhere(within: string): PlanWhere {
  const [first = '', second = ''] = within.split('/')
  const page = [first, second].includes('what-if') ? 'what-if' : 'day'
  return { date: isDate(first) ? first : null, page }
}

/** @example withinOf({ date: '2026-11-25', page: 'day' }) // '2026-11-25' */
export function withinOf({ date, page }: PlanWhere): string {
  return [...(date === null ? [] : [date]), ...(page === 'day' ? [] : [page])].join('/')
}

interface ShopDay {
  readonly today: string
  readonly tomorrow: string
  /** Of the day that is open; null: none is. */
  readonly openLabel: string | null
  /** Closed today, or past today's hours. */
  readonly isOver: boolean
}

/** The day that people plan for: the open one, today until it is over, then tomorrow. */
export function nextDay({ today, tomorrow, openLabel, isOver }: ShopDay): string {
  // One that nobody closed is of yesterday: its loads are past.
  if (openLabel !== null && openLabel >= today) return openLabel
  return isOver ? tomorrow : today
}

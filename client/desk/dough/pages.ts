import { isDate } from '../../../shared-core/day/label.ts'

/** The pages of the dough room, in the order in which its work is thought through. */
export const PAGES = ['days', 'day', 'order', 'sheets', 'stock', 'running', 'learnt'] as const
export type DoughPage = (typeof PAGES)[number]

export interface DoughWhere {
  readonly page: DoughPage
  /** Of a day's pages; null: the next one. */
  readonly date: string | null
}

/** What stands in the address after the place. @example doughWhere('day/2026-11-27') // { page: 'day', date: '2026-11-27' } */
export function doughWhere(within: string): DoughWhere {
  const [name, date = ''] = within.split('/')
  const page = PAGES.find((one) => one === name) ?? 'days'
  return { page, date: isDate(date) ? date : null }
}

/** @example withinOf('day', '2026-11-27') // 'day/2026-11-27' */
export function withinOf(page: DoughPage, date: string | null = null): string {
  return date === null ? page : `${page}/${date}`
}

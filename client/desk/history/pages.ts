import { isDate } from '../../../shared-core/day/label.ts'
import type { HistoryRange } from '../../words/desk-history.ts'

/** What a page is about: "all", "dough:ID" or "variety:ID", as the API has it. */
export type SalesOf = string

export type HistoryWhere =
  | { readonly page: 'sales'; readonly of: SalesOf; readonly range: HistoryRange }
  | { readonly page: 'day'; readonly date: string }
  | { readonly page: 'trust'; readonly of: SalesOf | null; readonly range: TrustRange }
  | { readonly page: 'line' }

export const RANGES: readonly HistoryRange[] = ['28', '84', '364', 'all']
export type TrustRange = '28' | '84' | '365'
export const TRUST_RANGES: readonly TrustRange[] = ['28', '84', '365']
const USUAL = '84'

/**
 * What stands in the address after the place.
 * @example historyWhere('sales/variety:sesame/28') // { page: 'sales', of: 'variety:sesame', range: '28' }
 */
export function historyWhere(within: string): HistoryWhere {
  const [name = '', second = '', third = ''] = within.split('/')
  if (name === 'day' && isDate(second)) return { page: 'day', date: second }
  if (name === 'trust') {
    const range = TRUST_RANGES.find((one) => one === third) ?? USUAL
    return { page: 'trust', of: second === '' || second === 'each' ? null : second, range }
  }
  if (name === 'line') return { page: 'line' }
  if (name !== 'sales') return { page: 'sales', of: 'all', range: USUAL }
  return { page: 'sales', of: second === '' ? 'all' : second, range: RANGES.find((one) => one === third) ?? USUAL }
}

/** @example withinOf({ page: 'day', date: '2026-11-24' }) // 'day/2026-11-24' */
export function withinOf(where: HistoryWhere): string {
  switch (where.page) {
    case 'sales':
      return `sales/${where.of}/${where.range}`
    case 'day':
      return `day/${where.date}`
    case 'trust':
      return `trust/${where.of ?? 'each'}/${where.range}`
    case 'line':
      return 'line'
  }
}

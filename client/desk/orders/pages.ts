import { isDate } from '../../../shared-core/day/label.ts'
import type { OrderId, StandingId } from '../../../shared-core/ids.ts'
import { orderId, standingId } from '../../../shared-core/ids.ts'

/** Pages of the orders, by what stands after the place in the address. */
export type OrdersPage =
  /** Orders of one day; null: today. */
  | { readonly kind: 'day'; readonly date: string | null }
  /** A new order, due on that day. */
  | { readonly kind: 'new'; readonly date: string | null }
  | { readonly kind: 'order'; readonly orderId: OrderId }
  | { readonly kind: 'standing' }
  /** Null: a new one. */
  | { readonly kind: 'oneStanding'; readonly standingId: StandingId | null }
  /** Runs, boxes and picking lists of one day; null: the next that has any. */
  | { readonly kind: 'packing'; readonly date: string | null }
  | { readonly kind: 'names' }
  | { readonly kind: 'files' }

/** The pages that stand at the top of the place, in the order of what people look for. */
export const TOP_PAGES = ['day', 'standing', 'packing', 'names', 'files'] as const
export type TopPage = (typeof TOP_PAGES)[number]

/** Ids of what a person may have typed into the address: anything else is the page of today. */
const ID = /^[\w.:~-]{1,80}$/

/** @example ordersPage('2026-11-27') // { kind: 'day', date: '2026-11-27' } */
export function ordersPage(within: string): OrdersPage {
  const [head = '', ...more] = within.split('/')
  const rest = more.join('/')
  const date = isDate(rest) ? rest : null
  if (isDate(head)) return { kind: 'day', date: head }
  if (head === 'new') return { kind: 'new', date }
  if (head === 'order' && ID.test(rest)) return { kind: 'order', orderId: orderId(rest) }
  if (head === 'standing' && rest === 'new') return { kind: 'oneStanding', standingId: null }
  if (head === 'standing' && ID.test(rest)) return { kind: 'oneStanding', standingId: standingId(rest) }
  if (head === 'packing') return { kind: 'packing', date }
  if (head === 'standing' || head === 'names' || head === 'files') return { kind: head }
  return { kind: 'day', date: null }
}

/** @example withinOf({ kind: 'day', date: '2026-11-27' }) // '2026-11-27' */
export function withinOf(page: OrdersPage): string {
  switch (page.kind) {
    case 'day':
      return page.date ?? ''
    case 'new':
    case 'packing':
      return page.date === null ? page.kind : `${page.kind}/${page.date}`
    case 'order':
      return `order/${page.orderId}`
    case 'oneStanding':
      return `standing/${page.standingId ?? 'new'}`
    case 'standing':
    case 'names':
    case 'files':
      return page.kind
  }
}

/** Which of the pages at the top a page belongs to. */
export function topOf(page: OrdersPage): TopPage {
  if (page.kind === 'new' || page.kind === 'order') return 'day'
  return page.kind === 'oneStanding' ? 'standing' : page.kind
}

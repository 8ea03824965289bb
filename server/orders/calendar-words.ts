import type { Order, OrderLine } from '../../shared-core/orders/order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/** What an event of the calendar says, in the shop's language: whoever subscribes sees no screen of ours. */
interface CalendarWords {
  readonly orders: string
  readonly pieces: (count: number) => string
  readonly mixed: string
  readonly without: (names: string) => string
  readonly sliced: string
  readonly bagged: string
  readonly paid: string
  readonly way: { readonly [way in Order['way']]: string }
}

const WORDS: { readonly [language in Shop['profile']['language']]: CalendarWords } = {
  en: {
    orders: 'Orders',
    pieces: (count) => `${count} ${count === 1 ? 'piece' : 'pieces'}`,
    mixed: 'mixed',
    without: (names) => `no ${names}`,
    sliced: 'sliced',
    bagged: 'bagged',
    paid: 'Paid',
    way: { here: 'At the counter', pickUp: 'Pick-up', delivery: 'Delivery' },
  },
  es: {
    orders: 'Pedidos',
    pieces: (count) => `${count} ${count === 1 ? 'pieza' : 'piezas'}`,
    mixed: 'surtido',
    without: (names) => `sin ${names}`,
    sliced: 'rebanado',
    bagged: 'en bolsa',
    paid: 'Pagado',
    way: { here: 'En el mostrador', pickUp: 'Para recoger', delivery: 'A domicilio' },
  },
}

export function calendarWords({ profile }: Shop): CalendarWords {
  return WORDS[profile.language]
}

/** What is told of an order: never whom it is for. */
export type ToldOrder = Pick<Order, 'mark' | 'lines' | 'way' | 'isPaid'> & Partial<Pick<Order, 'items'>>

/** @example summaryOf(order, shop) // 'OSS · 36 pieces' */
export function summaryOf({ mark, lines, items = [] }: ToldOrder, shop: Shop): string {
  const pieces = lines.reduce((sum, line) => sum + line.pieces, items.length)
  return `${mark} · ${calendarWords(shop).pieces(pieces)}`
}

/** Line by line. @example "24 Sesame, sliced\n12 mixed, no Raisin\nDelivery" */
export function descriptionOf({ lines, items = [], way, isPaid }: ToldOrder, shop: Shop): string {
  const words = calendarWords(shop)
  const made = new Map<string, number>()
  for (const { itemId } of items) {
    const name = shop.menu.get(itemId)?.name ?? itemId
    made.set(name, (made.get(name) ?? 0) + 1)
  }
  return [
    ...lines.map((line) => lineOf(line, shop)),
    ...[...made].map(([name, count]) => `${count} ${name}`),
    words.way[way],
    ...(isPaid ? [words.paid] : []),
  ].join('\n')
}

function lineOf({ varietyId, without, pieces, sliced, bagged }: OrderLine, shop: Shop): string {
  const words = calendarWords(shop)
  const name = (id: OrderLine['without'][number]) => shop.varieties.get(id)?.name ?? id
  const parts = [
    `${pieces} ${varietyId === null ? words.mixed : name(varietyId)}`,
    ...(without.length === 0 ? [] : [words.without(without.map(name).join(', '))]),
    ...(sliced ? [words.sliced] : []),
    ...(bagged ? [words.bagged] : []),
  ]
  return parts.join(', ')
}

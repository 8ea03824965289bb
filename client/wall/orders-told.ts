import type { AtRisk } from '../../shared-core/orders/at-risk.ts'
import type { NextOrder, WallKitchenWords } from '../words/wall-kitchen.ts'
import type { LineRoom } from './text-lines.ts'
import { fits } from './text-lines.ts'

/** Orders of today, as the wall knows them: by their marks, and nobody's name. */
export interface OrdersNow {
  /** Those that will be short as things stand, soonest due first. */
  readonly risks: readonly (AtRisk & { readonly mark: string })[]
  /** Pieces that are fetched or leave next. */
  readonly next: readonly NextOrder[]
}

export const NO_ORDERS: OrdersNow = { risks: [], next: [] }

/** What an order lacks and what saves it, from all of it to the shortest: before its customer comes to ask. */
export function riskTexts({ risks }: OrdersNow, say: WallKitchenWords): readonly string[] {
  const [first, ...others] = risks
  if (first === undefined) return []
  const { mark, dueAtMs, saves } = first
  const missing = say.promise.short(first.missing)
  const told = saves.map((save) => say.risk({ mark, dueAtMs, missing, save: say.promise.save(save) }))
  const bare = say.risk({ mark, dueAtMs, missing, save: '' })
  const more = others.length === 0 ? [] : [say.moreRisks(others.length)]
  const all = [...told, bare]
  return [...all.map((text) => [text, ...more].join(SEPARATOR)), ...all, mark]
}

/** Orders that come next with what is kept of them: as many as fit in a line, none where not even one does. */
export function nextText({ next }: OrdersNow, say: WallKitchenWords, room: LineRoom): string {
  const texts = next.map((order) => say.next(order))
  for (let count = texts.length; count > 0; count--) {
    const text = texts.slice(0, count).join(SEPARATOR)
    if (fits(text, room)) return text
  }
  return ''
}

const SEPARATOR = ' · '

import { menuItemId } from '../../../shared-core/ids.ts'
import { kitchenActs } from '../../../shared-core/kitchen/kitchen-acts.ts'
import { partKey } from '../../../shared-core/kitchen/parts.ts'
import { quoteFor } from '../../../shared-core/kitchen/quote.ts'
import { itemIsMade } from '../../../shared-core/orders/item-steps.ts'
import type { ItemPart, OrderCommand } from '../../../shared-core/orders/order-commands.ts'
import { Chance } from '../../../shared-core/plan/bake-off/chance.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { Afternoon } from '../support/kitchen-play.ts'
import { at } from '../support/make.ts'
import { play } from '../support/play.ts'

export interface Worked {
  readonly quotedMs: number
  readonly carefulMs: number
  readonly waitedMs: number
}

export interface Working {
  readonly orders: number
  /** Mean time from one slip to the next. */
  readonly everyMs: number
  /** Bakes take so much longer than set up. */
  readonly slow?: number
}

const NAMES = ['flatbread', 'flatbread', 'flatbread', 'long', 'coffee']

/**
 * A crew that works by the board: whoever has a free hand begins what the acts call for, things go into the oven and
 * come out as they say, and how long each takes is drawn. Each slip is quoted as it is taken.
 * @returns by slip what was quoted and how long it really waited
 */
export function workedAfternoon(seed: number, { orders, everyMs, slow = 1 }: Working): readonly Worked[] {
  const chance = new Chance(seed)
  const kitchen = new Afternoon({ recordedAt: at('12:00') })
  const { state } = kitchen
  const ends = new Map<string, { readonly part: ItemPart; readonly endMs: number; readonly station: string | null }>()
  const quotes = new Map<string, { quotedMs: number; carefulMs: number; takenMs: number }>()
  const worked: Worked[] = []
  let nowMs: number = at('12:00')
  let nextMs = nowMs
  let taken = 0
  let sentAway = 0
  const move = (
    parts: readonly ItemPart[],
    to: Extract<OrderCommand, { type: 'moveItems' }>['to'],
    shelf: string | null,
  ) => play(state, { type: 'moveItems', parts, to, shelfId: shelf as never }, { nowMs: epochMs(nowMs) })
  while (worked.length + sentAway < orders) {
    for (const [key, { part, endMs }] of ends) {
      if (endMs > nowMs) continue
      ends.delete(key)
      move([part], 'made', null)
    }
    for (const order of [...state.orders.values()]) {
      if (!order.items.every(itemIsMade)) continue
      const quote = quotes.get(order.mark)
      if (quote !== undefined) worked.push({ ...quote, waitedMs: nowMs - quote.takenMs })
      play(state, { type: 'handOverOrder', orderId: order.id, lines: null }, { nowMs: epochMs(nowMs) })
    }
    if (taken < orders && nextMs <= nowMs) {
      const items = Array.from({ length: 1 + chance.index(3) }, () =>
        plain(NAMES[chance.index(NAMES.length)] ?? 'coffee'),
      )
      const quote = quoteFor(state, epochMs(nowMs), items)
      taken += 1
      if ('cannot' in quote) sentAway += 1
      else {
        const order = { mark: String(taken), dueAtMs: null, way: 'here', runId: null, stop: 0 } as const
        const paid = { ...order, lines: [], items, isPaid: true }
        play(state, { type: 'takeOrder', ...paid }, { nowMs: epochMs(nowMs) })
        quotes.set(order.mark, { quotedMs: quote.medianMs, carefulMs: quote.carefulMs, takenMs: nowMs })
      }
      nextMs = nowMs - Math.log(1 - chance.part()) * everyMs
    }
    const soonMs = begin()
    nowMs = Math.min(
      taken < orders ? nextMs : Number.POSITIVE_INFINITY,
      soonMs,
      ...[...ends.values()].map(({ endMs }) => endMs),
    )
    // The oven closes before all is made.
    if (!Number.isFinite(nowMs)) return worked
    nowMs = Math.ceil(nowMs)
  }
  return worked

  /** All that can be begun now. @returns when something is called for next */
  function begin(): number {
    for (;;) {
      const acts = kitchenActs(state, epochMs(nowMs), null).filter(({ act }) => act === 'make' || act === 'in')
      const act = acts.find(({ act: kind, atMs, stationId }) => atMs <= nowMs && (kind === 'in' || hasHand(stationId)))
      if (act === undefined) return Math.min(...acts.map(({ atMs }) => atMs).filter((atMs) => atMs > nowMs))
      const station = act.act === 'in' ? null : act.stationId
      move(act.parts, 'begun', act.shelfId)
      for (const part of act.parts) {
        const step = state.orders.get(part.orderId)?.items.find(({ no }) => no === part.no)?.steps[part.step]
        const factor = station === null ? slow * (1 + 0.1 * chance.part()) : 0.8 + 0.5 * chance.part()
        ends.set(partKey(part), {
          part,
          endMs: nowMs + (step?.takesMs ?? 0) * factor,
          station,
        })
      }
    }
  }

  function hasHand(stationId: string | null): boolean {
    const hands = state.shop?.kitchenStations.get(stationId as never)?.hands ?? 0
    return [...ends.values()].filter(({ station }) => station === stationId).length < hands
  }
}

function plain(name: string) {
  const asked = { varietyId: null, toasted: false, without: [], more: [], allergies: [], times: 1 }
  return { ...asked, itemId: menuItemId(name) }
}

import { dateAfter } from '../../shared-core/day/label.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Quote } from '../../shared-core/kitchen/quote.ts'
import { quoteFor } from '../../shared-core/kitchen/quote.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { OutlookTold, PlanTold } from '../../shared-core/live/protocol.ts'
import type { AskedOrder } from '../../shared-core/orders/order-commands.ts'
import type { Promised } from '../../shared-core/orders/promise.ts'
import { promiseFor } from '../../shared-core/orders/promise.ts'
import { supplyAsked } from '../../shared-core/orders/supply-asked.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { later } from '../../shared-core/units.ts'
import { localDate, shopClock } from '../live/shop-clock.ts'

export interface Promising {
  readonly now: () => EpochMs
  /** The outlook and the plan that were told last; null: none yet. */
  readonly outlook: () => OutlookTold | null
  readonly plan: () => PlanTold | null
}

export interface ToldPromise {
  /** Whether it can be ready when it is due without taking anything from others. */
  readonly isPromised: boolean
  /** Of its pieces; null: it has none. */
  readonly pieces: Pick<Promised, 'atMs' | 'why' | 'split' | 'nextDayAtMs'> | null
  /** How long somebody waits for what is made to order; null: nothing is, or it is not for now. */
  readonly wait: Quote | null
}

/** Whether the board can promise an order, as the shop stands now. */
export function promiseNow(state: State, shop: Shop, asked: AskedOrder, parts: Promising): ToldPromise {
  const nowMs = parts.now()
  const clock = shopClock(shop.profile.zone, nowMs)
  const today = localDate(shop.profile.zone, nowMs)
  const dueAtMs = asked.dueAtMs ?? later(nowMs, shop.orders.madeInMs)
  const noon = (isoDate: string) => noonOf(clock, isoDate)
  const { dozenPieces } = shop.orders
  const lines = asked.lines.map((line) => ({ ...line, pieces: line.dozens * dozenPieces + line.pieces }))
  const outlook = parts.outlook()?.outlook ?? null
  const plan = parts.plan()?.plan ?? null
  const supply = supplyAsked({ state, nowMs, localDate: today, noonOf: noon, outlook, plan })
  const promised = lines.length === 0 ? null : promiseFor({ ...supply, lines })
  const isForNow = asked.items.length > 0 && localDate(shop.profile.zone, dueAtMs) === supply.date
  const wait = isForNow ? quoteFor(state, nowMs, asked.items) : null
  const isAhead = localDate(shop.profile.zone, dueAtMs) > dateAfter(supply.date, 1)
  const arePieces = promised === null || isAhead || isBy(promised, dueAtMs)
  return {
    isPromised: arePieces && (wait === null || isMadeBy(wait, nowMs, asked.dueAtMs)),
    pieces: promised && toldOf(promised),
    wait,
  }
}

function isBy({ atMs, nextDayAtMs }: Promised, dueAtMs: EpochMs): boolean {
  return (atMs !== null && atMs <= dueAtMs) || (nextDayAtMs !== null && nextDayAtMs <= dueAtMs)
}

/** Who waits is told how long; who comes at a time finds it made then, nine times in ten. */
function isMadeBy(wait: Quote, nowMs: EpochMs, dueAtMs: EpochMs | null): boolean {
  return !('cannot' in wait) && (dueAtMs === null || nowMs + wait.carefulMs <= dueAtMs)
}

function toldOf({ atMs, why, split, nextDayAtMs }: Promised): ToldPromise['pieces'] {
  return { atMs, why, split, nextDayAtMs }
}

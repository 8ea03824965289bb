import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import { roomActsAt } from '../../shared-core/dough/room-acts.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { LiveState } from '../live/shop-store.ts'
import { standsStill } from '../live/stands-still.ts'
import { planNow } from '../parts/advice.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import { actsAt } from '../parts/kitchen-calls.ts'
import { outlookNow } from '../parts/outlook-now.ts'
import { rulerNow } from '../parts/ruler-of-day.ts'
import type { BenchWords } from '../words/bench.ts'
import type { DayView } from './day-view.ts'
import { dayView } from './day-view.ts'
import type { DoneView, DryView } from './done-view.ts'
import { doneViews, dryViews, lastDoneHere } from './done-view.ts'
import { freePieces } from './free-pieces.ts'
import type { LineView } from './line-view.ts'
import { lineView } from './line-view.ts'
import type { ShelfView } from './shelf-view.ts'
import { shelfViews, unconfirmedPlaces } from './shelf-view.ts'
import type { ShiftKeyView } from './shift-key.ts'
import { shiftKeyView } from './shift-key.ts'

/** All that the bench shows at an instant, from the state and the time alone. */
export interface BenchView {
  readonly day: DayView
  readonly line: LineView
  readonly ovenHeading: string
  readonly shelves: readonly ShelfView[]
  /** Places for shelf keys: a hearth keeps some, so that keys do not change size as loads come and go. */
  readonly shelfPlaces: number
  /** All that a shelf's key may ever call for, so that its size does not follow what it says. */
  readonly shelfActs: readonly string[]
  readonly lastDone: DoneView | null
  readonly shiftKey: ShiftKeyView | null
  readonly dry: readonly DryView[]
  /** Soonest first: what sounds, and what pedals do. */
  readonly acts: readonly LineActDue[]
  /** The same of the dough room. */
  readonly roomActs: readonly RoomAct[]
  /** The same of the kitchen. */
  readonly kitchenActs: readonly KitchenActDue[]
}

export interface BenchViewParts {
  readonly live: LiveState
  readonly state: State
  readonly shop: Shop
  readonly words: BenchWords
  readonly deviceId: DeviceId
  /** The dough room's, as they were found some seconds ago at most. */
  readonly foundRoomActs: readonly RoomAct[]
  /** What is made to order, as it was looked at some seconds ago at most. */
  readonly kitchen: KitchenLook
}

/** Loads that a hearth usually holds at a time, and the one to come. */
const HEARTH_PLACES = 4

const SHELF_ACTS = ['load', 'flip', 'out'] as const

export function benchView(parts: BenchViewParts): BenchView {
  const { live, state, shop, words, deviceId, foundRoomActs } = parts
  const { nowMs, pending, connection, settings, notices, screens, shopClock } = live
  const plan = planNow(live, state)
  const unconfirmed = unconfirmedPlaces(state, pending, { nowMs, isLinked: connection.phase === 'live' })
  const shelves = shelfViews({ state, plan, nowMs, words, unconfirmed })
  const { station } = words.bench
  const { kind } = shop.oven
  const free = freePieces(state, shop, outlookNow(live, state))
  const dough = standsStill(connection) ? [] : roomActsAt(foundRoomActs, nowMs)
  const kitchen = standsStill(connection) ? [] : actsAt(parts.kitchen.acts, nowMs)
  return {
    day: dayView({
      ...live,
      state,
      plan,
      words,
      deviceName: settings.name,
      pending: pending.length,
    }),
    line: lineView({ state, plan, shop, nowMs, words, stationId: settings.stationId, free }),
    ovenHeading: kind === 'hearth' ? station.hearth : kind === 'rotating' ? station.ovenInTurn : station.oven,
    shelves,
    shelfPlaces: kind === 'hearth' ? Math.max(HEARTH_PLACES, shelves.length) : shelves.length,
    shelfActs: shelves.flatMap(({ key }) => SHELF_ACTS.map((act) => words.acts.name({ act, shelfId: key.shelfId }))),
    shiftKey: shiftKeyView({
      state,
      nowMs,
      words,
      roomActs: dough,
      kitchenActs: kitchen,
      ruler: shopClock === null ? null : rulerNow(state, nowMs, shopClock),
    }),
    lastDone: lastDoneHere({ state, deviceId, screens, words }),
    dry: dryViews(state, notices, words),
    acts: standsStill(connection) ? [] : nextActs(state, nowMs),
    roomActs: dough,
    kitchenActs: kitchen,
  }
}

export function doneList({
  live,
  state,
  words,
  deviceId,
}: Omit<BenchViewParts, 'shop' | 'foundRoomActs' | 'kitchen'>): readonly DoneView[] {
  return doneViews({ state, deviceId, screens: live.screens, words })
}

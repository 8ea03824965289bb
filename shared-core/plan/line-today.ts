import { bakingIsOver } from '../day/changeover.ts'
import { stillAhead } from '../day/forbids.ts'
import { rulerOf, slipOf } from '../day/ruler.ts'
import type { Forbid, Line, Load, State } from '../day/state.ts'
import type { DoughId, LoadId, PlannedId, ShelfId, VarietyId } from '../ids.ts'
import { usableBoards } from '../line/boards.ts'
import { contentsByLoad } from '../line/contents.ts'
import { boilsAgainAt } from '../line/kettle-care.ts'
import { expectedLoads } from '../line/planned.ts'
import { isShelfOpen, isShelfOver } from '../line/shelf-over.ts'
import { turnOrder } from '../line/turn.ts'
import type { ContactPlace } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'
import type { LineOrder } from '../orders/ordered-on.ts'
import { orderedOn } from '../orders/ordered-on.ts'
import { hoursOn } from '../shop/hours.ts'
import type { Allergen, Shop } from '../shop/shop.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import { assert } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs, later } from '../units.ts'
import { contactsNow } from './line-contacts.ts'
import type { DoughLot } from './line-dough.ts'
import { doughLots } from './line-dough.ts'

/** When the line is looked at. */
export interface LineAt {
  readonly nowMs: EpochMs
  /** The shop's noon of `date`: the minutes of its hours count from it. */
  readonly noonMs: EpochMs
  /** YYYY-MM-DD */
  readonly date: string
}

/** The line as it stands, in plain values that go from one thread to another. What the set-up says is asked of the shop. */
export interface LineToday extends LineAt {
  /** The day is open: what is planned goes on from now. Else it is planned whole. */
  readonly isOpen: boolean
  /** No more is baked today. */
  readonly isOver: boolean
  /** Said today of the changeover, earlier negative. */
  readonly slipMs: number
  /** Water that was topped up boils again by then; null: it boils. */
  readonly kettleFromMs: EpochMs | null
  /** Boards that can be used today. */
  readonly boards: number
  /** Shelves that take bagels, in the order in which they come to the door. */
  readonly shelves: readonly LineShelf[]
  /** In the oven. */
  readonly loads: readonly LineLoad[]
  /** In the kettle and on boards, the oldest first. */
  readonly begun: readonly BegunPieces[]
  /** Dough before the kettle, the window that closes first going first. */
  readonly doughs: readonly DoughLot[]
  /** Nobody has said how much dough there will be: as much as is worth baking. */
  readonly doughIsOpen: boolean
  /** For sale, expected and rounded. */
  readonly stock: readonly Line[]
  /** Out of the oven and still cooling. */
  readonly cooling: readonly (Line & { readonly readyAtMs: EpochMs })[]
  /** Ordered for the date and not kept yet, by due time; what was typed for it is due at the opening. */
  readonly ordered: readonly LineOrder[]
  /** Loads that people set, each with its shelf and its time. */
  readonly pinned: readonly PinnedLoad[]
  readonly forbids: readonly Forbid[]
  readonly contacts: readonly { readonly place: ContactPlace; readonly allergens: readonly Allergen[] }[]
}

export interface LineShelf {
  readonly shelfId: ShelfId
  /** Somebody reopened it: the changeover does not end it. */
  readonly isReopened: boolean
  readonly freeFromMs: EpochMs | null
}

export interface LineLoad {
  readonly id: LoadId
  readonly shelfId: ShelfId
  readonly plannedId: PlannedId | null
  readonly inAtMs: EpochMs
  /** When it was flipped, or should be; null: nothing in it is. */
  readonly flipAtMs: EpochMs | null
  readonly isFlipped: boolean
  readonly outAtMs: EpochMs
  readonly boards: number
  readonly lines: readonly Line[]
}

export interface BegunPieces {
  readonly doughId: DoughId
  /** Null: nobody has said what they become. */
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly stage: 'kettle' | 'boards'
  readonly sinceMs: EpochMs
}

export interface PinnedLoad {
  readonly id: PlannedId
  readonly shelfId: ShelfId
  readonly inAtMs: EpochMs
  readonly lines: readonly Line[]
}

/** @throws AssertionError without a set-up */
export function lineToday(state: State, at: LineAt): LineToday {
  const { shop } = state
  assert(shop !== null, 'a line is planned only for a shop that is set up')
  const { nowMs, noonMs, date } = at
  const ruler = rulerOf(state, nowMs, (minute) => epochMs(noonMs + (minute - 720) * 60_000), date)
  return {
    nowMs,
    noonMs,
    date,
    isOpen: state.day?.label === date,
    isOver: bakingIsOver(state, nowMs, ruler),
    slipMs: slipOf(state, date),
    kettleFromMs: boilsAgainAt(state, nowMs),
    boards: usableBoards(state, shop),
    shelves: shelvesOf(state, shop, nowMs),
    loads: loadsOf(state, shop, nowMs),
    begun: begunOf(state),
    doughs: doughLots(state, shop, nowMs),
    doughIsOpen: false,
    stock: stockOf(state, nowMs),
    cooling: coolingOf(state, nowMs),
    ordered: [...typedFor(state, shop, at), ...orderedOn(state, at)],
    pinned: pinnedOf(state, nowMs),
    forbids: stillAhead(state.forbids, nowMs),
    contacts: contactsNow(state),
  }
}

function shelvesOf(state: State, shop: Shop, nowMs: EpochMs): readonly LineShelf[] {
  return turnOrder(state, shop)
    .filter(({ id, retired }) => !retired && !isShelfOver(state, id))
    .map(({ id }) => {
      const touchedAtMs = state.shelves.get(id)?.touchedAtMs
      const freeFromMs = touchedAtMs === undefined ? null : later(touchedAtMs, shop.oven.handlingMs)
      return {
        shelfId: id,
        isReopened: isShelfOpen(state, id),
        freeFromMs: freeFromMs !== null && freeFromMs > nowMs ? freeFromMs : null,
      }
    })
}

function loadsOf(state: State, shop: Shop, nowMs: EpochMs): readonly LineLoad[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()]
    .sort((one, other) => one.loadedAtMs - other.loadedAtMs || (one.id < other.id ? -1 : 1))
    .map((load) => lineLoad(load, contents.get(load.id) ?? [], nowMs))
}

/** What is late counts as if it were done now. */
function lineLoad(load: Load, lines: readonly Line[], nowMs: EpochMs): LineLoad {
  const { id, shelfId, plannedId, loadedAtMs, phase, flip, flippedAtMs, out, boards } = load
  const flipDueMs = flip === null ? null : Math.max(flip.targetAtMs, nowMs)
  return {
    id,
    shelfId,
    plannedId,
    inAtMs: loadedAtMs,
    flipAtMs: flippedAtMs ?? (flipDueMs === null ? null : epochMs(flipDueMs)),
    isFlipped: phase === 'second-side',
    outAtMs: epochMs(Math.max(out?.targetAtMs ?? nowMs, nowMs)),
    boards: phase === 'first-side' ? boards : 0,
    lines,
  }
}

function begunOf(state: State): readonly BegunPieces[] {
  return [...state.batches.values()]
    .flatMap(({ id, stage, doughId, varietyId, pieces, sinceMs }) =>
      stage === 'kettle' || stage === 'boards' ? [{ id, doughId, varietyId, pieces, stage, sinceMs }] : [],
    )
    .sort((one, other) => one.sinceMs - other.sinceMs || (one.id < other.id ? -1 : 1))
    .map(({ doughId, varietyId, pieces, stage, sinceMs }) => ({ doughId, varietyId, pieces, stage, sinceMs }))
}

function stockOf(state: State, nowMs: EpochMs): readonly Line[] {
  const leaks = leaksOf(state)
  const salesFrom = state.shop?.counter.salesFrom ?? 'taps'
  return [...state.stock.values()]
    .map((stock) => {
      const lots = stock.lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)
      const { mean } = estimateOf(leaks, { stock, lots, nowMs, salesFrom })
      return { varietyId: stock.varietyId, pieces: Math.max(0, Math.round(mean)) }
    })
    .filter(({ pieces }) => pieces > 0)
}

function coolingOf(state: State, nowMs: EpochMs): LineToday['cooling'] {
  return [...state.stock.values()].flatMap(({ varietyId, lots }) =>
    lots
      .filter(({ readyAtMs }) => readyAtMs > nowMs)
      .map(({ pieces, readyAtMs }) => ({ varietyId, pieces, readyAtMs })),
  )
}

/**
 * Orders that were typed as a number of pieces have no hour of their own: they are there when the shop opens. Once it is open
 * they are kept or gone. What is kept for no order that the board knows is of them, and needs no baking.
 */
export function typedFor(state: State, shop: Shop, { nowMs, noonMs, date }: LineAt): readonly LineOrder[] {
  const hours = hoursOn(shop, date) ?? shop.hours
  const dueAtMs = epochMs(Math.max(0, noonMs + (hours.openMinute - 720) * 60_000))
  if (state.day?.label === date && nowMs >= dueAtMs) return []
  const kept = new Map<VarietyId, number>()
  for (const keep of state.day?.label === date ? state.keeps.values() : [])
    if (keep.orderId === undefined)
      for (const { varietyId, pieces } of keep.lines) kept.set(varietyId, (kept.get(varietyId) ?? 0) + pieces)
  const lines = (state.wanted.get(date)?.lines ?? []).flatMap(({ varietyId, ordered }) => {
    const pieces = varietyId === null ? 0 : ordered - (kept.get(varietyId) ?? 0)
    return pieces > 0 ? [{ varietyId, without: [], pieces }] : []
  })
  return lines.length === 0 ? [] : [{ dueAtMs, takenAtMs: null, leadMs: 0, coolMs: 0, lines }]
}

/** Advised loads may stand in the list of what is shown: they are not people's. */
function pinnedOf(state: State, nowMs: EpochMs): readonly PinnedLoad[] {
  const own = new Map([...state.planned].filter(([id, { done }]) => !done && !isAdvised(id)))
  return expectedLoads({ ...state, planned: own }, nowMs).map(({ planned, shelf, inAtMs }) => ({
    id: planned.id,
    shelfId: shelf.id,
    inAtMs: epochMs(Math.max(inAtMs, nowMs)),
    lines: planned.lines,
  }))
}

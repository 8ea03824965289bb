import { rulerOf } from '../day/ruler.ts'
import type { Line, State } from '../day/state.ts'
import type { DoughId, PlannedId, ShelfId, VarietyId } from '../ids.ts'
import { usableBoards } from '../line/boards.ts'
import { contacts } from '../line/contacts.ts'
import { contentsByLoad } from '../line/contents.ts'
import { boilsAgainAt } from '../line/kettle-care.ts'
import { piecesOf } from '../line/lines.ts'
import { expectedLoads } from '../line/planned.ts'
import { isShelfOver } from '../line/shelf-over.ts'
import { tappedActs } from '../line/stations.ts'
import { shelvesInOrder } from '../line/turn.ts'
import { inUse } from '../shop/in-order.ts'
import type { Allergen, Shop } from '../shop/shop.ts'
import { loadWindow } from '../shop/windows.ts'
import { NO_STOCK } from '../stock/apply-stock.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/**
 * The line as it stands, for the planner: plain values that go from one thread to another. Minutes are after local
 * midnight of the date, with fractions; null for an end that is none.
 */
export interface LineToday {
  readonly date: string
  /** Null: the day is still to come, and may be planned from its beginning. */
  readonly nowMinute: number | null
  readonly ovenReadyMinute: number
  readonly openMinute: number
  readonly closeMinute: number
  /** The oven is empty of bagels by then: the changeover with its slip, else the close. */
  readonly emptyMinute: number
  /** Null: the shop has no second menu. */
  readonly changeoverMinute: number | null
  readonly boards: number
  /** The kettle boils again by then; null: it boils. */
  readonly kettleReadyMinute: number | null
  /** That take bagels today. */
  readonly shelves: readonly ShelfId[]
  /** In the oven. */
  readonly baking: readonly LoadOnLine[]
  /** Set by people, still to come. */
  readonly pinned: readonly LoadOnLine[]
  /** In the kettle and on boards: the next loads take it. `varietyId` null: plain. */
  readonly begun: readonly DoughHere[]
  /** Before the kettle. */
  readonly dough: readonly DoughHere[]
  readonly forSale: readonly Line[]
  /** Ordered for the date and not kept yet. */
  readonly ordered: readonly Line[]
  /** Somebody taps dips: what is not in the kettle by its time was not begun. */
  readonly tapsDips: boolean
  readonly forbids: readonly {
    readonly shelfId: ShelfId | null
    readonly varietyId: VarietyId | null
    readonly fromMinute: number
    readonly toMinute: number
  }[]
  /** Allergens that are on boards or in the kettle's water. */
  readonly contactNow: readonly Allergen[]
}

export interface LoadOnLine {
  /** In the list or in the advice; null: nobody planned it. */
  readonly plannedId: PlannedId | null
  readonly shelfId: ShelfId
  readonly kettleMinute: number
  readonly inMinute: number
  readonly flipMinute: number
  readonly outMinute: number
  readonly lines: readonly Line[]
}

export interface DoughHere {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  /** Not into the kettle before it; null: at once. */
  readonly fromMinute: number | null
  /** Past its window after it; null: nothing says so. */
  readonly untilMinute: number | null
  readonly isChilled: boolean
}

export interface LineAt {
  readonly nowMs: EpochMs
  /** The shop's noon of the date. */
  readonly noonMs: EpochMs
  readonly date: string
}

/** @returns null without a set-up, and for a date on which the shop is closed and no day is open */
export function lineToday(state: State, at: LineAt): LineToday | null {
  const { shop } = state
  const ruler = shop === null ? null : rulerOf(state, at.nowMs, (minute) => instantOf(at, minute), at.date)
  if (shop === null || ruler === null) return null
  const isOpen = state.day?.label === at.date
  const minute = (ms: number) => minuteAt(at, ms)
  const known = { state, shop, at, minute }
  const changeoverMinute = ruler.changeover === null ? null : minute(ruler.changeover.fromMs)
  const closeMinute = minute(ruler.closeMs)
  return {
    date: at.date,
    nowMinute: isOpen ? minute(at.nowMs) : null,
    ovenReadyMinute: minute(ruler.ovenReadyMs),
    openMinute: minute(ruler.openMs),
    closeMinute,
    emptyMinute: changeoverMinute ?? closeMinute,
    changeoverMinute,
    boards: isOpen ? usableBoards(state, shop) : shop.boards.count,
    kettleReadyMinute: isOpen ? orNull(boilsAgainAt(state, at.nowMs), minute) : null,
    shelves: shelvesInOrder(state, shop)
      .filter(({ id }) => !isOpen || !isShelfOver(state, id))
      .map(({ id }) => id),
    baking: isOpen ? baking(known) : [],
    pinned: pinned(known, minute(ruler.fromMs) - DAY_BEGINS_MIN, closeMinute),
    begun: isOpen ? doughAt(known, ['kettle', 'boards']) : [],
    dough: doughAt(known, ['proof', 'chill', 'rack']),
    forSale: isOpen ? forSale(known) : [],
    ordered: ordered(known),
    tapsDips: tappedActs(shop).has('dip'),
    forbids: state.forbids.map(({ shelfId, varietyId, fromMs, toMs }) => ({
      shelfId,
      varietyId,
      fromMinute: minute(fromMs),
      toMinute: minute(toMs),
    })),
    contactNow: isOpen ? contactsNow(state) : [],
  }
}

/** A load list of today may begin so long before the oven is ready. */
const DAY_BEGINS_MIN = 120
const MINUTE_MS = 60_000
const NOON_MINUTE = 720

export function minuteAt({ noonMs }: Pick<LineAt, 'noonMs'>, ms: number): number {
  return (ms - noonMs) / MINUTE_MS + NOON_MINUTE
}

export function instantOf({ noonMs }: Pick<LineAt, 'noonMs'>, minute: number): EpochMs {
  return epochMs(Math.round(noonMs + (minute - NOON_MINUTE) * MINUTE_MS))
}

interface Known {
  readonly state: State
  readonly shop: Shop
  readonly at: LineAt
  readonly minute: (ms: number) => number
}

function orNull(ms: EpochMs | null, minute: (ms: number) => number): number | null {
  return ms === null ? null : minute(ms)
}

function baking({ state, shop, at, minute }: Known): readonly LoadOnLine[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()].map((load) => {
    const inMinute = minute(load.loadedAtMs)
    const flipMs = load.flippedAtMs ?? Math.max(load.flip?.targetAtMs ?? load.loadedAtMs, at.nowMs)
    return {
      plannedId: load.plannedId,
      shelfId: load.shelfId,
      kettleMinute: inMinute,
      inMinute,
      flipMinute: minute(load.phase === 'second-side' ? (load.flippedAtMs ?? load.loadedAtMs) : flipMs),
      // One that is overdue comes out now, as far as anybody knows.
      outMinute: minute(Math.max(load.out?.targetAtMs ?? at.nowMs, at.nowMs)),
      lines: contents.get(load.id) ?? [],
    }
  })
}

function pinned({ state, shop, at, minute }: Known, from: number, to: number): LineToday['pinned'] {
  return expectedLoads(state, at.nowMs).flatMap(({ planned, shelf, inAtMs }) => {
    const ids = planned.lines.map(({ varietyId }) => varietyId)
    const inMinute = minute(planned.inAtMs ?? Math.max(inAtMs, at.nowMs))
    if (inMinute < from || inMinute > to || planned.lines.length === 0) return []
    const dips = Math.ceil(piecesOf(planned.lines) / shop.kettle.pieces)
    const flip = loadWindow(shop, 'firstSide', ids)?.targetMs ?? 0
    const bake = loadWindow(shop, 'bake', ids)?.targetMs ?? 0
    return [
      {
        plannedId: planned.id,
        shelfId: shelf.id,
        kettleMinute: inMinute - (dips * shop.kettle.cycleMs) / MINUTE_MS,
        inMinute,
        flipMinute: inMinute + flip / MINUTE_MS,
        outMinute: inMinute + bake / MINUTE_MS,
        lines: planned.lines,
      },
    ]
  })
}

function doughAt({ state, minute }: Known, stages: readonly string[]): readonly DoughHere[] {
  return [...state.batches.values()]
    .filter(({ stage, pieces }) => stages.includes(stage) && pieces > 0)
    .map(({ doughId, varietyId, pieces, until, stage }) => ({
      doughId,
      varietyId,
      pieces,
      fromMinute: until === null || stage === 'kettle' || stage === 'boards' ? null : minute(until.earliestAtMs),
      untilMinute: until === null ? null : minute(until.latestAtMs),
      isChilled: stage === 'chill',
    }))
}

function forSale({ state, shop, at }: Known): readonly Line[] {
  const leaks = leaksOf(state)
  return inUse(shop.varieties).flatMap(({ id, doughId }) => {
    const stock = state.stock.get(id) ?? { varietyId: id, doughId, ...NO_STOCK }
    // Cooling pieces are as good as there: they are for sale within minutes and nothing can be done about them.
    const { mean } = estimateOf(leaks, { stock, lots: stock.lots, nowMs: at.nowMs, salesFrom: shop.counter.salesFrom })
    const pieces = Math.max(0, Math.round(mean))
    return pieces === 0 ? [] : [{ varietyId: id, pieces }]
  })
}

function ordered({ state, at }: Known): readonly Line[] {
  const kept = new Map<VarietyId, number>()
  for (const { lines } of state.keeps.values())
    for (const { varietyId, pieces } of lines) kept.set(varietyId, (kept.get(varietyId) ?? 0) + pieces)
  return (state.wanted.get(at.date)?.lines ?? []).flatMap(({ varietyId, ordered: wanted }) => {
    const pieces = varietyId === null ? 0 : wanted - (kept.get(varietyId) ?? 0)
    return varietyId === null || pieces <= 0 ? [] : [{ varietyId, pieces }]
  })
}

function contactsNow(state: State): readonly Allergen[] {
  const { kettle, boards } = contacts(state)
  return [...new Set([...kettle, ...boards].flatMap(({ contains }) => contains))]
}

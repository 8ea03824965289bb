import type { ShelfId } from '../ids.ts'
import { shelfId } from '../ids.ts'
import { floorBoardsOf } from '../line/floor.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import { inUse } from '../shop/in-order.ts'
import type { Hours, Shelf, Shop } from '../shop/shop.ts'
import { loadWindow } from '../shop/windows.ts'
import type { OvenGiven, ShelfGiven } from './bake-off/bake-off.ts'
import type { LineShelf } from './line-today.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'

const MINUTE_MS = 60_000
/** Between a hearth and the part of its floor that one load takes. Ids have no such sign. */
const PART = '#'
/** A load of a hearth is so many kettle-fulls. Common practice, no source. */
const DIPS_OF_FLOOR_LOAD = 2

/** The oven on a date. Where no second menu waits, it bakes until the shop closes. */
export function ovenGiven(asked: PlanAsked): OvenGiven {
  const { shop, line } = asked
  const hours = hoursFor(asked)
  const emptyBy = emptyByOf(asked)
  const close = closesAtMinute(hours)
  const shelves = line.shelves.flatMap((shelf) => shelvesGiven(asked, shelf, emptyBy ?? close))
  const reopened = shelves.map(({ emptyByMin }) => emptyByMin ?? emptyBy ?? close)
  const turnMin = shop.oven.kind === 'rotating' ? shop.baking.turnMs / MINUTE_MS : 0
  return {
    readyMin: hours.ovenReadyMinute,
    mustBeEmptyMin: Math.max(emptyBy ?? close, ...reopened),
    firstSideMin: firstSideMin(shop),
    handlingMin: shop.oven.handlingMs / MINUTE_MS,
    shelves,
    ...(turnMin > 0 ? { turnMin } : {}),
  }
}

/** Of a day on which the shop is closed, its usual hours. */
export function hoursFor({ shop, date }: Pick<PlanAsked, 'shop' | 'date'>): Hours {
  return hoursOn(shop, date) ?? shop.hours
}

/** From when the oven must be empty, today's slip in it; null: the shop bakes until it closes. */
export function emptyByOf(asked: PlanAsked): number | null {
  const { changeoverFromMinute } = hoursFor(asked)
  return changeoverFromMinute === null ? null : changeoverFromMinute + asked.line.slipMs / MINUTE_MS
}

/**
 * A shelf as it is; of a hearth its floor cut into parts of a load's size, each a shelf of its own, as several loads lie on
 * it at once and each keeps its place until its out.
 */
function shelvesGiven(
  asked: PlanAsked,
  { shelfId: id, isReopened, freeFromMs }: LineShelf,
  emptyBy: number,
): ShelfGiven[] {
  const { shop, line } = asked
  const shelf = shop.shelves.get(id)
  if (shelf === undefined) return []
  const own = shelf.emptyByMinute === null ? emptyBy : shelf.emptyByMinute + line.slipMs / MINUTE_MS
  const limits = {
    emptyByMin: isReopened ? reopenedUntil(asked, own, emptyBy) : Math.min(own, emptyBy),
    ...(freeFromMs === null ? {} : { readyMin: minuteOf(asked, freeFromMs) }),
  }
  if (shop.oven.kind !== 'hearth') return [{ name: id, pieces: shelf.pieces, ...limits }]
  return partsOf(shop, shelf).map((pieces, at) => ({ name: partName(id, at), pieces, ...limits }))
}

/** A shelf that takes bagels again before its time was over by mistake: it has its time still. After it, until the next end. */
function reopenedUntil(asked: PlanAsked, own: number, emptyBy: number): number {
  const nowMin = minuteOf(asked, asked.line.nowMs)
  if (nowMin < own) return Math.min(own, emptyBy)
  return nowMin < emptyBy ? emptyBy : closesAtMinute(hoursFor(asked))
}

function partsOf(shop: Shop, shelf: Shelf): number[] {
  const { pieces: ofBoard } = shop.boards
  const floor = floorBoardsOf(shop, shelf)
  const each = Math.min(floor, Math.ceil((DIPS_OF_FLOOR_LOAD * shop.kettle.pieces) / ofBoard))
  return Array.from({ length: Math.max(1, Math.floor(floor / Math.max(1, each))) }, () => each * ofBoard)
}

export function partName(id: ShelfId, at: number): string {
  return `${id}${PART}${at + 1}`
}

/** The shelf that such a name is of. */
export function shelfOf(name: string): ShelfId {
  return shelfId(name.split(PART)[0] ?? name)
}

/** The planner knows one first side: the longest, so that no load of it frees its boards later than it says. */
function firstSideMin(shop: Shop): number {
  const ids = inUse(shop.varieties).map(({ id }) => id)
  return (loadWindow(shop, 'firstSide', ids)?.targetMs ?? 0) / MINUTE_MS
}

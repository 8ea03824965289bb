import type { Line, Load, PlannedLoad, State } from '../day/state.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import { loadWindow } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { boardsWorth } from './boards.ts'
import { contentsByLoad } from './contents.ts'
import { floorBoardsOf } from './floor.ts'
import { isShelfOver } from './shelf-over.ts'
import { turnOrder } from './turn.ts'

/**
 * When and where each planned load is expected to go in, if the oven is filled as shelves come free. This is arithmetic
 * on what was planned, not a plan: nothing is moved to gain anything. Why not leave "any shelf" open until the tap: two
 * empty shelves would both offer the same load, and two people would load it twice.
 */
export interface ExpectedLoad {
  readonly planned: PlannedLoad
  readonly shelf: Shelf
  /** When it should go in: its planned time, or when its shelf came or comes free. May be past: then it is waited for. */
  readonly inAtMs: EpochMs
  /** When it comes out if it goes in then, or now when that is past. */
  readonly outAtMs: EpochMs
  /** Its shelf has room for it now and no planned load stands before it there. */
  readonly open: boolean
}

/**
 * Fills the shelves with the planned loads, soonest first; a shelf is free again `handlingMs` after an out.
 * A load for any shelf, or for one that is over for today, goes where there is room soonest; of shelves that are free, first to those that no load of the
 * next round asks for by name, then in the turn at the door.
 * @param ahead soonest first, see `plannedAhead`
 * @returns one for each of them, in their order; empty when no shelf takes bagels
 */
export function fillShelves({ state, shop, nowMs }: Shelves, ahead: readonly PlannedLoad[]): readonly ExpectedLoad[] {
  const places = placesOf(state, shop, nowMs)
  if (places.length === 0) return []
  for (const planned of ahead.slice(0, places.length)) {
    const named = places.find((place) => place.shelf.id === planned.shelfId)
    if (named !== undefined) named.asked += 1
  }
  return ahead.map((planned) => placeLoad(planned, { places, shop, nowMs }))
}

interface Shelves {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
}

/** A shelf, or a hearth's floor, while it is being filled. A shelf is a floor of one unit. */
interface Place {
  readonly shelf: Shelf
  readonly units: number
  /** The loads that are or will be on it; the first to leave stands first. */
  readonly stays: Stay[]
  /** When it was last emptied or touched, ready for the next load. */
  readonly freeSinceMs: number
  filled: boolean
  /** Loads of the next round that are planned for this shelf by name. */
  asked: number
}

interface Stay {
  readonly untilMs: number
  readonly units: number
}

interface Filling {
  readonly places: readonly Place[]
  readonly shop: Shop
  readonly nowMs: EpochMs
}

function placesOf(state: State, shop: Shop, nowMs: EpochMs): readonly Place[] {
  const contents = contentsByLoad(state, shop)
  const hearth = shop.oven.kind === 'hearth'
  const startMs = state.day?.openedAtMs ?? state.recordedAtMs
  const loads = [...state.loads.values()]
  const inUse = turnOrder(state, shop).filter((shelf) => !shelf.retired && !isShelfOver(state, shelf.id))
  return inUse.map((shelf) => ({
    shelf,
    units: hearth ? floorBoardsOf(shop, shelf) : 1,
    stays: loads
      .filter((load) => load.shelfId === shelf.id)
      .map((load) => ({
        untilMs: outDue(load, nowMs) + shop.oven.handlingMs,
        units: hearth ? boardsWorth(shop, contents.get(load.id) ?? []) : 1,
      }))
      .sort(byLeaving),
    freeSinceMs: Math.max(startMs, (state.shelves.get(shelf.id)?.touchedAtMs ?? 0) + shop.oven.handlingMs),
    filled: false,
    asked: 0,
  }))
}

function outDue(load: Load, nowMs: EpochMs): number {
  return Math.max(load.out?.targetAtMs ?? 0, nowMs)
}

function placeLoad(planned: PlannedLoad, filling: Filling): ExpectedLoad {
  const { shop, nowMs } = filling
  const units = shop.oven.kind === 'hearth' ? boardsWorth(shop, planned.lines) : 1
  const { place, roomAtMs } = choosePlace(planned, units, filling)
  const inAtMs = Math.max(planned.inAtMs ?? 0, roomAtMs ?? place.freeSinceMs)
  const outAtMs = Math.max(inAtMs, nowMs) + bakeMs(shop, planned.lines)
  const open = roomAtMs === null && !place.filled
  place.stays.push({ untilMs: outAtMs + shop.oven.handlingMs, units })
  place.stays.sort(byLeaving)
  place.filled = true
  if (planned.shelfId === place.shelf.id && place.asked > 0) place.asked -= 1
  return { planned, shelf: place.shelf, inAtMs: epochMs(inAtMs), outAtMs: epochMs(outAtMs), open }
}

interface Choice {
  readonly place: Place
  /** Null: there is room now. */
  readonly roomAtMs: number | null
}

function choosePlace(planned: PlannedLoad, units: number, { places }: Filling): Choice {
  const named = places.filter((place) => place.shelf.id === planned.shelfId)
  const choices = (named.length > 0 ? named : places).map((place) => ({ place, roomAtMs: roomAt(place, units) }))
  // The places stand in the turn at the door: of equal ones the first is kept.
  return choices.reduce((best, choice) => (byRoom(choice, best) < 0 ? choice : best))
}

function byRoom(one: Choice, other: Choice): number {
  return (one.roomAtMs ?? 0) - (other.roomAtMs ?? 0) || Math.sign(one.place.asked) - Math.sign(other.place.asked)
}

/**
 * When there is room for so many units: when the last of the loads leaves beside which they do not fit. Null when there
 * is room now; a load larger than the floor waits for all of it.
 */
function roomAt({ units, stays }: Place, wanted: number): number | null {
  let taken = 0
  for (let n = stays.length - 1; n >= 0; n -= 1) {
    const stay = stays[n]
    if (stay === undefined) break
    taken += stay.units
    if (units - taken < wanted) return stay.untilMs
  }
  return null
}

function byLeaving(one: Stay, other: Stay): number {
  return one.untilMs - other.untilMs
}

/** Without a bake window in the set-up nobody knows: the next load is then expected at once, not never. */
function bakeMs(shop: Shop, lines: readonly Line[]): number {
  return (
    loadWindow(
      shop,
      'bake',
      lines.map((line) => line.varietyId),
    )?.targetMs ?? 0
  )
}

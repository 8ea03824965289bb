import type { Line, Load, PlannedLoad, State, Until } from '../day/state.ts'
import type { LoadId, PlannedId, ShelfId, VarietyId } from '../ids.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { DueStatus } from './act-due.ts'
import { dueStatus } from './act-due.ts'
import { nextOfLoad } from './acts.ts'
import { boardsLatest } from './allot.ts'
import { contentsByLoad } from './contents.ts'
import { floorOf, overShelf } from './floor.ts'
import { piecesOf } from './lines.ts'
import type { LookAhead } from './look-ahead.ts'
import { loadCalls, lookAhead } from './look-ahead.ts'
import { isShelfOver } from './shelf-over.ts'
import { doorShelf, shelvesInOrder } from './turn.ts'

/** The one key of an oven shelf: load, then flip, then out. */
export interface ShelfKey {
  readonly shelfId: ShelfId
  readonly shelfName: string
  /** The load that flip and out act on; null on a key that loads. */
  readonly loadId: LoadId | null
  readonly act: 'load' | 'flip' | 'out'
  /** When the act is due; null: nothing says when, or a load that is not called for yet. */
  readonly atMs: EpochMs | null
  readonly latestAtMs: EpochMs | null
  /** When the countdown began: a ring is full then and empty at `atMs`. Null on a key that loads. */
  readonly startedAtMs: EpochMs | null
  readonly status: DueStatus
  /** What is in it, or what is planned and will be presumed. Empty: nothing is planned for it. */
  readonly lines: readonly Line[]
  readonly pieces: number
  readonly plannedId: PlannedId | null
  /** Varieties among the lines whose topping goes on after the flip. */
  readonly toppingAfterFlip: readonly VarietyId[]
  /** More than the shelf takes, or than the hearth has room for. Shown, never blocked. */
  readonly over: boolean
  /** Somebody said that the shelf is done with bagels for today: it offers no load. A load all the same is taken. */
  readonly isOver: boolean
  /** It stands at the door of a rotating oven. */
  readonly atDoor: boolean
  /** Until when the act is too early; null when it is not. */
  readonly tooEarlyUntilMs: EpochMs | null
}

/**
 * The keys of the oven in the set-up's order of shelves. A shelf has one key; a hearth has one for each load on its floor,
 * oldest first, and one that loads while there is room.
 * @returns empty without a set-up
 */
export function shelfKeys(state: State, nowMs: EpochMs): readonly ShelfKey[] {
  const ahead = lookAhead(state, nowMs)
  if (ahead === null) return []
  const { shop } = ahead
  const keying: Keying = {
    ...ahead,
    contents: contentsByLoad(state, shop),
    calls: loadCalls(ahead),
    door: doorShelf(state, shop),
  }
  return shelvesInOrder(state, shop).flatMap((shelf) => {
    const loads = [...state.loads.values()].filter((load) => load.shelfId === shelf.id).sort(byLoaded)
    const running = loads.map((load) => runningKey(keying, shelf, load))
    return takesAnother(state, shop, shelf, loads.length) ? [...running, loadKey(keying, shelf)] : running
  })
}

interface Keying extends LookAhead {
  readonly contents: ReturnType<typeof contentsByLoad>
  readonly calls: ReturnType<typeof loadCalls>
  readonly door: ShelfId | null
}

function takesAnother(state: State, shop: Shop, shelf: Shelf, loads: number): boolean {
  if (shelf.retired) return false
  if (loads === 0) return true
  if (isShelfOver(state, shelf.id)) return false
  if (shop.oven.kind !== 'hearth') return false
  const floor = floorOf(state, shop, shelf)
  return floor.taken < floor.boards
}

function runningKey(keying: Keying, shelf: Shelf, load: Load): ShelfKey {
  const { nowMs, shop, state, tapped, contents } = keying
  const { act, until } = nextOfLoad(load, tapped)
  const lines = contents.get(load.id) ?? []
  const alone = shop.oven.kind !== 'hearth'
  return {
    ...common(keying, shelf, lines),
    loadId: load.id,
    act,
    atMs: until?.targetAtMs ?? null,
    latestAtMs: until?.latestAtMs ?? null,
    startedAtMs: load.flippedAtMs ?? load.loadedAtMs,
    status: until === null ? 'coming' : dueStatus(until.targetAtMs, until.latestAtMs, nowMs),
    plannedId: load.plannedId,
    over: alone ? overShelf(state, shop, shelf, lines) : isOverFloor(keying, shelf),
    tooEarlyUntilMs: tooEarlyUntil(until, nowMs),
  }
}

function loadKey(keying: Keying, shelf: Shelf): ShelfKey {
  const { allotments, calls, nowMs, shop, state } = keying
  const next = allotments.find(({ expected }) => expected.shelf.id === shelf.id)
  const planned: PlannedLoad | null = next?.expected.planned ?? null
  const atMs = planned === null ? null : (calls.get(planned.id) ?? null)
  const latestAtMs = next === undefined || atMs === null ? null : boardsLatest(next)
  const lines = planned?.lines ?? []
  return {
    ...common(keying, shelf, lines),
    loadId: null,
    act: 'load',
    atMs,
    latestAtMs,
    startedAtMs: null,
    status: atMs === null ? 'coming' : dueStatus(atMs, latestAtMs, nowMs),
    plannedId: planned?.id ?? null,
    over: overShelf(state, shop, shelf, lines),
    tooEarlyUntilMs: null,
  }
}

function common({ shop, state, door }: Keying, shelf: Shelf, lines: readonly Line[]) {
  return {
    shelfId: shelf.id,
    shelfName: shelf.name,
    lines,
    pieces: piecesOf(lines),
    toppingAfterFlip: lines
      .map((line) => line.varietyId)
      .filter((id) => shop.varieties.get(id)?.topping === 'after-flip'),
    isOver: isShelfOver(state, shelf.id),
    atDoor: door === shelf.id,
  }
}

function isOverFloor({ state, shop }: Keying, shelf: Shelf): boolean {
  const floor = floorOf(state, shop, shelf)
  return floor.taken > floor.boards
}

function tooEarlyUntil(until: Until | null, nowMs: EpochMs): EpochMs | null {
  return until !== null && nowMs < until.earliestAtMs ? until.earliestAtMs : null
}

function byLoaded(one: Load, other: Load): number {
  return one.loadedAtMs - other.loadedAtMs || (one.id < other.id ? -1 : 1)
}

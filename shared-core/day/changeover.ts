import type { ShelfId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import type { ExpectedLoad } from '../line/fill.ts'
import { expectedLoads, loadsWithoutShelf } from '../line/planned.ts'
import { isShelfOpen, isShelfOver } from '../line/shelf-over.ts'
import { shelvesInOrder } from '../line/turn.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import { degreesIn } from '../shop/temperature.ts'
import { rods } from '../stock/left.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { changeoverMark, ovenMark } from './marks.ts'
import type { Ruler } from './ruler.ts'
import type { Slipped } from './slip.ts'
import { isForToday, slippedBy } from './slip.ts'
import type { Line, PlannedLoad, State } from './state.ts'

/** The oven on its way from bagels to the second menu, shelf by shelf. */
export interface ChangeoverNow {
  /** The oven must be empty of bagels from then on; today's slip is in it. */
  readonly fromMs: EpochMs
  /** The second menu bakes from then on. */
  readonly toMs: EpochMs
  readonly slipMs: number
  /** In the set-up's order. */
  readonly shelves: readonly ShelfTurn[]
  /** The newest reading of the oven as a whole. */
  readonly reading: OvenReading | null
  /** When the last load in the oven or planned for it comes out; null: it is empty and nothing is to come. */
  readonly ovenEmptyAtMs: EpochMs | null
  /** None is baked after this, unless somebody reopens a shelf. */
  readonly isOver: boolean
  /** What there will be for the afternoon: for sale and on the way, by variety; without those of which there is none. */
  readonly left: readonly Line[]
  /** Planned loads for which no shelf is left that takes bagels. */
  readonly withoutShelf: readonly PlannedLoad[]
  /** What it would be with the changeover so much later than it is now; earlier: negative. */
  readonly slipped: (byMs: number) => Slipped
}

export interface ShelfTurn {
  readonly shelfId: ShelfId
  readonly name: string
  /** `bagels`: loads in it or to come; `emptying`: the last one is in it; `over`: somebody said so and it is empty. */
  readonly state: 'bagels' | 'emptying' | 'over'
  /** When the last of its loads comes out; null when it holds none and none is planned for it. */
  readonly freeAtMs: EpochMs | null
  readonly reading: OvenReading | null
}

export interface OvenReading {
  /** In the shop's unit, to the nearest degree. */
  readonly degrees: number
  readonly unit: 'C' | 'F'
  readonly atMs: EpochMs
  readonly ageMs: number
}

/** @returns null without a second menu, and while no day is open */
export function changeoverNow(state: State, nowMs: EpochMs, ruler: Ruler | null): ChangeoverNow | null {
  const { shop } = state
  if (shop === null || ruler === null || ruler.changeover === null || state.day === null) return null
  const { fromMs, toMs } = ruler.changeover
  const expected = todays(state, nowMs, ruler)
  const shelves = shelvesInOrder(state, shop).map((shelf) => turnOf(shelf, { state, shop, nowMs, ruler, expected }))
  const empty = shelves.flatMap(({ freeAtMs }) => freeAtMs ?? [])
  return {
    fromMs,
    toMs,
    slipMs: slipToday(state),
    shelves,
    reading: readingOf(state, shop, nowMs, null),
    ovenEmptyAtMs: empty.length === 0 ? null : epochMs(Math.max(...empty)),
    isOver: bakingIsOver(state, nowMs, ruler),
    left: leftFor(state, shop, nowMs, ruler),
    withoutShelf: loadsWithoutShelf(state, nowMs).filter((planned) => isForToday(planned, ruler)),
    slipped: (byMs) => slippedBy(byMs, { state, shop, nowMs, ruler, changeover: { fromMs, toMs } }),
  }
}

/**
 * Whether no more bagels are baked today: every shelf was said to be over and is empty; or the changeover has come,
 * nothing is in the oven, in the kettle or on boards, nothing is planned and no shelf was reopened. Never without a
 * second menu: such a shop bakes until it closes.
 */
export function bakingIsOver(state: State, nowMs: EpochMs, ruler: Ruler | null): boolean {
  const { shop } = state
  if (shop === null || ruler === null || ruler.changeover === null || state.day === null) return false
  if (state.loads.size > 0) return false
  const shelves = shelvesInOrder(state, shop)
  if (shelves.every(({ id }) => isShelfOver(state, id))) return true
  if (nowMs < ruler.changeover.fromMs || shelves.some(({ id }) => isShelfOpen(state, id))) return false
  const isWaiting = [...state.batches.values()].some(({ stage }) => stage === 'kettle' || stage === 'boards')
  return !isWaiting && todays(state, nowMs, ruler).length === 0
}

function slipToday({ marks }: State): number {
  const mark = marks.get(changeoverMark())
  return mark?.kind === 'changeover' ? mark.slipMs : 0
}

/** A list for tomorrow may be typed before today is closed: its times are after today's. */
function todays(state: State, nowMs: EpochMs, ruler: Ruler): readonly ExpectedLoad[] {
  return expectedLoads(state, nowMs).filter(({ planned }) => isForToday(planned, ruler))
}

interface Turning {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly ruler: Ruler
  readonly expected: readonly ExpectedLoad[]
}

function turnOf({ id, name }: Shelf, { state, shop, nowMs, ruler, expected }: Turning): ShelfTurn {
  const inside = [...state.loads.values()].filter((load) => load.shelfId === id)
  const toCome = expected.filter(({ shelf }) => shelf.id === id)
  const outs = [
    ...inside.map(({ out }) => Math.max(out?.targetAtMs ?? nowMs, nowMs)),
    ...toCome.map(({ outAtMs }) => outAtMs),
  ]
  const isOver = isShelfOver(state, id)
  // A shop that plans nothing has its last load in once no other would be out in time.
  const isLast = isOver || state.planned.size > 0 || nowMs >= (ruler.lastLoadInByMs ?? nowMs)
  const emptying = inside.length > 0 && toCome.length === 0 && isLast
  return {
    shelfId: id,
    name,
    state: emptying ? 'emptying' : isOver && inside.length === 0 ? 'over' : 'bagels',
    freeAtMs: outs.length === 0 ? null : epochMs(Math.max(...outs)),
    reading: readingOf(state, shop, nowMs, id),
  }
}

function readingOf(state: State, { profile }: Shop, nowMs: EpochMs, shelfId: ShelfId | null): OvenReading | null {
  const mark = state.marks.get(ovenMark(shelfId))
  if (mark?.kind !== 'oven') return null
  const unit = profile.temperature
  const degrees = mark.read.unit === unit ? mark.read.degrees : degreesIn(unit, mark.milliCelsius)
  return { degrees, unit, atMs: mark.atMs, ageMs: Math.max(0, nowMs - mark.atMs) }
}

function leftFor(state: State, shop: Shop, nowMs: EpochMs, { toMs }: Ruler): readonly Line[] {
  const sums = new Map<Line['varietyId'], number>()
  for (const { varietyId, likely, onTheWay } of rods(state, nowMs)) {
    const today = onTheWay.filter(({ readyAtMs }) => readyAtMs <= toMs)
    const pieces = likely + today.reduce((sum, one) => sum + one.pieces, 0)
    if (pieces > 0) sums.set(varietyId, pieces)
  }
  return linesOf(sums, shop)
}

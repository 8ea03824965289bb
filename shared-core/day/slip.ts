import { plannedId } from '../ids.ts'
import type { ExpectedLoad } from '../line/fill.ts'
import { fillShelves } from '../line/fill.ts'
import { piecesOf } from '../line/lines.ts'
import { longestBakeMs, longestBaking } from '../line/longest-bake.ts'
import { plannedAhead } from '../line/planned.ts'
import { isShelfOver } from '../line/shelf-over.ts'
import { shelvesInOrder } from '../line/turn.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Ruler } from './ruler.ts'
import type { PlannedLoad, State } from './state.ts'

/** What a changeover moved by so much would mean. Signed where it says "more". */
export interface Slipped {
  readonly fromMs: EpochMs
  /** The second menu bakes from then on. */
  readonly toMs: EpochMs
  readonly lastLoadInByMs: EpochMs
  /** Planned loads that are out in time then and are not now; negative: that no longer are. */
  readonly plannedMore: number
  /** Loads, planned or not, for which there is time then and is none now; negative: for which there no longer is. */
  readonly loadsMoreThatFit: number
  readonly piecesMoreThatFit: number
}

interface Slipping {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly ruler: Ruler
  readonly changeover: { readonly fromMs: EpochMs; readonly toMs: EpochMs }
}

/** More full loads than this on one shelf no slip makes room for. */
const LOADS_TRIED_MAX = 40

/**
 * The oven is filled on paper, planned loads first and then full shelves of what bakes longest, as shelves come free;
 * what is out by the changeover fits.
 */
export function slippedBy(byMs: number, { state, shop, nowMs, ruler, changeover }: Slipping): Slipped {
  const planned = plannedAhead(state).filter((one) => isForToday(one, ruler))
  const fromMs = epochMs(Math.max(0, changeover.fromMs + byMs))
  const filled = fillShelves({ state, shop, nowMs }, [...planned, ...fullLoads(state, shop)])
  const isPlanned = ({ planned: { id } }: ExpectedLoad) => state.planned.has(id)
  const out = (byAtMs: EpochMs) => filled.filter(({ outAtMs }) => outAtMs <= byAtMs)
  const [before, after] = [out(changeover.fromMs), out(fromMs)]
  const pieces = (loads: readonly ExpectedLoad[]) => loads.reduce((sum, one) => sum + piecesOf(one.planned.lines), 0)
  const varieties = planned.flatMap(({ lines }) => lines.map(({ varietyId }) => varietyId))
  return {
    fromMs,
    toMs: epochMs(Math.max(0, changeover.toMs + byMs)),
    lastLoadInByMs: epochMs(Math.max(0, fromMs - longestBakeMs(shop, varieties))),
    plannedMore: after.filter(isPlanned).length - before.filter(isPlanned).length,
    loadsMoreThatFit: after.length - before.length,
    piecesMoreThatFit: pieces(after) - pieces(before),
  }
}

/** A load without a time, or with one that is not after today's close. */
export function isForToday({ inAtMs }: PlannedLoad, { toMs }: Ruler): boolean {
  return inAtMs === null || inAtMs <= toMs
}

function fullLoads(state: State, shop: Shop): readonly PlannedLoad[] {
  const varietyId = longestBaking(shop)
  if (varietyId === null) return []
  const shelves = shelvesInOrder(state, shop).filter(({ id, retired }) => !retired && !isShelfOver(state, id))
  return shelves.flatMap((shelf) =>
    Array.from({ length: LOADS_TRIED_MAX }, (_, n) => ({
      id: plannedId(`full ${shelf.id} ${n}`),
      order: n,
      shelfId: shelf.id,
      inAtMs: null,
      lines: [{ varietyId, pieces: shelf.pieces }],
      done: false,
    })),
  )
}

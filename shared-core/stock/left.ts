import type { Lot, State, Stock } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { byVariety } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import type { Shop, Variety } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { NO_STOCK } from './apply-stock.ts'
import { estimateOf } from './estimate.ts'
import type { Leaks } from './leak.ts'
import { leaksOf } from './leak.ts'
import type { Coming } from './on-the-way.ts'
import { onTheWay } from './on-the-way.ts'
import { paceWithLeak, piecesPerHour, runOutAt } from './run-out.ts'

/** What is left of one variety, and how that is known. */
export interface Rod {
  readonly varietyId: VarietyId
  readonly doughId: DoughId
  readonly name: string
  /** On the books: out, cool enough and not kept for anybody, less what is on record as sold. */
  readonly forSale: number
  /** What is for sale now as far as anybody can tell, in whole pieces: `forSale` less what left unseen. */
  readonly likely: number
  /** ± whole pieces: right about four times in five. 0: known to the piece. */
  readonly within: number
  /** Pieces of an earlier day that are for sale, apart from all others. */
  readonly dayOld: number
  /** Out of the oven, still too warm to sell. */
  readonly cooling: number
  /** Kept for orders. */
  readonly kept: number
  /** Cooling pieces included; soonest first. */
  readonly onTheWay: readonly Coming[]
  readonly known: Known
  /** When what is likely there will be gone at the pace of the last two hours; null when too few went to say. */
  readonly goneAtMs: EpochMs | null
  /** Pieces an hour behind `goneAtMs`, those included that leave unseen; null where no pace is known. */
  readonly perHour: number | null
  readonly soldToday: number
  /** Since when there has been none at all; null while there is some, and where there never was any. */
  readonly goneSinceMs: EpochMs | null
}

/** The newest of what the number rests on. `counted` is to the piece, `swept` to within some. */
export type Known =
  | { readonly how: 'counted' | 'swept' | 'baked' | 'sold'; readonly atMs: EpochMs }
  | { readonly how: 'nothing'; readonly atMs: null }

/**
 * One rod for each variety in the set-up's order. Retired varieties have one as long as there are pieces of them: what
 * exists is never hidden.
 * @returns empty without a set-up
 */
export function rods(state: State, nowMs: EpochMs): readonly Rod[] {
  const { shop } = state
  if (shop === null) return []
  const at: At = { coming: onTheWay(state, nowMs), nowMs, leaks: leaksOf(state), salesFrom: shop.counter.salesFrom }
  return [...shop.varieties.values()]
    .map((variety) => rodOf(variety, state.stock.get(variety.id) ?? noStock(variety), at))
    .filter((rod) => shop.varieties.get(rod.varietyId)?.retired !== true || hasPieces(rod))
    .sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
}

interface At {
  readonly coming: ReadonlyMap<VarietyId, readonly Coming[]>
  readonly nowMs: EpochMs
  readonly leaks: Leaks | null
  readonly salesFrom: Shop['counter']['salesFrom']
}

function rodOf({ id, doughId, name }: Variety, stock: Stock, { coming, nowMs, leaks, salesFrom }: At): Rod {
  const lots = stock.lots.filter((lot) => lot.readyAtMs <= nowMs)
  const forSale = piecesOf(lots)
  const { likely, within } = estimateOf(leaks, { stock, lots, nowMs, salesFrom })
  const pace = paceWithLeak(stock, leaks, nowMs)
  return {
    varietyId: id,
    doughId,
    name,
    forSale,
    likely,
    within,
    dayOld: stock.dayOld,
    cooling: piecesOf(stock.lots) - forSale,
    kept: stock.kept,
    onTheWay: coming.get(id) ?? [],
    known: knownFrom(stock),
    goneAtMs: runOutAt(likely, pace, nowMs),
    perHour: pace === null ? null : piecesPerHour(pace),
    soldToday: stock.soldToday,
    goneSinceMs: stock.goneSinceMs,
  }
}

/** The newest wins; of the same instant a count before a bake before a sale. A sale is known to its quarter of an hour. */
function knownFrom({ counted, lots, pace }: Stock): Known {
  const out = lots.reduce<Lot | null>(
    (newest, lot) => (newest !== null && newest.outAtMs >= lot.outAtMs ? newest : lot),
    null,
  )
  const sale = [...pace].reverse().find((quarter) => quarter.pieces > 0)
  const all: Known[] = []
  if (counted !== null) all.push({ how: counted.within > 0 ? 'swept' : 'counted', atMs: counted.atMs })
  if (out !== null) all.push({ how: 'baked', atMs: out.outAtMs })
  if (sale !== undefined) all.push({ how: 'sold', atMs: sale.fromMs })
  return all.reduce((newest, one) => ((one.atMs ?? 0) > (newest.atMs ?? -1) ? one : newest), NOTHING)
}

const NOTHING: Known = { how: 'nothing', atMs: null }

function hasPieces({ forSale, cooling, kept, dayOld, onTheWay: coming }: Rod): boolean {
  return forSale + cooling + kept + dayOld > 0 || coming.length > 0
}

function noStock({ id, doughId }: Variety): Stock {
  return { varietyId: id, doughId, ...NO_STOCK }
}

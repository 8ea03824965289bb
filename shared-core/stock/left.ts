import type { Lot, State, Stock } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { byVariety } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import type { Variety } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { NO_STOCK } from './apply-stock.ts'
import type { Coming } from './on-the-way.ts'
import { onTheWay } from './on-the-way.ts'
import { paceOf, piecesPerHour, runOutAt } from './run-out.ts'

/** What is left of one variety, and how that is known. */
export interface Rod {
  readonly varietyId: VarietyId
  readonly doughId: DoughId
  readonly name: string
  /** Out, cool enough and not kept for anybody. */
  readonly forSale: number
  /** Out of the oven, still too warm to sell. */
  readonly cooling: number
  /** Kept for orders. */
  readonly kept: number
  /** Cooling pieces included; soonest first. */
  readonly onTheWay: readonly Coming[]
  readonly known: Known
  /** When what is for sale now will be gone at the pace of the last two hours; null when too few were sold to say. */
  readonly goneAtMs: EpochMs | null
  /** Pieces an hour behind `goneAtMs`; null where no pace is known. */
  readonly perHour: number | null
  readonly soldToday: number
  /** Since when there has been none at all; null while there is some, and where there never was any. */
  readonly goneSinceMs: EpochMs | null
}

/** The newest of what the count rests on. */
export type Known =
  | { readonly how: 'counted' | 'baked' | 'sold'; readonly atMs: EpochMs }
  | { readonly how: 'nothing'; readonly atMs: null }

/**
 * One rod for each variety in the set-up's order. Retired varieties have one as long as there are pieces of them: what
 * exists is never hidden.
 * @returns empty without a set-up
 */
export function rods(state: State, nowMs: EpochMs): readonly Rod[] {
  const { shop } = state
  if (shop === null) return []
  const coming = onTheWay(state, nowMs)
  return [...shop.varieties.values()]
    .map((variety) => rodOf(variety, state.stock.get(variety.id) ?? noStock(variety), { coming, nowMs }))
    .filter((rod) => shop.varieties.get(rod.varietyId)?.retired !== true || hasPieces(rod))
    .sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
}

interface At {
  readonly coming: ReadonlyMap<VarietyId, readonly Coming[]>
  readonly nowMs: EpochMs
}

function rodOf({ id, doughId, name }: Variety, stock: Stock, { coming, nowMs }: At): Rod {
  const forSale = piecesOf(stock.lots.filter((lot) => lot.readyAtMs <= nowMs))
  const pace = paceOf(stock, nowMs)
  return {
    varietyId: id,
    doughId,
    name,
    forSale,
    cooling: piecesOf(stock.lots) - forSale,
    kept: stock.kept,
    onTheWay: coming.get(id) ?? [],
    known: knownFrom(stock),
    goneAtMs: runOutAt(forSale, pace, nowMs),
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
  if (counted !== null) all.push({ how: 'counted', atMs: counted.atMs })
  if (out !== null) all.push({ how: 'baked', atMs: out.outAtMs })
  if (sale !== undefined) all.push({ how: 'sold', atMs: sale.fromMs })
  return all.reduce((newest, one) => ((one.atMs ?? 0) > (newest.atMs ?? -1) ? one : newest), NOTHING)
}

const NOTHING: Known = { how: 'nothing', atMs: null }

function hasPieces({ forSale, cooling, kept, onTheWay: coming }: Rod): boolean {
  return forSale + cooling + kept > 0 || coming.length > 0
}

function noStock({ id, doughId }: Variety): Stock {
  return { varietyId: id, doughId, ...NO_STOCK }
}

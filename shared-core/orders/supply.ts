import type { State } from '../day/state.ts'
import type { PlannedId, ShelfId, VarietyId } from '../ids.ts'
import { contentsByLoad } from '../line/contents.ts'
import type { Plan } from '../live/plan.ts'
import type { Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import { onTheWay } from '../stock/on-the-way.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** Pieces of one variety that are there, or will be, from an instant on. */
export interface Supply {
  readonly varietyId: VarietyId
  readonly pieces: number
  /** Cool enough to be sold; of what lies on the rods in the past. */
  readonly readyAtMs: EpochMs
  readonly from: 'rod' | 'cooling' | 'oven' | 'load'
  /** Null: not in a load, or nobody knows on which shelf. */
  readonly shelfId: ShelfId | null
  readonly loadId: PlannedId | null
}

export interface SupplyFrom {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly plan: Plan | null
  /** What is on the rods: as likely as not, or so many at least as four times in five. */
  readonly rods: 'likely' | 'careful'
}

/**
 * What there is and will be of each variety: on the rods as estimated, cooling, in the oven, and in loads that are planned,
 * people's and advised. Pieces that are kept are gone from it, and day-old ones are promised to nobody.
 * @returns in no order
 */
export function supplyNow(given: SupplyFrom): readonly Supply[] {
  return [...onRods(given), ...inOven(given), ...(given.plan === null ? listed(given) : planned(given, given.plan))]
}

function onRods({ state, nowMs, rods }: SupplyFrom): Supply[] {
  const leaks = leaksOf(state)
  const salesFrom = state.shop?.counter.salesFrom ?? 'taps'
  return [...state.stock.values()].flatMap((stock) => {
    const lots = stock.lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)
    const { likely, within } = estimateOf(leaks, { stock, lots, nowMs, salesFrom })
    let left = rods === 'likely' ? likely : Math.max(0, likely - within)
    const parts: Supply[] = []
    const { varietyId } = stock
    // The oldest are sold first: what is there is of the newest lots.
    for (const { pieces, readyAtMs } of [...lots].reverse()) {
      const some = Math.min(left, pieces)
      left -= some
      if (some > 0) parts.push({ varietyId, pieces: some, readyAtMs, from: 'rod', shelfId: null, loadId: null })
    }
    for (const { pieces, readyAtMs } of stock.lots)
      if (readyAtMs > nowMs) parts.push({ varietyId, pieces, readyAtMs, from: 'cooling', shelfId: null, loadId: null })
    return parts
  })
}

function inOven({ state, shop, nowMs }: SupplyFrom): Supply[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()].flatMap(({ id, shelfId, out }) =>
    (contents.get(id) ?? []).map(({ varietyId, pieces }): Supply => {
      const outAtMs = Math.max(nowMs, out?.targetAtMs ?? nowMs)
      const readyAtMs = epochMs(outAtMs + coolMs(shop, varietyId))
      return { varietyId, pieces, readyAtMs, from: 'oven', shelfId, loadId: null }
    }),
  )
}

/** A plan may be a few seconds old: what has gone in since stands in the oven already. */
function planned({ state, nowMs }: SupplyFrom, plan: Plan): Supply[] {
  const gone = new Set([...state.loads.values()].map(({ plannedId }) => plannedId))
  return plan.loads
    .filter(({ id }) => !gone.has(id) && state.planned.get(id)?.done !== true)
    .flatMap(({ id, shelfId, readyAtMs, lines }) =>
      lines.map(({ varietyId, pieces }) => ({
        varietyId,
        pieces,
        readyAtMs: epochMs(Math.max(readyAtMs, nowMs)),
        from: 'load' as const,
        shelfId,
        loadId: id,
      })),
    )
}

/** Without a plan: what people have listed, and what is on boards. */
function listed({ state, nowMs }: SupplyFrom): Supply[] {
  return [...onTheWay(state, nowMs)].flatMap(([varietyId, coming]) =>
    coming
      .filter(({ from }) => from === 'boards' || from === 'planned')
      .map(({ pieces, readyAtMs }) => ({ varietyId, pieces, readyAtMs, from: 'load', shelfId: null, loadId: null })),
  )
}

/** From the oven to being sold. */
export function coolMs(shop: Shop, varietyId: VarietyId): number {
  const variety = shop.varieties.get(varietyId)
  return variety === undefined ? 0 : (windowOf(shop, 'cool', variety.doughId, varietyId)?.targetMs ?? 0)
}

import type { PieceWorth } from '../../shared-core/demand/baking-cost.ts'
import type { Demand } from '../../shared-core/demand/demand.ts'
import { negativeBinomial } from '../../shared-core/demand/pieces.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { howMany, NONE_THERE } from '../../shared-core/plan/how-many.ts'
import type { Worth, WorthGiven } from '../../shared-core/plan/worth.ts'
import { worthOf } from '../../shared-core/plan/worth.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/** What a day asks for, as far as advice needs it. */
export type DayMeans = ReadonlyMap<VarietyId, Pick<Demand, 'mean' | 'dispersion'>>

/**
 * How many pieces of each variety the board would advise for a day that begins with none: by the same weighing as for the
 * days to come, without orders and in single pieces.
 */
export function adviseDay(shop: Shop, demands: DayMeans): ReadonlyMap<VarietyId, number> {
  const worths = worthsOf(shop, demands)
  const asked = new Map(
    [...demands].flatMap(([id, { mean, dispersion }]) => {
      const worth = worths.get(id)
      if (worth === undefined) return []
      const demand = negativeBinomial(mean, dispersion)
      return [[id, { demand, stock: NONE_THERE, later: null, worth, unit: 1, besides: 0 }] as const]
    }),
  )
  return new Map([...howMany(asked, shop.demand.dayOldSells)].map(([id, { pieces }]) => [id, pieces]))
}

/** What a left and a lost piece of each variety come to, in money. */
export function pieceWorths(shop: Shop, demands: DayMeans): ReadonlyMap<VarietyId, PieceWorth> {
  return new Map(
    [...worthsOf(shop, demands)].map(([id, { uses, costCents, dayOldCents }]) => {
      const worthCents = uses.reduce((sum, use) => sum + use.part * use.worthCents, 0)
      return [id, { costCents, dayOldCents, lostCents: Math.max(0, worthCents - costCents) }]
    }),
  )
}

function worthsOf(shop: Shop, demands: DayMeans): ReadonlyMap<VarietyId, Worth> {
  const means = new Map([...demands].map(([id, { mean }]) => [id, mean]))
  const given: WorthGiven = { means, kitchen: new Map() }
  return new Map(
    [...demands.keys()].flatMap((id) => {
      const variety = shop.varieties.get(id)
      return variety === undefined ? [] : [[id, worthOf(shop, variety, given)] as const]
    }),
  )
}

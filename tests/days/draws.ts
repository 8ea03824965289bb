import type { Line, State } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Chance } from './chance.ts'

/** Something of a map or a list; undefined when it is empty. */
export function someOf<Thing>(things: Iterable<Thing>, chance: Chance): Thing | undefined {
  const all = [...things]
  return all.length === 0 ? undefined : chance.oneOf(all)
}

/** One or two varieties that the shop has, in order. */
export function someLines(shop: Shop, chance: Chance, most: number): Line[] {
  const varieties = [...shop.varieties.keys()]
  const first = chance.between(0, varieties.length - 1)
  return varieties
    .slice(first, first + chance.between(1, 2))
    .map((varietyId) => ({ varietyId, pieces: chance.between(1, most) }))
}

/** A variety that is out of the oven, else any. */
export function somethingForSale({ stock }: State, shop: Shop, chance: Chance) {
  const there = [...stock.values()].filter(({ lots }) => lots.length > 0)
  return chance.oneOf(there.length > 0 ? there.map(({ varietyId }) => varietyId) : [...shop.varieties.keys()])
}

/** What is for sale of a variety by the books. */
export function piecesForSale({ stock }: State, varietyId: Line['varietyId']): number {
  return (stock.get(varietyId)?.lots ?? []).reduce((sum, { pieces }) => sum + pieces, 0)
}

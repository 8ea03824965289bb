import { inOrder } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { table } from '../support/shop.ts'
import { byHand, inOven, kitchenStation, menuItem, of, portion, run, turnAt } from '../support/shop-kitchen.ts'
import { longest } from './big-set-up.ts'

/** A shop with a kitchen that strains every screen: as many of everything as people have, each name as long as it may be. */
export function withBigKitchen(shop: Shop): Shop {
  const portions = Object.fromEntries(numbers(8).map((n) => [`portion-${n}`, n]))
  const bake = inOven('station-2', 330, { slots: 2, turns: [turnAt(90), turnAt(200, 'move'), turnAt(280)] })
  return {
    ...shop,
    shelves: table(inOrder(shop.shelves).map((shelf) => ({ ...shelf, slots: 6 }))),
    kitchenStations: table(
      numbers(4).map((n) =>
        kitchenStation({ id: `station-${n}`, name: longest(`${n} Wide`, 'kitchenStation'), order: n, hands: n }),
      ),
    ),
    portions: table(
      numbers(12).map((n) =>
        portion({
          id: `portion-${n}`,
          name: longest(`${n} Mushroom`, 'portion'),
          order: n,
          contains: ALLERGENS.slice(0, n),
          pullMs: n % 2 === 0 ? spanMs(90, 'min') : null,
        }),
      ),
    ),
    menu: table(
      numbers(24).map((n) =>
        menuItem({
          id: `item-${n}`,
          name: longest(`${n} Wholemeal`, 'menuItem'),
          order: n,
          onBagel: n % 2 === 1,
          canToast: n % 2 === 1,
          portions: of(portions),
          steps: n % 2 === 0 ? [byHand('station-1', 60), bake, byHand('station-1', 20)] : [byHand('station-1', 60)],
        }),
      ),
    ),
    runs: table(numbers(3).map((n) => run({ id: `run-${n}`, name: longest(`${n} Wide`, 'run'), order: n }))),
  }
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1)
}

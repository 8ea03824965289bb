import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import { onHandNow } from '../../shared-core/dough/on-hand.ts'
import type { Ingredient } from '../../shared-core/shop/formula.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { milligrams } from '../../shared-core/shop/weight.ts'
import { drawFor } from './draw.ts'
import type { RoomDay, RoomErrand } from './room-errands.ts'

const COUNT_MINUTE = 13 * 60 + 35
const FIRST_COUNT_MINUTE = 3 * 60 + 22
const DELIVERY_MINUTE = 8 * 60 + 20
/** ISO weekdays: counted on Mondays, delivered on Tuesdays and Fridays. */
const COUNT_DAY = 1
const DELIVERY_DAYS = [2, 5]
/** Bags: of the flour that all doughs are made of, and of all else; fewer are ordered up to so many. */
const MAIN_FLOUR = 'high-gluten'
const OF_MAIN = { fewer: 34, upTo: 50 } as const
const ELSE = { fewer: 2, upTo: 4 } as const

function shelf(id: string) {
  return id === MAIN_FLOUR ? OF_MAIN : ELSE
}

/** The weekly count and what the mill brings. The first count is as the board comes into the shop. */
export function stockErrands(day: RoomDay): readonly RoomErrand[] {
  const weekday = new Date(`${day.date}T12:00:00Z`).getUTCDay()
  const first: RoomErrand = {
    key: 'first-count',
    minute: FIRST_COUNT_MINUTE,
    who: 'crew',
    act: (state) => (state.onHand.size > 0 ? null : counting(day, state)),
  }
  const count: RoomErrand = { key: 'count', minute: COUNT_MINUTE, who: 'crew', act: (state) => counting(day, state) }
  return [first, ...(weekday === COUNT_DAY ? [count] : []), ...(DELIVERY_DAYS.includes(weekday) ? deliveries(day) : [])]
}

/** To the half bag, and a little less than the books say: scoops spill. */
function counting({ shop, seed, date }: RoomDay, state: State): Act | null {
  const known = new Map(onHandNow(state).map((one) => [one.ingredientId, one.milligrams]))
  const counts = inUse(shop.ingredients).flatMap(({ id, bag }) => {
    if (bag === null) return []
    const draw = drawFor(seed, `count:${date}:${id}`)
    const bags = (known.get(id) ?? 0) / milligrams(bag)
    const found = known.has(id) ? bags * draw.between(0.98, 1) : shelf(id).upTo - 1
    const halves = Math.max(0, Math.round(found * 2))
    const weight = halves === 0 ? null : { ...bag, thousandths: (bag.thousandths * halves) / 2 }
    return [{ ingredientId: id, weight }]
  })
  return counts.length === 0 ? null : { type: 'countIngredients', counts }
}

function deliveries({ shop }: RoomDay): readonly RoomErrand[] {
  return inUse(shop.ingredients)
    .filter(({ bag }) => bag !== null)
    .map((ingredient, index) => ({
      key: `delivery:${ingredient.id}`,
      minute: DELIVERY_MINUTE + index * 0.4,
      who: 'crew',
      act: (state) => delivered(ingredient, state),
    }))
}

function delivered({ id, bag }: Ingredient, state: State): Act | null {
  const known = onHandNow(state).find(({ ingredientId }) => ingredientId === id)
  if (bag === null || known === undefined) return null
  const { fewer, upTo } = shelf(id)
  const bags = known.milligrams / milligrams(bag)
  if (bags >= fewer) return null
  const came = Math.ceil(upTo - bags)
  return { type: 'receiveIngredient', ingredientId: id, weight: { ...bag, thousandths: bag.thousandths * came } }
}

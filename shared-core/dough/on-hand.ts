import type { State } from '../day/state.ts'
import type { IngredientId } from '../ids.ts'
import { inOrder } from '../shop/in-order.ts'
import type { EpochMs } from '../units.ts'

/** What should be there of an ingredient now. */
export interface OnHandNow {
  readonly ingredientId: IngredientId
  /** Negative: more was taken than was counted and delivered. */
  readonly milligrams: number
  /** When it was counted last; null: only deliveries are known. */
  readonly countedAtMs: EpochMs | null
}

/**
 * What is on hand of each ingredient that was counted or delivered: as of the last count or close, less what mixes and
 * builds that stand in the state took. In the set-up's order. What nobody knows is not in it.
 */
export function onHandNow(state: State): OnHandNow[] {
  const taken = takenSinceClose(state)
  const known = [...state.onHand.values()]
    .filter(({ milligrams: some, countedAtMs }) => countedAtMs !== null || some !== 0)
    .map(({ ingredientId, milligrams: some, countedAtMs }) => ({
      ingredientId,
      milligrams: some - (taken.get(ingredientId) ?? 0),
      countedAtMs,
    }))
  const places = new Map(
    (state.shop === null ? [] : inOrder(state.shop.ingredients)).map(({ id }, place) => [id, place]),
  )
  const placeOf = ({ ingredientId }: OnHandNow) => places.get(ingredientId) ?? Number.MAX_SAFE_INTEGER
  return known.sort((one, other) => placeOf(one) - placeOf(other) || (one.ingredientId < other.ingredientId ? -1 : 1))
}

/** What begun mixes and builds took of each ingredient, in milligrams: a count adds it to what it finds. */
export function takenSinceClose({ mixes, builds }: Pick<State, 'mixes' | 'builds'>): Map<IngredientId, number> {
  const taken = new Map<IngredientId, number>()
  const add = (id: IngredientId, some: number) => taken.set(id, (taken.get(id) ?? 0) + some)
  for (const { mixedAtMs, lines } of mixes.values()) {
    if (mixedAtMs === null) continue
    for (const { ingredientId, milligrams: some } of lines) if (ingredientId !== null) add(ingredientId, some)
  }
  for (const { lines } of builds.values()) for (const one of lines) add(one.ingredientId, one.milligrams)
  return taken
}

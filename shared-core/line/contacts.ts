import type { CareKind } from '../day/said.ts'
import type { State } from '../day/state.ts'
import { allergensOfDough, allergensOfTopping, namesOf } from '../dough/allergens.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { inOrder, inUse } from '../shop/in-order.ts'
import type { Allergen, Shop, Variety } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'
import { needsBoard } from './boards.ts'
import { boardKey, kettleKey } from './touches.ts'

/**
 * What has touched the kettle's water since it was changed last, and the boards since they were washed last, over days.
 * It follows from what was entered and tapped, and says what is known to have been there: never what is not.
 */
export interface Contacts {
  /** By dough, in the set-up's order. */
  readonly kettle: readonly Contact[]
  /** By variety, in the set-up's order. */
  readonly boards: readonly Contact[]
}

export interface Contact {
  readonly doughId: DoughId
  /** Null in the kettle: its water knows doughs only. */
  readonly varietyId: VarietyId | null
  readonly name: string
  /** By ingredients and what was entered: of the dough and, on boards, the topping. */
  readonly contains: readonly Allergen[]
  readonly pieces: number
}

export function contacts(state: State): Contacts {
  const { shop } = state
  if (shop === null) return { kettle: [], boards: [] }
  return { kettle: inKettle(state, shop), boards: onBoards(state, shop) }
}

/**
 * Allergens that a dough would bring into the kettle's water, as nothing boiled in it since its change is known to
 * contain them. What every dough in use contains tells nobody anything and is left out.
 * @returns in the order of `ALLERGENS`; empty where the dough brings nothing new, which says nothing of what is in it
 */
export function newToKettle(state: State, doughId: DoughId): readonly Allergen[] {
  const { shop } = state
  if (shop === null) return []
  const known = new Set(inKettle(state, shop).flatMap(({ contains }) => contains))
  const inUseNow = inUse(shop.doughs)
  const inEach = inUseNow.map(({ id }) => namesOf(allergensOfDough(shop, id)))
  const isInAll = (allergen: Allergen) => inEach.every((contains) => contains.includes(allergen))
  return namesOf(allergensOfDough(shop, doughId)).filter((allergen) => !known.has(allergen) && !isInAll(allergen))
}

function inKettle(state: State, shop: Shop): readonly Contact[] {
  const since = touchedSince(state, 'change')
  return inOrder(shop.doughs)
    .map((dough) => ({ dough, pieces: since(kettleKey(dough.id)) }))
    .filter(({ pieces }) => pieces > 0)
    .map(({ dough: { id, name }, pieces }) => {
      return { doughId: id, varietyId: null, name, contains: namesOf(allergensOfDough(shop, id)), pieces }
    })
}

/** Pieces that stand on boards now have touched them too, though no load has counted them yet. */
function onBoards(state: State, shop: Shop): readonly Contact[] {
  const since = touchedSince(state, 'washBoards')
  const standing = new Map<VarietyId, number>()
  for (const { stage, varietyId, pieces } of state.batches.values())
    if (stage === 'boards' && varietyId !== null) standing.set(varietyId, (standing.get(varietyId) ?? 0) + pieces)
  return inOrder(shop.varieties)
    .filter(({ id }) => needsBoard(shop, id))
    .map((variety) => ({
      doughId: variety.doughId,
      varietyId: variety.id,
      name: variety.name,
      contains: containsOf(shop, variety),
      pieces: since(boardKey(variety.id)) + (standing.get(variety.id) ?? 0),
    }))
    .filter(({ pieces }) => pieces > 0)
}

/** What a variety brings to its boards: its dough, and a topping that goes on before the flip. */
function containsOf(shop: Shop, { doughId, topping, toppingId }: Variety): readonly Allergen[] {
  const dough = namesOf(allergensOfDough(shop, doughId))
  const top = topping !== 'before-flip' || toppingId === null ? [] : namesOf(allergensOfTopping(shop, toppingId))
  return ALLERGENS.filter((allergen) => dough.includes(allergen) || top.includes(allergen))
}

/** Pieces counted since a care; a correction may have taken some back since, which leaves none, not fewer. */
function touchedSince(state: State, care: CareKind): (key: string) => number {
  const then = new Map(state.cares.get(care)?.touches ?? [])
  return (key) => Math.max(0, (state.touches.get(key) ?? 0) - (then.get(key) ?? 0))
}

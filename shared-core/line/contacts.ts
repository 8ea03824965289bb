import type { CareKind } from '../day/said.ts'
import type { State } from '../day/state.ts'
import { allergensOfDough, allergensOfTopping, namesOf } from '../dough/allergens.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { ContactPlace } from '../live/plan.ts'
import { inOrder, inUse } from '../shop/in-order.ts'
import type { Allergen, Shop, Variety } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'
import { needsBoard } from './boards.ts'
import { boardKey, kettleKey, stoneKey } from './touches.ts'

/**
 * What has touched each place since it was cared for last, over days: the kettle's water since its change, boards and
 * seed trays since their wash, the peel since its wash, the oven's floor since it was swept. It follows from what was
 * entered and tapped, and says what is known to have been there: never what is not. In the set-up's order.
 */
export type Contacts = { readonly [place in ContactPlace]: readonly Contact[] }

/** What ends the contact of a place. */
export const CARE_OF: { readonly [place in ContactPlace]: CareKind } = {
  kettle: 'change',
  boards: 'washBoards',
  trays: 'washTrays',
  peel: 'washPeel',
  stone: 'sweepStone',
}

/** In the order in which pieces come to them. */
export const CONTACT_PLACES: readonly ContactPlace[] = ['kettle', 'boards', 'trays', 'peel', 'stone']

export interface Contact {
  readonly doughId: DoughId
  /** Null in the kettle: its water knows doughs only. */
  readonly varietyId: VarietyId | null
  readonly name: string
  /** By ingredients and what was entered: of the dough and of a topping that is on by then. */
  readonly contains: readonly Allergen[]
  readonly pieces: number
}

export function contacts(state: State): Contacts {
  const { shop } = state
  if (shop === null) return { kettle: [], boards: [], trays: [], peel: [], stone: [] }
  const [standing, none] = [standingOnBoards(state), new Map<VarietyId, number>()]
  return {
    kettle: inKettle(state, shop),
    boards: touched(state, shop, { place: 'boards', key: boardKey, also: standing }),
    trays: touched(state, shop, { place: 'trays', key: boardKey, also: standing }),
    peel: touched(state, shop, { place: 'peel', key: boardKey, also: none }),
    stone: touched(state, shop, { place: 'stone', key: stoneKey, also: none }),
  }
}

/**
 * What a variety brings to a place that its pieces come to: its dough and a topping that is on by then. The seed trays
 * know the topping, and the dough of pieces that are turned in it before the flip.
 * @returns null where its pieces do not come there: a pan touches neither boards nor peel nor stone
 */
export function broughtTo(shop: Shop, variety: Variety, place: ContactPlace): readonly Allergen[] | null {
  const { topping } = variety
  const [dough, top] = [doughContains(shop, variety), toppingContains(shop, variety)]
  if (place === 'kettle') return dough
  if (place === 'trays') return topping === 'none' ? null : together(topping === 'before-flip' ? dough : [], top)
  if (!needsBoard(shop, variety.id)) return null
  return place === 'boards' && topping === 'after-flip' ? dough : together(dough, top)
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
  const since = touchedSince(state, CARE_OF.kettle)
  return inOrder(shop.doughs)
    .map((dough) => ({ dough, pieces: since(kettleKey(dough.id)) }))
    .filter(({ pieces }) => pieces > 0)
    .map(({ dough: { id, name }, pieces }) => {
      return { doughId: id, varietyId: null, name, contains: namesOf(allergensOfDough(shop, id)), pieces }
    })
}

/** Pieces that stand on boards now have touched them too, and the trays, though no load has counted them yet. */
function standingOnBoards(state: State): ReadonlyMap<VarietyId, number> {
  const standing = new Map<VarietyId, number>()
  for (const { stage, varietyId, pieces } of state.batches.values())
    if (stage === 'boards' && varietyId !== null) standing.set(varietyId, (standing.get(varietyId) ?? 0) + pieces)
  return standing
}

interface Touching {
  readonly place: ContactPlace
  readonly key: (varietyId: VarietyId) => string
  /** Pieces that are there and not counted yet. */
  readonly also: ReadonlyMap<VarietyId, number>
}

function touched(state: State, shop: Shop, { place, key, also }: Touching): readonly Contact[] {
  const since = touchedSince(state, CARE_OF[place])
  return inOrder(shop.varieties).flatMap((variety) => {
    const contains = broughtTo(shop, variety, place)
    const pieces = since(key(variety.id)) + (also.get(variety.id) ?? 0)
    if (contains === null || pieces === 0) return []
    return [{ doughId: variety.doughId, varietyId: variety.id, name: variety.name, contains, pieces }]
  })
}

function doughContains(shop: Shop, { doughId }: Variety): readonly Allergen[] {
  return namesOf(allergensOfDough(shop, doughId))
}

function toppingContains(shop: Shop, { topping, toppingId }: Variety): readonly Allergen[] {
  return topping === 'none' || toppingId === null ? [] : namesOf(allergensOfTopping(shop, toppingId))
}

function together(one: readonly Allergen[], other: readonly Allergen[]): readonly Allergen[] {
  return ALLERGENS.filter((allergen) => one.includes(allergen) || other.includes(allergen))
}

/** Pieces counted since a care; a correction may have taken some back since, which leaves none, not fewer. */
function touchedSince(state: State, care: CareKind): (key: string) => number {
  const then = new Map(state.cares.get(care)?.touches ?? [])
  return (key) => Math.max(0, (state.touches.get(key) ?? 0) - (then.get(key) ?? 0))
}

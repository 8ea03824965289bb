import type {
  DoughId,
  FormulaId,
  IngredientId,
  KitchenStationId,
  MenuItemId,
  PersonId,
  PortionId,
  PreparationId,
  RunId,
  ShelfId,
  StationId,
  StepId,
  ToppingId,
  VarietyId,
} from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/** Names as the set-up has them, retired things included. */
export interface Names {
  dough(id: DoughId): string
  variety(id: VarietyId): string
  shelf(id: ShelfId): string
  station(id: StationId): string
  topping(id: ToppingId): string
  person(id: PersonId): string
  step(id: StepId): string
  formula(id: FormulaId): string
  preparation(id: PreparationId): string
  ingredient(id: IngredientId): string
  kitchenStation(id: KitchenStationId): string
  menuItem(id: MenuItemId): string
  portion(id: PortionId): string
  run(id: RunId): string
}

export type Unnamed = { readonly [kind in keyof Names]: string }

/** Names by id; what the set-up does not know is called so in words, never by its id. */
export function namesOf(shop: Shop | null, unnamed: Unnamed): Names {
  return {
    dough: (id) => shop?.doughs.get(id)?.name ?? unnamed.dough,
    variety: (id) => shop?.varieties.get(id)?.name ?? unnamed.variety,
    shelf: (id) => shop?.shelves.get(id)?.name ?? unnamed.shelf,
    station: (id) => shop?.stations.get(id)?.name ?? unnamed.station,
    topping: (id) => shop?.toppings.get(id)?.name ?? unnamed.topping,
    person: (id) => shop?.people.get(id)?.name ?? unnamed.person,
    step: (id) => shop?.steps.get(id)?.name ?? unnamed.step,
    formula: (id) => shop?.formulas.get(id)?.name ?? unnamed.formula,
    preparation: (id) => shop?.preparations.get(id)?.name ?? unnamed.preparation,
    ingredient: (id) => shop?.ingredients.get(id)?.name ?? unnamed.ingredient,
    kitchenStation: (id) => shop?.kitchenStations.get(id)?.name ?? unnamed.kitchenStation,
    menuItem: (id) => shop?.menu.get(id)?.name ?? unnamed.menuItem,
    portion: (id) => shop?.portions.get(id)?.name ?? unnamed.portion,
    run: (id) => shop?.runs.get(id)?.name ?? unnamed.run,
  }
}

/** What pieces are called: the variety that the mixer decided, else their dough; "" where neither is said. */
export function stuffOf(
  { varietyId, doughId }: { readonly varietyId?: VarietyId | null; readonly doughId?: DoughId | null },
  names: Names,
): string {
  if (varietyId != null) return names.variety(varietyId)
  return doughId == null ? '' : names.dough(doughId)
}

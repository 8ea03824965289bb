import { bakingMisfits } from './baking-rules.ts'
import { crossMisfits } from './cross-rules.ts'
import { specialDayMisfits } from './demand-rules.ts'
import {
  doughMisfits,
  hoursMisfits,
  mixerMisfits,
  shelfMisfits,
  stationMisfits,
  stepMisfits,
  toppingMisfits,
  varietyMisfits,
  weekdayMisfits,
} from './entity-rules.ts'
import { doughRoomMisfits, formulaMisfits, ingredientMisfits, preparationMisfits } from './formula-rules.ts'
import { menuItemMisfits, portionMisfits } from './kitchen-rules.ts'
import type { Misfit } from './misfit.ts'
import type { SetUpChange } from './set-up-change.ts'
import type { SetUpParts } from './set-up-parts.ts'
import { partsOf } from './set-up-parts.ts'
import type { Shop } from './shop.ts'
import { windowMisfits } from './window-rules.ts'

/**
 * The rules of a set-up, in one place for the file that people write and for changes that come in as commands. They
 * need no zod, so that screens decide with them.
 */

/**
 * All that does not fit in a shop's set-up. `decide` refuses a change after which there would be any.
 * @example shopMisfits(applySetUp(shop, changes)).length === 0
 */
export function shopMisfits(shop: Shop): Misfit[] {
  return partsMisfits(partsOf(shop))
}

/** The same for parts of a set-up, some of which may be missing because they could not be read. */
export function partsMisfits(parts: SetUpParts): Misfit[] {
  return [
    ...(parts.hours === null ? [] : hoursMisfits(parts.hours)),
    ...(parts.windows === null ? [] : windowMisfits(SHOP_WINDOWS, parts.windows, '')),
    ...(parts.baking === null ? [] : bakingMisfits(parts.baking)),
    ...(parts.mixer === null ? [] : mixerMisfits(parts.mixer)),
    ...(parts.doughRoom === null ? [] : doughRoomMisfits(parts.doughRoom)),
    ...parts.ingredients.flatMap(ingredientMisfits),
    ...parts.preparations.flatMap(preparationMisfits),
    ...parts.formulas.flatMap(formulaMisfits),
    ...parts.weekdays.flatMap(weekdayMisfits),
    ...parts.shelves.flatMap(shelfMisfits),
    ...parts.doughs.flatMap(doughMisfits),
    ...parts.toppings.flatMap(toppingMisfits),
    ...parts.varieties.flatMap(varietyMisfits),
    ...parts.stations.flatMap(stationMisfits),
    ...parts.steps.flatMap(stepMisfits),
    ...parts.specialDays.flatMap(specialDayMisfits),
    ...parts.portions.flatMap(portionMisfits),
    ...parts.menu.flatMap(menuItemMisfits),
    ...crossMisfits(parts),
  ]
}

/** What does not fit in one change, whatever the rest of the shop looks like. */
export function changeMisfits(change: SetUpChange): Misfit[] {
  switch (change.entity) {
    case 'hours':
      return hoursMisfits(change.value)
    case 'baking':
      return bakingMisfits(change.value)
    case 'windows':
      return windowMisfits(SHOP_WINDOWS, change.value, '')
    case 'shelf':
      return shelfMisfits(change.value)
    case 'dough':
      return doughMisfits(change.value)
    case 'variety':
      return varietyMisfits(change.value)
    case 'station':
      return stationMisfits(change.value)
    case 'topping':
      return toppingMisfits(change.value)
    case 'step':
      return stepMisfits(change.value)
    case 'mixer':
      return change.value === null ? [] : mixerMisfits(change.value)
    case 'doughRoom':
      return change.value === null ? [] : doughRoomMisfits(change.value)
    case 'ingredient':
      return ingredientMisfits(change.value)
    case 'preparation':
      return preparationMisfits(change.value)
    case 'formula':
      return formulaMisfits(change.value)
    case 'specialDay':
      return specialDayMisfits(change.value)
    case 'weekday':
      return weekdayMisfits(change.value)
    case 'portion':
      return portionMisfits(change.value)
    case 'menuItem':
      return menuItemMisfits(change.value)
    default:
      return []
  }
}

const SHOP_WINDOWS = { entity: 'windows', id: null } as const

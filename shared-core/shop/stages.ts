import type { IngredientKind } from './formula.ts'
import type { Allergen, BatchStage, LineAct, SpecialKind, WindowStage } from './shop.ts'

/** The words of the line as lists, in the order of the line, each of them once (a test of types holds them to that). */
export const BATCH_STAGES = [
  'proof',
  'chill',
  'rack',
  'kettle',
  'boards',
  'oven',
] as const satisfies readonly BatchStage[]

export const WINDOW_STAGES = [
  'proof',
  'chill',
  'rack',
  'kettle',
  'boards',
  'firstSide',
  'bake',
  'cool',
] as const satisfies readonly WindowStage[]

export const LINE_ACTS = ['pull', 'dip', 'lift', 'board', 'load', 'flip', 'out'] as const satisfies readonly LineAct[]

/** The nine major allergens, in the order of the US acts (21 U.S.C. 321(qq)). */
export const ALLERGENS = [
  'milk',
  'egg',
  'fish',
  'shellfish',
  'treeNuts',
  'peanuts',
  'wheat',
  'soy',
  'sesame',
] as const satisfies readonly Allergen[]

/** In the order in which a formula lists them (common practice, no source): flour first, what is mixed in last. */
export const INGREDIENT_KINDS = [
  'flour',
  'water',
  'salt',
  'yeast',
  'malt',
  'sweetener',
  'fat',
  'mixIn',
  'other',
] as const satisfies readonly IngredientKind[]

/** In the order in which people look for them. */
export const SPECIAL_KINDS = [
  'holiday',
  'school',
  'event',
  'closure',
  'weather',
] as const satisfies readonly SpecialKind[]

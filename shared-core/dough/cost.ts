import type { IngredientId, VarietyId } from '../ids.ts'
import type { Formula, MadeOf } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import { totalPercent, WHOLE } from './percents.ts'

/** What the ingredients of one piece cost, by the prices that were entered. A view: cents here are no integers. */
export interface PieceCost {
  /** Of what has a price: the whole cost only where `unpriced` and `missing` are empty. */
  readonly cents: number
  readonly doughCents: number
  readonly toppingCents: number
  readonly lines: readonly CostLine[]
  /** Ingredients in it of which nobody has said what they cost. */
  readonly unpriced: readonly IngredientId[]
  /** What cannot be reckoned at all: the dough has no formula, or no piece weight. */
  readonly missing: readonly ('formula' | 'pieceWeight')[]
  /** Of the baked piece with its topping; null without a formula or a piece weight. */
  readonly bakedMilligrams: number | null
}

export interface CostLine {
  readonly ingredientId: IngredientId
  readonly of: 'dough' | 'topping'
  /** That is used up for one piece, what stays in bowl and divider included. */
  readonly milligrams: number
  /** Null: it has no price. */
  readonly cents: number | null
}

/**
 * Cost of a piece from the prices of its ingredients.
 *
 *   dough for a piece = piece / (1 − loss)        of each line = dough · percent / Σ percent
 *   baked = piece · (1 − bake loss) + topping
 *
 * Formula lines are the whole formula, so that pre-ferments and soakers are in them. Nothing without a price counts as
 * free: it is named. Water counts like everything else; whoever does not want it says that it costs 0.
 * @returns null when the shop does not know the variety
 */
export function pieceCost(shop: Shop, varietyId: VarietyId): PieceCost | null {
  const variety = shop.varieties.get(varietyId)
  const dough = variety === undefined ? undefined : shop.doughs.get(variety.doughId)
  if (variety === undefined || dough === undefined) return null
  const formula = dough.formulaId === null ? undefined : shop.formulas.get(dough.formulaId)
  const piece = dough.pieceWeight === null ? null : milligrams(dough.pieceWeight)
  const topping = variety.toppingId === null ? [] : (shop.toppings.get(variety.toppingId)?.madeOf ?? [])
  const onIt = topping.map((part) => toppingLine(shop, part))
  const inIt = formula === undefined || piece === null ? [] : doughLines(shop, formula, piece)
  const toppingWeight = onIt.reduce((sum, line) => sum + line.milligrams, 0)
  return {
    cents: centsOf([...inIt, ...onIt]),
    doughCents: centsOf(inIt),
    toppingCents: centsOf(onIt),
    lines: [...inIt, ...onIt],
    unpriced: [
      ...new Set([...inIt, ...onIt].flatMap(({ ingredientId, cents }) => (cents === null ? [ingredientId] : []))),
    ],
    missing: [
      ...(formula === undefined ? (['formula'] as const) : []),
      ...(piece === null ? (['pieceWeight'] as const) : []),
    ],
    bakedMilligrams: formula === undefined || piece === null ? null : bakedOf(formula, piece) + toppingWeight,
  }
}

/** What a piece of so much dough weighs when it is baked. @example 120 g at a bake loss of 12.5 % // 105 g */
export function bakedOf({ bakeLossPercent }: Pick<Formula, 'bakeLossPercent'>, pieceMilligrams: number): number {
  return Math.round((pieceMilligrams * (WHOLE - bakeLossPercent)) / WHOLE)
}

function doughLines(shop: Shop, { lines, lossPercent }: Formula, pieceMilligrams: number): CostLine[] {
  const total = totalPercent(lines)
  if (total === 0) return []
  const dough = (pieceMilligrams * WHOLE) / (WHOLE - lossPercent)
  return lines.map(({ ingredientId, percent }) => lineOf(shop, ingredientId, 'dough', (dough * percent) / total))
}

function toppingLine(shop: Shop, { ingredientId, weight }: MadeOf): CostLine {
  return lineOf(shop, ingredientId, 'topping', milligrams(weight))
}

function lineOf(shop: Shop, ingredientId: IngredientId, of: CostLine['of'], weight: number): CostLine {
  const price = shop.ingredients.get(ingredientId)?.price ?? null
  const per = price === null ? 0 : milligrams(price.per)
  return {
    ingredientId,
    of,
    milligrams: weight,
    cents: price === null || per === 0 ? null : (weight * price.cents) / per,
  }
}

function centsOf(lines: readonly CostLine[]): number {
  return lines.reduce((sum, { cents }) => sum + (cents ?? 0), 0)
}

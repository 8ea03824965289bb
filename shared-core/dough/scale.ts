import type { DoughId } from '../ids.ts'
import type { Formula } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import type { SheetLine } from './mix.ts'
import { finalDough, preparationAt, preparationPercent, preparationsOf, totalPercent, WHOLE } from './percents.ts'
import { roundedToScale } from './round.ts'

/** A scale that nobody has described shows grams. Common practice, no source. */
const DEFAULT_STEP_MILLIGRAMS = 1_000

/**
 * The mix sheet: what goes into the bowl for so much flour, rounded to the scale's step with the total kept
 * (`round.ts` gives the bound). First the formula's lines less what its preparations hold, then each preparation as one.
 *
 *   line = flour · percent / 100
 *
 * @param flourMilligrams all flour of the formula, that of its pre-ferments included
 * @example 10 kg of flour at 57 %, 20 % of it in a pre-ferment of 60 % // flour 8 kg, water 4.5 kg, pre-ferment 3.2 kg
 */
export function sheetLines(shop: Shop, formula: Formula, flourMilligrams: number): SheetLine[] {
  const exact = exactLines(shop, formula, flourMilligrams)
  const rounded = roundedToScale(
    exact.map((line) => line.milligrams),
    stepOf(shop),
  )
  return exact.map((line, n) => ({ ...line, milligrams: rounded[n] ?? 0 })).filter((line) => line.milligrams > 0)
}

/** The mix sheet before rounding: fractions of milligrams that sum to flour · Σ percent / 100. */
export function exactLines(
  shop: Pick<Shop, 'preparations' | 'ingredients'>,
  formula: Formula,
  flourMilligrams: number,
): SheetLine[] {
  const perPercent = flourMilligrams / WHOLE
  const own = finalDough(shop, formula).map(({ ingredientId, at, percent }): SheetLine => {
    const isAgain = at === 'mixIn' && formula.lines.some((one) => one.ingredientId === ingredientId && one.at !== at)
    const key = isAgain ? `${ingredientId}+` : ingredientId
    return { key, ingredientId, preparationId: null, at, milligrams: percent * perPercent, weighedAtMs: null }
  })
  const made = preparationsOf(shop, formula).map((use): SheetLine => {
    const { preparation } = use
    return {
      key: preparation.id,
      ingredientId: null,
      preparationId: preparation.id,
      at: preparationAt(formula, preparation, (id) => shop.ingredients.get(id)?.kind === 'water'),
      milligrams: preparationPercent(use) * perPercent,
      weighedAtMs: null,
    }
  })
  return [...own, ...made]
}

/** What the scale shows at the finest, in milligrams. */
export function stepOf({ doughRoom }: Pick<Shop, 'doughRoom'>): number {
  return doughRoom === null ? DEFAULT_STEP_MILLIGRAMS : Math.max(1, milligrams(doughRoom.scaleStep))
}

/** The dough of a sheet, in milligrams. */
export function doughMilligramsOf(lines: readonly Pick<SheetLine, 'milligrams'>[]): number {
  return lines.reduce((sum, line) => sum + line.milligrams, 0)
}

/**
 * The flour, pre-ferments' included, of so much dough, to the nearest milligram.
 *
 *   flour = dough · 100 / Σ percent
 *
 * @example 14_400_000 of a formula that sums to 161.1 % // 8_938_547
 */
export function flourFor(formula: Pick<Formula, 'lines'>, doughMilligrams: number): number {
  const total = totalPercent(formula.lines)
  return total === 0 ? 0 : Math.round((doughMilligrams * WHOLE) / total)
}

/** The dough of so much flour, to the nearest milligram. @example 8_938_547 at 161.1 % // 14_400_000 */
export function doughOf(formula: Pick<Formula, 'lines'>, flourMilligrams: number): number {
  return Math.round((flourMilligrams * totalPercent(formula.lines)) / WHOLE)
}

/**
 * The dough to be mixed so that so much of it is shaped, what stays in bowl and divider included.
 *
 *   dough = shaped / (1 − loss)
 *
 * @example 14_400_000 at a loss of 1.5 % // 14_619_289
 */
export function doughToMix({ lossPercent }: Pick<Formula, 'lossPercent'>, shapedMilligrams: number): number {
  return Math.round((shapedMilligrams * WHOLE) / (WHOLE - lossPercent))
}

/** What can be shaped of so much dough: `doughToMix` the other way. @example 14_619_289 at a loss of 1.5 % // 14_400_000 */
export function shapedOf({ lossPercent }: Pick<Formula, 'lossPercent'>, doughMilligrams: number): number {
  return Math.round((doughMilligrams * (WHOLE - lossPercent)) / WHOLE)
}

/** What a piece of a dough weighs as it is shaped; 0 where the set-up does not say. */
export function pieceMilligrams(shop: Shop, doughId: DoughId): number {
  const weight = shop.doughs.get(doughId)?.pieceWeight ?? null
  return weight === null ? 0 : milligrams(weight)
}

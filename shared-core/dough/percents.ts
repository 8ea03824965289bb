import type { Formula, FormulaLine, Preparation, Share } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'

/**
 * Baker's percentages: all flour is 100 %. They are held in thousandths of a percent, so that this is the whole.
 *
 *   ingredient = flour · percent / 100        dough = flour · Σ percent / 100        flour = dough · 100 / Σ percent
 *
 * Sums in them use + − × ÷ only and are the same on every engine.
 */
export const WHOLE = 100_000

/** Σ percent of lines, in thousandths of a percent. @example 57 % water on 100 % flour // 157_000 */
export function totalPercent(lines: readonly Pick<Share, 'percent'>[]): number {
  return lines.reduce((sum, { percent }) => sum + percent, 0)
}

/** A preparation as a formula uses it, with its base in thousandths of a percent of all flour. */
export interface PreparationUse {
  readonly preparation: Preparation
  readonly percent: number
}

/** The preparations of a formula that the shop knows. */
export function preparationsOf(shop: Pick<Shop, 'preparations'>, formula: Formula): PreparationUse[] {
  return formula.preparations.flatMap(({ preparationId, percent }) => {
    const preparation = shop.preparations.get(preparationId)
    return preparation === undefined ? [] : [{ preparation, percent }]
  })
}

/**
 * What one mix takes of a ripe preparation, in thousandths of a percent of all flour. The seed is not in it: as much as it
 * was built from is kept back for the next one.
 * @example poolish() of 20 % flour at 100 % water // 40_000
 */
export function preparationPercent({ preparation, percent }: PreparationUse): number {
  return (percent * totalPercent(preparation.lines)) / WHOLE
}

/** When a preparation goes in: a soaker whose parts are all mix-ins with them, everything else at the start. */
export function preparationAt(formula: Formula, { kind, lines }: Preparation, isWater: IsWater): FormulaLine['at'] {
  if (kind === 'preferment') return 'start'
  const parts = lines.filter(({ ingredientId }) => !isWater(ingredientId))
  const isMixIn = ({ ingredientId }: Share) =>
    formula.lines.some((line) => line.ingredientId === ingredientId && line.at === 'mixIn') &&
    !formula.lines.some((line) => line.ingredientId === ingredientId && line.at === 'start')
  return parts.length > 0 && parts.every(isMixIn) ? 'mixIn' : 'start'
}
export type IsWater = (ingredientId: Share['ingredientId']) => boolean

/**
 * The final dough: the formula's own lines less what its preparations hold, in thousandths of a percent of all flour (with
 * fractions). What a preparation holds is taken off the line that is added when it is, then off the other.
 *
 * Where a preparation holds more of something than the formula, the line stays at nothing; the set-up does not take such
 * a formula, but its preparation may have been changed since.
 * Source of the example: overall 10 kg of flour at 57 % with 20 % of it pre-fermented at 60 %, exact arithmetic.
 * @example 57 % water, 20 % of the flour in a pre-ferment of 60 % // 80 % flour, 45 % water
 */
export function finalDough(shop: Pick<Shop, 'preparations' | 'ingredients'>, formula: Formula): FormulaLine[] {
  const isWater: IsWater = (id) => shop.ingredients.get(id)?.kind === 'water'
  const lines = formula.lines.map((line) => ({ ...line }))
  for (const use of preparationsOf(shop, formula)) {
    const at = preparationAt(formula, use.preparation, isWater)
    for (const { ingredientId, percent } of use.preparation.lines) {
      let held = (use.percent * percent) / WHOLE
      const own = lines.filter((line) => line.ingredientId === ingredientId)
      for (const line of [...own.filter((one) => one.at === at), ...own.filter((one) => one.at !== at)]) {
        const taken = Math.min(line.percent, held)
        line.percent -= taken
        held -= taken
      }
    }
  }
  return lines
}

/**
 * What goes into a preparation besides its seed, in whole milligrams that sum exactly to what mixes take of it.
 * @param doughMilligrams of it without the seed
 * @example preparationLines(poolish, 2_000_000) // 1_000_000 flour, 1_000_000 water
 */
export function preparationLines(
  { lines }: Pick<Preparation, 'lines'>,
  doughMilligrams: number,
): { readonly ingredientId: Share['ingredientId']; readonly milligrams: number }[] {
  const total = totalPercent(lines)
  let percent = 0
  let given = 0
  return lines.map((line) => {
    percent += line.percent
    const upTo = total === 0 ? 0 : Math.round((doughMilligrams * percent) / total)
    const milligrams = upTo - given
    given = upTo
    return { ingredientId: line.ingredientId, milligrams }
  })
}

/** The ripe pre-ferment that goes in as seed, and is kept back again. @example 20 % seed on 1 kg of flour // 200_000 */
export function seedMilligrams({ lines, seedPercent }: Preparation, doughMilligrams: number): number {
  const total = totalPercent(lines)
  return total === 0 ? 0 : Math.round((doughMilligrams * seedPercent) / total)
}

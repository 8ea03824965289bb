import type { Formula, IngredientKind, Share } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { preparationsOf, totalPercent, WHOLE } from './percents.ts'

/** What a baker reads off a formula, in thousandths of a percent of all flour. */
export interface FormulaFigures {
  /** Of all flours: 100_000 in a formula that adds up. */
  readonly flour: number
  /** Water of dough and pre-ferments; a soaker's is bound in it and stands apart. */
  readonly hydration: number
  readonly soakerWater: number
  readonly salt: number
  readonly yeast: number
  readonly malt: number
  readonly mixIns: number
  readonly total: number
  readonly prefermentedFlour: number
  readonly warnings: readonly FormulaWarning[]
}

/** A figure outside the usual range, which may be just what the baker wants: shown, never in the way. */
export interface FormulaWarning {
  readonly code: 'flour-sum' | WatchedFigure
  /** Below the range, or above it. */
  readonly is: 'low' | 'high'
  readonly percent: number
  readonly from: number
  readonly to: number
}
export type WatchedFigure = 'hydration' | 'salt' | 'yeast' | 'malt'

/**
 * What bagel formulas usually have, in thousandths of a percent.
 *
 * Sources: water 45 to 52, salt 1.25 to 2, fresh yeast 0.5 to 1.5: bakerpedia.com "3 tips for baking bagels"; water 50 to
 * 55, salt 1 to 2, fresh yeast 0.5 to 2, malt 0 to 2: baystatemilling.com "Everything bagel"; malt syrup 4: ratios.fyi;
 * water up to 60: J. Hamelman, Bread (from memory). Widened so that only the odd one is named. Yeast is of any kind here:
 * 0.2 of fresh is 0.08 of instant (W. Gisslen, Professional Baking, from memory).
 */
const USUAL: { readonly [figure in WatchedFigure]: { readonly from: number; readonly to: number } } = {
  hydration: { from: 45_000, to: 60_000 },
  salt: { from: 1_000, to: 2_500 },
  yeast: { from: 80, to: 3_000 },
  malt: { from: 0, to: 6_000 },
}
const WATCHED = ['hydration', 'salt', 'yeast', 'malt'] as const

/**
 * Hydration, salt, yeast, total and pre-fermented flour of a formula, and what is unusual in them.
 * @returns whole thousandths of a percent
 * @example 100 flour, 57 water, 2 salt, 1.5 malt, 0.6 yeast // total 161_100, hydration 57_000, no warnings
 */
export function formulaFigures(shop: Pick<Shop, 'ingredients' | 'preparations'>, formula: Formula): FormulaFigures {
  const of = (kind: IngredientKind) => percentOf(shop, formula.lines, kind)
  const uses = preparationsOf(shop, formula)
  const held = (kind: IngredientKind, of: 'preferment' | 'soaker') =>
    uses
      .filter(({ preparation }) => preparation.kind === of)
      .reduce((sum, { preparation, percent }) => sum + (percent * percentOf(shop, preparation.lines, kind)) / WHOLE, 0)
  const soakerWater = Math.round(held('water', 'soaker'))
  const figures = {
    flour: of('flour'),
    hydration: of('water') - soakerWater,
    soakerWater,
    salt: of('salt'),
    yeast: of('yeast'),
    malt: of('malt'),
    mixIns: of('mixIn'),
    total: totalPercent(formula.lines),
    prefermentedFlour: Math.round(held('flour', 'preferment')),
  }
  const isRaisedByCulture = uses.some(({ preparation }) => preparation.seedPercent > 0)
  return { ...figures, warnings: [...flourSum(figures.flour), ...unusual(figures, isRaisedByCulture)] }
}

function percentOf(shop: Pick<Shop, 'ingredients'>, lines: readonly Share[], kind: IngredientKind): number {
  return totalPercent(lines.filter(({ ingredientId }) => shop.ingredients.get(ingredientId)?.kind === kind))
}

function flourSum(percent: number): FormulaWarning[] {
  if (percent === WHOLE) return []
  return [{ code: 'flour-sum', is: percent < WHOLE ? 'low' : 'high', percent, from: WHOLE, to: WHOLE }]
}

function unusual(
  figures: { readonly [figure in WatchedFigure]: number },
  isRaisedByCulture: boolean,
): FormulaWarning[] {
  return WATCHED.flatMap((code): FormulaWarning[] => {
    const percent = figures[code]
    const { from, to } = USUAL[code]
    if (percent >= from && percent <= to) return []
    if (code === 'yeast' && percent < from && isRaisedByCulture) return []
    return [{ code, is: percent < from ? 'low' : 'high', percent, from, to }]
  })
}

import { totalPercent, WHOLE } from '../../../../shared-core/dough/percents.ts'
import type { Formula, FormulaLine, Ingredient, Share } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { durationMs, spanMs } from '../../../../shared-core/units.ts'

/** Mix-ins go in from about the tenth minute on. Common practice, no source. */
const MIX_IN_MS = spanMs(10, 'min')
const FIRST_PERCENT = 1_000

/** The formula with other lines: its mix-ins have a time as soon as there is one, and none when the last is gone. */
export function withLines(formula: Formula, lines: readonly FormulaLine[]): Formula {
  const hasMixIns = lines.some(({ at }) => at === 'mixIn')
  const begin = formula.mixInMs ?? durationMs(Math.min(MIX_IN_MS, formula.mixMs))
  return { ...formula, lines, mixInMs: hasMixIns ? begin : null }
}

/** What may be added: every ingredient in use that does not stand there at all of its times. */
export function addable(shop: Shop, lines: readonly Share[], times: number): readonly Ingredient[] {
  return inUse(shop.ingredients).filter(
    ({ id }) => lines.filter(({ ingredientId }) => ingredientId === id).length < times,
  )
}

/** A line to begin with: a flour has what is missing to 100 %, all else one percent. */
export function lineToAdd(shop: Shop, lines: readonly Share[], ingredient: Ingredient): Share {
  const flours = lines.filter(({ ingredientId }) => shop.ingredients.get(ingredientId)?.kind === 'flour')
  const missing = WHOLE - totalPercent(flours)
  const percent = ingredient.kind === 'flour' && missing > 0 ? missing : FIRST_PERCENT
  return { ingredientId: ingredient.id, percent }
}

/** The same as a line of a formula: a mix-in goes in late, and so does what stands there at the start already. */
export function formulaLineToAdd(shop: Shop, lines: readonly FormulaLine[], ingredient: Ingredient): FormulaLine {
  const known = lines.find(({ ingredientId }) => ingredientId === ingredient.id)
  const at = known !== undefined ? other(known.at) : ingredient.kind === 'mixIn' ? 'mixIn' : 'start'
  return { ...lineToAdd(shop, lines, ingredient), at }
}

function other(at: FormulaLine['at']): FormulaLine['at'] {
  return at === 'start' ? 'mixIn' : 'start'
}

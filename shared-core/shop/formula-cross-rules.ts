import { totalPercent, WHOLE } from '../dough/percents.ts'
import type { Formula, Ingredient, IngredientKind, MadeOf, Preparation, Share } from './formula.ts'
import type { Misfit, Rule, Whose } from './misfit.ts'
import { broken } from './misfit.ts'
import type { SetUpParts } from './set-up-parts.ts'
import type { Dough, Topping } from './shop.ts'

/** What does not fit between formulas, what they are made of, and the doughs and toppings that name them. */
export function formulaCrossMisfits(parts: SetUpParts): Misfit[] {
  return [
    ...parts.preparations.flatMap((preparation) => preparationPartsMisfits(preparation, parts)),
    ...parts.formulas.flatMap((formula) => formulaPartsMisfits(formula, parts)),
    ...parts.doughs.flatMap((dough) => mixedByMisfits(dough, parts)),
    ...parts.toppings.flatMap((topping) => toppingPartsMisfits(topping, parts)),
    ...surplusMisfits(parts),
  ]
}

function preparationPartsMisfits(preparation: Preparation, parts: SetUpParts): Misfit[] {
  const { id, kind, lines, retired } = preparation
  const whose = { entity: 'preparation', id } as const
  const named = namedRules(lines, 'lines', parts, retired)
  if (retired || !areRead(lines, parts)) return broken(whose, named)
  const base = kind === 'preferment' ? kindOnly(lines, parts, 'flour') : allBut(lines, parts, 'water')
  const whole = kind === 'preferment' ? 'The flours of a pre-ferment' : 'The parts of a soaker without its water'
  return broken(whose, [...named, sumRule(totalPercent(base), whole)])
}

function formulaPartsMisfits(formula: Formula, parts: SetUpParts): Misfit[] {
  const { id, lines, retired } = formula
  const whose: Whose = { entity: 'formula', id }
  const named = [...namedRules(lines, 'lines', parts, retired), ...preparationRules(formula, parts)]
  if (retired || !areRead(lines, parts)) return broken(whose, named)
  const flours = totalPercent(kindOnly(lines, parts, 'flour'))
  return broken(whose, [...named, sumRule(flours, 'The flours'), ...heldRules(formula, parts)])
}

/** Says what is missing or too much, so that nobody has to add it up again. */
function sumRule(sum: number, whole: string): Rule {
  const short = sum < WHOLE ? `${percentText(WHOLE - sum)} is missing.` : `${percentText(sum - WHOLE)} is too much.`
  return [sum !== WHOLE, 'lines', `${whole} sum to ${percentText(sum)}: ${short}`, '100 % in all.']
}

/** A preparation's parts are counted in the formula, so that it never holds more of one than the formula has. */
function heldRules({ lines, preparations }: Formula, parts: SetUpParts): Rule[] {
  const held = new Map<string, number>()
  for (const { preparationId, percent } of preparations) {
    const preparation = parts.preparations.find(({ id }) => id === preparationId)
    for (const part of preparation?.lines ?? [])
      held.set(part.ingredientId, (held.get(part.ingredientId) ?? 0) + (percent * part.percent) / WHOLE)
  }
  return [...held].map(([ingredientId, percent]): Rule => {
    const own = totalPercent(lines.filter((line) => line.ingredientId === ingredientId))
    const wrong = `Its preparations hold ${percentText(percent)} of "${ingredientId}", the formula has ${percentText(own)}.`
    const right = 'At least as much in the formula, which counts what its preparations hold.'
    // Less than a thousandth of a percent is rounding.
    return [percent >= own + 1, 'preparations', wrong, right]
  })
}

function preparationRules({ preparations, retired }: Formula, parts: SetUpParts): Rule[] {
  return preparations.flatMap(({ preparationId }, at) => {
    const preparation = parts.preparations.find(({ id }) => id === preparationId)
    return referenceRules(preparationId, preparation, {
      what: 'preparation',
      field: `preparations/${at}/preparationId`,
      ids: parts.preparationIds,
      retired,
    })
  })
}

function mixedByMisfits({ id, formulaId, retired }: Dough, parts: SetUpParts): Misfit[] {
  if (formulaId === null) return []
  const formula = parts.formulas.find((one) => one.id === formulaId)
  const of = { what: 'formula', field: 'formulaId', ids: parts.formulaIds, retired }
  return broken({ entity: 'dough', id }, referenceRules(formulaId, formula, of))
}

function toppingPartsMisfits({ id, madeOf, retired }: Topping, parts: SetUpParts): Misfit[] {
  return broken({ entity: 'topping', id }, namedRules(madeOf, 'madeOf', parts, retired))
}

function surplusMisfits({ doughRoom, formulas, formulaIds }: SetUpParts): Misfit[] {
  const surplusTo = doughRoom?.surplusTo ?? null
  if (surplusTo === null) return []
  const formula = formulas.find(({ id }) => id === surplusTo)
  const of = { what: 'formula', field: 'surplusTo', ids: formulaIds, retired: false }
  return broken({ entity: 'doughRoom', id: null }, referenceRules(surplusTo, formula, of))
}

function namedRules(
  lines: readonly Pick<Share | MadeOf, 'ingredientId'>[],
  list: string,
  parts: SetUpParts,
  retired: boolean,
): Rule[] {
  return lines.flatMap(({ ingredientId }, at) =>
    referenceRules(ingredientId, ingredientOf(ingredientId, parts), {
      what: 'ingredient',
      field: `${list}/${at}/ingredientId`,
      ids: parts.ingredientIds,
      retired,
    }),
  )
}

interface Reference {
  readonly what: string
  readonly field: string
  /** Known ids, also of what could not be read. */
  readonly ids: ReadonlySet<string>
  /** Whoever names it is retired, and may name what is retired. */
  readonly retired: boolean
}

function referenceRules(
  id: string,
  named: { readonly retired: boolean } | undefined,
  { what, field, ids, retired }: Reference,
): Rule[] {
  const known = [...ids].slice(0, KNOWN_MAX).map((one) => `"${one}"`)
  const right =
    known.length === 0 ? `None, or ${articled(what)} of that id.` : `The id of ${articled(what)}: ${known.join(', ')}.`
  const inUse = `${articled(what).replace(/^a/, 'A')} in use, or this retired too.`
  return [
    [!ids.has(id), field, `There is no ${what} "${id}".`, right],
    [named?.retired === true && !retired, field, `Its ${what} "${id}" is retired.`, inUse],
  ]
}

/** A shop keeps some dozens of ingredients: enough to see how they are written. */
const KNOWN_MAX = 12

function articled(what: string): string {
  return what === 'ingredient' ? 'an ingredient' : `a ${what}`
}

/** Whether all that lines name could be read: sums of others would be wrong. */
function areRead(lines: readonly Share[], parts: SetUpParts): boolean {
  return lines.every(({ ingredientId }) => ingredientOf(ingredientId, parts) !== undefined)
}

function kindOnly<Line extends Share>(lines: readonly Line[], parts: SetUpParts, kind: IngredientKind): Line[] {
  return lines.filter(({ ingredientId }) => ingredientOf(ingredientId, parts)?.kind === kind)
}

function allBut<Line extends Share>(lines: readonly Line[], parts: SetUpParts, kind: IngredientKind): Line[] {
  return lines.filter(({ ingredientId }) => ingredientOf(ingredientId, parts)?.kind !== kind)
}

function ingredientOf(id: string, { ingredients }: SetUpParts): Ingredient | undefined {
  return ingredients.find((one) => one.id === id)
}

/** @example percentText(98_500) // '98.5 %' */
function percentText(thousandths: number): string {
  return `${Math.round(thousandths) / 1_000} %`
}

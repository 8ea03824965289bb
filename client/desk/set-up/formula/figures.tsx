import { allergensOfFormula } from '../../../../shared-core/dough/allergens.ts'
import type { PieceCost } from '../../../../shared-core/dough/cost.ts'
import { pieceCost } from '../../../../shared-core/dough/cost.ts'
import type { FormulaFigures } from '../../../../shared-core/dough/formula-figures.ts'
import type { Formula } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { allergensTold } from '../parts/by-ingredients.tsx'
import { moneySaid, percentSaid, weightSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { BakersTable } from './bakers-table.ts'

export interface FiguresProps {
  readonly parts: SetUpProps
  readonly formula: Formula
  readonly figures: FormulaFigures
  readonly table: BakersTable
}

/** What a formula comes to while it is typed; what is unusual is said and never in the way. */
export function Figures({ parts, formula, figures, table }: FiguresProps) {
  const { draft, say } = parts
  const { dough } = say
  const costs = costsOf(draft, formula)
  const unpriced = unpricedIn(
    draft,
    costs.map(({ cost }) => cost),
  )
  const shown = [
    ['hydration', figures.hydration],
    ['salt', figures.salt],
    ['yeast', figures.yeast],
    ['malt', figures.malt],
    ['prefermentedFlour', figures.prefermentedFlour],
    ['total', figures.total],
  ] as const
  return (
    <>
      <dl class="setup-figures">
        {shown
          .filter(([name, percent]) => percent > 0 || name === 'hydration' || name === 'salt')
          .map(([name, percent]) => (
            <div key={name}>
              <dt>{dough.figures[name]}</dt>
              <dd>{percentSaid(percent)}</dd>
            </div>
          ))}
      </dl>
      {figures.warnings
        .filter(({ code }) => code !== 'flour-sum')
        .map((warning) => (
          <p key={warning.code} class="setup-hint" role="status">
            {dough.warning(warning)}
          </p>
        ))}
      <dl class="setup-figures">
        <div>
          <dt>{dough.madeInto}</dt>
          {table.makes.length === 0 && <dd>{dough.nobodyShapes}</dd>}
          {table.makes.map(({ dough: { id, name }, pieces, weight }) => (
            <dd key={id}>{dough.pieces(name, pieces, weightSaid(weight))}</dd>
          ))}
        </div>
        <div>
          <dt>{dough.figures.costs}</dt>
          {costs.map(({ name, cost }) => (
            <dd key={name}>{`${name} ${moneySaid(cost.doughCents)}`}</dd>
          ))}
          {unpriced.length > 0 && <dd class="setup-hint">{`${dough.figures.unpriced} ${unpriced.join(', ')}`}</dd>}
        </div>
        <div>
          <dt>{dough.figures.allergens}</dt>
          {allergensTold(draft, allergensOfFormula(draft, formula), say).map((told) => (
            <dd key={told}>{told}</dd>
          ))}
        </div>
      </dl>
      <p class="setup-caution">{say.cautions.allergens}</p>
    </>
  )
}

/** Of the dough alone, one for each dough that is shaped from it. */
function costsOf(shop: Shop, { id }: Formula): readonly { readonly name: string; readonly cost: PieceCost }[] {
  return inUse(shop.doughs).flatMap((dough) => {
    if (dough.formulaId !== id) return []
    const variety = inUse(shop.varieties).find(({ doughId }) => doughId === dough.id)
    const cost = variety === undefined ? null : pieceCost(shop, variety.id)
    return cost === null || cost.missing.length > 0 ? [] : [{ name: dough.name, cost }]
  })
}

/** Ingredients of the dough of which nobody has said what they cost: without them a sum is too small. */
function unpricedIn(shop: Shop, costs: readonly PieceCost[]): readonly string[] {
  const names = costs
    .flatMap(({ lines }) => lines.filter(({ of, cents }) => of === 'dough' && cents === null))
    .map(({ ingredientId }) => shop.ingredients.get(ingredientId)?.name ?? '?')
  return [...new Set(names)]
}

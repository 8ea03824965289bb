import { allergensOfFormula } from '../../../../shared-core/dough/allergens.ts'
import { milliCelsiusOf } from '../../../../shared-core/shop/temperature.ts'
import { shownDegrees } from '../../../parts/shop-degrees.ts'
import { dwellSaid, spanSaid, weightSaid } from '../say-value.ts'
import type { BakersTable } from './bakers-table.ts'
import type { CardProps } from './formula-card.tsx'

/** What the card says beside its weights: warmth, times, pieces, and what is entered of allergens. */
export function CardFacts({ parts, formula, table }: CardProps & { readonly table: BakersTable }) {
  const { draft, words, say } = parts
  const { card } = say.dough
  const telling = { words, say, shop: draft }
  const { mixMs, mixInMs, restMs, bulk } = formula
  const found = allergensOfFormula(draft, formula).map(({ allergen }) => say.options.allergen[allergen])
  const mixing = [spanSaid(mixMs, telling), ...(mixInMs === null ? [] : [card.mixIns(spanSaid(mixInMs, telling))])]
  const bulkLine = bulk && [
    dwellSaid(bulk.window, telling),
    ...(bulk.foldsMs.length === 0
      ? []
      : [`${card.folds} ${bulk.foldsMs.map((ms) => spanSaid(ms, telling)).join(', ')}`]),
  ]
  const facts: readonly (readonly [string, string])[] = [
    [card.doughAt, shownDegrees(milliCelsiusOf(formula.doughAt), draft.profile.temperature)],
    [card.mixing, mixing.join(', ')],
    [card.rest, spanSaid(restMs, telling)],
    ...(bulkLine === null ? [] : [[card.bulk, bulkLine.join(', ')] as const]),
    ...(bulk?.chill == null ? [] : [[card.bulkChill, dwellSaid(bulk.chill, telling)] as const]),
    ...(table.makes.length === 0
      ? []
      : [
          [
            card.pieces,
            table.makes
              .map(({ dough, pieces, weight }) => say.dough.pieces(dough.name, pieces, weightSaid(weight)))
              .join('; '),
          ] as const,
        ]),
    [card.contains, found.length === 0 ? card.nothingEntered : found.join(', ')],
  ]
  return (
    <>
      <dl>
        {facts.map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p>{card.caution}</p>
    </>
  )
}

import { useState } from 'preact/hooks'
import type { PreparationUse } from '../../../../shared-core/dough/percents.ts'
import {
  preparationLines,
  preparationPercent,
  preparationsOf,
  seedMilligrams,
  WHOLE,
} from '../../../../shared-core/dough/percents.ts'
import type { Formula } from '../../../../shared-core/shop/formula.ts'
import { milligrams } from '../../../../shared-core/shop/weight.ts'
import { shownWeight, weighedWeight } from '../../../parts/shop-weight.ts'
import { WeightField } from '../fields/weight-field.tsx'
import { hashOf } from '../route.ts'
import { dwellSaid, percentSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { BakersTable } from './bakers-table.ts'
import { bakersTable, trialFlour } from './bakers-table.ts'
import { CardFacts } from './card-facts.tsx'
import './formula.css'

export interface CardProps {
  readonly parts: SetUpProps
  readonly formula: Formula
}

/** One formula on one page of paper, for so much flour. */
export function FormulaCardPage({ id, ...parts }: SetUpProps & { readonly id: string }) {
  const { draft, say } = parts
  const formula = [...draft.formulas.values()].find((one) => one.id === id)
  return (
    <section class="setup-sheet" tabIndex={-1} aria-label={say.dough.card.open}>
      <a class="setup-up setup-noprint" href={hashOf({ kind: 'part', part: 'formulas' })}>
        ← {say.dough.card.back}
      </a>
      {formula === undefined ? <p>{say.dough.card.unknown}</p> : <Card parts={parts} formula={formula} />}
    </section>
  )
}

function Card({ parts, formula }: CardProps) {
  const { draft, say } = parts
  const { card } = say.dough
  const [flour, setFlour] = useState(() => trialFlour(draft))
  const table = bakersTable(draft, formula, milligrams(flour))
  const uses = preparationsOf(draft, formula)
  const weight = (size: number) => shownWeight(size, draft.profile.weight)
  return (
    <>
      <div class="setup-columns setup-noprint">
        <WeightField label={card.flour} value={flour} say={say} onChange={setFlour} />
        <button type="button" class="desk-strong setup-beside" onClick={() => window.print()}>
          {card.print}
        </button>
      </div>
      <article class="formula-card">
        <header>
          <h2>{formula.name}</h2>
          <p>
            {[
              draft.profile.name,
              `${card.flour} ${weight(milligrams(flour))}`,
              `${card.dough} ${weight(table.inBowl)}`,
            ].join(' · ')}
          </p>
        </header>
        <CardTable parts={parts} table={table} />
        {uses.length > 0 && (
          <>
            <h3>{card.madeAhead}</h3>
            {uses.map((use) => (
              <MadeAhead key={use.preparation.id} parts={parts} use={use} flour={milligrams(flour)} />
            ))}
          </>
        )}
        <CardFacts parts={parts} formula={formula} table={table} />
      </article>
    </>
  )
}

function CardTable({ parts, table }: { readonly parts: SetUpProps; readonly table: BakersTable }) {
  const { draft, say } = parts
  const heads = say.dough.table
  const weight = (size: number) => weighedWeight(Math.round(size), draft.profile.weight)
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{heads.ingredient}</th>
          <th scope="col" class="setup-figure">
            {heads.percent}
          </th>
          <th scope="col" class="setup-figure">
            {heads.weight}
          </th>
          <th scope="col" class="setup-figure">
            {heads.inTheBowl}
          </th>
        </tr>
      </thead>
      <tbody>
        {table.rows.map(({ key, name, percent, inAll, inBowl, at }) => (
          <tr key={key}>
            <th scope="row">{at === 'mixIn' ? `${name} (${say.dough.at.mixIn})` : name}</th>
            <td class="setup-figure">{percent === null ? '' : percentSaid(percent)}</td>
            <td class="setup-figure">{inAll === null ? '' : weight(inAll)}</td>
            <td class="setup-figure">{inBowl === 0 ? '–' : weight(inBowl)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{heads.sum}</th>
          <td class="setup-figure">{percentSaid(table.totalPercent)}</td>
          <td />
          <td class="setup-figure">{weight(table.inBowl)}</td>
        </tr>
      </tfoot>
    </table>
  )
}

interface MadeAheadProps {
  readonly parts: SetUpProps
  readonly use: PreparationUse
  readonly flour: number
}

/** What is made ahead for so much flour, seed included: as much is kept back of the ripe one. */
function MadeAhead({ parts, use, flour }: MadeAheadProps) {
  const { draft, words, say } = parts
  const { preparation } = use
  const made = Math.round((flour * preparationPercent(use)) / WHOLE)
  const seed = seedMilligrams(preparation, made)
  const weight = (size: number) => weighedWeight(size, draft.profile.weight)
  const lines = preparationLines(preparation, made).map(
    ({ ingredientId, milligrams: size }) => `${draft.ingredients.get(ingredientId)?.name ?? '?'} ${weight(size)}`,
  )
  return (
    <p>
      <strong>{preparation.name}</strong>
      {[...lines, ...(seed === 0 ? [] : [`${preparation.name} ${weight(seed)}`])].join(', ')}
      <br />
      {`${say.fields.preparation.ready} ${dwellSaid(preparation.ready, { words, say, shop: draft })}`}
    </p>
  )
}

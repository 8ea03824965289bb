import { useState } from 'preact/hooks'
import { formulaFigures } from '../../../../shared-core/dough/formula-figures.ts'
import type { Formula, FormulaLine } from '../../../../shared-core/shop/formula.ts'
import { milligrams } from '../../../../shared-core/shop/weight.ts'
import { shownWeight } from '../../../parts/shop-weight.ts'
import { WeightField } from '../fields/weight-field.tsx'
import { percentSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { Version } from '../versions.ts'
import { bakersTable, trialFlour } from './bakers-table.ts'
import { Figures } from './figures.tsx'
import { FormulaActs } from './formula-acts.tsx'
import { addable, formulaLineToAdd, withLines } from './formula-edit.ts'
import { LossFields, PlanFields, TimesFields, WarmthFields } from './formula-times.tsx'
import { PercentTable, SumText } from './percent-table.tsx'
import { PreparationsField } from './preparations-field.tsx'

export interface FormulaFieldsProps {
  readonly parts: SetUpProps
  readonly formula: Formula
  readonly set: (formula: Formula) => void
}

/** All of one formula: its percentages with what they come to, what is made ahead, warmth, times, losses. */
export function FormulaFields(props: FormulaFieldsProps & { readonly versions: readonly Version[] }) {
  const { parts, formula, versions } = props
  const { sections } = parts.say.dough
  return (
    <div class="setup-formula">
      <LinesField {...props} />
      <h3>{sections.preparations}</h3>
      <PreparationsField {...props} />
      <h3>{sections.warmth}</h3>
      <WarmthFields {...props} />
      <h3>{sections.times}</h3>
      <TimesFields {...props} />
      <h3>{sections.losses}</h3>
      <LossFields {...props} />
      <PlanFields {...props} />
      <h3>{sections.file}</h3>
      <FormulaActs parts={parts} formula={formula} versions={versions} />
    </div>
  )
}

function LinesField({ parts, formula, set }: FormulaFieldsProps) {
  const { draft, say } = parts
  const [flour, setFlour] = useState(() => trialFlour(draft))
  const table = bakersTable(draft, formula, milligrams(flour))
  const figures = formulaFigures(draft, formula)
  const weight = (size: number) => shownWeight(Math.round(size), draft.profile.weight)
  const own = table.rows.filter(({ inAll }) => inAll !== null)
  const made = table.rows.filter(({ inAll }) => inAll === null)
  const inAll = own.reduce((sum, row) => sum + (row.inAll ?? 0), 0)
  const columns = [
    { head: say.dough.table.weight, cells: own.map((row) => weight(row.inAll ?? 0)), sum: weight(inAll) },
    {
      head: say.dough.table.inTheBowl,
      cells: own.map(({ inBowl }) => (inBowl === 0 ? '–' : weight(inBowl))),
      sum: weight(table.inBowl),
    },
  ]
  return (
    <>
      <WeightField label={say.dough.trial} value={flour} say={say} onChange={setFlour} />
      <p class="setup-hint">{say.dough.trialHint}</p>
      <PercentTable
        parts={parts}
        caption={say.dough.sections.formula}
        lines={formula.lines}
        more={addable(draft, formula.lines, 2)}
        columns={columns}
        extras={made.map(({ key, name, inBowl }) => ({ key, name, cells: ['', weight(inBowl)] }))}
        when={(line, setLine) => <WhenPick parts={parts} formula={formula} line={line} onSet={setLine} />}
        sum={percentSaid(table.totalPercent)}
        toLine={(ingredient) => formulaLineToAdd(draft, formula.lines, ingredient)}
        onChange={(lines) => set(withLines(formula, lines))}
      />
      <SumText label={say.dough.flours} percent={figures.flour} parts={parts} />
      <Figures parts={parts} formula={formula} figures={figures} table={table} />
    </>
  )
}

interface WhenPickProps {
  readonly parts: SetUpProps
  readonly formula: Formula
  readonly line: FormulaLine
  readonly onSet: (line: FormulaLine) => void
}

/** At the start or as a mix-in; settled where the ingredient stands at the other time already. */
function WhenPick({ parts, formula, line, onSet }: WhenPickProps) {
  const { say, draft } = parts
  const name = draft.ingredients.get(line.ingredientId)?.name ?? '?'
  const isTwice = formula.lines.filter(({ ingredientId }) => ingredientId === line.ingredientId).length > 1
  return (
    <select
      class="setup-unit-pick"
      aria-label={`${name}, ${say.dough.table.when}`}
      value={line.at}
      disabled={isTwice}
      onChange={(event) => onSet({ ...line, at: event.currentTarget.value === 'mixIn' ? 'mixIn' : 'start' })}
    >
      {(['start', 'mixIn'] as const).map((at) => (
        <option key={at} value={at}>
          {say.dough.at[at]}
        </option>
      ))}
    </select>
  )
}

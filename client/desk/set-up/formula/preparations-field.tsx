import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { PERCENT_MAX, PREPARATIONS_OF_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { AddPick } from '../fields/add-pick.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { hashOf } from '../route.ts'
import type { FormulaFieldsProps } from './formula-fields.tsx'

/** A fifth of the flour. Common practice, no source. */
const BEGIN_PERCENT = 20_000

/** What is made ahead for a formula, by how much of its flour. */
export function PreparationsField({ parts, formula, set }: FormulaFieldsProps) {
  const { draft, say } = parts
  const { preparations } = formula
  const more = inUse(draft.preparations).filter(({ id }) => preparations.every((one) => one.preparationId !== id))
  const put = (next: typeof preparations) => set({ ...formula, preparations: next })
  return (
    <>
      {preparations.length === 0 && <p class="setup-hint">{say.dough.noPreparations}</p>}
      {preparations.map((use) => {
        const name = draft.preparations.get(use.preparationId)?.name ?? '?'
        return (
          <div key={use.preparationId} class="setup-span" data-preparation={use.preparationId}>
            <NumberField
              label={name}
              value={use.percent / 1_000}
              min={0.001}
              max={PERCENT_MAX}
              step={1}
              decimals={3}
              unit={say.dough.table.percent}
              say={say}
              onChange={(percent) =>
                put(preparations.map((one) => (one === use ? { ...one, percent: Math.round(percent * 1_000) } : one)))
              }
            />
            <button
              type="button"
              class="setup-beside"
              aria-label={say.dough.table.remove(name)}
              onClick={() => put(preparations.filter((one) => one !== use))}
            >
              ×
            </button>
          </div>
        )
      })}
      {preparations.length < PREPARATIONS_OF_MAX && (
        <AddPick
          label={say.dough.sections.preparations}
          say={say}
          more={more}
          onAdd={({ id }) => put([...preparations, { preparationId: id, percent: BEGIN_PERCENT }])}
        />
      )}
      {draft.preparations.size === 0 && (
        <p>
          <a href={hashOf({ kind: 'part', part: 'preparations' })}>{say.parts.preparations}</a>
        </p>
      )}
    </>
  )
}

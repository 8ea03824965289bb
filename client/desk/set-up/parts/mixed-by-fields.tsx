import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { Dough, Profile, Weight } from '../../../../shared-core/shop/shop.ts'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { WeightField } from '../fields/weight-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

export interface MixedByFieldsProps {
  readonly parts: SetUpProps
  readonly dough: Dough
  readonly set: (dough: Dough) => void
}

/** What a dough is mixed by, and what its pieces weigh. */
export function MixedByFields({ parts, dough, set }: MixedByFieldsProps) {
  const { draft, say } = parts
  const { dough: labels } = say.fields
  const formulas = inUse(draft.formulas)
  const piece = pieceOf(draft.profile)
  return (
    <>
      {formulas.length > 0 && (
        <PickField
          label={labels.formulaId}
          options={[
            { value: '', label: say.dough.noFormulas },
            ...formulas.map(({ id, name }) => ({ value: id as string, label: name })),
          ]}
          value={dough.formulaId ?? ''}
          onChange={(id) => {
            const formulaId = formulas.find((one) => one.id === id)?.id ?? null
            set({ ...dough, formulaId, pieceWeight: dough.pieceWeight ?? (formulaId === null ? null : piece) })
          }}
        />
      )}
      <div class="setup-columns">
        {(['pieceWeight', 'labelWeight'] as const).map((field) => (
          <OptionalField
            key={field}
            label={labels[field]}
            value={dough[field]}
            begin={piece}
            say={say}
            onChange={(weight) => set({ ...dough, [field]: weight })}
          >
            {(weight) => (
              <WeightField
                label={labels[field]}
                value={weight}
                units={PIECE_UNITS}
                say={say}
                onChange={(next) => set({ ...dough, [field]: next })}
              />
            )}
          </OptionalField>
        ))}
      </div>
      <PickField
        label={labels.shapedBy}
        options={(['divider', 'hand'] as const).map((value) => ({ value, label: say.dough.shapedBy[value] }))}
        value={dough.shapedBy}
        onChange={(shapedBy) => set({ ...dough, shapedBy })}
      />
    </>
  )
}

const PIECE_UNITS = ['g', 'oz'] as const

/** A usual piece as it is shaped. Common practice, no source. */
function pieceOf({ weight }: Profile): Weight {
  return weight === 'g' ? { thousandths: 120_000, unit: 'g' } : { thousandths: 4_250, unit: 'oz' }
}

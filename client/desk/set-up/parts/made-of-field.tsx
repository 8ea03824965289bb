import type { MadeOf } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { MADE_OF_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { AddPick } from '../fields/add-pick.tsx'
import { WeightField } from '../fields/weight-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

export interface MadeOfFieldProps {
  readonly parts: SetUpProps
  readonly madeOf: readonly MadeOf[]
  readonly onChange: (madeOf: readonly MadeOf[]) => void
}

/** What goes onto one piece, weighed. */
export function MadeOfField({ parts, madeOf, onChange }: MadeOfFieldProps) {
  const { draft, say } = parts
  const more = inUse(draft.ingredients).filter(({ id }) => madeOf.every(({ ingredientId }) => ingredientId !== id))
  return (
    <div role="group" aria-label={say.fields.topping.madeOf}>
      <p>{say.fields.topping.madeOf}</p>
      {madeOf.map((part) => {
        const name = draft.ingredients.get(part.ingredientId)?.name ?? '?'
        return (
          <div key={part.ingredientId} class="setup-span">
            <WeightField
              label={name}
              value={part.weight}
              say={say}
              onChange={(weight) => onChange(madeOf.map((one) => (one === part ? { ...one, weight } : one)))}
            />
            <button
              type="button"
              class="setup-beside"
              aria-label={say.dough.table.remove(name)}
              onClick={() => onChange(madeOf.filter((one) => one !== part))}
            >
              ×
            </button>
          </div>
        )
      })}
      {draft.ingredients.size === 0 && <p class="setup-hint">{say.dough.noIngredients}</p>}
      {madeOf.length < MADE_OF_MAX && (
        <AddPick
          label={say.fields.topping.madeOf}
          say={say}
          more={more}
          onAdd={({ id }) => onChange([...madeOf, { ingredientId: id, weight: { thousandths: 5_000, unit: 'g' } }])}
        />
      )}
    </div>
  )
}

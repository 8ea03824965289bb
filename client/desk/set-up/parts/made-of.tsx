import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { Variety } from '../../../../shared-core/shop/shop.ts'
import { PickField } from '../fields/pick-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

export interface MadeOfProps {
  readonly parts: SetUpProps
  readonly variety: Variety
  readonly set: (variety: Variety) => void
}

/** Which dough; of a variety that the shop has already it is told and stands: its pieces are booked by dough. */
export function DoughField({ parts, variety, set }: MadeOfProps) {
  const { draft, running, say, words } = parts
  if (running.varieties.has(variety.id)) {
    return (
      <div class="setup-field">
        <span>{say.fields.variety.doughId}</span>
        <strong>{words.names.dough(variety.doughId)}</strong>
        <span class="setup-hint">{say.form.doughFixed}</span>
      </div>
    )
  }
  return (
    <PickField
      label={say.fields.variety.doughId}
      options={inUse(draft.doughs).map(({ id, name }) => ({ value: id, label: name }))}
      value={variety.doughId}
      onChange={(doughId) => set({ ...variety, doughId })}
    />
  )
}

const NONE = ''

/** Which topping, and when it goes on; one without the other is not offered. */
export function ToppingField({ parts, variety, set }: MadeOfProps) {
  const { draft, say } = parts
  const { topping, toppingId, flip } = variety
  const whens = flip ? (['before-flip', 'after-flip'] as const) : (['before-flip'] as const)
  return (
    <>
      <PickField
        label={say.fields.variety.toppingId}
        options={[
          { value: NONE, label: say.form.noTopping },
          ...inUse(draft.toppings).map(({ id, name }) => ({ value: id as string, label: name })),
        ]}
        value={toppingId ?? (topping === 'none' ? NONE : null)}
        onChange={(value) => {
          const chosen = [...draft.toppings.keys()].find((id) => id === value) ?? null
          const when = chosen === null ? 'none' : topping === 'none' ? 'before-flip' : topping
          set({ ...variety, toppingId: chosen, topping: when })
        }}
      />
      {topping !== 'none' && (
        <PickField
          label={say.fields.variety.topping}
          options={whens.map((value) => ({ value, label: say.options.topping[value] }))}
          value={topping}
          onChange={(when) => set({ ...variety, topping: when })}
        />
      )}
    </>
  )
}

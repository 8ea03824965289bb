import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { ShowCell } from '../fields/table-cell.tsx'
import { VARIETIES } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { Wrong } from './wrong.tsx'

const HOUR_MINUTES = 60

/** Until when each variety should be on show, and how many of it at least. */
export function ShowPart(props: SetUpProps) {
  const { draft, say, change, misfits } = props
  const { baking, hours } = draft
  const set = changeTo(props, 'baking')
  return (
    <>
      <OptionalField
        label={say.fields.baking.showUntilMinute}
        value={baking.showUntilMinute}
        begin={Math.min(hours.closeMinute, hours.openMinute + 2 * HOUR_MINUTES)}
        say={say}
        onChange={(showUntilMinute) => set({ ...baking, showUntilMinute })}
      >
        {(minute) => (
          <ClockField
            label={say.fields.baking.showUntilMinute}
            minute={minute}
            say={say}
            onChange={(showUntilMinute) => set({ ...baking, showUntilMinute })}
          />
        )}
      </OptionalField>
      <Wrong misfits={misfits.filter(({ field }) => field === 'showUntilMinute')} say={say} />
      <p class="setup-hint">{say.baking.showHint}</p>
      <table class="setup-cells">
        <thead>
          <tr>
            <th scope="col">{say.demand.variety}</th>
            <th scope="col">{say.fields.variety.showLeast}</th>
          </tr>
        </thead>
        <tbody>
          {inUse(draft.varieties).map((variety) => (
            <tr key={variety.id}>
              <th scope="row">{variety.name}</th>
              <ShowCell
                label={`${variety.name}: ${say.fields.variety.showLeast}`}
                value={variety.showLeast}
                say={say}
                onChange={(pieces) => change([VARIETIES.change({ ...variety, showLeast: pieces ?? 0 })])}
              />
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}

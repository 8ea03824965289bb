import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { CENTS_MAX, DAY_OLD_SELLS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Variety } from '../../../../shared-core/shop/shop.ts'
import { Sideways } from '../../sideways.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { CentsCell } from '../fields/table-cell.tsx'
import { VARIETIES } from '../lists.ts'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'

/** What it costs to have too few and too many; what each variety brings, sold and in the kitchen. */
export function WorthPart(props: SetUpProps) {
  const { draft, say } = props
  const { demand, counter } = draft
  const { does } = say.demand
  const set = changeTo(props, 'demand')
  return (
    <>
      <NumberField
        label={say.fields.demand.disappointCents}
        value={demand.disappointCents / 100}
        min={0}
        max={CENTS_MAX / 100}
        step={0.25}
        decimals={2}
        say={say}
        onChange={(amount) => set({ ...demand, disappointCents: Math.round(amount * 100) })}
      />
      <p class="setup-hint">{does.disappointCents}</p>
      <NumberField
        label={say.fields.demand.takeAnotherPercent}
        value={demand.takeAnotherPercent}
        min={0}
        max={100}
        step={5}
        unit="%"
        say={say}
        onChange={(takeAnotherPercent) => set({ ...demand, takeAnotherPercent })}
      />
      <p class="setup-hint">{does.takeAnotherPercent}</p>
      <NumberField
        label={say.fields.demand.dayOldSells}
        value={demand.dayOldSells}
        min={0}
        max={DAY_OLD_SELLS_MAX}
        step={6}
        say={say}
        onChange={(dayOldSells) => set({ ...demand, dayOldSells })}
      />
      <p class="setup-hint">{does.dayOldSells}</p>
      <p>
        {say.fields.counter.dayOldPercent}: {counter.dayOldPercent} %.{' '}
        <a href={hashOf({ kind: 'part', part: 'counter' })}>{say.parts.counter}</a>
      </p>
      <p class="setup-hint">{does.dayOldPercent}</p>
      <h3>{say.demand.byVariety}</h3>
      <p class="setup-hint">{say.demand.byVarietyHint}</p>
      <WorthTable {...props} />
    </>
  )
}

const COLUMNS = ['priceCents', 'costCents', 'kitchenCents'] as const

function WorthTable({ draft, say, change }: SetUpProps) {
  const set = (variety: Variety) => change([VARIETIES.change(variety)])
  return (
    <Sideways name={say.demand.byVariety}>
      <table class="setup-cells">
        <thead>
          <tr>
            <th scope="col">{say.demand.variety}</th>
            {COLUMNS.map((field) => (
              <th key={field} scope="col">
                {say.fields.variety[field]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {inUse(draft.varieties).map((variety) => (
            <tr key={variety.id}>
              <th scope="row">{variety.name}</th>
              {COLUMNS.map((field) => (
                <CentsCell
                  key={field}
                  label={`${variety.name}: ${say.fields.variety[field]}`}
                  cents={variety[field]}
                  isOptional={field === 'kitchenCents'}
                  say={say}
                  onChange={(cents) => set({ ...variety, [field]: field === 'kitchenCents' ? cents : (cents ?? 0) })}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

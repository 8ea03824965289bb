import type { Misfit } from '../../../../shared-core/shop/misfit.ts'
import type { BakingRules } from '../../../../shared-core/shop/rules.ts'
import { MINUTE_MAX, PEOPLE_MAX, PEOPLE_ROWS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { minuteSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { Wrong } from './wrong.tsx'

type Row = BakingRules['people'][number]

/** How many people are at the line from when on, a row for each time at which that changes. */
export function PeopleByHour(props: SetUpProps) {
  const { draft, say, words, misfits } = props
  const { baking } = draft
  const { people: told } = say.baking
  const set = changeTo(props, 'baking')
  const rows = baking.people
  const put = (people: readonly Row[]) => set({ ...baking, people })
  const change = (at: number, row: Row) => put(rows.map((one, index) => (index === at ? row : one)))
  return (
    <>
      <p class="setup-hint">{rows.length === 0 ? told.none : told.hint}</p>
      {rows.map((row, at) => (
        // Rows have no name of their own: their place in the list is what they are.
        <div key={at} class="setup-columns setup-hour">
          <ClockField
            label={told.from}
            minute={row.fromMinute}
            say={say}
            onChange={(fromMinute) => change(at, { ...row, fromMinute })}
          />
          <NumberField
            label={told.count}
            value={row.people}
            min={0}
            max={PEOPLE_MAX}
            step={1}
            say={say}
            onChange={(people) => change(at, { ...row, people })}
          />
          <button type="button" onClick={() => put(rows.filter((_, index) => index !== at))}>
            {told.remove(minuteSaid(row.fromMinute, { words, say, shop: draft }))}
          </button>
        </div>
      ))}
      <Wrong misfits={misfits.filter(isOfPeople)} say={say} />
      {rows.length < PEOPLE_ROWS_MAX && (
        <div class="setup-acts">
          <button type="button" onClick={() => put([...rows, nextRow(draft)])}>
            + {told.add}
          </button>
        </div>
      )}
    </>
  )
}

function isOfPeople({ entity, field }: Misfit): boolean {
  return entity === 'baking' && field.startsWith('people/')
}

/** How long before the oven is ready the line is manned, until somebody says; common practice, no source. */
const BEFORE_OVEN_MINUTES = 30
const ROW_MINUTES = 60

/** The first begins before the oven is ready; each further one an hour after the one above it. */
export function nextRow({ baking, hours }: Pick<Shop, 'baking' | 'hours'>): Row {
  const last = baking.people[baking.people.length - 1]
  if (last === undefined) return { fromMinute: Math.max(0, hours.ovenReadyMinute - BEFORE_OVEN_MINUTES), people: 1 }
  return { fromMinute: Math.min(MINUTE_MAX, last.fromMinute + ROW_MINUTES), people: last.people }
}

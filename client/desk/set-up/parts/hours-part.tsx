import { weekdayId } from '../../../../shared-core/ids.ts'
import type { Weekday } from '../../../../shared-core/shop/shop.ts'
import { PickField } from '../fields/pick-field.tsx'
import { hoursSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'
import { HoursForm } from './hours-form.tsx'
import { Wrong } from './wrong.tsx'

/** The usual hours, and the weekdays that differ or are closed. */
export function HoursPart(props: SetUpProps) {
  const { draft, say, words, misfits } = props
  return (
    <>
      <HoursForm hours={draft.hours} say={say} onChange={changeTo(props, 'hours')} />
      <Wrong misfits={misfits.filter(({ entity }) => entity === 'hours')} say={say} />
      <h3>{say.form.weekdays}</h3>
      <p class="setup-hint">{say.form.usually(hoursSaid(draft.hours, { words, say, shop: draft }))}</p>
      <ul class="setup-weekdays">
        {say.options.weekday.map((name, at) => (
          <WeekdayRow key={name} parts={props} name={name} id={String(at + 1)} />
        ))}
      </ul>
    </>
  )
}

interface WeekdayRowProps {
  readonly parts: SetUpProps
  readonly name: string
  readonly id: string
}

function WeekdayRow({ parts, name, id }: WeekdayRowProps) {
  const { draft, say, misfits, change } = parts
  const weekday = draft.weekdays.get(weekdayId(id))
  const way = weekday === undefined || weekday.retired ? 'usual' : weekday.hours === null ? 'closed' : 'own'
  const set = (value: Omit<Weekday, 'id'>) => change([{ entity: 'weekday', value: { id: weekdayId(id), ...value } }])
  const hours = weekday?.hours ?? draft.hours
  return (
    <li class="setup-weekday" data-weekday={id}>
      <PickField
        label={name}
        options={[
          { value: 'usual', label: say.form.asUsual },
          { value: 'own', label: say.form.ownHours },
          { value: 'closed', label: say.sums.closed },
        ]}
        value={way}
        onChange={(next) => {
          if (next === 'usual') set({ hours: weekday?.hours ?? null, retired: true })
          else set({ hours: next === 'closed' ? null : hours, retired: false })
        }}
      />
      {way === 'own' && (
        <div class="setup-row-body">
          <HoursForm hours={hours} say={say} onChange={(next) => set({ hours: next, retired: false })} />
          <Wrong misfits={misfits.filter((one) => one.entity === 'weekday' && one.id === id)} say={say} />
        </div>
      )}
    </li>
  )
}

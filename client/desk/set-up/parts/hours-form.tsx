import { NAME_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Hours } from '../../../../shared-core/shop/shop.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { ClockField } from '../fields/clock-field.tsx'
import { TickField } from '../fields/pick-field.tsx'
import { TextField } from '../fields/text-field.tsx'

export interface HoursFormProps {
  readonly hours: Hours
  readonly say: SetUpSentences
  readonly onChange: (hours: Hours) => void
}

/** What a changeover takes until somebody says; common practice, no source. */
const CHANGEOVER_MINUTES = 60

/** Oven ready, open, close; with a changeover its two ends and what is baked then. */
export function HoursForm({ hours, say, onChange }: HoursFormProps) {
  const { fields } = say
  const { changeoverFromMinute: from, changeoverToMinute: to, openMinute, closeMinute } = hours
  const middle = Math.round((openMinute + closeMinute) / 120) * 60
  return (
    <>
      <div class="setup-columns">
        {(['ovenReadyMinute', 'openMinute', 'closeMinute'] as const).map((field) => (
          <ClockField
            key={field}
            label={fields.hours[field]}
            minute={hours[field]}
            say={say}
            onChange={(minute) => onChange({ ...hours, [field]: minute })}
          />
        ))}
      </div>
      <TickField
        label={say.form.changeover}
        value={from !== null}
        onChange={(isOn) =>
          onChange(
            isOn
              ? {
                  ...hours,
                  changeoverFromMinute: middle,
                  changeoverToMinute: Math.min(closeMinute, middle + CHANGEOVER_MINUTES),
                  secondMenu: say.form.secondMenu,
                }
              : { ...hours, changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null },
          )
        }
      />
      {from !== null && to !== null && (
        <div class="setup-columns">
          <ClockField
            label={fields.hours.changeoverFromMinute}
            minute={from}
            say={say}
            onChange={(minute) => onChange({ ...hours, changeoverFromMinute: minute })}
          />
          <ClockField
            label={fields.hours.changeoverToMinute}
            minute={to}
            say={say}
            onChange={(minute) => onChange({ ...hours, changeoverToMinute: minute })}
          />
          <TextField
            label={fields.hours.secondMenu}
            value={hours.secondMenu ?? ''}
            most={NAME_MAX.secondMenu}
            rule={say.form.nameRule(NAME_MAX.secondMenu)}
            onChange={(secondMenu) => onChange({ ...hours, secondMenu })}
          />
        </div>
      )}
    </>
  )
}

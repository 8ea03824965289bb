import { useId } from 'preact/hooks'
import { clockMinute, clockText } from '../../../../shared-core/shop/human-time.ts'
import { MINUTE_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { steppedTo } from './number-field.tsx'

export interface ClockFieldProps {
  readonly label: string
  /** Minutes after local midnight. */
  readonly minute: number
  readonly say: SetUpSentences
  readonly onChange: (minute: number) => void
}

const STEP_MINUTES = 15

/** A time of day: typed into the browser's own field, or a quarter of an hour earlier or later by touch. */
export function ClockField({ label, minute, say, onChange }: ClockFieldProps) {
  const id = useId()
  const stepTo = (by: number) => onChange(steppedTo(minute, by, { min: 0, max: MINUTE_MAX }))
  return (
    <div class="setup-field">
      <label for={id}>{label}</label>
      <div class="setup-number">
        <button
          type="button"
          class="setup-step"
          aria-label={`${label}: ${say.form.less}`}
          onClick={() => stepTo(-STEP_MINUTES)}
        >
          −
        </button>
        <input
          id={id}
          type="time"
          required
          value={clockText(minute)}
          onInput={(event) => {
            const { value } = event.currentTarget
            if (/^\d\d:\d\d/.test(value)) onChange(clockMinute(value))
          }}
        />
        <button
          type="button"
          class="setup-step"
          aria-label={`${label}: ${say.form.more}`}
          onClick={() => stepTo(STEP_MINUTES)}
        >
          +
        </button>
      </div>
    </div>
  )
}

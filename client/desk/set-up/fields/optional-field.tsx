import type { ComponentChildren } from 'preact'
import type { SetUpSentences } from '../../../words/set-up.ts'

export interface OptionalFieldProps<Value> {
  readonly label: string
  readonly value: Value | null
  /** What stands there when one begins to say it. */
  readonly begin: Value
  readonly say: SetUpSentences
  readonly onChange: (value: Value | null) => void
  readonly children: (value: Value) => ComponentChildren
}

/** Something that may stay unsaid. */
export function OptionalField<Value>({ label, value, begin, say, onChange, children }: OptionalFieldProps<Value>) {
  return value === null ? (
    <div class="setup-field">
      <span>{label}</span>
      <div class="setup-number">
        <span class="setup-unit">{say.form.notSaid}</span>
        <button type="button" aria-label={`${label}: ${say.form.say}`} onClick={() => onChange(begin)}>
          {say.form.say}
        </button>
      </div>
    </div>
  ) : (
    <div class="setup-optional">
      {children(value)}
      <button type="button" aria-label={`${label}: ${say.form.leaveUnsaid}`} onClick={() => onChange(null)}>
        {say.form.leaveUnsaid}
      </button>
    </div>
  )
}

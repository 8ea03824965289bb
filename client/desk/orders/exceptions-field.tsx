import { useState } from 'preact/hooks'
import { isDate } from '../../../shared-core/day/label.ts'
import type { RecurrenceFieldProps } from './recurrence-field.tsx'

/** Days on which it does not come, and days on which it comes besides. */
export function ExceptionsField({ draft, say, onChange }: RecurrenceFieldProps) {
  const [date, setDate] = useState('')
  const { recurrence } = draft
  const { except, also } = recurrence
  const set = (to: 'except' | 'also', one: string, isIn: boolean) => {
    const without = { except: except.filter((other) => other !== one), also: also.filter((other) => other !== one) }
    const next = isIn ? { ...without, [to]: [...without[to], one].sort() } : without
    onChange({ recurrence: { ...recurrence, ...next } })
  }
  const told = [
    ...except.map((one) => ({ one, to: 'except' as const, text: say.standing.except(one) })),
    ...also.map((one) => ({ one, to: 'also' as const, text: say.standing.also(one) })),
  ].sort((a, b) => (a.one < b.one ? -1 : 1))
  return (
    <div role="group" aria-label={say.standing.exceptions}>
      <p class="desk-quiet">{say.standing.exceptHint}</p>
      <div class="orders-without">
        {told.map(({ one, to, text }) => (
          <button
            key={one}
            type="button"
            class="orders-chip"
            aria-label={say.standing.takeAway(text)}
            onClick={() => set(to, one, false)}
          >
            {`${text} ×`}
          </button>
        ))}
      </div>
      <div class="desk-form">
        <label class="desk-field">
          {say.standing.exceptDate}
          <input type="date" value={date} onInput={(event) => setDate(event.currentTarget.value)} />
        </label>
        {(['except', 'also'] as const).map((to) => (
          <button
            key={to}
            type="button"
            disabled={!isDate(date)}
            onClick={() => {
              set(to, date, true)
              setDate('')
            }}
          >
            {to === 'except' ? say.standing.addExcept : say.standing.addAlso}
          </button>
        ))}
      </div>
    </div>
  )
}

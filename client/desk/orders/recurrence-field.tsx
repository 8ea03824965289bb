import type { ComponentChildren } from 'preact'
import { Choice } from '../sales/form-fields.tsx'
import { ExceptionsField } from './exceptions-field.tsx'
import { Tick } from './lines-field.tsx'
import type { OrdersParts } from './parts.ts'
import type { RecurrenceDraft, StandingDraft } from './standing-draft.ts'

export interface RecurrenceFieldProps extends OrdersParts {
  readonly draft: StandingDraft
  readonly onChange: (some: Partial<StandingDraft>) => void
}

const FREQS = ['weekly', 'daily', 'monthly'] as const
const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7]
const INTERVALS = [1, 2, 3, 4, 5, 6, 8, 12]
const NTHS = [1, 2, 3, 4, 5, -1]

/** On which days it comes, and when on these. */
export function RecurrenceField(props: RecurrenceFieldProps & { readonly children: ComponentChildren }) {
  const { draft, say, children, onChange } = props
  const { recurrence } = draft
  const set = (some: Partial<RecurrenceDraft>) => onChange({ recurrence: { ...recurrence, ...some } })
  const hasWeekdays = recurrence.freq === 'weekly' || recurrence.weekdays.length > 0 || recurrence.freq === 'daily'
  return (
    <fieldset class="orders-part">
      <legend>{say.form.parts.when}</legend>
      <div class="desk-form">
        <label class="desk-field">
          {say.form.time}
          <input
            type="time"
            value={draft.time}
            onInput={(event) => onChange({ time: event.currentTarget.value.slice(0, 5) })}
          />
        </label>
        {children}
      </div>
      <div class="desk-form">
        <Choice
          label={say.standing.freq}
          options={FREQS.map((value) => ({ value, text: say.standing.freqs[value] }))}
          value={recurrence.freq}
          onChange={(freq) => set({ freq, weekdays: [], nth: null })}
        />
        <Choice
          label={say.standing.interval}
          options={INTERVALS.map((n) => ({ value: String(n), text: `${n} ${say.standing.unit(recurrence.freq, n)}` }))}
          value={String(recurrence.interval)}
          onChange={(value) => set({ interval: Number(value) })}
        />
        {recurrence.freq === 'monthly' && <InMonth {...props} />}
      </div>
      {hasWeekdays && <Weekdays {...props} />}
      <div class="desk-form">
        <label class="desk-field">
          {say.standing.from}
          <input type="date" value={recurrence.from} onInput={(event) => set({ from: event.currentTarget.value })} />
        </label>
        <label class="desk-field">
          {say.standing.until}
          <input
            type="date"
            min={recurrence.from}
            value={recurrence.until}
            onInput={(event) => set({ until: event.currentTarget.value })}
          />
        </label>
        <span class="desk-quiet desk-small">{say.standing.untilHint}</span>
      </div>
      <ExceptionsField {...props} />
      <Tick
        label={say.standing.onHolidays}
        isOn={draft.onHolidays}
        onChange={(onHolidays) => onChange({ onHolidays })}
      />
      <p class="desk-quiet desk-small">{say.standing.onHolidaysHint}</p>
    </fieldset>
  )
}

function Weekdays({ draft, say, onChange }: RecurrenceFieldProps) {
  const { recurrence } = draft
  const { weekdays } = recurrence
  return (
    <div class="orders-weekdays" role="group" aria-label={say.standing.weekdays}>
      {WEEKDAYS.map((iso) => (
        <button
          key={iso}
          type="button"
          aria-pressed={weekdays.includes(iso)}
          onClick={() => {
            const next = weekdays.includes(iso) ? weekdays.filter((one) => one !== iso) : [...weekdays, iso]
            onChange({ recurrence: { ...recurrence, weekdays: next } })
          }}
        >
          {say.standing.weekday(iso)}
        </button>
      ))}
    </div>
  )
}

const ON_DATE = 'date'
const EVERY = 'every'

/** On the date of its first day, on the nth weekday, or on every such weekday of the month. */
function InMonth({ draft, say, onChange }: RecurrenceFieldProps) {
  const { recurrence } = draft
  const value = recurrence.weekdays.length === 0 ? ON_DATE : recurrence.nth === null ? EVERY : String(recurrence.nth)
  return (
    <Choice
      label={say.standing.inMonth}
      options={[
        { value: ON_DATE, text: say.standing.onDate(recurrence.from) },
        ...NTHS.map((nth) => ({ value: String(nth), text: say.standing.nth(nth) })),
        { value: EVERY, text: say.standing.everyWeekday },
      ]}
      value={value}
      onChange={(chosen) => {
        const weekdays = chosen === ON_DATE ? [] : recurrence.weekdays.length > 0 ? recurrence.weekdays : [1]
        const nth = chosen === ON_DATE || chosen === EVERY ? null : Number(chosen)
        onChange({ recurrence: { ...recurrence, weekdays, nth } })
      }}
    />
  )
}

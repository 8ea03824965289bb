import { useId, useState } from 'preact/hooks'
import { isDate } from '../../../../shared-core/day/label.ts'
import { DATE_MAX, DATE_MIN } from '../../../../shared-core/shop/set-up-limits.ts'
import { TickField } from '../fields/pick-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'
import { spanTold } from '../span-told.ts'
import type { Span, Spans } from '../special-days.ts'
import { againNextYear, withSpans } from '../special-days.ts'

interface SpansFieldProps {
  readonly parts: SetUpProps
  readonly spans: Spans
  /** Where it is known when it comes again, as of a holiday that moves; null: a year on, as is wished. */
  readonly next: Span | null
  readonly isFull: boolean
  readonly onChange: (spans: Spans) => void
}

/** The dates of a special day: newest first, with a form for more and a touch for next year. */
export function SpansField(props: SpansFieldProps) {
  const { parts, spans, isFull, onChange } = props
  const { dates } = parts.say.demand
  return (
    <section>
      <h4>{dates.title}</h4>
      {spans.length === 0 && <p class="setup-hint">{dates.none}</p>}
      <ul class="setup-spans">
        {[...spans].reverse().map((span) => {
          const told = spanTold(span, { ...parts, shop: parts.draft })
          return (
            <li key={span.from}>
              {told}
              <button
                type="button"
                class="setup-inline"
                aria-label={dates.remove(told)}
                title={dates.remove(told)}
                onClick={() => onChange(spans.filter((one) => one !== span))}
              >
                ×
              </button>
            </li>
          )
        })}
      </ul>
      {isFull ? (
        <p class="setup-hint">{dates.full}</p>
      ) : (
        <>
          <AddSpan {...props} />
          <Again {...props} />
        </>
      )}
    </section>
  )
}

function AddSpan({ parts, spans, onChange }: SpansFieldProps) {
  const { dates } = parts.say.demand
  const [from, setFrom] = useState('')
  const [to, setTo] = useState('')
  const id = useId()
  const last = to === '' ? from : to
  const isGood = isDate(from) && isDate(last) && from <= last && from >= DATE_MIN && last <= DATE_MAX
  return (
    <form
      class="setup-add"
      onSubmit={(event) => {
        event.preventDefault()
        if (!isGood) return
        onChange(withSpans(spans, [{ from, to: last }]))
        setFrom('')
        setTo('')
      }}
    >
      <div class="setup-field">
        <label for={`${id}from`}>{dates.from}</label>
        <input
          id={`${id}from`}
          type="date"
          min={DATE_MIN}
          max={DATE_MAX}
          value={from}
          onInput={(event) => setFrom(event.currentTarget.value)}
        />
      </div>
      <div class="setup-field">
        <label for={`${id}to`}>{dates.to}</label>
        <input
          id={`${id}to`}
          type="date"
          min={from === '' ? DATE_MIN : from}
          max={DATE_MAX}
          value={last}
          onInput={(event) => setTo(event.currentTarget.value)}
        />
      </div>
      <button type="submit" disabled={!isGood}>
        + {dates.add}
      </button>
    </form>
  )
}

/** The last dates a year on. */
function Again({ parts, spans, next: known, onChange }: SpansFieldProps) {
  const { dates } = parts.say.demand
  const [keepsWeekday, setKeepsWeekday] = useState(true)
  const next = known ?? againNextYear(spans, keepsWeekday)
  if (next === null || next.to > DATE_MAX) return null
  return (
    <div class="setup-acts">
      <button type="button" onClick={() => onChange(withSpans(spans, [next]))}>
        {dates.again}: {spanTold(next, { ...parts, shop: parts.draft })}
      </button>
      {known === null && (
        <span title={dates.sameWeekdayHint}>
          <TickField label={dates.sameWeekday} value={keepsWeekday} onChange={setKeepsWeekday} />
        </span>
      )}
    </div>
  )
}

import { useId, useRef, useState } from 'preact/hooks'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { Rule } from './text-field.tsx'

export interface NumberFieldProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  /** What one touch of − or + does; left out: the number is only typed. */
  readonly step?: number
  /** Digits after the point. 0 when left out. */
  readonly decimals?: number
  /** Behind the number. @example "pieces" */
  readonly unit?: string | undefined
  /** Told only to those who listen: what it is stands beside it. */
  readonly isLabelSilent?: boolean
  readonly say: SetUpSentences
  readonly onChange: (value: number) => void
}

/** A number, by touch or typed. One that is out of bounds is not taken, and the bounds are said. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, min, max, step, decimals = 0, unit, isLabelSilent = false, say, onChange } = props
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const before = useRef(value)
  const read = typed === null ? value : readNumber(typed, props)
  const stepTo = (by: number) => {
    setTyped(null)
    onChange(steppedTo(value, by, { min, max }))
  }
  return (
    <div class="setup-field">
      {!isLabelSilent && <label for={id}>{label}</label>}
      <div class="setup-number">
        {step !== undefined && (
          <button
            type="button"
            class="setup-step"
            aria-label={`${label}: ${say.form.less}`}
            onClick={() => stepTo(-step)}
          >
            −
          </button>
        )}
        <input
          id={id}
          type="text"
          inputMode={decimals === 0 ? 'numeric' : 'decimal'}
          autoComplete="off"
          aria-label={isLabelSilent ? label : undefined}
          value={typed ?? shownNumber(value, decimals)}
          aria-invalid={read === null}
          onFocus={(event) => {
            before.current = value
            event.currentTarget.select()
          }}
          onInput={(event) => {
            const text = event.currentTarget.value
            setTyped(text)
            // The beginning of a wrong number may be a right one, and is not meant: what was there before stands.
            const number = readNumber(text, props) ?? before.current
            if (number !== value) onChange(number)
          }}
          onBlur={() => setTyped(null)}
        />
        {step !== undefined && (
          <button
            type="button"
            class="setup-step"
            aria-label={`${label}: ${say.form.more}`}
            onClick={() => stepTo(step)}
          >
            +
          </button>
        )}
        {unit !== undefined && <span class="setup-unit">{unit}</span>}
      </div>
      {read === null && <Rule text={say.form.range(String(min), String(max))} />}
    </div>
  )
}

/** Null for what is no number within the bounds. A comma is a point: keyboards of phones differ. */
export function readNumber(
  text: string,
  { min, max, decimals = 0 }: Pick<NumberFieldProps, 'min' | 'max' | 'decimals'>,
): number | null {
  const plain = text.trim().replace(',', '.')
  if (!/^[-−]?\d*\.?\d*$/.test(plain) || !/\d/.test(plain)) return null
  const scale = 10 ** decimals
  const value = Math.round(Number(plain.replace('−', '-')) * scale) / scale
  if (decimals === 0 && plain.includes('.')) return null
  return value >= min && value <= max ? value : null
}

/** Onto the next multiple of the step, within the bounds. @example steppedTo(36, 10, bounds) // 40 */
export function steppedTo(value: number, by: number, { min, max }: { readonly min: number; readonly max: number }) {
  const size = Math.abs(by)
  const places = value / size
  const next = by > 0 ? Math.floor(places + 1e-9) + 1 : Math.ceil(places - 1e-9) - 1
  return Math.min(max, Math.max(min, Math.round(next * size * 1_000) / 1_000))
}

/** Money has both its digits; other numbers only those that they need. */
function shownNumber(value: number, decimals: number): string {
  return decimals === 2 ? value.toFixed(2) : String(value)
}

import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

export interface PickOption<Value> {
  readonly value: Value
  readonly label: string
  readonly hint?: string | undefined
  readonly drawing?: ComponentChildren
}

export interface PickFieldProps<Value> {
  readonly label: string
  readonly options: readonly PickOption<Value>[]
  readonly value: Value | null
  /** Under each other, with their hints; else side by side. */
  readonly isTall?: boolean
  readonly isDisabled?: boolean
  readonly onChange: (value: Value) => void
}

/** One of a few: all in sight, a ring is filled where it is chosen. */
export function PickField<Value extends string | number>(props: PickFieldProps<Value>) {
  const { label, options, value, isTall = false, isDisabled = false, onChange } = props
  const name = useId()
  return (
    <fieldset class={`setup-pick ${isTall ? 'setup-tall' : ''}`} disabled={isDisabled}>
      <legend>{label}</legend>
      <div class="setup-options">
        {options.map((option) => (
          <label key={option.value} class="setup-option">
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChange(option.value)} />
            {option.drawing}
            <span class="setup-option-text">
              <span>{option.label}</span>
              {option.hint !== undefined && <span class="setup-hint">{option.hint}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

export interface ManyFieldProps<Value> {
  readonly label: string
  readonly options: readonly PickOption<Value>[]
  readonly values: readonly Value[]
  /** Gets them in the order of the options. */
  readonly onChange: (values: readonly Value[]) => void
}

/** Any of a few. */
export function ManyField<Value extends string>({ label, options, values, onChange }: ManyFieldProps<Value>) {
  const toggle = (value: Value) => {
    const isIn = values.includes(value)
    onChange(options.map((option) => option.value).filter((one) => (one === value ? !isIn : values.includes(one))))
  }
  return (
    <fieldset class="setup-pick">
      <legend>{label}</legend>
      <div class="setup-options">
        {options.map(({ value, label: text }) => (
          <label key={value} class="setup-option">
            <input type="checkbox" checked={values.includes(value)} onChange={() => toggle(value)} />
            <span class="setup-option-text">{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

/** Yes or no, for one thing. */
export function TickField(props: {
  readonly label: string
  readonly value: boolean
  readonly onChange: (value: boolean) => void
}) {
  return (
    <label class="setup-option setup-tick">
      <input type="checkbox" checked={props.value} onChange={(event) => props.onChange(event.currentTarget.checked)} />
      <span class="setup-option-text">{props.label}</span>
    </label>
  )
}

interface NumberFieldProps {
  readonly label: string
  /** Null: nothing is typed. */
  readonly value: number | null
  readonly most: number
  readonly onChange: (value: number | null) => void
}

/** A whole number that may be missing. */
export function NumberField({ label, value, most, onChange }: NumberFieldProps) {
  return (
    <label class="desk-field">
      {label}
      <input
        inputMode="numeric"
        class="desk-short"
        autocomplete="off"
        value={value ?? ''}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => {
          const text = event.currentTarget.value.trim()
          const isNumber = /^\d{1,6}$/.test(text)
          if (!isNumber && text !== '') event.currentTarget.value = value === null ? '' : String(value)
          else onChange(text === '' ? null : Math.min(most, Number(text)))
        }}
      />
    </label>
  )
}

import { useId, useRef, useState } from 'preact/hooks'

export interface TextFieldProps {
  readonly label: string
  readonly value: string
  /** Characters. */
  readonly most: number
  /** What would be right, shown while it is not. */
  readonly rule: string
  readonly onChange: (value: string) => void
}

/** A name in one line. What is no name yet stays in the field and is not taken; left so, the last good one returns. */
export function TextField({ label, value, most, rule, onChange }: TextFieldProps) {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const before = useRef(value)
  const isWrong = typed !== null && typed.trim() === ''
  return (
    <div class="setup-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={typed ?? value}
        maxLength={most}
        autoComplete="off"
        aria-invalid={isWrong}
        onFocus={() => {
          before.current = value
        }}
        onInput={(event) => {
          const text = event.currentTarget.value
          setTyped(text)
          const name = text.trim() === '' ? before.current : text.trim()
          if (name !== value) onChange(name)
        }}
        onBlur={() => setTyped(null)}
      />
      {isWrong && <Rule text={rule} />}
    </div>
  )
}

/** What would be right, beside a field. */
export function Rule({ text }: { readonly text: string }) {
  return (
    <p class="setup-rule" role="alert">
      {text}
    </p>
  )
}

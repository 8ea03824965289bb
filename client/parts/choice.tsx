import { Key } from './key.tsx'

export interface ChoiceOption<Value extends string> {
  readonly value: Value
  readonly label: string
  readonly detail?: string | undefined
  readonly refusal?: string | undefined
}

export interface ChoiceProps<Value extends string> {
  /** What is chosen here, for those who listen. */
  readonly name: string
  readonly options: readonly ChoiceOption<Value>[]
  /** Null: nothing yet. */
  readonly chosen: Value | null
  readonly onChoose: (value: Value) => void
}

/** One of a few, as keys side by side: all choices are in sight, none is in a list that must be opened. */
export function Choice<Value extends string>({ name, options, chosen, onChoose }: ChoiceProps<Value>) {
  return (
    <div class="key-group" role="group" aria-label={name}>
      {options.map(({ value, label, detail, refusal }) => (
        <Key
          key={value}
          label={label}
          detail={detail}
          refusal={refusal}
          chosen={value === chosen}
          onPress={() => onChoose(value)}
        />
      ))}
    </div>
  )
}

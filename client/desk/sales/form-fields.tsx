import type { Mapping } from '../../../shared-core/live/sales-import.ts'
import { DATE_FORMS, DELIMITERS } from '../../../shared-core/live/sales-import.ts'
import type { MappingWords } from '../../words/desk-sales.ts'

/** How a file is written, whatever stands in its columns. */
export type FileForm = Pick<Mapping, 'skip' | 'hasHeader' | 'delimiter' | 'quote' | 'decimal' | 'dateForm'>

interface FormFieldsProps<Form extends FileForm> {
  readonly draft: Form
  readonly say: MappingWords
  readonly onChange: (draft: Form) => void
}

const QUOTES = ['"', "'"] as const
const DECIMALS = ['.', ','] as const
const SKIP_MAX = 50

/** How the file is written: seldom to be touched, and put away until it is. */
export function FormFields<Form extends FileForm>({ draft, say: mapping, onChange }: FormFieldsProps<Form>) {
  return (
    <>
      <Choice
        label={mapping.dateForm}
        options={DATE_FORMS.map((value) => ({ value, text: mapping.dateForms[value] }))}
        value={draft.dateForm}
        onChange={(dateForm) => onChange({ ...draft, dateForm })}
      />
      <details class="sales-form">
        <summary>{mapping.form}</summary>
        <div class="desk-form">
          <label class="desk-line">
            <input
              type="checkbox"
              checked={draft.hasHeader}
              onChange={(event) => onChange({ ...draft, hasHeader: event.currentTarget.checked })}
            />
            {mapping.hasHeader}
          </label>
          <label class="desk-field">
            {mapping.skip}
            <input
              type="number"
              min={0}
              max={SKIP_MAX}
              value={draft.skip}
              onInput={(event) => {
                const skip = event.currentTarget.valueAsNumber
                if (Number.isInteger(skip) && skip >= 0 && skip <= SKIP_MAX) onChange({ ...draft, skip })
              }}
            />
          </label>
          <Choice
            label={mapping.delimiter}
            options={DELIMITERS.map((value) => ({ value, text: mapping.delimiters[value] }))}
            value={draft.delimiter}
            onChange={(delimiter) => onChange({ ...draft, delimiter })}
          />
          <Choice
            label={mapping.quote}
            options={QUOTES.map((value) => ({ value, text: `${value} ${value}` }))}
            value={draft.quote}
            onChange={(quote) => onChange({ ...draft, quote })}
          />
          <Choice
            label={mapping.decimal}
            options={DECIMALS.map((value) => ({ value, text: `1${value}5` }))}
            value={draft.decimal}
            onChange={(decimal) => onChange({ ...draft, decimal })}
          />
        </div>
      </details>
    </>
  )
}

interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly options: readonly { readonly value: Value; readonly text: string }[]
  readonly value: Value
  readonly onChange: (value: Value) => void
}

/** One of a few words in a list. */
export function Choice<Value extends string>({ label, options, value, onChange }: ChoiceProps<Value>) {
  return (
    <label class="desk-field sales-choice">
      {label}
      <select
        value={value}
        onChange={(event) => {
          const chosen = options.find((one) => one.value === event.currentTarget.value)
          if (chosen !== undefined) onChange(chosen.value)
        }}
      >
        {options.map((one) => (
          <option key={one.value} value={one.value}>
            {one.text}
          </option>
        ))}
      </select>
    </label>
  )
}

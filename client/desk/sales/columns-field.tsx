interface ColumnsFieldProps<Column extends string> {
  readonly columns: readonly { readonly name: string; readonly samples: readonly string[] }[]
  /** What a column can be taken for, in the order in which people look for it; the first: it is not used. */
  readonly options: readonly { readonly column: Column; readonly text: string; readonly hint: string }[]
  readonly unused: Column
  /** @param at counted from 0 */
  readonly takenFor: (at: number) => Column
  /** @example "Column 3" */
  readonly columnNumber: (number: number) => string
  readonly onChange: (at: number, column: Column) => void
}

/** A file's columns under each other, with what stands in them and what each is taken for. */
export function ColumnsField<Column extends string>(props: ColumnsFieldProps<Column>) {
  const { columns, options, unused, takenFor, columnNumber, onChange } = props
  return (
    <ul class="sales-columns">
      {columns.map(({ name, samples }, at) => {
        const taken = takenFor(at)
        const called = name === '' ? columnNumber(at + 1) : name
        const hint = options.find(({ column }) => column === taken)?.hint ?? ''
        return (
          // A column is its place: names may come twice.
          <li key={at} class={taken === unused ? 'sales-column sales-unused' : 'sales-column'}>
            <label>
              <span class="sales-column-name">{called}</span>
              <select
                value={taken}
                onChange={(event) => {
                  const chosen = options.find(({ column }) => column === event.currentTarget.value)
                  onChange(at, chosen?.column ?? unused)
                }}
              >
                {options.map(({ column, text }) => (
                  <option key={column} value={column}>
                    {text}
                  </option>
                ))}
              </select>
            </label>
            <span class="sales-samples">{samples.join(' · ')}</span>
            <span class="desk-quiet desk-small">{hint}</span>
          </li>
        )
      })}
    </ul>
  )
}

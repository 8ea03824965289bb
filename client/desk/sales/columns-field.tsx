import type { Preview } from '../../../shared-core/live/sales-import.ts'
import type { Column, SalesWords } from '../../words/desk-sales.ts'
import type { Draft } from './mapping-view.ts'
import { COLUMNS, takenFor, withColumn } from './mapping-view.ts'

interface ColumnsFieldProps {
  readonly preview: Preview
  readonly draft: Draft
  readonly say: SalesWords
  readonly onChange: (draft: Draft) => void
}

/** The file's columns under each other, with what stands in them and what each is taken for. */
export function ColumnsField({ preview, draft, say, onChange }: ColumnsFieldProps) {
  const { mapping } = say
  return (
    <ul class="sales-columns">
      {preview.columns.map(({ name, samples }, at) => {
        const column = takenFor(draft, at)
        const called = name === '' ? mapping.columnNumber(at + 1) : name
        return (
          // A column is its place: names may come twice.
          <li key={at} class={column === 'none' ? 'sales-column sales-unused' : 'sales-column'}>
            <label>
              <span class="sales-column-name">{called}</span>
              <select
                value={column}
                onChange={(event) => onChange(withColumn(draft, at, columnIn(event.currentTarget.value)))}
              >
                {COLUMNS.map((one) => (
                  <option key={one} value={one}>
                    {mapping.column[one]}
                  </option>
                ))}
              </select>
            </label>
            <span class="sales-samples">{samples.join(' · ')}</span>
            <span class="desk-quiet desk-small">{mapping.columnHint[column]}</span>
          </li>
        )
      })}
    </ul>
  )
}

function columnIn(value: string): Column {
  return COLUMNS.find((one) => one === value) ?? 'none'
}

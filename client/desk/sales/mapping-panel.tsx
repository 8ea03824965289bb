import { useState } from 'preact/hooks'
import type { Preview, SalesFile } from '../../../shared-core/live/sales-import.ts'
import { Panel } from '../panel.tsx'
import { ColumnsField } from './columns-field.tsx'
import { FormFields } from './form-fields.tsx'
import type { Draft } from './mapping-view.ts'
import { COLUMNS, mappingOf, missingIn, otherReading, takenFor, withColumn } from './mapping-view.ts'
import { takeFile } from './sales-api.ts'
import type { SalesParts } from './sales-place.tsx'
import { troubleOf } from './trouble.ts'
import { UnderstoodRows } from './understood-rows.tsx'
import { usePreview } from './use-preview.ts'

interface MappingPanelProps extends SalesParts {
  readonly file: SalesFile
  readonly onTaken: () => void
}

/** How a file is read: what each column is, what is in doubt, and the first rows as they are understood. */
export function MappingPanel(props: MappingPanelProps) {
  const { file, say, onTaken } = props
  const { preview, draft, trouble, change } = usePreview(file.id)
  const [notTaken, setNotTaken] = useState('')
  const [isBusy, setBusy] = useState(false)
  const mapping = draft === null ? null : mappingOf(draft)
  const take = async () => {
    if (mapping === null) return
    setBusy(true)
    const done = await takeFile(file.id, mapping)
    setBusy(false)
    setNotTaken(troubleOf(done, say))
    if (done.kind === 'done') onTaken()
  }
  const told = notTaken === '' && trouble !== null ? troubleOf(trouble, say) : notTaken
  return (
    <Panel part="mapping" title={say.mapping.title(file.name)}>
      {preview === null || draft === null ? (
        trouble === null && <p class="desk-quiet">{say.waiting}</p>
      ) : (
        <>
          <p>{say.mapping.hint}</p>
          {preview.isRemembered && <p class="desk-quiet">{say.mapping.remembered}</p>}
          <Doubts {...props} preview={preview} draft={draft} onChange={change} />
          <ColumnsField
            columns={preview.columns}
            options={COLUMNS.map((column) => ({
              column,
              text: say.mapping.column[column],
              hint: say.mapping.columnHint[column],
            }))}
            unused="none"
            takenFor={(at) => takenFor(draft, at)}
            columnNumber={say.mapping.columnNumber}
            onChange={(at, column) => change(withColumn(draft, at, column))}
          />
          <FormFields draft={draft} say={say.mapping} onChange={change} />
          <UnderstoodRows {...props} preview={preview} />
          {missingIn(draft).map((column) => (
            <p key={column} class="desk-trouble" role="alert">
              {say.mapping.missing[column]}
            </p>
          ))}
          <div class="sales-take">
            <button
              type="button"
              class="desk-strong desk-large"
              disabled={mapping === null || isBusy || preview.rows.length === 0}
              onClick={() => void take()}
            >
              {say.mapping.take}
            </button>
          </div>
        </>
      )}
      {told !== '' && (
        <p class="desk-trouble" role="alert">
          {told}
        </p>
      )}
    </Panel>
  )
}

interface DoubtsProps extends SalesParts {
  readonly preview: Preview
  readonly draft: Draft
  readonly onChange: (draft: Draft) => void
}

/** What is in doubt. Of a date both readings are told, and the other one is a touch away. */
function Doubts({ preview, draft, words, say, onChange }: DoubtsProps) {
  const date = (iso: string) => `${words.times.date(iso)}, ${iso.slice(0, 4)}`
  return (
    <>
      {preview.doubts.map((doubt) => (
        <div key={doubt.code} class="desk-notice" data-doubt={doubt.code}>
          <p>{say.doubt(doubt, date)}</p>
          {doubt.code === 'day-or-month' && (
            <button type="button" onClick={() => onChange({ ...draft, dateForm: otherReading(draft.dateForm) })}>
              {say.mapping.itIs(date(String(doubt.params.other)))}
            </button>
          )}
        </div>
      ))}
    </>
  )
}

import { useMemo } from 'preact/hooks'
import { salesWords } from '../../words/desk-sales.ts'
import { Panel } from '../panel.tsx'
import { ColumnsField } from '../sales/columns-field.tsx'
import { DropArea } from '../sales/drop-area.tsx'
import { FormFields } from '../sales/form-fields.tsx'
import { ImportDoubts } from './import-doubts.tsx'
import { ImportRows } from './import-rows.tsx'
import { COLUMN_CHOICES, columnTakenFor, newOrders, withOrderColumn } from './import-view.ts'
import { Tick } from './lines-field.tsx'
import type { OrdersParts } from './parts.ts'
import { useImport } from './use-import.ts'

/** A file of orders: dropped, said column by column, looked at, taken. Nothing is kept of it but how its columns are meant. */
export function ImportPanel(props: OrdersParts) {
  const { say, words } = props
  const sales = useMemo(() => salesWords(words), [words])
  const { file, read, mapping, told, isBusy, choose, change, take, putAway } = useImport(say)
  return (
    <Panel part="import" title={file === null ? say.files.title : say.files.columnsTitle(file.name)} isWide>
      {file === null && <DropArea words={say.files} hint={say.files.lead} onFile={choose} />}
      {file !== null && read === null && isBusy && <p>{say.files.reading}</p>}
      {told.text !== '' && (
        <p class={told.isTrouble ? 'desk-trouble' : 'desk-even'} role={told.isTrouble ? 'alert' : 'status'}>
          {told.text}
        </p>
      )}
      {file !== null && read !== null && mapping !== null && (
        <>
          <p>{say.files.columnsHint}</p>
          {read.isRemembered && <p class="desk-quiet">{say.files.remembered}</p>}
          <ImportDoubts {...props} read={read} mapping={mapping} sales={sales} onChange={change} />
          <ColumnsField
            columns={read.columns}
            options={COLUMN_CHOICES.map((column) => ({ column, text: say.files.column[column], hint: '' }))}
            unused="none"
            takenFor={(at) => columnTakenFor(mapping, at)}
            columnNumber={sales.mapping.columnNumber}
            onChange={(at, column) => change(withOrderColumn(mapping, at, column))}
          />
          <Tick
            label={say.files.afternoon}
            isOn={mapping.isAfternoonMeant}
            onChange={(isAfternoonMeant) => change({ ...mapping, isAfternoonMeant })}
          />
          <FormFields draft={mapping} say={sales.mapping} onChange={change} />
          <ImportRows {...props} read={read} />
        </>
      )}
      {file !== null && (
        <div class="orders-take desk-line">
          {read !== null && (
            <button
              type="button"
              class="desk-strong desk-large"
              disabled={isBusy || newOrders(read) === 0}
              onClick={take}
            >
              {newOrders(read) === 0 ? say.files.nothingNew : say.files.take(newOrders(read))}
            </button>
          )}
          <button type="button" onClick={putAway}>
            {say.files.putAway}
          </button>
        </div>
      )}
    </Panel>
  )
}

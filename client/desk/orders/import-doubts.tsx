import type { OrderMapping, OrdersRead } from '../../../shared-core/live/orders-import.ts'
import type { SalesWords } from '../../words/desk-sales.ts'
import { otherReading } from '../sales/mapping-view.ts'
import type { OrdersParts } from './parts.ts'

interface ImportDoubtsProps extends OrdersParts {
  readonly read: OrdersRead
  readonly mapping: OrderMapping
  readonly sales: SalesWords
  readonly onChange: (mapping: OrderMapping) => void
}

/** What is in doubt. Of a date both readings are told, and the other one is a touch away. */
export function ImportDoubts({ read, mapping, words, say, sales, onChange }: ImportDoubtsProps) {
  const date = (iso: string) => `${words.times.date(iso)}, ${iso.slice(0, 4)}`
  return (
    <>
      {read.doubts.map((doubt) => (
        <div key={doubt.code} class="desk-notice" data-doubt={doubt.code}>
          <p>{say.files.doubt(doubt, date)}</p>
          {doubt.code === 'day-or-month' && (
            <button type="button" onClick={() => onChange({ ...mapping, dateForm: otherReading(mapping.dateForm) })}>
              {sales.mapping.itIs(date(String(doubt.params.other)))}
            </button>
          )}
        </div>
      ))}
    </>
  )
}

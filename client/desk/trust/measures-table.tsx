import type { AccuracyOf } from '../../../shared-core/live/trust.ts'
import { Cell } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { TrustParts } from './parts.ts'

interface MeasuresProps extends TrustParts {
  /** The first one, without an id, is all of them together. */
  readonly rows: readonly AccuracyOf[]
  readonly nameOf: (row: AccuracyOf) => string
}

const DIGITS = 3

/** The field's own measures, to be held against other forecasts. */
export function MeasuresTable({ told, rows, nameOf }: MeasuresProps) {
  const { measureColumns, columns } = told.tables
  const text = (value: number | null) => (value === null ? '–' : value.toFixed(DIGITS))
  return (
    <>
      <p class="desk-quiet">{told.tables.measuresHint}</p>
      <Sideways name={told.tables.measures}>
        <table class="desk-cards trust-table">
          <thead>
            <tr>
              <th>{columns.variety}</th>
              <th class="desk-number">{measureColumns.wape}</th>
              <th class="desk-number">{measureColumns.mase}</th>
              <th class="desk-number">{measureColumns.pinball}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <th>{row.id === '' ? told.each : nameOf(row)}</th>
                <Cell label={measureColumns.wape} value={text(row.wape)} />
                <Cell label={measureColumns.mase} value={text(row.mase)} />
                <Cell label={measureColumns.pinball} value={text(row.pinball)} />
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
    </>
  )
}

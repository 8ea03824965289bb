import type { AccuracyOf, Off } from '../../../shared-core/live/trust.ts'
import { Cell } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { TrustParts } from './parts.ts'

interface AccuracyTableProps extends TrustParts {
  readonly title: string
  /** What the first column is called. */
  readonly first: string
  readonly rows: readonly AccuracyOf[]
  readonly nameOf: (row: AccuracyOf) => string
  /** Where a row leads; left out: nowhere. */
  readonly addressOf?: (row: AccuracyOf) => string
}

const WAYS = ['board', 'lastWeek', 'lastFour'] as const

/** How far off the board and the two simple ways were, row by row; the nearest is strong. */
export function AccuracyTable(props: AccuracyTableProps) {
  const { told, title, first, rows, nameOf, addressOf } = props
  const { columns } = told.tables
  const hasHeld = rows.some(({ held }) => held !== null)
  return (
    <Sideways name={title}>
      <table class="desk-cards trust-table">
        <thead>
          <tr>
            <th>{first}</th>
            <th class="desk-number">{columns.asked}</th>
            {WAYS.map((way) => (
              <th key={way} class="desk-number">
                {columns[way]}
              </th>
            ))}
            {hasHeld && <th class="desk-number">{columns.inside}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th>
                {addressOf === undefined ? (
                  nameOf(row)
                ) : (
                  <a href={addressOf(row)} aria-label={told.tables.look(nameOf(row))}>
                    {nameOf(row)}
                  </a>
                )}
              </th>
              <Cell label={columns.asked} value={told.tables.number(row.off?.asked ?? row.asked)} />
              {WAYS.map((way) => (
                <Cell
                  key={way}
                  label={columns[way]}
                  value={row.off === null ? '–' : told.tables.number(row.off[way])}
                  strong={row.off !== null && isNearest(row.off, way)}
                />
              ))}
              {hasHeld && (
                <Cell label={columns.inside} value={row.held === null ? '–' : told.tables.inside(row.held.inside)} />
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

function isNearest(off: Off, way: (typeof WAYS)[number]): boolean {
  return off[way] === Math.min(off.board, off.lastWeek, off.lastFour)
}

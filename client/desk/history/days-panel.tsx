import { specialDayId } from '../../../shared-core/ids.ts'
import type { HistoryDayJson, SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import { Cell, Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { Sideways } from '../sideways.tsx'
import { DaysPlot } from './days-plot.tsx'
import { withinOf } from './pages.ts'
import type { HistoryParts } from './parts.ts'

interface DaysProps extends HistoryParts {
  readonly history: SalesHistoryJson
  /** Where the same is fetched for a spreadsheet. */
  readonly csv: string
  readonly isTable: boolean
  readonly onTable: (isTable: boolean) => void
}

/** Sales day by day, drawn or as a table. */
export function DaysPanel({ history, csv, isTable, onTable, ...parts }: DaysProps) {
  const { say } = parts
  const { days } = history
  return (
    <Panel part="days" title={say.days.title} isWide>
      {days.length === 0 ? (
        <p>{say.days.noDays}</p>
      ) : isTable ? (
        <DaysTable {...parts} days={days} />
      ) : (
        <DaysPlot {...parts} days={days} />
      )}
      {days.length > 0 && (
        <p class="desk-line desk-noprint">
          <button type="button" onClick={() => onTable(!isTable)}>
            {isTable ? say.days.asPlot : say.days.asTable}
          </button>
          <a class="history-csv" href={csv} download>
            {say.days.csv}
          </a>
        </p>
      )}
    </Panel>
  )
}

function DaysTable({ days, say, shop, words }: HistoryParts & { readonly days: readonly HistoryDayJson[] }) {
  return (
    <Sideways name={say.days.title}>
      <table class="desk-days">
        <thead>
          <tr>
            <th>{say.days.date}</th>
            <th class="desk-number">{say.days.sold}</th>
            <th class="desk-number">{say.days.lost}</th>
            <th class="desk-number">{say.days.soldOut}</th>
            <th>{say.days.special}</th>
          </tr>
        </thead>
        <tbody>
          {[...days].reverse().map(({ date, sold, lost, soldOut, specials }) => (
            <tr key={date}>
              <th>
                <a href={addressOf('history', withinOf({ page: 'day', date }))} aria-label={say.days.look(date)}>
                  {words.times.date(date)}
                </a>
              </th>
              <Cell value={say.number(sold)} />
              <Cell value={lost === 0 ? '–' : say.number(lost)} />
              <Cell value={soldOut === 0 ? '–' : soldOut} />
              <td>{specials.map((id) => shop.specialDays.get(specialDayId(id))?.name ?? id).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

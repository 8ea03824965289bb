import type { SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import { Cell, Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { HistoryParts } from './parts.ts'

/** The mean of each weekday, as numbers with a bar beside them. */
export function WeekPanel({ say, history }: HistoryParts & { readonly history: SalesHistoryJson }) {
  const { weekdays } = history
  const most = Math.max(1, ...weekdays.map(({ sold, lost }) => sold + lost))
  return (
    <Panel part="week" title={say.week.title}>
      <p class="desk-quiet">{say.week.hint}</p>
      {weekdays.length === 0 ? (
        <p>{say.days.noDays}</p>
      ) : (
        <Sideways name={say.week.title}>
          <table class="history-week">
            <thead>
              <tr>
                <th>{say.week.weekday}</th>
                <th class="desk-number">{say.week.pieces}</th>
                <th class="desk-number">{say.week.lost}</th>
                <td class="history-bar-column" />
                <th class="desk-number">{say.week.days}</th>
              </tr>
            </thead>
            <tbody>
              {weekdays.map(({ weekday, days, sold, lost }) => (
                <tr key={weekday}>
                  <th>{say.weekday(weekday)}</th>
                  <Cell value={say.number(sold)} strong />
                  <Cell value={lost === 0 ? '–' : say.number(lost)} />
                  <td aria-hidden="true">
                    <span class="history-bar">
                      <span class="history-sold" style={{ width: `${(100 * sold) / most}%` }} />
                      <span class="history-lost" style={{ width: `${(100 * lost) / most}%` }} />
                    </span>
                  </td>
                  <Cell value={days} />
                </tr>
              ))}
            </tbody>
          </table>
        </Sideways>
      )}
    </Panel>
  )
}

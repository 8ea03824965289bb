import { varietyId } from '../../../shared-core/ids.ts'
import type { HistoryItemJson, HistoryOfDayJson } from '../../../shared-core/live/sales-history.ts'
import { minuteText } from '../../live/clock-text.ts'
import { Cell, Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { Sideways } from '../sideways.tsx'
import { useGot } from '../use-got.ts'
import { withinOf } from './pages.ts'
import type { HistoryParts } from './parts.ts'
import { salesVersion } from './parts.ts'
import { SpecialsPanel } from './specials-panel.tsx'
import { Unanswered } from './unanswered.tsx'

/** One past day: what each variety sold, when it was gone, what had been forecast, and what was special about it. */
export function DayPage(parts: HistoryParts & { readonly date: string }) {
  const { say, date } = parts
  const got = useGot<HistoryOfDayJson>(`/api/v1/history/sales/${date}`, salesVersion(parts))
  return (
    <>
      <p class="desk-noprint">
        <a href={addressOf('history', withinOf({ page: 'sales', of: 'all', range: '84' }))}>← {say.day.back}</a>
      </p>
      {got.kind !== 'got' ? (
        <Unanswered kind={got.kind} say={say} />
      ) : (
        <div class="desk-parts">
          <Panel part="day" title={say.day.title(date)} isWide>
            {got.value.items.length === 0 ? <p>{say.day.nothing}</p> : <ItemsTable {...parts} day={got.value} />}
            {got.value.isRecorded && (
              <p class="desk-noprint">
                <a href={addressOf('past', date)}>{say.day.record}</a>
              </p>
            )}
          </Panel>
          <SpecialsPanel {...parts} />
        </div>
      )}
    </>
  )
}

function ItemsTable(parts: HistoryParts & { readonly day: HistoryOfDayJson }) {
  const { say, day, words, shop } = parts
  const clock = (minute: number) => minuteText(Math.round(minute), shop.profile.clock)
  const goneText = ({ gone }: HistoryItemJson) =>
    gone.map(({ fromMinute, toMinute }) => say.day.span(clock(fromMinute), clock(toMinute))).join(', ')
  return (
    <>
      <Sideways name={say.day.title(day.date)}>
        <table class="history-items">
          <thead>
            <tr>
              <th>{say.day.variety}</th>
              <th class="desk-number">{say.days.sold}</th>
              <th class="desk-number">{say.days.lost}</th>
              <th>{say.day.gone}</th>
              <th>{say.day.forecast}</th>
            </tr>
          </thead>
          <tbody>
            {day.items.map((item) => (
              <tr key={item.varietyId}>
                <th>{words.names.variety(varietyId(item.varietyId))}</th>
                <Cell value={say.number(item.sold)} strong />
                <Cell value={item.lost === 0 ? '–' : say.number(item.lost)} />
                <td>{goneText(item)}</td>
                <td>{item.said === null ? '–' : say.day.range(item.said.q10, item.said.q50, item.said.q90)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      <p class="desk-quiet">{say.day.forecastHint}</p>
    </>
  )
}

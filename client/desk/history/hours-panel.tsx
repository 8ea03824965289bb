import type { SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import { minuteText } from '../../live/clock-text.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { HistoryParts } from './parts.ts'

/** Shades that can be told apart beside each other; the numbers say the rest. */
const SHADES = 6

/** What each hour of a weekday sells, as numbers on a ground that is the darker the more. */
export function HoursPanel({ say, shop, history }: HistoryParts & { readonly history: SalesHistoryJson }) {
  const { fromHour, weekdays, untimed } = history.hours
  const count = Math.max(0, ...weekdays.map((hours) => hours?.length ?? 0))
  const most = Math.max(0, ...weekdays.flatMap((hours) => hours ?? []))
  const untimedPercent = Math.round(untimed * 100)
  return (
    <Panel part="hours" title={say.hours.title} isWide>
      <p class="desk-quiet">{say.hours.hint}</p>
      {count === 0 ? (
        <p>{say.days.noDays}</p>
      ) : (
        <Sideways name={say.hours.title}>
          <table class="history-hours">
            <thead>
              <tr>
                <th>{say.week.weekday}</th>
                {Array.from({ length: count }, (_, place) => (
                  <th key={place} class="desk-number">
                    {minuteText((fromHour + place) * 60, shop.profile.clock)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {weekdays.map((hours, place) =>
                hours === null ? null : (
                  <tr key={say.weekday(place + 1)}>
                    <th>{say.weekday(place + 1)}</th>
                    {hours.map((pieces, hour) => (
                      <td
                        key={minuteText((fromHour + hour) * 60, 24)}
                        class="desk-number"
                        data-shade={pieces === 0 ? 0 : Math.ceil((pieces / most) * SHADES)}
                      >
                        {pieces === 0 ? '·' : pieces < 10 ? say.number(pieces) : Math.round(pieces)}
                      </td>
                    ))}
                  </tr>
                ),
              )}
            </tbody>
          </table>
        </Sideways>
      )}
      {untimedPercent > 0 && <p class="desk-quiet">{say.hours.untimed(untimedPercent)}</p>}
    </Panel>
  )
}

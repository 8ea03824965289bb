import { specialDayId } from '../../../shared-core/ids.ts'
import type { SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import { Panel } from '../panel.tsx'
import type { HistoryParts } from './parts.ts'

/** What weekdays and special days do to sales, as the forecasts have it, and how sure that is. */
export function LearntPanel({ say, shop, history }: HistoryParts & { readonly history: SalesHistoryJson }) {
  const { learnt } = history
  if (learnt === null) return null
  const { basis, level, weekdays, specials } = learnt
  return (
    <Panel part="learnt" title={say.learnt.title}>
      <p>{`${say.learnt.level(level)} ${say.learnt.basis[basis]}`}</p>
      <h3>{say.learnt.weekdays}</h3>
      <ul class="history-learnt">
        {weekdays.map(
          (factor, place) =>
            factor !== null && (
              <li key={say.weekday(place + 1)}>
                {say.weekday(place + 1)}: <strong>{say.learnt.factor(factor)}</strong>
              </li>
            ),
        )}
      </ul>
      <h3>{say.learnt.specials}</h3>
      {specials.length === 0 ? (
        <p class="desk-quiet">{say.learnt.noSpecials}</p>
      ) : (
        <ul class="history-learnt">
          {specials.map(({ id, factor, days }) => (
            <li key={id}>
              {shop.specialDays.get(specialDayId(id))?.name}
              {': '}
              {days > 0 && (
                <>
                  <strong>{say.learnt.factor(factor)}</strong>,{' '}
                </>
              )}
              <span class="desk-quiet">{say.learnt.sure(days)}</span>
            </li>
          ))}
        </ul>
      )}
    </Panel>
  )
}

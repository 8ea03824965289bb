import { Panel } from '../panel.tsx'
import type { OrderRow } from './day-view.ts'
import { clockOf } from './order-times.ts'
import type { OrdersParts } from './parts.ts'

/** Orders that will not be whole when they are due, with what would save each. */
export function RiskPanel(props: OrdersParts & { readonly rows: readonly OrderRow[] }) {
  const { rows, say } = props
  const atRisk = rows.flatMap(({ order, risk }) => (risk === null ? [] : [{ order, risk }]))
  if (atRisk.length === 0) return null
  return (
    <Panel part="risk" title={say.risk.title(atRisk.length)} isWide>
      <p class="desk-quiet">{say.risk.hint}</p>
      <ul class="orders-risks">
        {atRisk.map(({ order, risk }) => (
          <li key={order.id}>
            <strong class="desk-trouble">
              {say.risk.missing(order.mark, clockOf(order.dueAtMs, props), say.promise.short(risk.missing))}
            </strong>
            {risk.saves.length === 0 ? (
              <p>{say.risk.nothingSaves}</p>
            ) : (
              <ul>
                {risk.saves.map((save) => (
                  <li key={save.code}>{say.promise.save(save)}</li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </Panel>
  )
}

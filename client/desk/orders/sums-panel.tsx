import { Cell, Panel } from '../panel.tsx'
import type { OrderRow } from './day-view.ts'
import { orderedSums } from './day-view.ts'
import type { OrdersParts } from './parts.ts'

/** What the day's orders ask for together. */
export function SumsPanel({ state, words, say, rows }: OrdersParts & { readonly rows: readonly OrderRow[] }) {
  const sums = orderedSums(state, rows)
  if (sums.length === 0) return null
  const { sumColumns } = say.day
  return (
    <Panel part="sums" title={say.day.sums}>
      <table class="orders-sums">
        <thead>
          <tr>
            <th>{sumColumns.variety}</th>
            <th class="desk-number">{sumColumns.ordered}</th>
            <th class="desk-number">{sumColumns.kept}</th>
          </tr>
        </thead>
        <tbody>
          {sums.map(({ varietyId, ordered, kept }) => (
            <tr key={varietyId}>
              <th scope="row">{varietyId === null ? say.said.mixed : words.names.variety(varietyId)}</th>
              <Cell value={ordered} />
              <Cell value={kept} />
            </tr>
          ))}
        </tbody>
      </table>
      {sums.some(({ varietyId }) => varietyId === null) && <p class="desk-quiet desk-small">{say.day.sumsHint}</p>}
    </Panel>
  )
}

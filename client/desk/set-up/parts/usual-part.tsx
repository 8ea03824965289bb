import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { UsualCell } from '../fields/table-cell.tsx'
import { VARIETIES } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'

/** Guesses of a usual day for all varieties, typed down one column. */
export function UsualPart({ draft, words, say, change }: SetUpProps) {
  const varieties = inUse(draft.varieties)
  const sum = varieties.reduce((so, { usual }) => so + (usual ?? 0), 0)
  return (
    <>
      <p class="setup-hint">{say.demand.guessing}</p>
      <table class="setup-cells">
        <thead>
          <tr>
            <th scope="col">{say.demand.variety}</th>
            <th scope="col">{say.fields.variety.doughId}</th>
            <th scope="col">{say.fields.variety.usual}</th>
          </tr>
        </thead>
        <tbody>
          {varieties.map((variety) => (
            <tr key={variety.id}>
              <th scope="row">{variety.name}</th>
              <td>{words.names.dough(variety.doughId)}</td>
              <UsualCell
                label={`${variety.name}: ${say.fields.variety.usual}`}
                value={variety.usual}
                say={say}
                onChange={(usual) => change([VARIETIES.change({ ...variety, usual })])}
              />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              {say.demand.usualSum}
            </th>
            <td>{sum}</td>
          </tr>
        </tfoot>
      </table>
    </>
  )
}

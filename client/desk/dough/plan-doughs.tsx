import type { DayPlan } from '../../../shared-core/dough/day-plan.ts'
import { Sideways } from '../sideways.tsx'
import type { RoomParts } from './room.ts'

/** Pieces to shape by dough, each number with where it comes from. */
export function PlanDoughs({ words, say, plan }: RoomParts & { readonly plan: DayPlan }) {
  const { doughColumns: columns } = say.plan
  return (
    <Sideways name={columns.shape}>
      <table>
        <thead>
          <tr>
            <th>{columns.dough}</th>
            <th class="desk-number">{columns.shape}</th>
            <th>{columns.why}</th>
          </tr>
        </thead>
        <tbody>
          {plan.doughs.map(({ doughId, pieces, over, short, spare, why }) => (
            <tr key={doughId}>
              <th scope="row">{words.names.dough(doughId)}</th>
              <td class="desk-number">
                <strong>{pieces}</strong>
              </td>
              <td>
                {why.map((reason) => say.plan.reason(reason.code, reason.pieces)).join(' ')}
                {over > 0 && <span class="desk-quiet"> ({say.plan.over(over)})</span>}
                {spare > 0 && <span class="desk-quiet"> ({say.plan.spare(spare)})</span>}
                {short > 0 && <span class="desk-trouble"> {say.plan.noFormula(short)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

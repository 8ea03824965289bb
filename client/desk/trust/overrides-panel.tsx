import { doughId, varietyId } from '../../../shared-core/ids.ts'
import type { OverridesJson } from '../../../shared-core/live/trust.ts'
import { Cell, Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { TrustParts } from './parts.ts'

/** What was typed instead of the advice, and which of the two was nearer to what was asked for. */
export function OverridesPanel({ told, words, overrides }: TrustParts & { readonly overrides: OverridesJson }) {
  const { columns, title, none, summary, nearer, estimated } = told.overrides
  const { changed, lines } = overrides
  return (
    <Panel part="overrides" title={title} isWide>
      {changed === 0 ? (
        <p class="desk-quiet">{none}</p>
      ) : (
        <>
          <p>{summary(changed, overrides.nearer, overrides.farther)}</p>
          <Sideways name={title}>
            <table class="trust-table desk-cards">
              <thead>
                <tr>
                  <th>{columns.day}</th>
                  <th>{columns.what}</th>
                  <th class="desk-number">{columns.advised}</th>
                  <th class="desk-number">{columns.typed}</th>
                  <th class="desk-number">{columns.asked}</th>
                  <th>{columns.nearer}</th>
                </tr>
              </thead>
              <tbody>
                {lines.map((line) => (
                  <tr key={`${line.date} ${line.doughId} ${line.varietyId}`}>
                    <th>{words.times.date(line.date)}</th>
                    <td data-label={columns.what}>
                      {line.varietyId === null
                        ? words.names.dough(doughId(line.doughId))
                        : words.names.variety(varietyId(line.varietyId))}
                    </td>
                    <Cell value={line.advised} label={columns.advised} />
                    <Cell value={line.typed} label={columns.typed} />
                    <Cell
                      value={line.isEstimated ? `${estimated} ${line.asked}` : line.asked}
                      label={columns.asked}
                      strong
                    />
                    <td data-label={columns.nearer}>{nearer(line)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Sideways>
        </>
      )}
    </Panel>
  )
}

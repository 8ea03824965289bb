import type { Held } from '../../../shared-core/live/trust.ts'
import type { HeldRow, Verdict } from '../../words/desk-trust.ts'
import { verdictOf } from '../../words/desk-trust.ts'
import { Cell, Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { TrustParts } from './parts.ts'

const ROWS: readonly HeldRow[] = ['inside', 'likely', 'careful', 'plenty']
const FINE: ReadonlySet<Verdict> = new Set<Verdict>(['none', 'asItShould'])

/** Whether what was said held as often as it should. */
export function HeldPanel({ told, held }: TrustParts & { readonly held: Held | null }) {
  if (held === null) return null
  const { columns } = told.held
  return (
    <Panel part="held" title={told.held.title}>
      <Sideways name={told.held.title}>
        <table class="desk-cards trust-held">
          <thead>
            <tr>
              <th>{columns.said}</th>
              <th class="desk-number">{columns.held}</th>
              <th class="desk-number">{columns.should}</th>
              <th>{columns.verdict}</th>
            </tr>
          </thead>
          <tbody>
            {ROWS.map((row) => {
              const verdict = verdictOf(row, held[row])
              return (
                <tr key={row}>
                  <th>{told.held.what[row]}</th>
                  <Cell label={columns.held} value={told.held.share(held[row])} strong />
                  <Cell label={columns.should} value={told.held.should(held[row])} />
                  <td data-label={columns.verdict} class={FINE.has(verdict) ? '' : 'trust-broken'}>
                    {told.held.verdict[verdict]}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </Sideways>
      <p class="desk-quiet">{told.held.hint}</p>
    </Panel>
  )
}

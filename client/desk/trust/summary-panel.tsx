import type { TrustJson } from '../../../shared-core/live/trust.ts'
import { besideOf } from '../../words/desk-trust.ts'
import { Panel } from '../panel.tsx'
import type { TrustParts } from './parts.ts'

/** In words first: how far off, and how well what the board goes by is known. */
export function SummaryPanel({ told, trust }: TrustParts & { readonly trust: TrustJson }) {
  const { summary } = told
  const { each, shop, basis } = trust
  const isGuessing = basis.guess + basis.few > basis.many
  return (
    <Panel part="summary" title={summary.title}>
      {trust.days === 0 && <p>{summary.noDays}</p>}
      {trust.days > 0 && each.off === null && <p>{summary.nothingToCompare}</p>}
      {each.off !== null && (
        <>
          <p class="trust-said">{summary.each(each.off)}</p>
          {shop.off !== null && <p>{summary.shop(shop.off)}</p>}
          <p>
            <strong>{summary.beside[besideOf(each.off)]}</strong>
          </p>
        </>
      )}
      {each.estimated > 0 && <p>{summary.estimated(each.estimated, each.rows, each.offNotSoldOut)}</p>}
      {isGuessing && <p class="desk-notice">{summary.guessing}</p>}
      <p class="desk-quiet">
        {[summary.known(trust.daysKnown, trust.days), summary.basis(basis), summary.how].join(' ')}
      </p>
    </Panel>
  )
}

import { useState } from 'preact/hooks'
import type { PlanSupply } from '../../../shared-core/live/plan.ts'
import { useMeasuredWidth } from '../../parts/measured-width.ts'
import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'
import { supplyView, thatMatter } from './supply-view.ts'

/** Those that are drawn when none is chosen. */
const FEW = 4
const HEIGHT_PX = 150
const THE_FEW = ''

/** What there will be of a variety against what will be asked for. */
export function SupplyPanel(parts: DayParts) {
  const { plan, say, words } = parts
  const [chosen, setChosen] = useState(THE_FEW)
  if (plan.supply.length === 0) return null
  const one = plan.supply.filter(({ varietyId }) => varietyId === chosen)
  const drawn = one.length > 0 ? one : thatMatter(plan.supply, FEW)
  return (
    <Panel part="plan-supply" title={say.supply.title} isWide>
      <p class="desk-quiet">{say.supply.hint}</p>
      <label class="desk-line desk-noprint">
        {say.supply.choose}
        <select value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          <option value={THE_FEW}>{say.supply.theFew}</option>
          {plan.supply.map(({ varietyId }) => (
            <option key={varietyId} value={varietyId}>
              {words.names.variety(varietyId)}
            </option>
          ))}
        </select>
      </label>
      <div class={drawn.length === 1 ? 'plan-supplies is-one' : 'plan-supplies'}>
        {drawn.map((supply) => (
          <Supply key={supply.varietyId} {...parts} supply={supply} />
        ))}
      </div>
      <ul class="plan-key">
        {(['supply', 'asked', 'band'] as const).map((kind) => (
          <li key={kind}>
            <span class={`plan-key-${kind}`} /> {say.supply[kind]}
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function Supply({ supply, say, words }: DayParts & { readonly supply: PlanSupply }) {
  const [ref, widthPx] = useMeasuredWidth<HTMLElement>()
  const { asked, varietyId } = supply
  const name = words.names.variety(varietyId)
  const [lost, left] = [Math.round(supply.lost), Math.round(supply.left)]
  const first = asked[0]?.[0]
  const last = asked[asked.length - 1]?.[0]
  if (first === undefined || last === undefined || last <= first) return null
  const view = supplyView(supply, { fromMs: first, toMs: last, widthPx, heightPx: HEIGHT_PX })
  return (
    <figure class="plan-supply" ref={ref}>
      <figcaption>
        <strong>{name}</strong> <span class="desk-quiet">{say.supply.expects(left, lost)}</span>
      </figcaption>
      {widthPx > 0 && (
        <svg
          role="img"
          aria-label={say.supply.spoken(name, left, lost)}
          viewBox={`0 0 ${widthPx} ${HEIGHT_PX}`}
          width={widthPx}
          height={HEIGHT_PX}
        >
          <path class="plan-band" d={view.band} />
          <path class="plan-asked" d={view.asked} />
          <path class="plan-there" d={view.supply} />
        </svg>
      )}
      <p class="plan-supply-ends desk-quiet">
        <span>{words.times.clock(first)}</span>
        <span>{words.line.pieces(Math.round(view.most))}</span>
        <span>{words.times.clock(last)}</span>
      </p>
    </figure>
  )
}

import { useMemo } from 'preact/hooks'
import type { TrustJson } from '../../../shared-core/live/trust.ts'
import { trustWords } from '../../words/desk-trust.ts'
import { Choose } from '../history/choose.tsx'
import type { HistoryWhere } from '../history/pages.ts'
import { TRUST_RANGES, withinOf } from '../history/pages.ts'
import type { HistoryParts } from '../history/parts.ts'
import { salesVersion } from '../history/parts.ts'
import { NoSales, Unanswered } from '../history/unanswered.tsx'
import { addressOf } from '../place.ts'
import { useGot } from '../use-got.ts'
import { AccuracyPanels } from './accuracy-panels.tsx'
import { CostPanel } from './cost-panel.tsx'
import { HeldPanel } from './held-panel.tsx'
import { OverridesPanel } from './overrides-panel.tsx'
import { SummaryPanel } from './summary-panel.tsx'
import { VarietyPanel } from './variety-panel.tsx'

type TrustWhere = Extract<HistoryWhere, { page: 'trust' }>
const EACH = 'each'

/** How far off the forecasts were, beside two simple ways, whether they held what they said, and what that cost. */
export function TrustPage(parts: HistoryParts & { readonly where: TrustWhere }) {
  const { say, words, where } = parts
  const told = useMemo(() => trustWords(words), [words])
  const got = useGot<TrustJson>(`/api/v1/trust?days=${where.range}`, salesVersion(parts))
  if (got.kind !== 'got') return <Unanswered kind={got.kind} say={say} />
  const trust = got.value
  if (trust.daysKnown === 0) return <NoSales say={say} />
  const of = { ...parts, told }
  return (
    <>
      <Choose
        parts={parts}
        of={where.of ?? EACH}
        range={where.range}
        all={{ value: EACH, label: told.each }}
        ranges={TRUST_RANGES.map((value) => ({ value, label: told.ranges[value] }))}
        label={told.of}
        onChoose={(chosen, range) => {
          const next = { page: 'trust', of: chosen === EACH ? null : chosen, range } as const
          window.location.hash = addressOf('history', withinOf(next))
        }}
      />
      <div class="desk-parts">
        {where.of !== null && <VarietyPanel {...of} of={where.of} trust={trust} />}
        <SummaryPanel {...of} trust={trust} />
        <HeldPanel {...of} held={trust.each.held} />
        <CostPanel {...of} cost={trust.cost} />
        <AccuracyPanels {...of} trust={trust} range={where.range} />
        <OverridesPanel {...of} overrides={trust.overrides} />
      </div>
    </>
  )
}

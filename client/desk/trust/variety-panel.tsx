import { varietyId } from '../../../shared-core/ids.ts'
import type { SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import type { TrustJson } from '../../../shared-core/live/trust.ts'
import { salesVersion } from '../history/parts.ts'
import { Unanswered } from '../history/unanswered.tsx'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import { ForecastPlot } from './forecast-plot.tsx'
import type { TrustParts } from './parts.ts'

interface VarietyProps extends TrustParts {
  /** "variety:ID" */
  readonly of: string
  readonly trust: TrustJson
}

/** One variety's forecasts, each beside what was asked for that day. */
export function VarietyPanel({ of, trust, ...parts }: VarietyProps) {
  const { say, told, words } = parts
  const id = of.replace(/^variety:/, '')
  const query = new URLSearchParams({ of, ...(trust.from !== null && { from: trust.from }) })
  const got = useGot<SalesHistoryJson>(`/api/v1/history/sales?${query}`, salesVersion(parts))
  const name = words.names.variety(varietyId(id))
  const accuracy = trust.varieties.find((one) => one.id === id)
  return (
    <Panel part="variety" title={told.one.title(name)} isWide>
      {got.kind !== 'got' ? (
        <Unanswered kind={got.kind} say={say} />
      ) : (
        <>
          {accuracy?.off != null && <p class="trust-said">{told.one.off(name, accuracy.off)}</p>}
          <ForecastPlot {...parts} name={name} days={got.value.days} />
        </>
      )}
    </Panel>
  )
}

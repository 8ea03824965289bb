import { doughId as doughIdOf, varietyId as varietyIdOf } from '../../../shared-core/ids.ts'
import type { OverrideJson, TrustJson } from '../../../shared-core/live/trust.ts'
import type { DeskWords } from '../../words/desk.ts'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import type { ComingParts } from './parts.ts'

/** Four weeks say whether one tends to be right; more is on the page of how good the forecasts were. */
const DAYS = 28
const LINES_MAX = 6
/** The day's own advice comes first. */
const WAIT_MS = 800

/** What was decided otherwise than advised, beside what was asked for then. Nothing where nothing was. */
export function OverridesPanel({ say, words, state }: ComingParts) {
  const got = useGot<TrustJson>(`/api/v1/trust?days=${DAYS}`, state.lastDay?.closedOn ?? '', WAIT_MS)
  if (got.kind !== 'got' || got.value.overrides.changed === 0) return null
  const { changed, nearer, farther, lines } = got.value.overrides
  return (
    <Panel part="overrides" title={say.overrides.title} isWide>
      <p class="desk-quiet">{say.overrides.hint}</p>
      <p>{say.overrides.sum(changed, nearer, farther)}</p>
      <ul class="coming-overrides">
        {lines.slice(0, LINES_MAX).map((line) => (
          <li key={`${line.date}/${line.doughId}/${line.varietyId}`}>
            {say.overrides.line({
              ...line,
              date: words.times.date(line.date),
              name: nameOf(line, words),
              asked: Math.round(line.asked),
            })}
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function nameOf({ doughId, varietyId }: OverrideJson, { names }: DeskWords): string {
  return varietyId === null ? names.dough(doughIdOf(doughId)) : names.variety(varietyIdOf(varietyId))
}

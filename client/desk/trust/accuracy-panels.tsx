import { useState } from 'preact/hooks'
import { doughId, varietyId } from '../../../shared-core/ids.ts'
import type { AccuracyOf, TrustJson } from '../../../shared-core/live/trust.ts'
import { minuteText } from '../../live/clock-text.ts'
import type { TrustRange } from '../history/pages.ts'
import { withinOf } from '../history/pages.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { AccuracyTable } from './accuracy-table.tsx'
import { MeasuresTable } from './measures-table.tsx'
import type { TrustParts } from './parts.ts'

interface AccuracyProps extends TrustParts {
  readonly trust: TrustJson
  readonly range: TrustRange
}

/** The same figures by variety, by dough, for the rest of the day and by weekday. */
export function AccuracyPanels({ trust, range, ...parts }: AccuracyProps) {
  const { told, say, words, shop } = parts
  const { tables } = told
  const [isMeasured, setMeasured] = useState(false)
  const nameOf = ({ id }: AccuracyOf) => words.names.variety(varietyId(id))
  const varieties = [...trust.varieties].sort((one, other) => other.asked - one.asked)
  return (
    <>
      <Panel part="varieties" title={tables.varieties} isWide>
        <p class="desk-quiet">{tables.hint}</p>
        <AccuracyTable
          {...parts}
          title={tables.varieties}
          first={tables.columns.variety}
          rows={varieties}
          nameOf={nameOf}
          addressOf={({ id }) => addressOf('history', withinOf({ page: 'trust', of: `variety:${id}`, range }))}
        />
        <p>
          <button type="button" aria-expanded={isMeasured} onClick={() => setMeasured(!isMeasured)}>
            {tables.measures}
          </button>
        </p>
        {isMeasured && <MeasuresTable {...parts} rows={[{ id: '', ...trust.each }, ...varieties]} nameOf={nameOf} />}
      </Panel>
      <Panel part="doughs" title={tables.doughs}>
        <AccuracyTable
          {...parts}
          title={tables.doughs}
          first={tables.columns.dough}
          rows={trust.doughs}
          nameOf={({ id }) => words.names.dough(doughId(id))}
        />
      </Panel>
      <Panel part="rests" title={tables.rests}>
        <p class="desk-quiet">{tables.restsHint}</p>
        <AccuracyTable
          {...parts}
          title={tables.rests}
          first={tables.columns.rest}
          rows={trust.rests}
          nameOf={({ id }) => tables.rest(minuteText(Number(id), shop.profile.clock))}
        />
      </Panel>
      <Panel part="weekdays" title={tables.weekdays} isWide>
        <AccuracyTable
          {...parts}
          title={tables.weekdays}
          first={tables.columns.weekday}
          rows={trust.weekdays}
          nameOf={({ id }) => say.weekday(Number(id))}
        />
      </Panel>
    </>
  )
}

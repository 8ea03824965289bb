import { Panel } from '../panel.tsx'
import type { DayParts } from './parts.ts'

/** The last loads before the changeover, and what it would gain or cost to move that. */
export function LastPanel({ plan, say, words }: DayParts) {
  const { last } = plan
  if (last === null) return null
  const loads = plan.loads
    .filter(({ id }) => last.loadIds.includes(id))
    .map(
      ({ shelfId, inAtMs, lines }) => `${say.load(words.line.shelf(shelfId), inAtMs)}, ${words.line.contents(lines)}`,
    )
  return (
    <Panel part="plan-last" title={say.last.title}>
      <p>{say.last.by(last.kettleByMs, last.inByMs, last.emptyByMs)}</p>
      {loads.length > 0 && <p>{say.last.carries(loads)}</p>}
      <ul class="plan-slips">
        {last.slips.map(({ byMs, gainCents, lostFewer, leftFewer }) => (
          <li key={byMs}>{say.last.slip(byMs, gainCents, lostFewer, leftFewer)}</li>
        ))}
      </ul>
    </Panel>
  )
}

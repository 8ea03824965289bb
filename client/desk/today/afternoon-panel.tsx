import { afternoonAhead, lastLoadTexts } from '../../parts/afternoon.ts'
import { outlookNow } from '../../parts/outlook-now.ts'
import { afternoonWords } from '../../words/afternoon.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'

/** What remains for the afternoon, at any moment of the morning: what will be left, whether it lasts, what to add. */
export function AfternoonPanel({ live, state, words }: DeskParts) {
  const say = afternoonWords(words)
  const ahead = afternoonAhead(outlookNow(live, state), live.nowMs)
  if (ahead === null) return null
  const { fromMs, inByMs, rows, isGuess } = ahead
  const { columns } = say
  return (
    <Panel part="afternoon" title={say.title} isWide>
      <p class={inByMs === null ? 'desk-quiet' : ''}>{lastLoadTexts(ahead, say)[0]}</p>
      {isGuess && <p class="desk-quiet">{say.guess}</p>}
      <table class="desk-afternoon">
        <thead>
          <tr>
            <th>{columns.variety}</th>
            <th>{columns.left(fromMs)}</th>
            <th>{columns.lasts}</th>
            <th>{columns.more}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ varietyId, left, lastsPercent, more }) => (
            <tr key={varietyId}>
              <th scope="row">{words.names.variety(varietyId)}</th>
              <td>{say.left(left)}</td>
              <td>{say.lasts(lastsPercent)}</td>
              <td>{more > 0 && inByMs !== null && <strong>{say.more(more)}</strong>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Panel>
  )
}

import type { EpochMs } from '../../../shared-core/units.ts'
import type { DeskDoorWords } from '../../words/desk-door.ts'
import type { DeskParts } from '../desk-screen.tsx'
import type { Refused } from '../refused-mark.ts'
import { Sideways } from '../sideways.tsx'
import { told } from './devices-panel.tsx'

interface RefusedPanelProps extends DeskParts {
  readonly say: DeskDoorWords
  readonly refused: Refused
}

/** Who was not let in, kind by kind, the latest first. */
export function RefusedPanel({ refused, say: { refused: say }, live, shop, words }: RefusedPanelProps) {
  const moment = { shopClock: live.shopClock, nowMs: live.nowMs, shop, words }
  const attempts = [...refused.attempts].sort((one, other) => other.lastAtMs - one.lastAtMs)
  const at = (atMs: EpochMs) => told(atMs, moment)
  if (attempts.length === 0) {
    return (
      <>
        <p class="desk-quiet">{say.none}</p>
        <p class="desk-quiet">{say.since(at(refused.sinceMs))}</p>
      </>
    )
  }
  return (
    <>
      <Sideways name={say.title}>
        <table>
          <thead>
            <tr>
              <th>{say.columns.what}</th>
              <th>{say.columns.last}</th>
              <th>{say.columns.from}</th>
            </tr>
          </thead>
          <tbody>
            {attempts.map(({ kind, times, lastAtMs, lastFrom }) => (
              <tr key={kind}>
                <td>{say.times(kind, times)}</td>
                <td>{at(lastAtMs)}</td>
                <td>{lastFrom}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      <p class="desk-quiet">{say.lead}</p>
      <p class="desk-quiet">{say.since(at(refused.sinceMs))}</p>
    </>
  )
}

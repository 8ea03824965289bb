import type { DeskParts } from './desk-screen.tsx'
import { doneRows } from './done-view.ts'

/** The last acts of all screens, newest first. */
export function DonePanel({ store, live, state, words }: DeskParts) {
  const { done } = words.desk
  const rows = doneRows(state, { deviceId: store.deviceId, screens: live.screens, words })
  if (rows.length === 0) return <p class="desk-quiet">{done.nothing}</p>
  return (
    <div class="desk-scroll desk-lines">
      <table>
        <tbody>
          {rows.map(({ commandId, text, by, refusal }) => (
            <tr key={commandId}>
              <td>{text}</td>
              <td class="desk-quiet">{by}</td>
              <td>
                <button
                  type="button"
                  disabled={refusal !== null}
                  title={refusal ?? undefined}
                  onClick={() => store.send({ type: 'takeBack', commandId })}
                >
                  {done.takeBack}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="desk-quiet">{done.older}</p>
    </div>
  )
}

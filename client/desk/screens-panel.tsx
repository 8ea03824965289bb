import type { ScreenPresence } from '../../shared-core/live/protocol.ts'
import type { DeskParts } from './desk-screen.tsx'
import { deviceName } from './device-name.ts'
import { Sideways } from './sideways.tsx'

/** Which screens are connected, and which were here today. */
export function ScreensPanel({ store, live, words }: DeskParts) {
  const { screens: say } = words.desk
  const screens = [...live.screens].sort(byPresence)
  if (screens.length === 0) return <p class="desk-quiet">{say.none}</p>
  return (
    <Sideways name={say.listName}>
      <table>
        <thead>
          <tr>
            <th>{say.columns.name}</th>
            <th>{say.columns.role}</th>
            <th>{say.columns.station}</th>
            <th>{say.columns.state}</th>
          </tr>
        </thead>
        <tbody>
          {screens.map(({ device, connected, seenAtMs }) => (
            <tr key={device.deviceId} class={connected ? undefined : 'desk-gone'}>
              <td>
                {deviceName(device, words)}
                {device.deviceId === store.deviceId && <span class="desk-quiet"> ({say.thisOne})</span>}
              </td>
              <td>{say.role[device.role]}</td>
              <td>{device.stationId === null ? say.allStations : words.names.station(device.stationId)}</td>
              <td>{connected ? `● ${say.connected}` : say.lastSeen(seenAtMs)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

/** Connected ones first, then by name. */
function byPresence(one: ScreenPresence, other: ScreenPresence): number {
  if (one.connected !== other.connected) return one.connected ? -1 : 1
  return one.device.name < other.device.name ? -1 : 1
}

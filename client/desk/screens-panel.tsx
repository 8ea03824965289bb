import type { ScreenPresence } from '../../shared-core/live/protocol.ts'
import type { DeskParts } from './desk-screen.tsx'
import { deviceName } from './device-name.ts'

const PAGES = ['wall', 'bench', 'counter', 'desk'] as const
const LOCAL = ['localhost', '127.0.0.1', '[::1]']

/** Which screens are connected, and where to open more. */
export function ScreensPanel({ store, live, words }: DeskParts) {
  const { screens: say } = words.desk
  const { origin, hostname } = window.location
  const screens = [...live.screens].sort(byPresence)
  return (
    <div class="desk-columns">
      <div class="desk-grow">
        {screens.length === 0 ? (
          <p class="desk-quiet">{say.none}</p>
        ) : (
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
        )}
        <label class="desk-field">
          <span>{say.name}</span>
          <input
            value={live.settings.name}
            placeholder={say.nameHint}
            maxLength={40}
            onChange={(event) => store.changeSettings({ name: event.currentTarget.value })}
          />
        </label>
      </div>
      <div>
        <h3>{say.addresses}</h3>
        <p class="desk-quiet">{say.addressHint}</p>
        <ul class="desk-addresses">
          {PAGES.map((page) => (
            <li key={page}>
              {say.role[page]}: <a href={`/${page}`}>{`${origin}/${page}`}</a>
            </li>
          ))}
        </ul>
        {LOCAL.includes(hostname) && <p class="desk-quiet">{say.localHint}</p>}
      </div>
    </div>
  )
}

/** Connected ones first, then by name. */
function byPresence(one: ScreenPresence, other: ScreenPresence): number {
  if (one.connected !== other.connected) return one.connected ? -1 : 1
  return one.device.name < other.device.name ? -1 : 1
}

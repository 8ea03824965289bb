import { useState } from 'preact/hooks'
import type { JoinedDevice } from '../../../shared-core/live/devices.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { shownName } from '../../live/unnamed.ts'
import type { MomentParts } from '../moment.ts'
import { momentOf } from '../moment.ts'
import { Sideways } from '../sideways.tsx'
import { DeviceForm } from './device-form.tsx'
import type { DoorPanelProps } from './let-in-panel.tsx'

interface DevicesPanelProps extends DoorPanelProps {
  readonly kind: JoinedDevice['kind']
  /** The device that this very page runs on. */
  readonly ownId: string | null
}

/** The devices that may come in: what each is, and whether it is here now. */
export function DevicesPanel(parts: DevicesPanelProps) {
  const { door, kind, words, say } = parts
  const [changing, setChanging] = useState<string | null>(null)
  const devices = door.devices.filter((device) => device.kind === kind)
  if (devices.length === 0) return null
  const { columns } = words.desk.screens
  return (
    <Sideways name={words.desk.screens.listName}>
      <table class="desk-lines door-devices">
        <thead>
          <tr>
            <th>{columns.name}</th>
            <th>{columns.role}</th>
            <th>{kind === 'screen' ? columns.station : say.devices.columns.ends}</th>
            <th>{say.devices.columns.seen}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {devices.map((device) =>
            device.id === changing ? (
              <tr key={device.id}>
                <td colSpan={5}>
                  <DeviceForm {...parts} device={device} onDone={() => setChanging(null)} />
                </td>
              </tr>
            ) : (
              <DeviceRow key={device.id} {...parts} device={device} onChange={() => setChanging(device.id)} />
            ),
          )}
        </tbody>
      </table>
    </Sideways>
  )
}

interface DeviceRowProps extends DevicesPanelProps {
  readonly device: JoinedDevice
  readonly onChange: () => void
}

function DeviceRow({ device, onChange, ownId, door, say, words, live, shop }: DeviceRowProps) {
  const { screens } = words.desk
  const name = shownName(device, screens.role[device.role])
  const moment = { shopClock: live.shopClock, nowMs: live.nowMs, shop, words }
  // This page is looked at: its own device is here, whatever the list knew a moment ago.
  const isLinked = device.id === ownId || door.linked.includes(device.id)
  return (
    <tr class={isLinked || device.kind !== 'screen' ? undefined : 'desk-gone'}>
      <td>
        {name}
        {device.id === ownId && <span class="desk-quiet"> ({screens.thisOne})</span>}
      </td>
      <td>{device.kind === 'calendar' ? say.devices.calendar : screens.role[device.role]}</td>
      <td>
        {device.kind !== 'screen'
          ? device.expiresAtMs === null
            ? say.devices.endless
            : told(device.expiresAtMs, moment)
          : device.stationId === null
            ? screens.allStations
            : words.names.station(device.stationId)}
      </td>
      <td>
        {isLinked
          ? `● ${say.devices.linked}`
          : device.seenAtMs === null
            ? say.devices.notYet
            : told(device.seenAtMs, moment)}
      </td>
      <td>
        <button type="button" aria-label={`${say.devices.change}: ${name}`} onClick={onChange}>
          {say.devices.change}
        </button>
      </td>
    </tr>
  )
}

/** @example "9:10 pm", "Wed, Nov 25, 9:10 pm" */
export function told(atMs: EpochMs, parts: MomentParts): string {
  const { day, clock } = momentOf(atMs, parts)
  return day === '' ? clock : `${day}, ${clock}`
}

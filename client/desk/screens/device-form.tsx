import { useState } from 'preact/hooks'
import type { JoinedDevice } from '../../../shared-core/live/devices.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { markIn, shownName } from '../../live/unnamed.ts'
import type { DoorPanelProps } from './let-in-panel.tsx'
import { hasStation } from './let-in-panel.tsx'
import { RoleChoice } from './role-choice.tsx'
import { StationField } from './station-field.tsx'

interface DeviceFormProps extends DoorPanelProps {
  readonly device: JoinedDevice
  readonly onDone: () => void
}

/** A device gets another name, becomes another screen, or is shown out. */
export function DeviceForm({ device, door, shop, words, say: { devices: say }, onDone }: DeviceFormProps) {
  const shown = shownName(device, words.desk.screens.role[device.role])
  // One that nobody has named has a name to be given, not one to be changed.
  const known = markIn(device.name, device.role) === null ? device.name : ''
  const [name, setName] = useState(known)
  const [role, setRole] = useState(device.role)
  const [stationId, setStationId] = useState(device.stationId)
  const [isAsking, setAsking] = useState(false)
  const address = `/${encodeURIComponent(device.id)}`
  const save = async () => {
    const station = hasStation(role) ? stationId : null
    const change = {
      ...(name.trim() === '' || name === known ? {} : { name }),
      ...(role === device.role ? {} : { role }),
      ...(station === device.stationId ? {} : { stationId: station }),
    }
    if (Object.keys(change).length === 0 || (await door.ask('PATCH', address, change)) !== null) onDone()
  }
  if (isAsking) {
    return (
      <div class="desk-line" role="alert">
        <p class="door-question">{say.showOutAsk(shown)}</p>
        <button type="button" class="desk-strong" onClick={() => door.ask('DELETE', address).then(onDone)}>
          {say.showOutYes}
        </button>
        <button type="button" onClick={() => setAsking(false)}>
          {say.showOutNo}
        </button>
      </div>
    )
  }
  return (
    <form
      class="door-form"
      onSubmit={(event) => {
        event.preventDefault()
        save()
      }}
    >
      {device.kind !== 'calendar' && (
        <RoleChoice words={words} title={say.role} group={`role-${device.id}`} role={role} onChoose={setRole} />
      )}
      {role !== device.role && device.kind === 'screen' && <p class="desk-quiet">{say.movedHint}</p>}
      <div class="desk-form">
        <label class="desk-field">
          <span>{say.name}</span>
          <input
            value={name}
            maxLength={DEVICE_NAME_MAX}
            placeholder={shown}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {device.kind === 'screen' && hasStation(role) && (
          <StationField shop={shop} words={words} title={say.station} stationId={stationId} onChoose={setStationId} />
        )}
        <button type="submit" class="desk-strong">
          {say.save}
        </button>
        <button type="button" onClick={onDone}>
          {say.cancel}
        </button>
        <button type="button" class="door-out" onClick={() => setAsking(true)}>
          {say.showOut}
        </button>
      </div>
    </form>
  )
}

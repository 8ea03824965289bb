import { useRef, useState } from 'preact/hooks'
import type { StationId } from '../../../shared-core/ids.ts'
import type { JoinCode } from '../../../shared-core/live/devices.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import type { DeskDoorWords } from '../../words/desk-door.ts'
import type { OpenWords } from '../../words/desk-open.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { AddressField, useChosenAddress } from './address-field.tsx'
import { CodeCard } from './code-card.tsx'
import type { LetInView, MadeCode } from './let-in-view.ts'
import { letInView, spaced } from './let-in-view.ts'
import { RoleChoice } from './role-choice.tsx'
import { StationField } from './station-field.tsx'
import type { Door } from './use-door.ts'

export interface DoorPanelProps extends DeskParts {
  readonly door: Door
  readonly say: DeskDoorWords
  readonly open: OpenWords
}

/** A new device joins: what it shall be, then six digits for it, until it has come. */
export function LetInPanel(parts: DoorPanelProps) {
  const { door, say, live, words } = parts
  const [made, setMade] = useState<MadeCode | null>(null)
  const address = useChosenAddress()
  const view = useLetIn(made, door, live.nowMs)
  const others = door.codes.filter(({ code }) => code !== made?.code.code)
  return (
    <>
      {made === null || view === null ? (
        <NewCode {...parts} onMade={setMade} />
      ) : (
        <CodeCard
          code={made.code}
          view={view}
          base={address.base}
          words={words}
          say={say.letIn}
          onTakeBack={() => {
            takeBack(door, made.code.code)
            setMade(null)
          }}
          onAnother={() => setMade(null)}
        >
          <AddressField {...address} words={words} say={parts.open} />
        </CodeCard>
      )}
      {others.length > 0 && (
        <>
          <h3>{say.letIn.others}</h3>
          <ul class="door-codes">
            {others.map(({ code, role, name, expiresAtMs }) => (
              <li key={code} class="desk-line">
                <strong class="door-digits">{spaced(code)}</strong>
                <span>{[words.desk.screens.role[role], name].filter((text) => text !== '').join(' · ')}</span>
                <span class="desk-quiet">{words.times.left(Math.max(0, expiresAtMs - live.nowMs))}</span>
                <button type="button" onClick={() => takeBack(door, code)}>
                  {say.letIn.takeBack}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}

/** Once its device has come it stays so, also when that is shown out again. */
function useLetIn(made: MadeCode | null, door: Door, nowMs: EpochMs): LetInView | null {
  const came = useRef<{ readonly made: MadeCode; readonly view: LetInView } | null>(null)
  if (made === null) return null
  if (came.current?.made === made) return came.current.view
  const view = letInView(made, door, nowMs)
  if (view.kind === 'joined') came.current = { made, view }
  return view
}

function takeBack(door: Door, code: string): void {
  door.ask('DELETE', `/codes/${code}`)
}

function NewCode({
  door,
  say,
  open,
  live,
  shop,
  words,
  onMade,
}: DoorPanelProps & { readonly onMade: (made: MadeCode) => void }) {
  const [role, setRole] = useState<Role>('bench')
  const [name, setName] = useState('')
  const [stationId, setStationId] = useState<StationId | null>(null)
  const make = async () => {
    const before = door.devices
    const station = stationId === null || !hasStation(role) ? {} : { stationId }
    const code = await door.ask<JoinCode>('POST', '/codes', { role, ...station, ...(name === '' ? {} : { name }) })
    if (code !== null) onMade({ code, before, madeAtMs: live.nowMs })
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        make()
      }}
    >
      <p class="desk-quiet">{say.letIn.lead}</p>
      <RoleChoice words={words} title={open.which} group="desk-let-in" role={role} onChoose={setRole} />
      <div class="desk-form">
        <label class="desk-field">
          <span>{open.name}</span>
          <input
            value={name}
            maxLength={DEVICE_NAME_MAX}
            placeholder={open.nameHint[role]}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {hasStation(role) && (
          <StationField
            shop={shop}
            words={words}
            title={say.devices.station}
            stationId={stationId}
            onChoose={setStationId}
          />
        )}
        <button type="submit" class="desk-strong">
          {say.letIn.make}
        </button>
      </div>
    </form>
  )
}

/** Only screens at the line stand at one of its stations. */
export function hasStation(role: Role): boolean {
  return role === 'wall' || role === 'bench'
}

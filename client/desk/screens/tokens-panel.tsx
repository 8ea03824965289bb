import { useState } from 'preact/hooks'
import type { JoinedDevice } from '../../../shared-core/live/devices.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { CopyKey } from './copy-key.tsx'
import type { DoorPanelProps } from './let-in-panel.tsx'
import { RoleChoice } from './role-choice.tsx'

const DAYS = [30, 90, 365, null] as const
const DAYS_AT_FIRST = 365

interface Made {
  readonly token: string
  readonly device: JoinedDevice
}

/** A till, a sensor or a script gets a token, which is told once. */
export function TokensPanel(parts: DoorPanelProps) {
  const { say } = parts
  const [made, setMade] = useState<Made | null>(null)
  return (
    <>
      <p class="desk-quiet">{say.tokens.lead}</p>
      {made === null ? (
        <NewToken {...parts} onMade={setMade} />
      ) : (
        <Told made={made} say={say.tokens} onPutAway={() => setMade(null)} />
      )}
    </>
  )
}

function NewToken({
  door,
  words,
  say: { tokens: say },
  onMade,
}: DoorPanelProps & { readonly onMade: (made: Made) => void }) {
  const [role, setRole] = useState<Role>('counter')
  const [name, setName] = useState('')
  const [days, setDays] = useState<number | null>(DAYS_AT_FIRST)
  const make = async () => {
    const made = await door.ask<Made>('POST', '/tokens', { name: name.trim(), role, days })
    if (made !== null) onMade(made)
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        make()
      }}
    >
      <RoleChoice words={words} title={say.role} group="desk-token" role={role} onChoose={setRole} />
      <div class="desk-form">
        <label class="desk-field">
          <span>{say.name}</span>
          <input
            value={name}
            required={true}
            maxLength={DEVICE_NAME_MAX}
            placeholder={say.nameHint}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <label class="desk-field">
          <span>{say.days}</span>
          <select
            value={String(days)}
            onChange={(event) => setDays(DAYS.find((one) => String(one) === event.currentTarget.value) ?? null)}
          >
            {DAYS.map((one) => (
              <option key={one} value={String(one)}>
                {say.daysChoice(one)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" class="desk-strong" disabled={name.trim() === ''}>
          {say.make}
        </button>
      </div>
    </form>
  )
}

interface ToldProps {
  readonly made: Made
  readonly say: DoorPanelProps['say']['tokens']
  readonly onPutAway: () => void
}

function Told({ made: { token, device }, say, onPutAway }: ToldProps) {
  const line = `curl -H 'authorization: Bearer ${token}' ${window.location.origin}/api/v1/state`
  return (
    <div role="status">
      <p>
        <strong>{say.once(device.name)}</strong>
      </p>
      <p class="desk-line">
        <code class="desk-code-text">{token}</code>
        <CopyKey text={token} label={say.copy} done={say.copied} />
      </p>
      <p>{say.example}</p>
      <p class="desk-line">
        <code class="desk-code-text">{line}</code>
        <CopyKey text={line} label={say.copy} done={say.copied} />
      </p>
      <button type="button" class="desk-strong" onClick={onPutAway}>
        {say.putAway}
      </button>
    </div>
  )
}

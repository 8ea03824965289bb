import { useId, useState } from 'preact/hooks'
import type { SetUpSentences } from '../../../words/set-up.ts'
import { deviceZone, foundZones, zoneText } from '../zones.ts'

export interface ZoneFieldProps {
  readonly label: string
  readonly zone: string
  readonly say: SetUpSentences
  readonly onChange: (zone: string) => void
}

/** A time zone out of all that the browser knows: a few letters of a city find it. */
export function ZoneField({ label, zone, say, onChange }: ZoneFieldProps) {
  const id = useId()
  const [sought, setSought] = useState<string | null>(null)
  const here = deviceZone()
  const { zones, hasMore } = foundZones(sought ?? '')
  const choose = (chosen: string) => {
    onChange(chosen)
    setSought(null)
  }
  return (
    <div class="setup-field setup-zone">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={sought ?? zoneText(zone)}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => setSought(event.currentTarget.value)}
      />
      {sought !== null && sought.trim() !== '' && (
        <div class="setup-found">
          {zones.length === 0 && <p class="setup-hint">{say.form.noneFound}</p>}
          {zones.map((found) => (
            <button key={found} type="button" onClick={() => choose(found)}>
              {zoneText(found)}
            </button>
          ))}
          {hasMore && <p class="setup-hint">{say.form.moreFound}</p>}
        </div>
      )}
      {sought === null && here !== null && here !== zone && (
        <p class="setup-hint">
          {say.guide.deviceZone}{' '}
          <button type="button" class="setup-inline" onClick={() => choose(here)}>
            {zoneText(here)}
          </button>
        </p>
      )}
    </div>
  )
}

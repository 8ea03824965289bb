import { useState } from 'preact/hooks'
import type { CalendarLink } from '../../../shared-core/live/orders-import.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { call } from '../call.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { CopyKey } from '../screens/copy-key.tsx'
import type { OrdersParts } from './parts.ts'

/** A link for somebody's calendar: made, shown once, ended. */
export function CalendarPanel({ say, words }: OrdersParts) {
  const { calendar } = say.files
  const [name, setName] = useState('')
  const [link, setLink] = useState<CalendarLink | null>(null)
  const [told, setTold] = useState({ text: '', isTrouble: false })
  const failed = (detail: string) => setTold({ text: `${calendar.failed} ${detail}`.trim(), isTrouble: true })
  const make = async () => {
    const done = await call<CalendarLink>('POST', '/api/v1/orders/calendar', { name: name.trim() })
    if (done.kind !== 'done') return failed(done.kind === 'refused' ? done.detail : say.noContact)
    setLink(done.value)
    setTold({ text: '', isTrouble: false })
  }
  const end = async (deviceId: string) => {
    const done = await call('DELETE', `/api/v1/devices/${encodeURIComponent(deviceId)}`)
    if (done.kind !== 'done') return failed(done.kind === 'refused' ? done.detail : say.noContact)
    setLink(null)
    setTold({ text: calendar.ended, isTrouble: false })
  }
  return (
    <Panel part="calendar" title={calendar.title} isWide>
      <p>{calendar.lead}</p>
      {told.text !== '' && (
        <p class={told.isTrouble ? 'desk-trouble' : 'desk-even'} role="status">
          {told.text}
        </p>
      )}
      {link === null ? (
        <form
          class="desk-form"
          onSubmit={(event) => {
            event.preventDefault()
            if (name.trim() !== '') void make()
          }}
        >
          <label class="desk-field">
            {calendar.name}
            <input value={name} maxLength={DEVICE_NAME_MAX} onInput={(event) => setName(event.currentTarget.value)} />
          </label>
          <button type="submit" disabled={name.trim() === ''}>
            {calendar.make}
          </button>
        </form>
      ) : (
        <Told link={link} say={calendar} onDone={() => setLink(null)} onEnd={(deviceId) => void end(deviceId)} />
      )}
      <div class="desk-line">
        <span class="desk-quiet">{calendar.older}</span>
        <a href={addressOf('screens')}>{words.desk.places.screens}</a>
      </div>
    </Panel>
  )
}

interface ToldProps {
  readonly link: CalendarLink
  readonly say: OrdersParts['say']['files']['calendar']
  readonly onDone: () => void
  readonly onEnd: (deviceId: string) => void
}

function Told({ link: { path, deviceId }, say, onDone, onEnd }: ToldProps) {
  const address = `${window.location.origin}${path}`
  return (
    <div role="status">
      <p>
        <strong>{deviceId === null ? say.openShop : say.once}</strong>
      </p>
      <p class="desk-line">
        <code class="desk-code-text orders-link">{address}</code>
        <CopyKey text={address} label={say.copy} done={say.copied} />
      </p>
      <div class="desk-line">
        <button type="button" class="desk-strong" onClick={onDone}>
          {say.done}
        </button>
        {deviceId !== null && (
          <button type="button" onClick={() => onEnd(deviceId)}>
            {say.end}
          </button>
        )}
      </div>
    </div>
  )
}

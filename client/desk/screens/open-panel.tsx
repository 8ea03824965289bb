import { useState } from 'preact/hooks'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { linkFor } from '../../live/name-in-link.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { OpenWords } from '../../words/desk-open.ts'
import { QrCode } from './qr-code.tsx'
import { useAddresses } from './use-addresses.ts'

const ROLES: readonly Role[] = ['wall', 'bench', 'counter', 'desk']
const CODE_PX = 240
/** What a device's name may measure. */
const NAME_MAX = 40

/** A screen with its name as a code that a tablet's camera reads, and as a link. */
export function OpenPanel({ words, say }: { readonly words: DeskWords; readonly say: OpenWords }) {
  const addresses = useAddresses()
  const [role, setRole] = useState<Role>('bench')
  const [name, setName] = useState('')
  const [chosen, setChosen] = useState<string | null>(null)
  const base = addresses.find(({ url }) => url === chosen)?.url ?? addresses[0]?.url ?? window.location.origin
  const link = linkFor(base, role, name)
  return (
    <>
      <p class="desk-quiet">{say.lead}</p>
      <div class="desk-columns">
        <div class="desk-grow">
          <fieldset class="desk-field desk-roles">
            <legend>{say.which}</legend>
            {ROLES.map((one) => (
              <label key={one} class="desk-radio">
                <input type="radio" name="desk-role" checked={one === role} onChange={() => setRole(one)} />
                {words.desk.screens.role[one]}
              </label>
            ))}
          </fieldset>
          <label class="desk-field">
            <span>{say.name}</span>
            <input
              value={name}
              maxLength={NAME_MAX}
              placeholder={say.nameHint[role]}
              onInput={(event) => setName(event.currentTarget.value)}
            />
          </label>
          <label class="desk-field">
            <span>{say.address}</span>
            <select value={base} onChange={(event) => setChosen(event.currentTarget.value)}>
              {addresses.map(({ url, kind }) => (
                <option key={url} value={url}>
                  {url} ({kind === 'here' ? say.here : say.addressKind[kind]})
                </option>
              ))}
            </select>
          </label>
          <p class="desk-quiet">{isLocal(base) ? words.desk.screens.localHint : say.hereHint}</p>
        </div>
        <figure class="desk-code">
          <QrCode text={link} name={say.code(link)} sizePx={CODE_PX} />
          <figcaption>
            <strong>{say.scan}</strong>
            <a href={link}>{link}</a>
          </figcaption>
        </figure>
      </div>
    </>
  )
}

/** An address that leads nowhere from another device. */
export function isLocal(url: string): boolean {
  return /^https?:\/\/(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:|\/|$)/.test(url)
}

import { useState } from 'preact/hooks'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { DEVICE_NAME_MAX } from '../../live/device-settings.ts'
import { linkFor } from '../../live/name-in-link.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { OpenWords } from '../../words/desk-open.ts'
import { AddressField, useChosenAddress } from './address-field.tsx'
import { QrCode } from './qr-code.tsx'
import { RoleChoice } from './role-choice.tsx'

const CODE_PX = 240

/** A screen with its name as a code that a tablet's camera reads, and as a link. */
export function OpenPanel({ words, say }: { readonly words: DeskWords; readonly say: OpenWords }) {
  const address = useChosenAddress()
  const [role, setRole] = useState<Role>('bench')
  const [name, setName] = useState('')
  const link = linkFor(address.base, role, name)
  return (
    <>
      <p class="desk-quiet">{say.lead}</p>
      <div class="desk-columns">
        <div class="desk-grow">
          <RoleChoice words={words} title={say.which} group="desk-role" role={role} onChoose={setRole} />
          <label class="desk-field">
            <span>{say.name}</span>
            <input
              value={name}
              maxLength={DEVICE_NAME_MAX}
              placeholder={say.nameHint[role]}
              onInput={(event) => setName(event.currentTarget.value)}
            />
          </label>
          <AddressField {...address} words={words} say={say} />
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

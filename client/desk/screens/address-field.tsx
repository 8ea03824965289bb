import { useState } from 'preact/hooks'
import type { DeskWords } from '../../words/desk.ts'
import type { OpenWords } from '../../words/desk-open.ts'
import type { ShopAddress } from './use-addresses.ts'
import { useAddresses } from './use-addresses.ts'

/** Under which of its addresses a new device shall find the shop. */
export interface ChosenAddress {
  readonly base: string
  readonly addresses: readonly ShopAddress[]
  readonly choose: (url: string) => void
}

export function useChosenAddress(): ChosenAddress {
  const addresses = useAddresses()
  const [chosen, choose] = useState<string | null>(null)
  const base = addresses.find(({ url }) => url === chosen)?.url ?? addresses[0]?.url ?? window.location.origin
  return { base, addresses, choose }
}

interface AddressFieldProps extends ChosenAddress {
  readonly words: DeskWords
  readonly say: OpenWords
}

export function AddressField({ base, addresses, choose, words, say }: AddressFieldProps) {
  return (
    <>
      <label class="desk-field">
        <span>{say.address}</span>
        <select value={base} onChange={(event) => choose(event.currentTarget.value)}>
          {addresses.map(({ url, kind }) => (
            <option key={url} value={url}>
              {url} ({kind === 'here' ? say.here : say.addressKind[kind]})
            </option>
          ))}
        </select>
      </label>
      <p class="desk-quiet">{isLocal(base) ? words.desk.screens.localHint : say.hereHint}</p>
    </>
  )
}

/** An address that leads nowhere from another device. */
export function isLocal(url: string): boolean {
  return /^https?:\/\/(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:|\/|$)/.test(url)
}

import { useState } from 'preact/hooks'
import type { Meaning, NamedMeaning, TillName } from '../../../shared-core/live/sales-import.ts'
import { MeaningForm } from './meaning-form.tsx'
import { meaningTold } from './names-view.ts'
import type { SalesParts } from './sales-place.tsx'

interface NameRowProps extends SalesParts {
  readonly name: TillName
  readonly onSay: (names: readonly NamedMeaning[]) => Promise<boolean>
}

/** One name of the till: what it means, what it perhaps means, or the form to say it. */
export function NameRow({ name: { name, sold, meaning, suggested }, onSay, ...parts }: NameRowProps) {
  const { say, words } = parts
  const [isOpen, setOpen] = useState(false)
  const told = (one: Meaning) => meaningTold(one, say.names.meaning, words.names)
  const begin = meaning === null && suggested === null ? say.names.say : say.names.change
  const put = async (one: Meaning | null) => {
    if (await onSay([{ name, meaning: one }])) setOpen(false)
  }
  return (
    <li class="sales-name" data-name={name}>
      <span class="sales-till-name">{name}</span>
      <span class="sales-sold">{say.number(sold)}</span>
      <span class="sales-meaning">
        {meaning !== null ? (
          told(meaning)
        ) : suggested !== null ? (
          <>
            <span class="desk-quiet">{say.names.suggested} </span>
            {told(suggested)}
          </>
        ) : (
          <span class="desk-quiet">{say.names.notSaid}</span>
        )}
      </span>
      <span class="sales-acts">
        {meaning === null && suggested !== null && !isOpen && (
          <button
            type="button"
            class="desk-strong"
            aria-label={`${name}: ${say.names.accept}, ${told(suggested)}`}
            onClick={() => void put(suggested)}
          >
            {say.names.accept}
          </button>
        )}
        {!isOpen && (
          <button type="button" aria-label={`${begin}: ${name}`} onClick={() => setOpen(true)}>
            {begin}
          </button>
        )}
      </span>
      {isOpen && (
        <MeaningForm
          {...parts}
          name={name}
          begin={meaning ?? suggested}
          canForget={meaning !== null}
          onSave={(one) => void put(one)}
          onCancel={() => setOpen(false)}
        />
      )}
    </li>
  )
}

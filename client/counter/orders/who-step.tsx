import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { DETAIL_CHARACTERS_MAX, MARK_CHARACTERS_MAX } from '../../../shared-core/orders/order-limits.ts'
import { Key } from '../../parts/key.tsx'
import { capitalised } from '../../words/joined.ts'
import type { TakeProps } from './take-sheet.tsx'

/** For whom: the mark that is called across the room, and what stays out of the day's record. */
export function WhoStep({ say, taking, setTaking }: TakeProps) {
  const { take, said } = say
  const { details, mark, isPaid } = taking
  const set = (change: Partial<OrderDetails>) => setTaking({ ...taking, details: { ...details, ...change } })
  return (
    <div class="counter-who">
      <Typed
        title={take.mark}
        hint={take.markHint}
        most={MARK_CHARACTERS_MAX}
        value={mark}
        onTyped={(text) => setTaking({ ...taking, mark: text })}
      />
      <Typed
        title={take.name}
        most={DETAIL_CHARACTERS_MAX.name}
        value={details.name}
        onTyped={(name) => set({ name })}
      />
      <Typed
        title={take.phone}
        mode="tel"
        most={DETAIL_CHARACTERS_MAX.phone}
        value={details.phone}
        onTyped={(phone) => set({ phone })}
      />
      <Typed
        title={take.note}
        most={DETAIL_CHARACTERS_MAX.note}
        value={details.note}
        onTyped={(note) => set({ note })}
      />
      <div class="counter-paid">
        <Key
          label={capitalised(isPaid ? said.paid : said.notPaid)}
          chosen={isPaid}
          onPress={() => setTaking({ ...taking, isPaid: !isPaid })}
        />
      </div>
      <p class="counter-quiet">{take.detailsHint}</p>
    </div>
  )
}

interface TypedProps {
  readonly title: string
  readonly hint?: string
  readonly mode?: 'text' | 'tel'
  readonly most: number
  readonly value: string
  readonly onTyped: (text: string) => void
}

function Typed({ title, hint, mode = 'text', most, value, onTyped }: TypedProps) {
  return (
    <label class="counter-field">
      <span class="counter-quiet">{title}</span>
      <input
        inputMode={mode}
        value={value}
        maxLength={most}
        placeholder={hint}
        autocomplete="off"
        onInput={(event) => onTyped(event.currentTarget.value)}
      />
    </label>
  )
}

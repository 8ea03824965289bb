import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { DETAIL_CHARACTERS_MAX, MARK_CHARACTERS_MAX } from '../../../shared-core/orders/order-limits.ts'
import type { AskedDraft } from './asked-draft.ts'
import { NO_DETAILS } from './asked-draft.ts'
import { Tick } from './lines-field.tsx'
import type { OrdersParts } from './parts.ts'

interface WhoFieldsProps extends OrdersParts {
  readonly draft: Pick<AskedDraft, 'mark' | 'isPaid'>
  readonly markHint: string
  /** Null: nothing is said yet. */
  readonly details: OrderDetails | null
  /** What was said is not here yet, and is not to be typed over. */
  readonly isComing: boolean
  readonly onChange: (some: Pick<Partial<AskedDraft>, 'mark' | 'isPaid'>) => void
  readonly onDetails: (details: OrderDetails) => void
}

/** Who it is for: the mark for everybody, name, phone and note for counter and desk. */
export function WhoFields(props: WhoFieldsProps) {
  const { draft, markHint, details, isComing, say, onChange, onDetails } = props
  const text = details ?? NO_DETAILS
  const field = (one: 'name' | 'phone') => (
    <label class="desk-field">
      {say.form[one]}
      <input
        inputMode={one === 'phone' ? 'tel' : 'text'}
        autocomplete="off"
        maxLength={DETAIL_CHARACTERS_MAX[one]}
        disabled={isComing}
        value={text[one]}
        onInput={(event) => onDetails({ ...text, [one]: event.currentTarget.value })}
      />
    </label>
  )
  return (
    <fieldset class="orders-part">
      <legend>{say.form.parts.who}</legend>
      <div class="desk-form">
        <label class="desk-field">
          {say.form.mark}
          <input
            class="desk-short"
            autocomplete="off"
            maxLength={MARK_CHARACTERS_MAX}
            value={draft.mark}
            aria-describedby="orders-mark-hint"
            onInput={(event) => onChange({ mark: event.currentTarget.value })}
          />
        </label>
        {field('name')}
        {field('phone')}
        <label class="desk-field desk-grow">
          {say.form.note}
          <input
            autocomplete="off"
            maxLength={DETAIL_CHARACTERS_MAX.note}
            disabled={isComing}
            value={text.note}
            onInput={(event) => onDetails({ ...text, note: event.currentTarget.value })}
          />
        </label>
        <Tick label={say.form.paid} isOn={draft.isPaid} onChange={(isPaid) => onChange({ isPaid })} />
      </div>
      <p class="desk-quiet desk-small" id="orders-mark-hint">
        {`${markHint} ${say.form.detailsHint}`}
      </p>
    </fieldset>
  )
}

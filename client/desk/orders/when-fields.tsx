import type { OrderWay } from '../../../shared-core/orders/order.ts'
import { STOPS_MAX } from '../../../shared-core/orders/order-limits.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { AskedDraft } from './asked-draft.ts'
import { NumberField } from './number-field.tsx'
import type { OrderDraft } from './order-draft.ts'
import type { OrdersParts } from './parts.ts'

interface WhenFieldsProps extends OrdersParts {
  readonly draft: OrderDraft
  readonly onChange: (some: Partial<OrderDraft>) => void
}

const WAYS: readonly OrderWay[] = ['pickUp', 'delivery', 'here']

/** When it is due, and how it leaves. */
export function WhenFields(props: WhenFieldsProps) {
  const { draft, say, room, onChange } = props
  return (
    <fieldset class="orders-part">
      <legend>{say.form.parts.when}</legend>
      <div class="desk-form">
        <WayFields {...props} ways={WAYS} draft={draft} onChange={onChange} />
        {draft.way !== 'here' && (
          <>
            <label class="desk-field">
              {say.form.date}
              <input
                type="date"
                min={room.today}
                value={draft.date}
                onInput={(event) => onChange({ date: event.currentTarget.value })}
              />
            </label>
            <label class="desk-field">
              {say.form.time}
              <input
                type="time"
                value={draft.time}
                onInput={(event) => onChange({ time: event.currentTarget.value.slice(0, 5) })}
              />
            </label>
          </>
        )}
      </div>
      {draft.way === 'here' && <p class="desk-quiet">{say.form.dueAsPromised}</p>}
    </fieldset>
  )
}

interface WayFieldsProps extends OrdersParts {
  readonly ways: readonly OrderWay[]
  readonly draft: Pick<AskedDraft, 'way' | 'runId' | 'stop'>
  readonly onChange: (some: Pick<Partial<AskedDraft>, 'way' | 'runId' | 'stop'>) => void
}

/** Fetched or delivered; delivered by which run, at which of its stops. */
export function WayFields({ ways, draft, shop, say, onChange }: WayFieldsProps) {
  const runs = inUse(shop.runs)
  const { way, runId, stop } = draft
  return (
    <>
      <label class="desk-field">
        {say.form.way}
        <select
          value={way}
          onChange={(event) => onChange({ way: ways.find((one) => one === event.currentTarget.value) ?? 'pickUp' })}
        >
          {ways.map((one) => (
            <option key={one} value={one}>
              {say.said.way[one]}
            </option>
          ))}
        </select>
      </label>
      {way === 'delivery' && runs.length > 0 && (
        <label class="desk-field">
          {say.form.run}
          <select
            value={runId ?? ''}
            onChange={(event) =>
              onChange({ runId: runs.find(({ id }) => id === event.currentTarget.value)?.id ?? null })
            }
          >
            <option value="">{say.form.noRun}</option>
            {runs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {way === 'delivery' && runId !== null && (
        <NumberField
          label={say.form.stop}
          value={stop}
          most={STOPS_MAX}
          onChange={(value) => onChange({ stop: value })}
        />
      )}
    </>
  )
}

import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { HistoryParts } from './parts.ts'

interface ChooseProps<Range extends string> {
  readonly parts: HistoryParts
  readonly label: string
  readonly of: string
  readonly range: Range
  /** What the first choice is called: all varieties together. */
  readonly all: { readonly value: string; readonly label: string }
  readonly ranges: readonly { readonly value: Range; readonly label: string }[]
  /** Left out: doughs cannot be chosen. */
  readonly hasDoughs?: boolean
  readonly onChoose: (of: string, range: Range) => void
}

/** Of what, and of how long. */
export function Choose<Range extends string>(props: ChooseProps<Range>) {
  const { parts, label, of, range, all, ranges, hasDoughs = false, onChoose } = props
  const { say, shop } = parts
  const doughs = inUse(shop.doughs)
  const varieties = inUse(shop.varieties)
  return (
    <div class="desk-line history-choose desk-noprint">
      <label class="desk-line">
        {label}
        <select value={of} onChange={(event) => onChoose(event.currentTarget.value, range)}>
          <option value={all.value}>{all.label}</option>
          {hasDoughs && (
            <optgroup label={say.choose.doughs}>
              {doughs.map(({ id, name }) => (
                <option key={id} value={`dough:${id}`}>
                  {name}
                </option>
              ))}
            </optgroup>
          )}
          <optgroup label={say.choose.varieties}>
            {varieties.map(({ id, name }) => (
              <option key={id} value={`variety:${id}`}>
                {name}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      <label class="desk-line">
        {say.choose.range}
        <select
          value={range}
          onChange={(event) => {
            const chosen = ranges.find(({ value }) => value === event.currentTarget.value)
            if (chosen !== undefined) onChoose(of, chosen.value)
          }}
        >
          {ranges.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
    </div>
  )
}

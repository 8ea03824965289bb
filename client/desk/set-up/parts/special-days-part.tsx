import { specialDayId } from '../../../../shared-core/ids.ts'
import { SPANS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { SpecialDay } from '../../../../shared-core/shop/shop.ts'
import { SPECIAL_KINDS } from '../../../../shared-core/shop/stages.ts'
import { localDate } from '../../../live/clock-text.ts'
import { PickField } from '../fields/pick-field.tsx'
import { SPECIAL_DAYS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { spanTold } from '../span-told.ts'
import { nextSpan } from '../special-days.ts'
import { ListPart } from './list-part.tsx'
import { SpansField } from './spans-field.tsx'

const NEW: SpecialDay = { id: specialDayId('new'), name: '', order: 0, kind: 'event', spans: [], retired: false }

/** Days that sell otherwise, each with its dates of the years past and to come. */
export function SpecialDaysPart(props: SetUpProps) {
  const { live, say } = props
  const today = live.shopClock === null ? '' : localDate(live.shopClock, live.nowMs)
  const line = ({ kind, spans }: SpecialDay) => {
    const next = nextSpan(spans, today)
    const told = next === null ? null : spanTold(next, { ...props, shop: props.draft })
    return `${say.demand.kind[kind].name} · ${say.demand.dates.line(told, spans.length)}`
  }
  return (
    <ListPart kind={SPECIAL_DAYS} parts={props} like={NEW} line={line}>
      {(day, set) => (
        <>
          <PickField
            label={say.fields.specialDay.kind}
            options={SPECIAL_KINDS.map((value) => ({ value, label: say.demand.kind[value].name }))}
            value={day.kind}
            onChange={(kind) => set({ ...day, kind })}
          />
          <p class="setup-hint">{say.demand.kind[day.kind].hint}</p>
          <SpansField
            parts={props}
            spans={day.spans}
            isFull={day.spans.length >= SPANS_MAX}
            onChange={(spans) => set({ ...day, spans })}
          />
        </>
      )}
    </ListPart>
  )
}

import { specialDayId } from '../../../../shared-core/ids.ts'
import type { HolidaysOf } from '../../../../shared-core/live/holidays.ts'
import { SPANS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { SpecialDay } from '../../../../shared-core/shop/shop.ts'
import { SPECIAL_KINDS } from '../../../../shared-core/shop/stages.ts'
import { localDate } from '../../../live/clock-text.ts'
import { useGot } from '../../use-got.ts'
import { PickField } from '../fields/pick-field.tsx'
import { holidayAfter, holidaysAddress } from '../holidays.ts'
import { SPECIAL_DAYS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { spanTold } from '../span-told.ts'
import { nextSpan } from '../special-days.ts'
import { HolidaysPart } from './holidays-part.tsx'
import { ListPart } from './list-part.tsx'
import { RegionField } from './region-field.tsx'
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
  const { region } = props.draft.demand
  const holidays = useGot<HolidaysOf>(region === null || today === '' ? null : holidaysAddress(region, today))
  const known = holidays.kind === 'got' ? holidays.value.holidays : []
  return (
    <>
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
              next={holidayAfter(day, known, today)}
              isFull={day.spans.length >= SPANS_MAX}
              onChange={(spans) => set({ ...day, spans })}
            />
          </>
        )}
      </ListPart>
      <h3>{say.fields.demand.region}</h3>
      <RegionField {...props} />
      <HolidaysPart parts={props} holidays={holidays} today={today} />
    </>
  )
}

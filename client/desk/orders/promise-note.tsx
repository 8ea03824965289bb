import { hoursOn } from '../../../shared-core/shop/hours.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { localDate, minuteOfDay } from '../../live/clock-text.ts'
import { timeText } from './asked-draft.ts'
import type { OrderDraft } from './order-draft.ts'
import { dueAt } from './order-draft.ts'
import { whenOf } from './order-times.ts'
import type { OrdersParts } from './parts.ts'
import type { PromiseNow } from './use-promise.ts'

interface PromiseNoteProps extends OrdersParts {
  readonly draft: OrderDraft
  readonly promise: PromiseNow | null
  readonly onChange: (some: Partial<OrderDraft>) => void
}

const MINUTE_MS = 60_000

/** Whether the time that is asked for holds; if not, why, and what holds. */
export function PromiseNote(props: PromiseNoteProps) {
  const { draft, promise, shop, state, live, say, room } = props
  const due = dueAt(draft, room)
  const isPast = due !== null && due < live.nowMs
  const isClosed = draft.way !== 'here' && draft.date !== '' && hoursOn(shop, draft.date) === null
  const markOf = (id: string) => [...state.orders.values()].find((order) => order.id === id)?.mark ?? '?'
  return (
    <div role="status">
      {isPast && <p class="desk-trouble">{say.form.isPast}</p>}
      {isClosed && <p class="desk-trouble">{say.form.shopClosed}</p>}
      {promise !== null && (
        <>
          <p class={promise.holds ? 'desk-even' : 'desk-trouble'}>
            {promise.holds ? (due === null && draft.way !== 'here' ? '' : say.form.holds) : say.form.holdsNot}
          </p>
          <p>
            {`${promise.atMs === null ? say.promise.notToday : say.promise.from(promise.atMs)} ${say.promise.why(promise.why, markOf)}`}
          </p>
          {promise.split !== null && <p>{say.promise.split(promise.split)}</p>}
          <Offers {...props} promise={promise} due={due} />
        </>
      )}
    </div>
  )
}

/** What holds, in one touch. */
function Offers(props: PromiseNoteProps & { readonly promise: PromiseNow; readonly due: EpochMs | null }) {
  const { draft, promise, due, say, room, onChange } = props
  if (draft.way === 'here' || (promise.holds && due !== null)) return null
  const to = (atMs: EpochMs) => {
    // Up to the whole minute: a field of times has no seconds.
    const wholeMs = epochMs(Math.ceil(atMs / MINUTE_MS) * MINUTE_MS)
    onChange({ date: localDate(room.clock, wholeMs), time: timeText(minuteOfDay(room.clock, wholeMs)) })
  }
  const { atMs, nextDayAtMs } = promise
  return (
    <>
      {atMs === null && (
        <p>{nextDayAtMs === null ? say.promise.noNextDay : say.promise.nextDay(whenOf(nextDayAtMs, props))}</p>
      )}
      <div class="desk-line">
        {atMs !== null && (
          <button type="button" onClick={() => to(atMs)}>
            {say.form.useEarliest}
          </button>
        )}
        {atMs === null && nextDayAtMs !== null && (
          <button type="button" onClick={() => to(nextDayAtMs)}>
            {say.form.useNextDay}
          </button>
        )}
      </div>
    </>
  )
}

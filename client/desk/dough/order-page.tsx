import { useMemo, useState } from 'preact/hooks'
import { costDifference } from '../../../shared-core/dough/order.ts'
import { must } from '../../../shared-core/support.ts'
import { Panel } from '../panel.tsx'
import type { Begin, OrderDay } from './order-view.ts'
import { costOf, isSaved, moved, orderAct, orderDays } from './order-view.ts'
import { isOfEarlierFormula } from './plan-view.ts'
import type { RoomParts } from './room.ts'
import { Timeline } from './timeline.tsx'

/** The order in which the mixer makes its mixes, day by day: the best one, or one's own and what that costs. */
export function OrderPage(parts: RoomParts) {
  const { state, shop, room, say } = parts
  const days = useMemo(() => orderDays(state, shop, room.noonOf, room.minuteMs), [state, shop, room])
  const [drafts, setDrafts] = useState<ReadonlyMap<string, readonly string[]>>(new Map())
  if (days.length === 0) return <p>{say.order.none}</p>
  const draft = (date: string, order: readonly string[] | null) => {
    const next = new Map(drafts)
    if (order === null) next.delete(date)
    else next.set(date, order)
    setDrafts(next)
  }
  return (
    <>
      <p class="desk-quiet">{say.order.lead}</p>
      {days.map((day) => (
        <MixingDayPanel
          key={day.date}
          {...parts}
          days={days}
          day={day}
          draft={drafts.get(day.date) ?? null}
          onDraft={(order) => draft(day.date, order)}
        />
      ))}
    </>
  )
}

interface DayProps extends RoomParts {
  readonly days: readonly OrderDay[]
  readonly day: OrderDay
  /** As somebody moved it; mixes that came since come last. */
  readonly draft: readonly string[] | null
  readonly onDraft: (order: readonly string[] | null) => void
}

const MINUTE_MS = 60_000
const BEGINS: readonly Begin[] = ['soonest', 'latest']

function MixingDayPanel(props: DayProps) {
  const { store, words, say, days, day, draft, onDraft } = props
  const cost = costOf(day, draft ?? day.saved)
  const more = costDifference(day.best, cost)
  const isLater = Math.abs(more.latenessMs) >= MINUTE_MS
  const costsMore = more.contacts !== 0 || more.washes !== 0 || isLater
  const isStanding = isSaved(day, cost)
  const save = (begin: Begin) => {
    if (store.send(orderAct(days, { date: day.date, cost, begin })) !== null) onDraft(null)
  }
  const order = cost.places.map(({ id }) => id)
  const isBest = order.every((id, place) => day.best.order[place] === id)
  return (
    <Panel part={`order-${day.date}`} title={say.order.title(words.times.date(day.date))} isWide>
      <div class="desk-line">
        <strong>{say.order.cost(cost.contacts, cost.washes, cost.latenessMs)}</strong>
        <span role="status">
          {costsMore
            ? say.order.more(more.contacts, more.washes, more.latenessMs)
            : isBest
              ? say.order.isBest
              : say.order.isBestByHand}
        </span>
        {isBest && <span class="desk-quiet">{say.order[day.best.how]}</span>}
      </div>
      {day.saved.some((id) => isOfEarlierFormula(props.shop, must(day.mixes, id))) && (
        <p class="desk-even">! {say.order.earlierFormula}</p>
      )}
      <Timeline {...props} cost={cost} onMove={(id, to) => onDraft(moved(order, id, to))} />
      <div class="desk-line">
        {costsMore && (
          <button type="button" class="desk-strong" onClick={() => onDraft(day.best.order)}>
            {say.order.takeBest}
          </button>
        )}
        {BEGINS.map((begin) => (
          <button
            key={begin}
            type="button"
            class={costsMore || begin === 'latest' ? '' : 'desk-strong'}
            onClick={() => save(begin)}
          >
            {begin === 'soonest' ? say.order.save : say.order.saveLatest}
          </button>
        ))}
        {draft !== null && (
          <button type="button" onClick={() => onDraft(null)}>
            {say.order.asItWas}
          </button>
        )}
        <span class="desk-quiet" role="status">
          {isStanding ? say.order.saved : draft === null ? say.order.noTimes : say.order.notSaved}
        </span>
      </div>
    </Panel>
  )
}

import { useMemo, useState } from 'preact/hooks'
import { isDate } from '../../../shared-core/day/label.ts'
import type { CalendarDay, Decision } from '../../../shared-core/dough/calendar.ts'
import { doughCalendar } from '../../../shared-core/dough/calendar.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { CalendarTable } from './calendar-table.tsx'
import { withinOf } from './pages.ts'
import { PreparationsPanel } from './preparations-panel.tsx'
import type { RoomParts } from './room.ts'
import { clockOf, dayOf } from './room-times.ts'
import { ShortPanel } from './short-panel.tsx'

/** Shown ahead: what is decided up to three days before, and the weekend after the next. */
const DAYS = 14

/** The dough room's calendar, what must be decided next, what must be prepared, what will be short. */
export function DaysPage(parts: RoomParts) {
  const { state, shop, room, say } = parts
  const days = useMemo(() => doughCalendar(state, shop, room.today, DAYS, room.noonOf), [state, shop, room])
  return (
    <div class="desk-parts">
      <Panel part="decide" title={say.days.next}>
        <NextDecisions {...parts} days={days} />
      </Panel>
      <ShortPanel {...parts} />
      <Panel part="calendar" title={say.days.title} isWide>
        <p class="desk-quiet">{say.days.hint}</p>
        <CalendarTable {...parts} days={days} />
        <AnyDay {...parts} />
      </Panel>
      <PreparationsPanel {...parts} />
    </div>
  )
}

/** As many as fit a glance. */
const NEXT_MAX = 4

function NextDecisions(parts: RoomParts & { readonly days: readonly CalendarDay[] }) {
  const { live, words, say, days, shop } = parts
  const open = days.flatMap(({ decisions }) => decisions).filter(({ isDecided }) => !isDecided)
  if (open.length === 0) return <p>{say.days.nothingToDecide}</p>
  const text = ({ formulaId, bakeDate, atMs }: Decision) => {
    const formula = shop.formulas.get(formulaId)?.name ?? say.unknown
    return say.days.decideNext(formula, clockOf(atMs, parts), dayOf(atMs, parts), words.times.date(bakeDate))
  }
  return (
    <ul class="dough-list">
      {open.slice(0, NEXT_MAX).map((decision) => (
        <li key={`${decision.formulaId} ${decision.bakeDate}`}>
          <a href={addressOf('dough', withinOf('day', decision.bakeDate))}>{text(decision)}</a>
          {decision.atMs < live.nowMs && <strong class="desk-trouble">{say.days.late}</strong>}
        </li>
      ))}
    </ul>
  )
}

function AnyDay({ say, room }: RoomParts) {
  const [date, setDate] = useState('')
  const isLater = isDate(date) && date >= room.today
  return (
    <form
      class="desk-line"
      onSubmit={(event) => {
        event.preventDefault()
        if (isLater) window.location.hash = addressOf('dough', withinOf('day', date))
      }}
    >
      <label class="desk-line">
        {say.days.goTo}
        <input type="date" min={room.today} value={date} onInput={(event) => setDate(event.currentTarget.value)} />
      </label>
      <button type="submit" disabled={!isLater}>
        {say.days.go}
      </button>
    </form>
  )
}

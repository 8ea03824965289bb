import type { CalendarDay, Decision } from '../../../shared-core/dough/calendar.ts'
import { addressOf } from '../place.ts'
import { Sideways } from '../sideways.tsx'
import { withinOf } from './pages.ts'
import type { RoomParts } from './room.ts'
import { clockOf } from './room-times.ts'

interface CalendarProps extends RoomParts {
  readonly days: readonly CalendarDay[]
}

/** One row a day: what it wants, what stands for it, and what that day itself has to do. */
export function CalendarTable(props: CalendarProps) {
  const { say, days } = props
  const { columns } = say.days
  return (
    <Sideways name={say.days.title}>
      <table class="dough-calendar">
        <thead>
          <tr>
            <th>{columns.day}</th>
            <th>{columns.wanted}</th>
            <th>{columns.mixes}</th>
            <th>{columns.mixing}</th>
            <th>{columns.decide}</th>
            <th>{columns.cooler}</th>
          </tr>
        </thead>
        <tbody>
          {days.map((day) => (
            <Day key={day.date} {...props} day={day} />
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

function Day(props: CalendarProps & { readonly day: CalendarDay }) {
  const { words, say, room, day } = props
  const { date, isClosed, wanted, ordered, planned, begun, formulas, mixesToday, decisions, night } = day
  const asked = formulas.reduce((sum, { mixes }) => sum + mixes, 0)
  const stands = say.days.stands(planned, begun)
  return (
    <tr>
      <th scope="row">
        <a class="dough-day-link" href={addressOf('dough', withinOf('day', date))}>
          {words.times.date(date)}
        </a>
        {date === room.today && <span class="desk-quiet"> {say.today}</span>}
        {isClosed && <span class="dough-closed"> {say.days.closed}</span>}
      </th>
      <td>{wanted + ordered === 0 ? '' : say.days.wanted(wanted + ordered, ordered)}</td>
      <td>
        {stands}
        {asked > 0 && asked !== planned && (
          <span class="dough-asks">
            {stands !== '' && '; '}
            {say.days.asks(asked)}
          </span>
        )}
      </td>
      <td>{say.days.mixing(mixesToday)}</td>
      <td>
        {decisions.map((decision) => (
          <DecisionLine key={`${decision.formulaId} ${decision.bakeDate}`} {...props} decision={decision} />
        ))}
      </td>
      <td>
        {(night.trays > 0 || night.over > 0) && say.days.trays(night.trays, night.space)}
        {night.over > 0 && <strong class="desk-trouble"> ! {say.days.tooMany(night.over)}</strong>}
      </td>
    </tr>
  )
}

function DecisionLine({ decision, ...parts }: CalendarProps & { readonly decision: Decision }) {
  const { live, shop, words, say } = parts
  const { formulaId, bakeDate, atMs, isDecided } = decision
  const text = say.days.decide(
    shop.formulas.get(formulaId)?.name ?? say.unknown,
    clockOf(atMs, parts),
    words.times.date(bakeDate),
  )
  const isLate = !isDecided && atMs < live.nowMs
  return (
    <div class={isDecided ? 'desk-quiet' : undefined}>
      {text}
      {isDecided && ` ✓ ${say.days.decided}`}
      {isLate && <strong class="desk-trouble"> ! {say.days.late}</strong>}
    </div>
  )
}

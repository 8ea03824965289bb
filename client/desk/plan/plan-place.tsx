import './plan.css'
import './picture.css'
import { useMemo } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import { closesAtMinute, hoursOn } from '../../../shared-core/shop/hours.ts'
import { instantOfMinute } from '../../live/clock-text.ts'
import { bakePlanWords } from '../../words/desk-plan.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import type { Room } from '../dough/room.ts'
import { useRoom } from '../dough/room.ts'
import { addressOf } from '../place.ts'
import { DayPage } from './day-page.tsx'
import type { PlanParts } from './parts.ts'
import { nextDay, planWhere, withinOf } from './plan-where.ts'
import { WhatIfPage } from './what-if-page.tsx'

/** Dough stands ready for so many days ahead at most; further ones are a matter of how much, not of when. */
const DAYS_AHEAD = 2

/** Which loads when: today's plan as it is now, and the next days' the evening before; moved, tried, and kept. */
export function PlanPlace({ within, ...parts }: PlaceParts) {
  const { live, shop, words } = parts
  const say = useMemo(() => bakePlanWords(words), [words])
  const room = useRoom(live.shopClock, live.nowMs, shop)
  if (room === null) return <p class="desk-quiet">{say.waiting}</p>
  const { date: wanted, page } = planWhere(within)
  const date = wanted ?? dayToPlan(parts, room)
  const of: PlanParts = { ...parts, say, room, date }
  const dates = Array.from({ length: 1 + DAYS_AHEAD }, (_, n) => dateAfter(room.today, n))
  return (
    <>
      <nav class="desk-pages desk-noprint" aria-label={say.datesName}>
        {[...new Set([...dates, date])].map((one) => (
          <a
            key={one}
            href={addressOf('plan', withinOf({ date: one, page: 'day' }))}
            aria-current={one === date && page === 'day' ? 'page' : undefined}
          >
            {one === room.today ? `${words.times.date(one)}, ${say.today}` : words.times.date(one)}
          </a>
        ))}
        <a
          href={addressOf('plan', withinOf({ date, page: 'what-if' }))}
          aria-current={page === 'what-if' ? 'page' : undefined}
        >
          {say.whatIfPage}
        </a>
      </nav>
      {page === 'what-if' ? <WhatIfPage key={date} {...of} /> : <DayPage key={date} {...of} />}
    </>
  )
}

/** The day that the board opens with: in the evening it is tomorrow's. */
function dayToPlan({ state, shop, live }: Omit<PlaceParts, 'within'>, { today, clock, noonOf }: Room): string {
  const hours = hoursOn(shop, today)
  const closeMs = hours === null ? 0 : instantOfMinute(clock, closesAtMinute(hours), noonOf(today))
  const isOver = state.lastDay?.closedOn === today || live.nowMs >= closeMs
  return nextDay({ today, tomorrow: dateAfter(today, 1), openLabel: state.day?.label ?? null, isOver })
}

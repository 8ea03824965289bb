import { useMemo } from 'preact/hooks'
import { addressOf } from '../place.ts'
import { dateAfter } from './dates.ts'
import { withinOf } from './pages.ts'
import type { RoomParts } from './room.ts'
import { WantedPanel } from './wanted-panel.tsx'
import type { Typed } from './wanted-view.ts'
import { wantedGroups } from './wanted-view.ts'

export interface DayProps extends RoomParts {
  readonly date: string
  readonly typed: Typed
  readonly onTyped: (typed: Typed) => void
}

/** One day of boiling: what is wanted, and what it comes to. */
export function DayPage(props: DayProps) {
  const { state, shop, date, words } = props
  const wanted = state.wanted.get(date)
  const groups = useMemo(() => wantedGroups(shop, wanted), [shop, wanted])
  return (
    <>
      <p class="desk-line">
        {[-1, 1].map((step) => (
          <a key={step} class="desk-button" href={addressOf('dough', withinOf('day', dateAfter(date, step)))}>
            {step < 0 ? '← ' : ''}
            {words.times.date(dateAfter(date, step))}
            {step > 0 ? ' →' : ''}
          </a>
        ))}
      </p>
      <div class="desk-parts dough-day">
        <WantedPanel {...props} groups={groups} />
      </div>
    </>
  )
}

import { useMemo } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import { addressOf } from '../place.ts'
import { withinOf } from './pages.ts'
import { PlanPanel } from './plan-panel.tsx'
import type { RoomParts } from './room.ts'
import { WantedPanel } from './wanted-panel.tsx'
import type { Typed } from './wanted-view.ts'
import { changesIn, linesToSave, wantedGroups } from './wanted-view.ts'

export interface DayProps extends RoomParts {
  readonly date: string
  readonly typed: Typed
  readonly onTyped: (typed: Typed) => void
}

/** One day of boiling: what is wanted, and what it comes to. */
export function DayPage(props: DayProps) {
  const { state, shop, date, words, typed, onTyped } = props
  const wanted = state.wanted.get(date)
  const groups = useMemo(() => wantedGroups(shop, wanted), [shop, wanted])
  // One list for the same texts: what the plan is reckoned from changes only when a number does.
  const lines = useMemo(() => linesToSave(groups, wanted, typed), [groups, wanted, typed])
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
        <PlanPanel
          {...props}
          lines={lines}
          isTyped={changesIn(groups, wanted, typed) > 0}
          onSaved={() => onTyped(new Map())}
        />
      </div>
    </>
  )
}

import type { PlannedSetUp } from '../../../../shared-core/day/state.ts'
import { applySetUp } from '../../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../../shared-core/shop/set-up-diff.ts'
import { momentOf } from '../../moment.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { toldChanges } from '../told-changes.ts'
import { ChangeList } from './change-list.tsx'

/** What was saved for later, soonest first, each with a key that drops it. */
export function PlannedChanges(props: SetUpProps) {
  const { state, say } = props
  const planned = [...state.setUps.values()].sort(
    (one, other) => one.fromMs - other.fromMs || (one.id < other.id ? -1 : 1),
  )
  return (
    <>
      <h3>{say.versions.plannedTitle}</h3>
      {planned.length === 0 && <p class="setup-hint">{say.versions.plannedNone}</p>}
      {planned.map((setUp) => (
        <Planned key={setUp.id} setUp={setUp} parts={props} />
      ))}
    </>
  )
}

function Planned({ setUp, parts }: { readonly setUp: PlannedSetUp; readonly parts: SetUpProps }) {
  const { store, live, running, words, say } = parts
  const then = applySetUp(running, setUp.changes)
  const { day, clock } = momentOf(setUp.fromMs, { ...live, shop: running, words })
  const today = day === '' ? words.desk.trays.today : day
  return (
    <section class="setup-version">
      <h4>{say.versions.from(today, clock)}</h4>
      <ChangeList told={toldChanges(running, setUpChanges(running, then), { words, say, shop: then })} />
      <button type="button" onClick={() => store.send({ type: 'dropSetUp', setUpId: setUp.id })}>
        {say.versions.drop}
      </button>
    </section>
  )
}

import type { VarietyId } from '../../../shared-core/ids.ts'
import type { ClosingParts } from './closing.tsx'
import type { CrewRead } from './crew-view.ts'
import type { Fates } from './fates-view.ts'
import { fateActs, fateRows, totalFates } from './fates-view.ts'
import { closeWarnings } from './last-view.ts'

interface LastStepProps extends ClosingParts {
  readonly toCount: readonly VarietyId[]
  readonly crew: CrewRead
  /** Said above and not booked yet: the close books it, so that what is on the screen is what becomes of it. */
  readonly fates: Fates
}

/** What the close will do, what is still open, and the key. */
export function LastStep({ store, words, close, say, toCount, crew, fates }: LastStepProps) {
  const warnings = closeWarnings(close, toCount, { say: say.close, names: words.names })
  const rows = fateRows(close.left)
  const { given, wasted, stays } = totalFates(rows, fates)
  const send = () => {
    for (const act of fateActs(rows, fates)) if (store.send(act) === null) return
    const crewMinutes = crew.kind === 'minutes' ? { crewMinutes: crew.minutes } : {}
    store.send({ type: 'closeDay', label: close.label, ...crewMinutes })
  }
  return (
    <>
      <ul class="desk-warnings">
        {given + wasted > 0 && <li>{say.fates.book(given, wasted)}</li>}
        <li>{say.close.stays(stays)}</li>
        {warnings.length === 0 ? <li>✓ {say.close.allDone}</li> : warnings.map((text) => <li key={text}>{text}</li>)}
      </ul>
      <div class="desk-line">
        <button type="button" class="desk-strong desk-large" disabled={crew.kind === 'wrong'} onClick={send}>
          {`${say.close.closeIt}: ${words.times.date(close.label)}`}
        </button>
      </div>
    </>
  )
}

import type { VarietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { ClosingParts } from './closing.tsx'
import type { CrewRead } from './crew-view.ts'
import { closeWarnings } from './last-view.ts'

interface LastStepProps extends ClosingParts {
  readonly toCount: readonly VarietyId[]
  readonly crew: CrewRead
}

/** What the close will do, what is still open, and the key. */
export function LastStep({ store, words, close, say, toCount, crew }: LastStepProps) {
  const warnings = closeWarnings(close, toCount, { say: say.close, names: words.names })
  const stays = piecesOf(close.left.map(({ forSale, cooling, dayOld }) => ({ pieces: forSale + cooling + dayOld })))
  const send = () => {
    const crewMinutes = crew.kind === 'minutes' ? { crewMinutes: crew.minutes } : {}
    store.send({ type: 'closeDay', label: close.label, ...crewMinutes })
  }
  return (
    <>
      <ul class="desk-warnings">
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

import type { HistoryWords } from '../../words/desk-history.ts'
import type { Got } from '../get-json.ts'
import { addressOf } from '../place.ts'

interface UnansweredProps {
  readonly kind: Exclude<Got<unknown>['kind'], 'got'>
  readonly say: HistoryWords
}

/** Why there is nothing to show yet. */
export function Unanswered({ kind, say }: UnansweredProps) {
  const texts = { waiting: say.waiting, unknown: say.unknown, 'not-yet': say.notReady, 'no-contact': say.noContact }
  return (
    <p class={kind === 'unknown' ? 'desk-trouble' : 'desk-quiet'} role="status">
      {texts[kind]}
    </p>
  )
}

/** A new shop: what to do. */
export function NoSales({ say }: Pick<UnansweredProps, 'say'>) {
  return (
    <div class="desk-panel">
      <h2>{say.none.title}</h2>
      <p>{say.none.toDo}</p>
      <p>
        <a href={addressOf('salesIn')}>{say.none.salesIn}</a>
      </p>
    </div>
  )
}

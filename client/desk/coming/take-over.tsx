import { withinOf } from '../dough/pages.ts'
import { addressOf } from '../place.ts'
import { advisedTexts, changesWanted, differing, linesToTake } from './coming-view.ts'
import type { ComingParts } from './parts.ts'

/** Makes of the numbers what is wanted for the day, with the advice beside it, and goes on to the mixes. */
export function TakeOver({ store, state, day, say, words, date, yours, onYours }: ComingParts) {
  const wanted = state.wanted.get(date)
  const lines = linesToTake(day, wanted, yours)
  const isNews = lines !== null && changesWanted(lines, wanted)
  const others = differing(day, wanted, yours)
  const take = () => {
    if (lines === null || (isNews && store.send({ type: 'setWanted', date, lines }) === null)) return false
    onYours(new Map())
    return true
  }
  const toMixes = addressOf('dough', withinOf('day', date))
  return (
    <>
      <div class="desk-line">
        <button
          type="button"
          class="desk-strong"
          disabled={lines === null}
          onClick={() => {
            if (take()) window.location.hash = toMixes
          }}
        >
          {isNews ? say.takeAndPlan : say.toMixes}
        </button>
        {isNews && (
          <button type="button" onClick={take}>
            {say.take(words.times.date(date))}
          </button>
        )}
        {others > 0 && (
          <button type="button" onClick={() => onYours(advisedTexts(day))}>
            {say.asAdvised}
          </button>
        )}
      </div>
      <p role="status" class={lines === null ? 'desk-trouble' : 'desk-quiet'}>
        {lines === null ? say.unreadable : others > 0 ? say.differs(others) : ''}{' '}
        {lines !== null && (!isNews ? say.stands : wanted === undefined ? say.notTaken : '')}
      </p>
    </>
  )
}

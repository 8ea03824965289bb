import { changedSince } from '../../shared-core/day/take-back.ts'
import { Key } from '../parts/key.tsx'
import type { Found } from './after-count.ts'
import { foundText } from './after-count.ts'
import type { FootProps } from './foot.tsx'
import type { NoticeView } from './foot-view.ts'

/** What the last count found, to be known or taken back. */
export function FoundKeys({ store, state, words, board, found }: FootProps & { readonly found: Found }) {
  const trace = state.traces.find((one) => one.commandId === found.commandId)
  const canTakeBack = trace !== undefined && changedSince(state, trace) === null
  return (
    <div class="counter-keys counter-question" role="status">
      <div class="counter-question-text">
        <span class="counter-found">{foundText(found, words)}</span>
      </div>
      {canTakeBack && (
        <Key
          label={words.counter.takeBack}
          onPress={() => {
            store.send({ type: 'takeBack', commandId: found.commandId })
            board.setFound(null)
          }}
        />
      )}
      <Key label={words.jobs.found.good} tone="strong" onPress={() => board.setFound(null)} />
    </div>
  )
}

/** Something to answer or to know, in place of the keys. */
export function Question({ store, words, notice }: FootProps & { readonly notice: NoticeView }) {
  return (
    <div class="counter-keys counter-question" role="alert">
      <div class="counter-question-text">
        <strong>{notice.title}</strong>
        {notice.text !== '' && <span>{notice.text}</span>}
      </div>
      {notice.answer === null ? (
        <Key label={words.counter.putAway} onPress={() => store.dismiss(notice.id)} />
      ) : (
        <>
          <Key label={notice.answer.yes} tone="act" onPress={() => store.confirm(notice.id)} />
          <Key label={notice.answer.no} tone="strong" onPress={() => store.dismiss(notice.id)} />
        </>
      )}
    </div>
  )
}

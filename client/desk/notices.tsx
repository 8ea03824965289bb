import type { DeskParts } from './desk-screen.tsx'

/** Answers to what was done at this desk, and questions about it. */
export function Notices({ store, live, words }: DeskParts) {
  return (
    <div class="desk-notices" role="alert">
      {live.notices.map((notice) => {
        const { title, text } = words.live.notice(notice)
        const [ask] = notice.kind === 'ask' ? notice.asks : []
        const question = ask === undefined ? null : words.answers.ask(ask)
        return (
          <div key={notice.id} class="desk-notice">
            <p>
              <strong>{question === null ? title : question.question}</strong> {question === null && text}
            </p>
            {question !== null && (
              <button type="button" class="desk-strong" onClick={() => store.confirm(notice.id)}>
                {question.yes}
              </button>
            )}
            <button type="button" onClick={() => store.dismiss(notice.id)}>
              {question?.no ?? words.desk.putAway}
            </button>
          </div>
        )
      })}
    </div>
  )
}

import type { DeskWords } from '../words/desk.ts'
import type { Outcome } from './post.ts'

export interface OutcomeProps {
  readonly outcome: Outcome
  readonly words: DeskWords
  /** What is said when it was taken. */
  readonly taken: string
  /** Where a mistake is, in words. */
  readonly place: (path: string) => string
  readonly onConfirm: (codes: readonly string[]) => void
  readonly onPutAway: () => void
}

/** What became of a file or list: taken, questions, or every mistake with its place and what would be right. */
export function OutcomeText({ outcome, words, taken, place, onConfirm, onPutAway }: OutcomeProps) {
  const { mistakes } = words.desk
  switch (outcome.kind) {
    case 'taken':
      return (
        <p class="desk-even" role="status">
          ✓ {taken}
        </p>
      )
    case 'ask':
      return (
        <div class="desk-notice" role="alert">
          <div>
            {outcome.asks.map((ask) => (
              <p key={`${ask.code} ${JSON.stringify(ask.params)}`}>{words.answers.ask(ask).question}</p>
            ))}
          </div>
          <button type="button" class="desk-strong" onClick={() => onConfirm(outcome.asks.map((ask) => ask.code))}>
            {outcome.asks.slice(0, 1).map((ask) => words.answers.ask(ask).yes)}
          </button>
          <button type="button" onClick={onPutAway}>
            {outcome.asks.slice(0, 1).map((ask) => words.answers.ask(ask).no)}
          </button>
        </div>
      )
    case 'mistakes':
      return (
        <div class="desk-mistakes" role="alert">
          <p>
            <strong>{mistakes.title(outcome.problems.length)}</strong>
          </p>
          <ol>
            {outcome.problems.map(({ path, wrong, right }) => (
              <li key={`${path} ${wrong}`}>
                <code>{place(path)}</code> {wrong}
                <span class="desk-right">
                  {mistakes.right}: {right}
                </span>
              </li>
            ))}
          </ol>
        </div>
      )
    case 'refused':
      return (
        <p class="desk-trouble" role="alert">
          {words.answers.refusal(outcome.refusal)}
        </p>
      )
    case 'failed':
    case 'no-contact':
      return (
        <p class="desk-trouble" role="alert">
          {outcome.kind === 'failed' && outcome.detail !== '' ? outcome.detail : mistakes.noContact}
        </p>
      )
  }
}

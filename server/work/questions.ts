import type { AdviseQuestions } from './advise-questions.ts'
import type { ComingQuestions } from './coming-questions.ts'
import type { FeedQuestions } from './feed-questions.ts'
import type { HistoryQuestions } from './history-questions.ts'
import type { HolidayQuestions } from './holiday-questions.ts'
import type { OvenQuestions } from './oven-questions.ts'
import type { SalesQuestions } from './sales-questions.ts'

/**
 * What the server asks the thread for advice and sales history: from a kind of question to what is asked and answered.
 * Both cross between threads by structured clone: plain values, arrays, maps, no classes. A part that adds kinds lists
 * them in a file of its own, extends this, and adds its handlers in `handlers.ts`. Bad input is answered with a value
 * that says so; a promise is rejected only for a fault of ours or a thread that ended.
 */
export interface Questions
  extends FeedQuestions,
    AdviseQuestions,
    OvenQuestions,
    ComingQuestions,
    HistoryQuestions,
    HolidayQuestions,
    SalesQuestions {}

/** One kind: what is asked, and what comes back. */
export interface Question<Asked, Answer> {
  readonly asked: Asked
  readonly answer: Answer
}

export type Kind = keyof Questions
export type Asked<K extends Kind> = Questions[K]['asked']
export type Answered<K extends Kind> = Questions[K]['answer']

/**
 * Answers to some kinds. One that takes longer than some ten milliseconds goes in chunks and awaits `work.breathe()`
 * between them, so that what the counter waits for is answered meanwhile.
 */
export type Handlers<Some extends { readonly [K in keyof Some]: Question<unknown, unknown> }> = {
  readonly [K in keyof Some]: (asked: Some[K]['asked']) => Some[K]['answer'] | Promise<Some[K]['answer']>
}

import type { LearntTime } from '../../shared-core/line/learnt-times.ts'
import type { LineDay } from '../../shared-core/line/line-tally.ts'
import type { OvenHeat } from '../../shared-core/live/oven-heat.ts'
import type { HeatAsked } from '../../shared-core/oven/oven-heat.ts'
import type { Question } from './questions.ts'

export interface OvenQuestions {
  /** What readings say of the oven; null while the thread knows of no set-up. `line` of the open day; null: none is. */
  readonly ovenHeat: Question<
    Pick<HeatAsked, 'nowMs' | 'changeover' | 'readyAtMs'> & { readonly line: LineDay | null },
    OvenHeat | null
  >
  /** The line's times as taps of the newest days have them; null as above. */
  readonly learntTimes: Question<{ readonly line: LineDay | null }, LearntTimesTold | null>
}

export interface LearntTimesTold {
  /** Days that were looked at, today among them. */
  readonly days: number
  readonly times: readonly LearntTime[]
}

import type { Today } from '../../shared-core/demand/today.ts'
import type { Outlook } from '../../shared-core/live/outlook.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Question } from './questions.ts'

export interface OutlookQuestions {
  /** What the rest of today will probably bring; null while the shop has no set-up. */
  readonly outlook: Question<{ readonly today: Today; readonly noonMs: EpochMs }, Outlook | null>
}

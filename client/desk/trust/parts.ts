import type { TrustWords } from '../../words/desk-trust.ts'
import type { HistoryParts } from '../history/parts.ts'

/** What every part of the page of trust is made with. */
export interface TrustParts extends HistoryParts {
  readonly told: TrustWords
}

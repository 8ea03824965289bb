import type { State } from '../../shared-core/day/state.ts'
import type { Outlook } from '../../shared-core/live/outlook.ts'
import { freshOutlook } from '../../shared-core/live/outlook.ts'
import type { LiveState } from '../live/shop-store.ts'

/** The outlook as far as it may be shown: of the day that is open, and not of ten minutes ago. */
export function outlookNow({ outlook, nowMs }: Pick<LiveState, 'outlook' | 'nowMs'>, { day }: State): Outlook | null {
  const fresh = freshOutlook(outlook, nowMs)
  return fresh !== null && fresh.date === day?.label ? fresh : null
}

import type { HistoryWords } from '../../words/desk-history.ts'
import type { DeskParts } from '../desk-screen.tsx'

/** What every part of the pages of past sales is made with. */
export interface HistoryParts extends DeskParts {
  readonly say: HistoryWords
}

/** Past sales change when a day is closed or reopened, and mean something else when a special day gets a name. */
export function salesVersion({ state, shop }: Pick<DeskParts, 'state' | 'shop'>): string {
  return JSON.stringify([state.day?.openedAtMs, state.lastDay?.closedAtMs, [...shop.specialDays.values()]])
}

import type { ComingDay } from '../../../shared-core/plan/coming-day.ts'
import type { ComingWords } from '../../words/desk-coming.ts'
import type { DeskParts } from '../desk-screen.tsx'
import type { Room } from '../dough/room.ts'
import type { Yours } from './coming-view.ts'

/** What every part of a day to come is made with. */
export interface ComingParts extends DeskParts {
  readonly say: ComingWords
  readonly room: Room
  readonly date: string
  readonly day: ComingDay
  readonly yours: Yours
  readonly onYours: (yours: Yours) => void
}

import { adviseHandlers } from './advise-handlers.ts'
import { comingHandlers } from './coming-handlers.ts'
import { feedHandlers } from './feed-handlers.ts'
import { historyHandlers } from './history-handlers.ts'
import { holidayHandlers } from './holiday-handlers.ts'
import { ovenHandlers } from './oven-handlers.ts'
import type { Handlers, Questions } from './questions.ts'
import { salesHandlers } from './sales-handlers.ts'
import type { Work } from './work.ts'

/** All that the thread can answer. */
export function handlersFor(work: Work): Handlers<Questions> {
  return {
    ...feedHandlers(work),
    ...adviseHandlers(work),
    ...ovenHandlers(work),
    ...comingHandlers(work),
    ...historyHandlers(work),
    ...holidayHandlers(),
    ...salesHandlers(work),
  }
}

import type { DayDemand } from '../../shared-core/demand/demand.ts'
import type { Learner } from '../../shared-core/demand/learner.ts'
import { outlookOf } from '../../shared-core/demand/outlook-of.ts'
import type { DayAsked } from '../../shared-core/demand/sales-day.ts'
import { soFarOf } from '../../shared-core/demand/today.ts'
import type { OutlookQuestions } from './outlook-questions.ts'
import type { Handlers } from './questions.ts'
import type { Work } from './work.ts'

export function outlookHandlers({ book }: Work): Handlers<OutlookQuestions> {
  const aheadOf = forecasts()
  return {
    outlook: async ({ today, noonMs }) => {
      const { shop } = book
      if (shop === null) return null
      const learner = await book.learner()
      const { openMinute, closeMinute } = today
      const asked = { ...book.asked(today.date), openMinute, closeMinute }
      const ahead = aheadOf(learner, asked, book.learntVersion)
      const rest = learner.rest(ahead, soFarOf(today), today.nowMinute)
      return outlookOf({ shop, today, noonMs, ahead, rest, kitchen: book.kitchenParts() })
    },
  }
}

/** The day's forecast stays as it was at dawn, so that it is reckoned once and not at each sale. */
function forecasts() {
  let last: { key: string; ahead: ReadonlyMap<string, DayDemand> } | null = null
  return (learner: Learner, asked: DayAsked, version: number): ReadonlyMap<string, DayDemand> => {
    const key = JSON.stringify([asked, version])
    if (last?.key !== key) last = { key, ahead: learner.ahead(asked) }
    return last.ahead
  }
}

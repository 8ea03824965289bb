import { learntTimes } from '../../shared-core/line/learnt-times.ts'
import { ovenHeat } from '../../shared-core/oven/oven-heat.ts'
import type { OvenQuestions } from './oven-questions.ts'
import type { Handlers } from './questions.ts'
import type { Work } from './work.ts'

/** What the line's own taps and readings teach. */
export function ovenHandlers({ book }: Work): Handlers<OvenQuestions> {
  return {
    ovenHeat: ({ line, ...asked }) => {
      const { shop } = book
      return shop === null ? null : ovenHeat({ ...asked, shop, today: line?.readings ?? [], days: book.lineDays() })
    },
    learntTimes: ({ line }) => {
      const { shop } = book
      if (shop === null) return null
      const days = [...book.lineDays(), ...(line === null ? [] : [line])]
      return { days: days.length, times: learntTimes(shop, days) }
    },
  }
}

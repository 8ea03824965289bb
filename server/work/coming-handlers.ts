import { dateAfter } from '../../shared-core/day/label.ts'
import { purchaseSizes } from '../../shared-core/demand/purchase-sizes.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import { Carry } from '../../shared-core/plan/carried.ts'
import type { ComingDay } from '../../shared-core/plan/coming-day.ts'
import { comingDay, nextOpenDate } from '../../shared-core/plan/coming-day.ts'
import type { ComingAsked, ComingQuestions } from './coming-questions.ts'
import type { Handlers } from './questions.ts'
import type { Work } from './work.ts'

export function comingHandlers(work: Work): Handlers<ComingQuestions> {
  return { coming: (asked) => coming(work, asked) }
}

/** Long enough for a slow variety. */
const SIZE_DAYS = 84

/** Each day on the way is reckoned as well: what it uses of the cooler is not there for the one that is asked about. */
async function coming({ book, breathe }: Work, { date, clock, carry: now }: ComingAsked): Promise<ComingDay | null> {
  const learner = await book.learner()
  const { shop } = book
  if (shop === null) return null
  // It was sold and closed: nothing of it is to come.
  if (date !== book.openDate && book.journalDay(date) !== null) return { date, isClosed: true, doughs: [] }
  const sizes = purchaseSizes((await book.days()).slice(-SIZE_DAYS))
  const noon = (day: string) => noonOf(clock, day)
  const carry = new Carry(shop, noon, now)
  const of = (day: string): ComingDay => {
    const next = nextOpenDate(shop, day)
    const ahead = learner.ahead(book.asked(day))
    const means = new Map([...ahead].map(([id, { mean }]) => [id, mean]))
    return comingDay(shop, ahead, {
      date: day,
      noonOf: noon,
      carried: carry.on(day),
      orders: carry.orders(day, means),
      kitchen: book.kitchenParts(),
      shared: learner.shared,
      sizes,
      next: next === null ? null : { date: next, demands: learner.ahead(book.asked(next)) },
    })
  }
  for (let day = now.first; day < date; day = dateAfter(day, 1)) {
    carry.pass(day, day === now.first ? new Map() : takenBy(of(day)))
    await breathe()
  }
  return of(date)
}

function takenBy({ doughs }: ComingDay) {
  return new Map(doughs.map(({ doughId, counter, ordered }) => [doughId, counter + ordered]))
}

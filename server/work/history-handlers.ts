import { dateAfter } from '../../shared-core/day/label.ts'
import type { WalkedDay } from '../../shared-core/demand/backtest.ts'
import type { DayDemand } from '../../shared-core/demand/demand.ts'
import type { TrueDay } from '../../shared-core/demand/history-figures.ts'
import {
  historyDay,
  historyHours,
  historyOfDay,
  historyWeekdays,
  shortOf,
} from '../../shared-core/demand/history-figures.ts'
import type { LearntAsked } from '../../shared-core/demand/learnt.ts'
import { learntOf } from '../../shared-core/demand/learnt.ts'
import { costDays, trustOf } from '../../shared-core/demand/trust.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import type { SalesHistoryJson } from '../../shared-core/live/sales-history.ts'
import type { TrustJson } from '../../shared-core/live/trust.ts'
import { closesAtMinute, hoursOn } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { adviseDay, pieceWorths } from './day-advice.ts'
import type { HistoryAsked, HistoryQuestions } from './history-questions.ts'
import type { Handlers } from './questions.ts'
import { WalkedDays } from './walked-days.ts'
import type { Work } from './work.ts'

/** Past sales and what the forecasts of them were worth. */
export function historyHandlers(work: Work): Handlers<HistoryQuestions> {
  const walked = new WalkedDays(work)
  return {
    history: (asked) => history(work, walked, asked),
    historyDay: async ({ date }) => {
      const day = (await walked.days()).find((one) => one.day.date === date)
      const told = day === undefined ? { ...work.book.asked(date), items: [] } : historyOfDay(day, day.judged)
      return { ...told, isRecorded: work.book.journalDay(date) !== null }
    },
    trust: ({ days }) => trust(work, walked, days),
  }
}

async function history(
  work: Work,
  walked: WalkedDays,
  { of, from, to }: HistoryAsked,
): Promise<SalesHistoryJson | null> {
  const { book } = work
  const has = itemsOf(of, book.shop)
  if (has === null) return null
  const all = await walked.days()
  const some = all.filter(({ day }) => (from === null || day.date >= from) && (to === null || day.date <= to))
  const isOne = of.startsWith('variety:')
  const days = some.flatMap((day) => {
    const judged = isOne ? day.judged.find(({ itemId }) => has(itemId)) : undefined
    return historyDay(day, has, shortOf(judged?.said)) ?? []
  })
  const [first, last] = [all[0]?.day.date, all.at(-1)?.day.date]
  return {
    of,
    known: first === undefined || last === undefined ? null : { from: first, to: last, days: all.length },
    days,
    weekdays: historyWeekdays(days),
    hours: historyHours(
      some.map(({ day }) => day),
      has,
    ),
    learnt: await learnt(work, all, has),
  }
}

/** Null: the shop has no such dough or variety. */
function itemsOf(of: string, shop: Shop | null): ((itemId: string) => boolean) | null {
  if (of === 'all') return () => true
  const [kind = '', id = ''] = of.split(/:(.*)/s)
  if (kind === 'dough' && shop?.doughs.has(doughId(id)))
    return (itemId) => shop.varieties.get(varietyId(itemId))?.doughId === id
  if (kind === 'variety' && shop?.varieties.has(varietyId(id))) return (itemId) => itemId === id
  return null
}

async function learnt({ book }: Work, all: readonly TrueDay[], has: (itemId: string) => boolean) {
  const { shop } = book
  if (shop === null) return null
  const hours: LearntAsked['hoursOn'] = (date) => {
    const open = hoursOn(shop, date)
    return open === null ? null : { openMinute: open.openMinute, closeMinute: closesAtMinute(open) }
  }
  return learntOf({
    learner: await book.learner(true),
    days: all.map(({ day }) => day),
    has,
    hoursOn: hours,
    specials: [...shop.specialDays.values()].filter(({ retired }) => !retired).map(({ id }) => id),
  })
}

async function trust(work: Work, walked: WalkedDays, count: number): Promise<TrustJson> {
  const { book } = work
  const all = await walked.days()
  const { shop } = book
  if (shop === null) throw new Error('the shop has not been told yet')
  const last = all.at(-1)?.day.date
  const learner = await book.learner(true)
  const ahead = varietiesOf(learner.ahead(book.asked(last === undefined ? '2000-01-01' : dateAfter(last, 1))), shop)
  const worths = pieceWorths(shop, ahead)
  const some = all.slice(-count).filter(({ judged }) => judged.length > 0)
  const steps = trustOf({
    shop,
    walked: some,
    before: all.slice(0, all.length - some.length),
    daysKnown: all.length,
    ahead,
    journalDay: (date) => book.journalDay(date),
    advised: await advisedThen(work, shop, costDays(some)),
    worthOf: (id) => worths.get(id) ?? null,
  })
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
    await work.breathe()
  }
}

/** Each day's advice takes some milliseconds. */
async function advisedThen(work: Work, shop: Shop, days: readonly WalkedDay[]) {
  const advised = new Map<string, ReadonlyMap<VarietyId, number>>()
  for (const { day, judged } of days) {
    const demands = new Map(judged.map(({ itemId, demand }) => [varietyId(itemId), demand]))
    advised.set(day.date, adviseDay(shop, demands))
    await work.breathe()
  }
  return advised
}

/** Names of a till that are no variety are not baked. */
function varietiesOf(ahead: ReadonlyMap<string, DayDemand>, shop: Shop): ReadonlyMap<VarietyId, DayDemand> {
  return new Map(
    [...ahead].flatMap(([id, demand]) => (shop.varieties.has(varietyId(id)) ? [[varietyId(id), demand] as const] : [])),
  )
}

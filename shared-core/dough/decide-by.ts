import type { Formula } from '../shop/formula.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { dateOf, minuteOn, mixDateOf } from './dates.ts'
import { preparationsOf } from './percents.ts'
import type { Looked } from './plan-days.ts'

/**
 * When mixing of a formula begins at the earliest on its day: when work in the dough room can begin, else when it is decided.
 */
export function mixingFrom({ shop, noonOf }: Omit<Looked, 'state'>, formula: Formula, bakeDate: string): EpochMs {
  return minuteOn(noonOf, mixDateOf(formula, bakeDate), shop.doughRoom?.fromMinute ?? formula.decideByMinute)
}

/**
 * By when dough for a day of boiling must be decided: the formula's hour on its day of mixing; where a preparation must be
 * begun on an earlier day, that hour on that day; and never after its beginning.
 * @example rye with a sponge of 14 h, mixed Wednesday from 5:00, decided by 10:00 // Tuesday 10:00
 */
export function decideAt(looked: Omit<Looked, 'state'>, formula: Formula, bakeDate: string): EpochMs {
  const { shop, noonOf } = looked
  const mixDate = mixDateOf(formula, bakeDate)
  const beginsAt = preparationsOf(shop, formula).map(
    ({ preparation }) => mixingFrom(looked, formula, bakeDate) - preparation.ready.targetMs,
  )
  const ownAtMs = minuteOn(noonOf, mixDate, formula.decideByMinute)
  if (beginsAt.length === 0) return ownAtMs
  const beginAtMs = epochMs(Math.min(...beginsAt))
  const onItsDay = minuteOn(noonOf, dateOf(noonOf, mixDate, beginAtMs), formula.decideByMinute)
  return epochMs(Math.min(ownAtMs, onItsDay, beginAtMs))
}

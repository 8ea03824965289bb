import { dateAfter } from '../day/label.ts'
import type { IngredientId } from '../ids.ts'
import type { Preparation } from '../shop/formula.ts'
import { inUse } from '../shop/in-order.ts'
import { milligrams } from '../shop/weight.ts'
import { epochMs } from '../units.ts'
import { beginOf, dateOf } from './dates.ts'
import { mixesAhead } from './mixes-ahead.ts'
import { preparationLines, totalPercent, WHOLE } from './percents.ts'
import type { Looked } from './plan-days.ts'
import { madeFor, madeKey, stillToMake } from './preparations-due.ts'

const DAYS_AHEAD_MAX = 3

/** By ingredient and date, milligrams. */
type Needed = Map<IngredientId, Map<string, number>>

/**
 * What mixes of the days ahead take of each ingredient, by the date on which it is weighed: a mix's own lines on its day of
 * mixing, a preparation's when it is begun. What is made already is not needed again; a culture is fed each day on which
 * nothing is built of it. What should have been weighed before is needed on the first day.
 */
export function neededAhead(looked: Looked, fromDate: string, days: number): Needed {
  const needed: Needed = new Map()
  const lastDate = dateAfter(fromDate, days - 1)
  const add = (id: IngredientId, onDate: string, some: number) => {
    if (onDate > lastDate) return
    const date = onDate < fromDate ? fromDate : onDate
    const byDate = needed.get(id) ?? new Map<string, number>()
    needed.set(id, byDate.set(date, (byDate.get(date) ?? 0) + some))
  }
  const built = builtAhead(looked, fromDate, lastDate, add)
  for (const preparation of inUse(looked.shop.preparations)) {
    const { fedWith } = preparation
    if (fedWith === null) continue
    const some = Math.round((milligrams(fedWith) * totalPercent(preparation.lines)) / WHOLE)
    for (let n = 0; n < days; n += 1) {
      const date = dateAfter(fromDate, n)
      if (!built.has(`${date} ${preparation.id}`) && !isMadeOn(looked, preparation, date))
        for (const line of preparationLines(preparation, some)) add(line.ingredientId, date, line.milligrams)
    }
  }
  return needed
}

/** @returns the dates on which something of each preparation is built */
function builtAhead(
  looked: Looked,
  fromDate: string,
  lastDate: string,
  add: (id: IngredientId, date: string, some: number) => void,
): ReadonlySet<string> {
  const { shop, noonOf } = looked
  const built = new Set<string>()
  const made = new Map(madeFor(looked.state))
  // A mix after the last day may ask for a preparation within it.
  for (const mix of mixesAhead(looked, dateAfter(lastDate, DAYS_AHEAD_MAX + 1))) {
    for (const { ingredientId, preparationId, milligrams: some } of mix.lines) {
      if (ingredientId !== null) add(ingredientId, mix.mixDate, some)
      const preparation = preparationId === null ? undefined : shop.preparations.get(preparationId)
      if (preparation === undefined) continue
      const key = madeKey(preparation.id, mix.bakeDate)
      const there = made.get(key) ?? 0
      made.set(key, Math.max(0, there - some))
      const missing = stillToMake(some, there)
      if (missing === 0) continue
      const begins = dateOf(noonOf, fromDate, epochMs(mix.startAtMs - preparation.ready.targetMs))
      built.add(`${begins} ${preparation.id}`)
      for (const line of preparationLines(preparation, missing)) add(line.ingredientId, begins, line.milligrams)
    }
  }
  return built
}

function isMadeOn({ state, noonOf }: Looked, { id }: Preparation, date: string): boolean {
  const fromMs = beginOf(noonOf, date)
  const toMs = beginOf(noonOf, dateAfter(date, 1))
  return [...state.builds.values()].some(
    ({ preparationId, madeAtMs }) => preparationId === id && madeAtMs >= fromMs && madeAtMs < toMs,
  )
}

import type { DaysRow } from '../../server/forecast/days-task.ts'
import { LEVELS } from '../../server/forecast/quantiles.ts'
import type { Till } from '../../server/forecast/till.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { negativeBinomial, quantile } from '../../shared-core/demand/pieces.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import { soldFrom } from './forecast-score.ts'

type Window = { readonly from: string; readonly to: string }

/** Same weekday last week: simple enough to hold the scores here to those of the data's own script. */
export function lastWeeks(till: Till, items: readonly string[], { from, to }: Window): DaysRow[] {
  return openIn(till, { from, to }).flatMap((date) =>
    items.map((item) => {
      const sold = soldFrom(till, dateAfter(date, -7), item)
      return { date, item, asOf: null, quantiles: LEVELS.map(() => sold) }
    }),
  )
}

/** The mean of the last four same weekdays, Poisson: a simple way whose days can be paired with ours. */
export function weekdayMeans(till: Till, items: readonly string[], { from, to }: Window): DaysRow[] {
  return openIn(till, { from, to }).flatMap((date) => {
    const alike = till.dates.filter((day) => day < date && isoWeekday(day) === isoWeekday(date)).slice(-4)
    return items.map((item) => {
      const mean = alike.reduce((sum, day) => sum + soldFrom(till, day, item), 0) / alike.length
      const pieces = negativeBinomial(mean, Number.POSITIVE_INFINITY)
      return { date, item, asOf: null, quantiles: LEVELS.map((level) => quantile(pieces, level)) }
    })
  })
}

function openIn({ dates }: Till, { from, to }: Window): string[] {
  return dates.filter((date) => date >= from && date <= to)
}

import { isDate } from '../day/label.ts'
import type { Misfit, Rule } from './misfit.ts'
import { broken } from './misfit.ts'
import { DATE_MAX, DATE_MIN } from './set-up-limits.ts'
import type { SpecialDay } from './shop.ts'

/** Dates that there are, from the first to the last of each span, the spans in order, no day in two of them. */
export function specialDayMisfits({ id, spans }: SpecialDay): Misfit[] {
  const rules = spans.flatMap(({ from, to }, at): Rule[] => {
    const field = `spans/${at}`
    const odd = [from, to].find((date) => !isDate(date))
    if (odd !== undefined) return [[true, field, `There is no ${odd}.`, 'A date of the calendar, as YYYY-MM-DD.']]
    const far = from < DATE_MIN || to > DATE_MAX
    const before = spans[at - 1]
    return [
      [far, field, `It is from ${from} to ${to}.`, `Dates from ${DATE_MIN} to ${DATE_MAX}.`],
      [from > to, field, `It ends on ${to}, before it begins on ${from}.`, `${from} or after.`],
      [
        before !== undefined && from <= before.to,
        field,
        `${from} is not after ${before?.to}, where the dates before it end.`,
        'Dates in order, each of them once.',
      ],
    ]
  })
  return broken({ entity: 'specialDay', id }, rules)
}

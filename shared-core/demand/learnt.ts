import { dateAfter } from '../day/label.ts'
import type { LearntJson } from '../live/sales-history.ts'
import { isoWeekday } from '../shop/hours.ts'
import type { DayDemand } from './demand.ts'
import type { Learner } from './learner.ts'
import type { DayAsked, SalesDay } from './sales-day.ts'

/** What is asked of a learner to say what it has learnt. */
export interface LearntAsked {
  readonly learner: Pick<Learner, 'ahead'>
  /** All days that were learnt, in order. */
  readonly days: readonly SalesDay[]
  readonly has: (itemId: string) => boolean
  /** When the shop is open; null: not on that weekday. */
  readonly hoursOn: (date: string) => Pick<DayAsked, 'openMinute' | 'closeMinute'> | null
  /** Ids of the special days to be told of. */
  readonly specials: readonly string[]
}

/**
 * What weekdays and special days do to sales, as the forecast of the seven days after the last one has it: the sum of
 * the items' means beside the week's, with and without the special day. No second way to reckon what was learnt.
 * @returns null without a day
 */
export function learntOf({ learner, days, has, hoursOn, specials }: LearntAsked): LearntJson | null {
  const last = days[days.length - 1]
  if (last === undefined) return null
  const week = Array.from({ length: 7 }, (_, place) => dateAfter(last.date, place + 1)).flatMap((date) => {
    const hours = hoursOn(date)
    if (hours === null) return []
    const asked = { date, ...hours, specials: [] }
    return [{ asked, usual: demandsOf(learner.ahead(asked), has) }]
  })
  const usual = week.map(({ usual }) => meanOf(usual))
  const level = usual.length === 0 ? 0 : usual.reduce((sum, mean) => sum + mean, 0) / usual.length
  const factorOn = new Map(week.map(({ asked }, place) => [isoWeekday(asked.date), part(usual[place] ?? 0, level)]))
  return {
    basis: basisOf(week[0]?.usual ?? []),
    level: Math.round(level * 10) / 10,
    weekdays: [1, 2, 3, 4, 5, 6, 7].map((weekday) => factorOn.get(weekday) ?? null),
    specials: specials.map((id) => {
      const special = week.map(({ asked }) => meanOf(demandsOf(learner.ahead({ ...asked, specials: [id] }), has)))
      const seen = days.filter((day) => day.specials.includes(id)).length
      const sum = special.reduce((total, mean) => total + mean, 0)
      return { id, factor: part(sum, level * usual.length), days: seen }
    }),
  }
}

function demandsOf(ahead: ReadonlyMap<string, DayDemand>, has: (itemId: string) => boolean): readonly DayDemand[] {
  return [...ahead].flatMap(([id, demand]) => (has(id) ? [demand] : []))
}

function meanOf(demands: readonly DayDemand[]): number {
  return demands.reduce((sum, { mean }) => sum + mean, 0)
}

/** As sure as the most of what is sold. */
function basisOf(demands: readonly DayDemand[]): LearntJson['basis'] {
  const pieces = { nothing: 0, guess: 0, few: 0, many: 0 }
  for (const { basis, mean } of demands) pieces[basis] += mean
  if (pieces.many >= pieces.few && pieces.many >= pieces.guess && pieces.many > 0) return 'many'
  return pieces.few >= pieces.guess && pieces.few > 0 ? 'few' : 'guess'
}

function part(of: number, whole: number): number {
  return whole === 0 ? 1 : Math.round((of / whole) * 1_000) / 1_000
}

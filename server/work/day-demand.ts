import type { DayDemand, Profile, RestDemand } from '../../shared-core/demand/demand.ts'
import type { Learner } from '../../shared-core/demand/learner.ts'
import type { DayAsked, ItemDay, SalesDay } from '../../shared-core/demand/sales-day.ts'
import type { Today } from '../../shared-core/demand/today.ts'
import { soFarOf } from '../../shared-core/demand/today.ts'
import type { DayBook } from './day-book.ts'

/** What a running day asks for: as it was foreseen at dawn, and what of it is left now. */
export interface DemandNow {
  readonly ahead: ReadonlyMap<string, DayDemand>
  readonly rest: ReadonlyMap<string, RestDemand>
}

/** What days to come and the running one ask for. A day's forecast stays as it was at dawn: it is reckoned once. */
export class DayDemands {
  readonly #book: DayBook
  #last: { readonly key: string; readonly ahead: ReadonlyMap<string, DayDemand> } | null = null

  constructor(book: DayBook) {
    this.#book = book
  }

  async ahead(date: string): Promise<ReadonlyMap<string, DayDemand>> {
    return this.#aheadOf(await this.#book.learner(), this.#book.asked(date))
  }

  async now(today: Today): Promise<DemandNow> {
    const learner = await this.#book.learner()
    const { date, openMinute, closeMinute, nowMinute } = today
    const ahead = this.#aheadOf(learner, { ...this.#book.asked(date), openMinute, closeMinute })
    return { ahead, rest: learner.rest(ahead, withoutOthers(soFarOf(today), ahead), nowMinute) }
  }

  #aheadOf(learner: Learner, asked: DayAsked): ReadonlyMap<string, DayDemand> {
    const key = JSON.stringify([asked, this.#book.learntVersion])
    if (this.#last?.key !== key) this.#last = { key, ahead: learner.ahead(asked) }
    return this.#last.ahead
  }
}

/** What has not been there today says nothing by not having sold. */
function withoutOthers(soFar: SalesDay, ahead: ReadonlyMap<string, DayDemand>): SalesDay {
  const others = [...ahead.keys()].filter((id) => !soFar.items.has(id)).map((id): [string, ItemDay] => [id, NOT_THERE])
  return { ...soFar, items: new Map([...soFar.items, ...others]) }
}

const NOT_THERE: ItemDay = { sold: [], unseen: 0, gone: [], offered: false }

/** A planner's time goes with the points of a profile, and customers are no surer than to the quarter of an hour. */
const PROFILE_MINUTES = 15

/** Those of which something is known, as a plan is made of them: with profiles of fewer points, on the same curve. */
export function knownOf<Some extends DayDemand | RestDemand>(
  demands: ReadonlyMap<string, Some>,
  ahead: ReadonlyMap<string, DayDemand>,
): ReadonlyMap<string, Some> {
  const known = [...demands].filter(([id]) => (ahead.get(id)?.basis ?? 'nothing') !== 'nothing')
  return new Map(known.map(([id, demand]) => [id, { ...demand, profile: thinned(demand.profile) }]))
}

/** The first and the last stay. @example thinned([[0, 0], [5, 0.1], [15, 0.4], [20, 1]]) // [[0, 0], [15, 0.4], [20, 1]] */
export function thinned(profile: Profile): Profile {
  let keptMinute = Number.NEGATIVE_INFINITY
  return profile.filter(([minute], at) => {
    const isKept = at === profile.length - 1 || minute - keptMinute >= PROFILE_MINUTES
    if (isKept) keptMinute = minute
    return isKept
  })
}

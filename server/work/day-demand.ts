import type { DayDemand, RestDemand } from '../../shared-core/demand/demand.ts'
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

/** Those of which something is known. */
export function knownOf<Some extends DayDemand | RestDemand>(
  demands: ReadonlyMap<string, Some>,
  ahead: ReadonlyMap<string, DayDemand>,
): ReadonlyMap<string, Some> {
  return new Map([...demands].filter(([id]) => (ahead.get(id)?.basis ?? 'nothing') !== 'nothing'))
}

import type { State } from '../day/state.ts'
import type { NoonOf } from '../dough/dates.ts'
import { minuteOn } from '../dough/dates.ts'
import type { Outlook } from '../live/outlook.ts'
import { freshOutlook } from '../live/outlook.ts'
import type { Plan } from '../live/plan.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { EpochMs } from '../units.ts'
import type { SupplyAsked } from './promise.ts'

export interface SupplyKnown {
  readonly state: State
  readonly nowMs: EpochMs
  /** By the shop's clock, YYYY-MM-DD. */
  readonly localDate: string
  readonly noonOf: NoonOf
  /** What was told last, of whatever day; null: nothing was. */
  readonly outlook: Outlook | null
  readonly plan: Plan | null
}

/** On a day without hours nobody fetches anything in the night either. */
const LAST_MINUTE = 1_439

/**
 * What promises and orders at risk are reckoned from, the same on the server and every screen. Today is the open day until
 * its close, which may lie after midnight, or when it is a later one already; a day that nobody closed is over.
 */
export function supplyAsked({ state, nowMs, localDate, noonOf, outlook, plan }: SupplyKnown): SupplyAsked {
  const closeOf = (isoDate: string) => {
    const hours = state.shop === null ? null : hoursOn(state.shop, isoDate)
    return minuteOn(noonOf, isoDate, hours === null ? LAST_MINUTE : closesAtMinute(hours))
  }
  const open = state.day?.label ?? localDate
  const date = open > localDate || nowMs < closeOf(open) ? open : localDate
  const fresh = freshOutlook(outlook, nowMs)
  return {
    state,
    nowMs,
    date,
    noonOf,
    closesAtMs: closeOf(date),
    outlook: fresh?.date === date ? fresh : null,
    plan: plan?.date === date ? plan : null,
  }
}

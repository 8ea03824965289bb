import { noonOf } from '../../../shared-core/live/noon.ts'
import type { SupplyAsked } from '../../../shared-core/orders/promise.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { localDate } from '../../live/clock-text.ts'
import type { DetailsBook } from '../../live/details-book.ts'
import { planNow } from '../../parts/advice.ts'
import { outlookNow } from '../../parts/outlook-now.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import type { CounterParts } from '../counter-screen.tsx'
import type { SheetProps } from '../sheets.tsx'

/** What each page of the orders is given. */
export interface OrdersProps extends SheetProps {
  readonly say: CounterOrderWords
  readonly book: DetailsBook
}

/** A shop that nobody told its hours serves no longer than that after noon. */
const EVENING_MS = 12 * 3_600_000

/** What a promise is reckoned from; null while the shop's clock is not known. */
export function supplyAsked(
  { live, state }: Pick<CounterParts, 'live' | 'state'>,
  { nowMs, closeMs }: { readonly nowMs: EpochMs; readonly closeMs: EpochMs | null },
): SupplyAsked | null {
  const { shopClock } = live
  if (shopClock === null) return null
  const date = state.day?.label ?? localDate(shopClock, nowMs)
  const noon = (isoDate: string) => noonOf(shopClock, isoDate)
  return {
    // Advised loads come with the plan: in the state they would be there twice.
    state: live.asSet ?? state,
    nowMs,
    date,
    noonOf: noon,
    closesAtMs: closeMs ?? epochMs(noon(date) + EVENING_MS),
    outlook: outlookNow(live, state),
    plan: planNow(live, state),
  }
}

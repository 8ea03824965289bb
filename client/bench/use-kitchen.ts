import { useMemo } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { LiveState } from '../live/shop-store.ts'
import type { KitchenLook } from '../parts/kitchen-calls.ts'
import { NO_KITCHEN } from '../parts/kitchen-calls.ts'
import { rulerNow } from '../parts/ruler-of-day.ts'
import { useFetched } from '../parts/use-fetched.ts'

/** How often it is looked at while nothing happens. */
const LOOK_MS = 5_000

const fetchLooks = () => import('../parts/kitchen-now.ts')

/**
 * What is made to order, for the line's own screen too: its sounds, and the key that leads there. What looks at it is
 * fetched after the line stands, and only in a shop that makes something to order.
 */
export function useKitchen({ shopClock, nowMs }: LiveState, state: State): KitchenLook {
  const looks = useFetched(fetchLooks, (state.shop?.kitchenStations.size ?? 0) > 0)
  const atMs = epochMs(nowMs - (nowMs % LOOK_MS))
  return useMemo(() => {
    if (looks === null) return NO_KITCHEN
    return looks.kitchenLook(state, atMs, shopClock === null ? null : rulerNow(state, atMs, shopClock))
  }, [looks, state, shopClock, atMs])
}

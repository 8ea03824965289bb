import { useMemo } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import { roomActs } from '../../shared-core/dough/room-acts.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localDate } from '../live/clock-text.ts'
import type { LiveState } from '../live/shop-store.ts'

/** How often they are looked for while nothing happens: none comes up sooner than that. */
const LOOK_MS = 5_000

/** The dough room's next acts, found when something happens and every few seconds else; `roomActsAt` dates them. */
export function useRoomActs({ shopClock, nowMs }: LiveState, state: State, shop: Shop): readonly RoomAct[] {
  const atMs = epochMs(nowMs - (nowMs % LOOK_MS))
  return useMemo(
    () =>
      shopClock === null
        ? []
        : roomActs(state, shop, atMs, localDate(shopClock, atMs), (isoDate) => noonOf(shopClock, isoDate)),
    [state, shop, shopClock, atMs],
  )
}

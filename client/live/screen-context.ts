import type { Context } from '../../shared-core/day/decision.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localDate } from './clock-text.ts'

/** What deciding needs on a screen: the server's time, and its date as far as the server has told its clock. */
export function contextAt(nowMs: EpochMs, deviceId: DeviceId, shopClock: ShopClock | null): Context {
  if (shopClock === null) return { nowMs, deviceId, localDate: '' }
  const date = localDate(shopClock, nowMs)
  return { nowMs, deviceId, localDate: date, noonOf: (label) => noonOf(shopClock, label) }
}

import { useMemo } from 'preact/hooks'
import { noonOf } from '../../../shared-core/live/noon.ts'
import type { ShopClock } from '../../../shared-core/live/protocol.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { localDate } from '../../live/clock-text.ts'
import { shownDegrees, shownDifference } from '../../parts/shop-degrees.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import type { DoughWords } from '../../words/desk-dough.ts'
import type { DeskParts } from '../desk-screen.tsx'

/** What every part of the dough room is made with. */
export interface RoomParts extends DeskParts {
  readonly say: DoughWords
  readonly room: Room
}

export interface Room {
  readonly clock: ShopClock
  /** To the minute: what is reckoned over days is not reckoned anew each second. */
  readonly minuteMs: EpochMs
  /** The shop's date. */
  readonly today: string
  readonly noonOf: (date: string) => EpochMs
  /** In the shop's units. */
  readonly weight: (milligrams: number) => string
  readonly degrees: (milliCelsius: number) => string
  readonly difference: (milliCelsius: number) => string
}

const MINUTE_MS = 60_000

/** @returns null before the server's clock table is known */
export function useRoom(clock: ShopClock | null, nowMs: EpochMs, shop: Shop): Room | null {
  const minuteMs = epochMs(nowMs - (nowMs % MINUTE_MS))
  const { temperature, weight } = shop.profile
  return useMemo(() => {
    if (clock === null) return null
    return {
      clock,
      minuteMs,
      today: localDate(clock, minuteMs),
      noonOf: (date: string) => noonOf(clock, date),
      weight: (milligrams: number) => shownWeight(milligrams, weight),
      degrees: (milliCelsius: number) => shownDegrees(milliCelsius, temperature),
      difference: (milliCelsius: number) => shownDifference(milliCelsius, temperature),
    }
  }, [clock, minuteMs, temperature, weight])
}

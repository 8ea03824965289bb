import type { RoomParts } from '../../client/bench/dough-room/room-parts.ts'
import { doughRoomWords } from '../../client/words/bench-dough.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Mix } from '../../shared-core/dough/mix.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { roomShop } from '../core/dough/acts-shop.ts'
import type { StateParts } from '../core/support/make.ts'
import { at, stateWith } from '../core/support/make.ts'
import { table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

export const TODAY = '2026-11-24'
const DAY_MS = 86_400_000

/** Everything that the dough room's views are made from, at an instant. */
export function partsAt(state: State, nowMs: EpochMs, language: Language = 'en'): RoomParts {
  const { shop } = state
  if (shop === null) throw new Error('These views need a shop.')
  const words = doughRoomWords(wordsOf(shop, language))
  const noonOf = (date: string) =>
    epochMs(at('12:00') + Math.round((Date.parse(date) - Date.parse(TODAY)) / DAY_MS) * DAY_MS)
  return { state, shop, nowMs, words, localDate: TODAY, noonOf }
}

export function roomState(mixes: readonly Mix[], parts: Partial<StateParts> = {}, shop: Shop = roomShop()): State {
  const state = stateWith({ shop, recordedAt: at('5:00'), ...parts })
  for (const [id, mix] of table(mixes)) state.mixes.set(id, mix)
  return state
}

import type { MixTemp, Place } from '../../../shared-core/dough/mix.ts'
import { assumedAt, placeNow } from '../../../shared-core/dough/places.ts'
import { degreesText } from '../../../shared-core/shop/temperature.ts'
import { shownDegrees } from '../../parts/shop-degrees.ts'
import type { RoomParts } from './room-parts.ts'

/** A place as it was read, and when; else what is assumed of it. */
export function readingText(place: Place, { state, shop, words }: RoomParts): string {
  const say = words.room.readings
  const readings = state.readings.get(place)
  const newest = readings?.points[readings.points.length - 1]
  if (readings !== undefined && newest !== undefined) return say.readAt(degreesText(readings.read), newest.atMs)
  const assumed = assumedAt(shop, place)
  return assumed === null ? '' : say.assumed(shownDegrees(assumed, shop.profile.temperature))
}

const PLACES: { readonly [temp in MixTemp]?: Place } = { room: 'room', flour: 'flour', tap: 'tap' }

/** What a mix's water is reckoned with while nobody has read it for this mix; null where nothing is. */
export function reckonedText(temp: MixTemp, { state, shop, words, nowMs }: RoomParts): string | null {
  const place = PLACES[temp]
  const milliCelsius = place === undefined ? null : placeNow(state, shop, place, nowMs)
  if (milliCelsius === null) return null
  return words.room.temps.assumed(shownDegrees(milliCelsius, shop.profile.temperature))
}

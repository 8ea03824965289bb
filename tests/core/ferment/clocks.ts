import type { Batch, State } from '../../../shared-core/day/state.ts'
import type { Place, PlaceReadings, Teaching } from '../../../shared-core/dough/mix.ts'
import { doughId } from '../../../shared-core/ids.ts'
import type { Cooler, Shop } from '../../../shared-core/shop/shop.ts'
import { untilFrom, windowOf } from '../../../shared-core/shop/windows.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { doughRoom } from '../dough/kitchen.ts'
import type { BatchParts } from '../support/make.ts'
import { at, batch, stateWith } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'

const COOLER: Cooler = { trays: 60, keepsAt: { degrees: 3, unit: 'C' } }

/** A shop whose room is as warm as its proof windows ask for, 24 °C, and whose cooler keeps 3 °C. */
export function clockShop(parts: Partial<Shop> = {}): Shop {
  return shopWith({ doughRoom: doughRoom({ roomAt: { thousandths: 24_000, unit: 'C' } }), cooler: COOLER, ...parts })
}

/** Readings of a place, as instants and °C. @example readings('room', [[at('6:00'), 28]]) */
export function readings(place: Place, points: readonly (readonly [EpochMs, number])[]): PlaceReadings {
  const [, newest = 0] = points.at(-1) ?? []
  return {
    place,
    points: points.map(([atMs, celsius]) => ({ atMs, milliCelsius: Math.round(celsius * 1_000) })),
    read: { thousandths: Math.round(newest * 1_000), unit: 'C' },
  }
}

export interface ClockParts {
  readonly shop?: Shop
  readonly batches?: readonly Batch[]
  readonly read?: readonly PlaceReadings[]
  readonly pace?: number
}

export function clockState({ shop = clockShop(), batches = [], read = [], pace }: ClockParts): State {
  const taught: Teaching[] = pace === undefined ? [] : [{ doughId: doughId('plain'), tests: [], pace }]
  return {
    ...stateWith({ shop, batches }),
    readings: new Map(read.map((one) => [one.place, one])),
    teachings: new Map(taught.map((one) => [one.doughId, one])),
  }
}

/** Pieces at a stage with the window that the set-up gives them there; since 6:00, unless said otherwise. */
export function standing(
  parts: BatchParts & { readonly stage: 'proof' | 'chill' | 'rack'; readonly fermentedMs?: number },
  shop = clockShop(),
): Batch {
  const made = batch({ since: at('6:00'), ...parts })
  const until = untilFrom(windowOf(shop, parts.stage, made.doughId, made.varietyId), made.sinceMs)
  return { ...made, until, ...(parts.fermentedMs === undefined ? {} : { fermentedMs: parts.fermentedMs }) }
}

import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlaceReadings } from '../../../shared-core/dough/mix.ts'
import { POINT_MS_MIN, POINTS_MAX, placeNow, withReading } from '../../../shared-core/dough/places.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { clockShop, clockState, readings } from '../ferment/clocks.ts'
import { at } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'

const shop = clockShop()

/** Posted one after the other, in °C. */
function posted(all: readonly (readonly [EpochMs, number])[]): PlaceReadings | undefined {
  return all.reduce<PlaceReadings | undefined>(
    (before, [atMs, celsius]) =>
      withReading(before, { place: 'room', atMs, read: { thousandths: Math.round(celsius * 1_000), unit: 'C' } }),
    undefined,
  )
}

describe('how warm a place is', () => {
  const read = [
    readings('room', [
      [at('6:00'), 20],
      [at('8:00'), 24],
    ]),
  ]

  it.each([
    ['between two readings, on the line', at('7:00'), 22_000],
    ['at a reading', at('8:00'), 24_000],
    ['some hours after the last, that one', at('13:59'), 24_000],
    ['long after it, what the set-up assumes', at('14:01'), 22_000],
    ['a while before the first, that one', at('0:01'), 20_000],
    ['long before it, what the set-up assumes', at('23:00', -1), 22_000],
  ])('[D42] given readings at 6:00 and 8:00, when asked %s', (_, atMs, milli) => {
    const assumed = clockShop({ doughRoom: { ...must(shop.doughRoom), roomAt: { thousandths: 22_000, unit: 'C' } } })
    expect(placeNow(clockState({ read }), assumed, 'room', atMs)).toBe(milli)
  })

  it('[D42] given no reading, then the set-up’s flour, tap and cooler; a shop that says nothing assumes a cooler only', () => {
    const none = clockState({})
    expect(placeNow(none, shop, 'flour', at('6:00'))).toBe(20_000)
    expect(placeNow(none, shop, 'tap', at('6:00'))).toBe(15_000)
    expect(placeNow(none, shop, 'cooler', at('6:00'))).toBe(3_000)
    expect(placeNow(none, shopWith(), 'room', at('6:00'))).toBeNull()
    expect(placeNow(none, shopWith(), 'cooler', at('6:00'))).toBe(3_333)
  })
})

describe('readings', () => {
  it('[D54] given one each minute, then ten minutes apart but for the newest', () => {
    const minutes = Array.from({ length: 26 }, (_, n) => [epochMs(at('6:00') + n * 60_000), 20 + n / 10] as const)
    const points = posted(minutes)?.points ?? []
    expect(points.map(({ atMs }) => (atMs - at('6:00')) / 60_000)).toEqual([0, 10, 20, 25])
  })

  it('[D54] given one that arrives late, or again, then it stands at its time once, and the newest stays the newest', () => {
    const all = posted([
      [at('6:00'), 20],
      [at('8:00'), 24],
      [at('7:00'), 30],
      [at('7:00'), 23],
    ])
    expect(all?.points).toEqual(
      readings('room', [
        [at('6:00'), 20],
        [at('7:00'), 23],
        [at('8:00'), 24],
      ]).points,
    )
    expect(all?.read).toEqual({ thousandths: 24_000, unit: 'C' })
  })

  it('[D54] given what was read in °F, then it is kept as read beside its °C', () => {
    const one = withReading(undefined, { place: 'room', atMs: at('6:00'), read: { thousandths: 76_500, unit: 'F' } })
    expect(one.read).toEqual({ thousandths: 76_500, unit: 'F' })
    expect(one.points).toEqual([{ atMs: at('6:00'), milliCelsius: 24_722 }])
  })

  it('[D54] given a flat day with one hot hour, when they are too many, then the hot hour stays', () => {
    const day = Array.from({ length: 90 }, (_, n) => {
      return [epochMs(at('0:00') + n * POINT_MS_MIN), n === 40 ? 30 : 22] as const
    })
    const points = posted(day)?.points ?? []
    expect(points).toHaveLength(POINTS_MAX)
    expect(points.some(({ milliCelsius }) => milliCelsius === 30_000)).toBe(true)
    expect(points[0]?.atMs).toBe(at('0:00'))
  })

  it('[D54] given readings from weeks ago, then they go', () => {
    expect(
      posted([
        [at('6:00', -5), 20],
        [at('6:00'), 24],
      ])?.points,
    ).toHaveLength(1)
  })

  it('[D54] given any readings in any order, then in order, apart, few, and the newest among them', () => {
    const one = fc.tuple(fc.integer({ min: 0, max: 5_000 }), fc.integer({ min: 10, max: 35 }))
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 60 }), (drawn) => {
        const all = drawn.map(([minutes, celsius]) => [epochMs(at('6:00') + minutes * 60_000), celsius] as const)
        const times = (posted(all)?.points ?? []).map(({ atMs }) => atMs)
        expect(times.length).toBeLessThanOrEqual(POINTS_MAX)
        expect(times.at(-1)).toBe(Math.max(...all.map(([atMs]) => atMs)))
        for (let n = 1; n < times.length - 1; n += 1) {
          expect((times[n] ?? 0) - (times[n - 1] ?? 0)).toBeGreaterThanOrEqual(POINT_MS_MIN)
        }
      }),
      { numRuns: 60 },
    )
  })
})

function must<Value>(value: Value | null): Value {
  if (value === null) throw new Error('nothing there')
  return value
}

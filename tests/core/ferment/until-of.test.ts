import * as fc from 'fast-check'
import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'
import { floatMark } from '../../../shared-core/day/marks.ts'
import { fermentedBy, proofedBy, untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { doughRoom } from '../dough/kitchen.ts'
import { at, until } from '../support/make.ts'
import { dough, dwell, shopWith, TRADE_WINDOWS, table } from '../support/shop.ts'
import { clockShop, clockState, readings, standing } from './clocks.ts'

const MINUTE = 60_000
const proofing = standing({ stage: 'proof' })
const roomOf = (celsius: number) => [readings('room', [[at('6:00'), celsius]])]
const coolerOf = (celsius: number) => [readings('cooler', [[at('6:00'), celsius]])]

describe('the proof clock', () => {
  it('[D40] given a room as warm as the windows ask for, then they hold as they are', () => {
    expect(untilOf(clockState({}), proofing)).toEqual(until('6:45', '7:00', '7:30'))
  })

  it('[D40] given a room of 28 °C, then ready sooner; of 20 °C, later', () => {
    // γ(24) / γ(28) = 0.78783 / 0.93516 and γ(24) / γ(20) = 0.78783 / 0.59649 (Rosso 1993, as in tests/reference).
    const warm = untilOf(clockState({ read: roomOf(28) }), proofing)
    const cold = untilOf(clockState({ read: roomOf(20) }), proofing)
    expect(((warm?.targetAtMs ?? 0) - at('6:00')) / MINUTE).toBeCloseTo(60 * 0.8425, 1)
    expect(((cold?.targetAtMs ?? 0) - at('6:00')) / MINUTE).toBeCloseTo(60 * 1.32079, 1)
    expect(warm?.latestAtMs).toBeLessThan(at('7:30'))
    expect(cold?.earliestAtMs).toBeGreaterThan(at('6:45'))
  })

  it('[D40] given a room that warms while they proof, then what is past stays past', () => {
    const read = [
      readings('room', [
        [at('6:00'), 24],
        [at('6:30'), 24],
        [at('6:31'), 30],
      ]),
    ]
    const target = untilOf(clockState({ read }), proofing)?.targetAtMs ?? 0
    expect(target).toBeLessThan(at('7:00'))
    expect(target).toBeGreaterThan(at('6:50'))
  })

  it('[D40] given two hours in a room of 24 °C, then that is what they have fermented', () => {
    expect(fermentedBy(clockState({}), proofing, at('8:00'))).toBe(120 * MINUTE)
    expect(fermentedBy(clockState({}), { ...proofing, fermentedMs: 5_000 }, at('6:00'))).toBe(5_000)
  })

  it('[D43] given a room in which yeast does not work, then looked at after three days', () => {
    const threeDays = at('6:00', 3)
    const never = { earliestAtMs: threeDays, targetAtMs: threeDays, latestAtMs: threeDays }
    expect(untilOf(clockState({ read: roomOf(2) }), proofing)?.earliestAtMs).toBeGreaterThan(at('12:00'))
    const always = clockState({
      shop: clockShop({ doughRoom: doughRoom({ roomAt: { thousandths: 2_000, unit: 'C' } }) }),
    })
    expect(untilOf(always, proofing)).toEqual(never)
  })

  it('[D49] given a dough that needs nine tenths of its window, then it is ready sooner by that', () => {
    expect(untilOf(clockState({ pace: 900 }), proofing)).toEqual(until('6:40:30', '6:54', '7:21'))
  })

  it('[D49] given pieces that were found not ready, then not before the next look; what was shaped since goes by the clock', () => {
    const doughId = proofing.doughId
    const float = { kind: 'float', id: floatMark(doughId), doughId, passed: false, personId: null, boiled: 0 } as const
    const found = (lookAgainAtMs: EpochMs | null) => ({
      ...clockState({}),
      marks: new Map([[float.id, { ...float, passed: lookAgainAtMs === null, atMs: at('7:00'), lookAgainAtMs }]]),
    })
    expect(untilOf(found(at('7:15')), proofing)).toEqual(until('7:15', '7:15', '7:30'))
    expect(untilOf(found(at('7:40')), proofing)).toEqual(until('7:40', '7:40', '7:40'))
    expect(untilOf(found(null), proofing)).toEqual(until('6:45', '7:00', '7:30'))
    const later = standing({ stage: 'proof', since: at('7:05') })
    expect(untilOf(found(at('9:00')), later)).toEqual(until('7:50', '8:05', '8:35'))
  })

  it('[D50] given no dough room, no window or another stage, then what the set-up said', () => {
    const bare = clockState({ shop: shopWith(), read: roomOf(30) })
    expect(untilOf(bare, proofing)).toBe(proofing.until)
    expect(untilOf(clockState({}), { ...proofing, until: null })).toBeNull()
    const racked = standing({ stage: 'rack' })
    expect(untilOf(clockState({ read: roomOf(30) }), racked)).toBe(racked.until)
    expect(fermentedBy(bare, proofing, at('9:00'))).toBe(0)
  })

  it('[D50] given windows that hold at a temperature without growth, then a minute is a minute', () => {
    const shop = clockShop({ doughRoom: doughRoom({ provesAt: { thousandths: 1_000, unit: 'C' } }) })
    expect(untilOf(clockState({ shop }), proofing)).toEqual(proofing.until)
  })
})

describe('the chill clock', () => {
  const chilling = standing({ stage: 'chill', since: at('18:00', -1), fermentedMs: 60 * MINUTE })

  it('[D44] given a cooler as the set-up has it, then the dough’s own window', () => {
    expect(untilOf(clockState({}), chilling)).toEqual(chilling.until)
  })

  it('[D44] given trays that cool slowly, then not before they are within a degree of the cooler', () => {
    const coolsIn = (hours: number) => clockShop({ doughRoom: doughRoom({ roomAt: C24, coolsIn: spanMs(hours, 'h') }) })
    const C24 = { thousandths: 24_000, unit: 'C' } as const
    const early = untilOf(clockState({ shop: coolsIn(1) }), chilling)?.earliestAtMs
    const late = untilOf(clockState({ shop: coolsIn(4) }), chilling)?.earliestAtMs ?? 0
    expect(early).toBe(at('2:00'))
    // From 24 to 4 °C in 3 °C air.
    expect((late - at('18:00', -1)) / 3_600_000).toBeCloseTo(4 * Math.log(21), 3)
  })

  it('[D45] given trays that came in by the latest of their proof, then good to the end of the window', () => {
    // Or some minutes after it: a tenth of 90 min may be over.
    for (const minutes of [90, 98]) {
      const last = { ...chilling, fermentedMs: minutes * MINUTE }
      expect(untilOf(clockState({}), last)?.latestAtMs).toBe(chilling.until?.latestAtMs)
    }
  })

  it('[D45] given trays that came in later than that, then over-proofed before they are cold', () => {
    const over = untilOf(clockState({}), { ...chilling, fermentedMs: 115 * MINUTE })
    expect(over?.latestAtMs).toBeLessThan(at('19:00', -1))
    expect(over?.earliestAtMs).toBe(over?.latestAtMs)
    expect(over?.targetAtMs).toBe(over?.latestAtMs)
  })

  it('[D45] given a cooler of 10 °C since the evening, then over-proofed in the night, the riper ones first', () => {
    const read = [
      readings('cooler', [
        [at('18:00', -1), 10],
        [at('6:00'), 10],
      ]),
    ]
    const ripe = untilOf(clockState({ read }), { ...chilling, fermentedMs: 80 * MINUTE })?.latestAtMs ?? 0
    const young = untilOf(clockState({ read }), { ...chilling, fermentedMs: 50 * MINUTE })?.latestAtMs ?? 0
    expect(ripe).toBeLessThan(young)
    expect(young).toBeLessThan(at('8:00'))
  })

  it('[D45] given a dough that never proofs, then only its window ends its chill', () => {
    const shop = clockShop({ doughs: table([dough({ id: 'plain', route: ['chill', 'kettle', 'oven'] })]) })
    const state = clockState({ shop, read: coolerOf(15) })
    expect(untilOf(state, { ...chilling, fermentedMs: 300 * MINUTE })?.latestAtMs).toBe(chilling.until?.latestAtMs)
  })

  it('[D49] given a chill as usual, then what ferments on in it is no part of how far they have proofed', () => {
    const state = clockState({})
    expect(fermentedBy(state, chilling, at('2:30')) / MINUTE).toBeCloseTo(60 + 38.4198, 3)
    expect(proofedBy(state, chilling, at('2:30'))).toBe(60 * MINUTE)
    expect(proofedBy(state, proofing, at('6:30'))).toBe(30 * MINUTE)
  })
})

describe('a chill over a change of the clocks', () => {
  const WINDOWS = { ...TRADE_WINDOWS, chill: dwell(8, 14, 48, 'h') }

  // Elapsed from 20:00 to 4:30: IANA zone database 2025b (Python zoneinfo). What ferments on: scipy.integrate.quad.
  it.each([
    ['2026-03-10', 510, 38.419799],
    ['2026-03-08', 450, 38.410059],
    ['2026-11-01', 570, 38.429108],
  ])('[D46] given the night to %s in New York, then %d min have passed at 4:30', (date, elapsed, equivalent) => {
    const zone = 'America/New_York'
    const end = DateTime.fromISO(`${date}T04:30`, { zone })
    const begin = DateTime.fromISO(`${date}T20:00`, { zone }).minus({ days: 1 })
    const shop = clockShop({ windows: WINDOWS })
    const batch = standing({ stage: 'chill', since: epochMs(begin.toMillis()), fermentedMs: 60 * MINUTE }, shop)
    const state = clockState({ shop })
    const atMs = epochMs(end.toMillis())
    expect((atMs - batch.sinceMs) / MINUTE).toBe(elapsed)
    expect(fermentedBy(state, batch, atMs) / MINUTE - 60).toBeCloseTo(equivalent, 2)
    // Eight hours are not up in the night in which an hour is missing.
    expect((untilOf(state, batch)?.earliestAtMs ?? 0) > atMs).toBe(elapsed < 480)
  })
})

const celsius = fc.integer({ min: 60, max: 320 }).map((tenths) => tenths / 10)
const fermented = fc.integer({ min: 0, max: 120 }).map((minutes) => minutes * MINUTE)

describe('clocks and temperatures', () => {
  it('[D41] given a room or cooler that is warmer, then no clock of proof is later and no chill ends later', () => {
    fc.assert(
      fc.property(celsius, fc.integer({ min: 0, max: 3_000 }), fermented, (cold, moreMilli, fermentedMs) => {
        const warm = Math.min(32.3, cold + moreMilli / 1_000)
        const chilling = standing({ stage: 'chill', fermentedMs })
        const [colder, warmer] = [cold, warm].map((one) => clockState({ read: [...roomOf(one), ...coolerOf(one / 3)] }))
        if (colder === undefined || warmer === undefined) throw new Error('two states')
        const [before, after] = [untilOf(colder, proofing), untilOf(warmer, proofing)]
        expect(after?.earliestAtMs).toBeLessThanOrEqual(before?.earliestAtMs ?? 0)
        expect(after?.targetAtMs).toBeLessThanOrEqual(before?.targetAtMs ?? 0)
        expect(after?.latestAtMs).toBeLessThanOrEqual(before?.latestAtMs ?? 0)
        expect(untilOf(warmer, chilling)?.latestAtMs).toBeLessThanOrEqual(untilOf(colder, chilling)?.latestAtMs ?? 0)
        expect(fermentedBy(warmer, chilling, at('12:00'))).toBeGreaterThanOrEqual(
          fermentedBy(colder, chilling, at('12:00')),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('[D41] given a reading that differs by a thousandth of a degree, then no proof moves by a minute', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10_000, max: 40_000 }), (milli) => {
        const one = untilOf(clockState({ read: roomOf(milli / 1_000) }), proofing)
        const other = untilOf(clockState({ read: roomOf((milli + 1) / 1_000) }), proofing)
        expect(Math.abs((one?.latestAtMs ?? 0) - (other?.latestAtMs ?? 0))).toBeLessThan(MINUTE)
      }),
      { numRuns: 60 },
    )
  })

  it('[D41] given any of these, then earliest, target and latest stand in this order', () => {
    fc.assert(
      fc.property(
        celsius,
        celsius,
        fermented,
        fc.integer({ min: 600, max: 1_400 }),
        (room, cooler, fermentedMs, pace) => {
          const state = clockState({ read: [...roomOf(room), ...coolerOf(cooler)], pace })
          for (const one of [proofing, standing({ stage: 'chill', fermentedMs })]) {
            const its = untilOf(state, one)
            expect(its?.earliestAtMs).toBeLessThanOrEqual(its?.targetAtMs ?? 0)
            expect(its?.targetAtMs).toBeLessThanOrEqual(its?.latestAtMs ?? 0)
            expect(its?.earliestAtMs).toBeGreaterThanOrEqual(one.sinceMs)
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  it('[D41] given the same batch and readings, then the clock is not reckoned again; with another reading it is', () => {
    const shop = clockShop()
    const state = clockState({ shop, read: roomOf(28) })
    const warm = untilOf(state, proofing)
    expect(untilOf({ ...state }, proofing)).toBe(warm)
    expect(untilOf(clockState({ shop, read: roomOf(20) }), proofing)).not.toEqual(warm)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shelfId } from '../../../shared-core/ids.ts'
import type { LineDay, OvenRead } from '../../../shared-core/line/line-tally.ts'
import type { HeatAsked } from '../../../shared-core/oven/oven-heat.ts'
import { ovenHeat } from '../../../shared-core/oven/oven-heat.ts'
import { phasesOf } from '../../../shared-core/oven/phases.ts'
import type { Temperature } from '../../../shared-core/shop/shop.ts'
import { milliCelsius } from '../../../shared-core/shop/temperature.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'
import { noise } from './noise.ts'

const fahrenheit = (degrees: number): Temperature => ({ degrees, unit: 'F' })

function shopBaking(bakeAt: Temperature, secondAt: Temperature) {
  const shop = shopWith()
  return { ...shop, oven: { ...shop.oven, bakeAt, secondAt } }
}

function read(clock: string | EpochMs, degrees: Temperature): OvenRead {
  return { atMs: typeof clock === 'string' ? at(clock) : clock, shelfId: null, milliCelsius: milliCelsius(degrees) }
}

function asked(part: Partial<HeatAsked> = {}): HeatAsked {
  return {
    shop: shopBaking(fahrenheit(495), fahrenheit(600)),
    nowMs: at('11:00'),
    today: [],
    days: [],
    changeover: { emptyAtMs: at('11:00'), toMs: at('11:40') },
    readyAtMs: at('4:30'),
    ...part,
  }
}

/** An oven of two masses: air that follows the burner, and a stone that follows the air; read every `every` minutes. */
function twoMasses(seed: number, day: number, every: number): LineDay {
  const chance = noise(seed)
  let [air, stone] = [24 + chance(), 24 + chance()]
  const limit = 330 + 6 * chance()
  const readings: OvenRead[] = []
  const from = at('3:00') + day * 86_400_000
  for (let minute = 0; minute <= 75; minute += 1) {
    if (minute % every === 0 && minute > 0)
      readings.push({
        atMs: epochMs(from + minute * 60_000),
        shelfId: null,
        milliCelsius: Math.round(1_000 * (stone + 2 * chance())),
      })
    for (let step = 0; step < 10; step += 1) {
      air += ((limit - air) / 14 + (stone - air) / 20) / 10
      stone += (air - stone) / 120
    }
  }
  return { date: '2026-11-24', boils: [], cycles: [], boardings: [], between: [], loads: [], readings }
}

describe('readings cut into heat-ups', () => {
  it('[I91] given a heat-up, a load that cools it and a recovery, when cut, then three phases that share their turns', () => {
    const some = [100, 180, 230, 262, 241, 243, 256, 260].map((celsius, n) => ({ minute: 8 * n, celsius }))
    const phases = phasesOf(some, 3)
    expect(phases.map(({ isHeating, readings }) => [isHeating, readings.length])).toEqual([
      [true, 4],
      [false, 3],
      [true, 3],
    ])
  })

  it('[I91] given readings two hours apart, when cut, then they are of two heat-ups', () => {
    const phases = phasesOf(
      [0, 10, 20, 140, 150].map((minute) => ({ minute, celsius: 100 + minute })),
      3,
    )
    expect(phases.map(({ readings }) => readings.length)).toEqual([3, 2])
  })
})

describe('the oven in the changeover', () => {
  it('[I92] given no reading, when asked, then it is told by ovens of its kind, from what bagels bake at', () => {
    const heat = ovenHeat(asked())
    expect(heat.basis).toBe('kind')
    expect(heat.course).toBeNull()
    expect(heat.second?.reached?.likelyMs).toBeGreaterThan(at('11:00'))
    expect(heat.second?.reached?.earliestMs).toBeLessThan(heat.second?.reached?.latestMs ?? 0)
  })

  it('[I92] given no second menu or nothing said of its heat, when asked, then nothing is told of it', () => {
    expect(ovenHeat(asked({ changeover: null })).second).toBeNull()
    const shop = shopWith()
    expect(ovenHeat(asked({ shop: { ...shop, oven: { ...shop.oven, bakeAt: null, secondAt: null } } }))).toMatchObject({
      second: null,
      turnOn: null,
      next: null,
    })
  })

  it('[I93] given readings since the changeover, when asked, then they speak; in °C as in °F, never before now', () => {
    const steps = [500, 524, 545, 563]
    const today = steps.map((degrees, n) => read(epochMs(at('11:02') + n * 4 * 60_000), fahrenheit(degrees)))
    const heat = ovenHeat(asked({ today, nowMs: at('11:16') }))
    const celsius = shopBaking({ degrees: 257, unit: 'C' }, { degrees: 316, unit: 'C' })
    const other = ovenHeat(asked({ today, nowMs: at('11:16'), shop: celsius }))
    expect(heat.basis).toBe('readings')
    expect(heat.course?.isHeating).toBe(true)
    const likely = heat.second?.reached?.likelyMs ?? 0
    expect(likely).toBeGreaterThan(at('11:14'))
    expect(likely).toBeLessThan(at('11:40'))
    // 316 °C is 600.8 °F: a little later.
    expect(Math.abs((other.second?.reached?.likelyMs ?? 0) - likely)).toBeLessThan(2 * 60_000)
  })

  it('[I93] given any oven, when it begins colder, then it is ready no earlier', () => {
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 560 }), fc.integer({ min: 1, max: 80 }), (degrees, colder) => {
        const likely = (from: number) =>
          ovenHeat(asked({ today: [read('10:58', fahrenheit(from))] })).second?.reached?.likelyMs ?? Infinity
        expect(likely(degrees - colder)).toBeGreaterThanOrEqual(likely(degrees) - 1_000)
      }),
      { numRuns: 40 },
    )
  })

  it('[I94] given a second menu that bakes cooler, when asked, then the oven is foretold to cool', () => {
    const shop = shopBaking(fahrenheit(495), fahrenheit(350))
    const heat = ovenHeat(asked({ shop }))
    expect(heat.second?.reached?.likelyMs).toBeGreaterThan(at('11:20'))
  })
})

describe('the oven before a load', () => {
  it('[I95] given a reading far too cold, when asked, then the next load waits; hot enough or old, then not', () => {
    const cold = ovenHeat(asked({ nowMs: at('8:02'), today: [read('8:00', fahrenheit(440))] }))
    expect(cold.next?.waitUntilMs).toBeGreaterThan(at('8:02'))
    expect(ovenHeat(asked({ nowMs: at('8:02'), today: [read('8:00', fahrenheit(488))] })).next?.waitUntilMs).toBeNull()
    expect(ovenHeat(asked({ nowMs: at('8:30'), today: [read('8:00', fahrenheit(440))] })).next).toBeNull()
  })

  it('[I95] given a reading of one shelf, when asked, then it does not speak for the oven', () => {
    const today = [{ ...read('8:00', fahrenheit(400)), shelfId: shelfId('s1') }]
    expect(ovenHeat(asked({ nowMs: at('8:02'), today })).next).toBeNull()
  })
})

describe('an oven that was read on many mornings', () => {
  const days = Array.from({ length: 12 }, (_, day) => twoMasses(day + 1, day - 20, 9))

  it('[I96] given its own heat-ups, when asked when to turn it on, then by them and not by its kind', () => {
    const own = ovenHeat(asked({ days }))
    const kind = ovenHeat(asked())
    expect(own.basis).toBe('past')
    const spread = (heat: typeof own) => (heat.turnOn?.likelyMs ?? 0) - (heat.turnOn?.byMs ?? 0)
    expect(spread(own)).toBeLessThan(spread(kind))
    // The simulated stone takes some 50 minutes from 24 to 257 °C.
    expect(at('4:30') - (own.turnOn?.likelyMs ?? 0)).toBeGreaterThan(35 * 60_000)
    expect(at('4:30') - (own.turnOn?.likelyMs ?? 0)).toBeLessThan(65 * 60_000)
  })

  it('[I97] given the first two thirds of each, when the rest is foretold, then it is off by little, and that is told', () => {
    const { heldBack } = ovenHeat(asked({ days }))
    expect(heldBack?.heatUps).toBe(12)
    expect(heldBack?.milliCelsius).toBeLessThan(9_000)
    expect(heldBack?.minutes).toBeLessThan(4)
  })
})

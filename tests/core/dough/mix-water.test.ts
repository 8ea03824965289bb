import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { FRICTIONS_MAX, frictionFrom } from '../../../shared-core/dough/friction.ts'
import type { Friction, Mix, MixTemps } from '../../../shared-core/dough/mix.ts'
import { frictionKey, frictionTaught, waterFor } from '../../../shared-core/dough/mix-water.ts'
import { planWater } from '../../../shared-core/dough/water.ts'
import { mixId, preparationId } from '../../../shared-core/ids.ts'
import type { Degrees, DoughRoom } from '../../../shared-core/shop/formula.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { readings } from '../ferment/clocks.ts'
import { at, stateWith } from '../support/make.ts'
import { shopWith, table } from '../support/shop.ts'
import { doughRoom, INGREDIENTS, preparation } from './kitchen.ts'
import { formula, mix, sheetLine } from './room-mix.ts'

const C = (celsius: number): Degrees => ({ thousandths: celsius * 1_000, unit: 'C' })
const POOLISH = preparation({ id: 'poolish' })
const SOAKER = preparation({ id: 'soaker', kind: 'soaker' })

/** Flour 20, room 22, tap 15, hot tap 50 °C, ice, a scale of 5 g. */
function roomShop(parts: Partial<DoughRoom> = {}): Shop {
  return shopWith({ doughRoom: doughRoom(parts), ingredients: INGREDIENTS, preparations: table([POOLISH, SOAKER]) })
}

/** 25 °C wished, friction 12 °C, 5 kg of water. */
function doughMix(temps: Partial<MixTemps> = {}, parts: Partial<Mix> = {}): Mix {
  const of = mix('planned', at('6:00'), { mixer: '', formula: formula({ doughAt: C(25), friction: C(12) }) })
  const lines = [sheetLine('flour'), sheetLine('water', { milligrams: 5_000_000 })]
  return { ...of, lines, ...parts, temps: { ...of.temps, ...temps } }
}
const withLine = (id: string) => ({
  lines: [...doughMix().lines, sheetLine(id, { ingredientId: null, preparationId: preparationId(id) })],
})

function roomState(shop: Shop, parts: Partial<State> = {}): State {
  return { ...stateWith({ shop, recordedAt: at('6:00') }), ...parts }
}

function water(temps: Partial<MixTemps> = {}, parts: Partial<Mix> = {}, room: Partial<DoughRoom> = {}) {
  const shop = roomShop(room)
  return waterFor(roomState(shop), shop, doughMix(temps, parts))
}

describe('the water of a mix', () => {
  it('[D51] given nothing read, then the set-up’s: 3 · 25 − 20 − 22 − 12 is 21 °C', () => {
    expect(water()).toEqual({
      milliCelsius: 21_000,
      iceMilligrams: 0,
      waterMilligrams: 5_000_000,
      reach: 'needsWarm',
      doughMilliCelsius: 25_000,
    })
  })

  it('[D51] given the room and the flour read with the mix, then by these, before any other reading', () => {
    const shop = roomShop()
    const read = roomState(shop, { readings: new Map([['room', readings('room', [[at('5:50'), 25]])]]) })
    expect(waterFor(read, shop, doughMix())?.milliCelsius).toBe(18_000)
    expect(waterFor(read, shop, doughMix({ room: C(23), flour: C(18) }))?.milliCelsius).toBe(22_000)
  })

  it('[D51] given a pre-ferment, then four temperatures: it stands in the room unless it was read; a soaker is none', () => {
    expect(water({}, withLine('poolish'))?.milliCelsius).toBe(4 * 25_000 - 20_000 - 22_000 - 22_000 - 12_000)
    expect(water({ preferment: C(18) }, withLine('poolish'))?.milliCelsius).toBe(28_000)
    expect(water({}, withLine('soaker'))?.milliCelsius).toBe(21_000)
  })

  it('[D51] given no water in the mix, or no dough room, then none', () => {
    expect(water({}, { lines: [sheetLine('flour')] })).toBeNull()
    expect(waterFor(roomState(shopWith()), shopWith({ ingredients: INGREDIENTS }), doughMix())).toBeNull()
  })

  it('[D52] given a tap of 25 °C and 21 wished, then ice in the place of water, to 5 g', () => {
    // 5 kg · (25 − 21) / (25 + 80) = 190.48 g, by the rule of tests/reference/water.test.ts.
    expect(water({ tap: C(25) })).toMatchObject({
      iceMilligrams: 190_000,
      waterMilligrams: 4_810_000,
      reach: 'reached',
    })
  })

  it('[D52] given water colder than freezing wanted, then it is at freezing, with the ice that melts in the dough', () => {
    const found = water({ flour: C(35), room: C(35), tap: C(20) })
    // 75 − 35 − 35 − 12 = −7 °C: 5 kg · 27 / 100.
    expect(found).toMatchObject({
      milliCelsius: 0,
      iceMilligrams: 1_350_000,
      reach: 'reached',
      doughMilliCelsius: 25_000,
    })
  })

  it('[D52] given no ice, then the tap’s water, and what the dough comes to', () => {
    const found = water({ flour: C(30), room: C(30), tap: C(20) }, {}, { hasIce: false })
    expect(found).toMatchObject({ milliCelsius: 20_000, reach: 'tooCold', iceMilligrams: 0 })
    expect(found?.doughMilliCelsius).toBe(Math.round((30_000 + 30_000 + 12_000 + 20_000) / 3))
  })

  it('[D52] given a cold room, then no hotter than the yeast bears, nor than the tap gives', () => {
    const cold = { flour: C(2), room: C(4) }
    expect(water(cold)).toMatchObject({ milliCelsius: 49_000, reach: 'tooWarm', doughMilliCelsius: 22_333 })
    expect(water(cold, {}, { hotTapAt: C(40) })).toMatchObject({ milliCelsius: 40_000, reach: 'tooWarm' })
  })

  it('[D52] given anything, then ice and water are all of it, and a reached dough is as wished', () => {
    const milli = (min: number, max: number) => fc.integer({ min: min * 1_000, max: max * 1_000 })
    const asked = fc.record({
      wishedMilliCelsius: milli(15, 35),
      tempsMilliCelsius: fc.array(milli(-5, 60), { minLength: 2, maxLength: 3 }),
      frictionMilliCelsius: milli(-5, 60),
      tapMilliCelsius: milli(1, 40),
      hotTapMilliCelsius: milli(30, 70),
      hasIce: fc.boolean(),
      waterMilligrams: fc.integer({ min: 1, max: 50_000_000 }),
      stepMilligrams: fc.constantFrom(1, 1_000, 5_000, 28_350),
    })
    fc.assert(
      fc.property(asked, (one) => {
        const plan = planWater(one)
        expect(plan.iceMilligrams + plan.waterMilligrams).toBe(one.waterMilligrams)
        expect(Object.values(plan).every((value) => typeof value === 'string' || Number.isInteger(value))).toBe(true)
        expect(plan.iceMilligrams).toBeGreaterThanOrEqual(0)
        expect(plan.waterMilligrams).toBeGreaterThanOrEqual(0)
        const off = plan.doughMilliCelsius - one.wishedMilliCelsius
        if (plan.reach === 'tooCold') expect(off).toBeGreaterThanOrEqual(0)
        else if (plan.reach === 'tooWarm') expect(off).toBeLessThanOrEqual(0)
        else expect(off).toBe(0)
      }),
      { numRuns: 200 },
    )
  })
})

describe('what the dough’s temperature teaches', () => {
  const shop = roomShop()
  const mixed = (temps: Partial<MixTemps>, parts: Partial<Mix> = {}) =>
    doughMix(temps, { stage: 'mixing', mixedAtMs: at('6:00'), mixer: 'Spiral', ...parts })
  const READ = { flour: C(20), room: C(22), water: C(21) }

  it('[D53] given 27 °C of dough, 21 of room, 23 of flour and 18 of water, then this mix showed 19 °C', () => {
    const read = mixed({ dough: C(27), room: C(21), flour: C(23), water: C(18) })
    const friction = frictionTaught(roomState(shop), shop, read, at('6:12'))
    expect(friction).toMatchObject({ id: 'plain 3 Spiral', formulaId: 'plain', mixer: 'Spiral', factors: 3 })
    expect(friction?.readings).toEqual([{ atMs: at('6:12'), mixId: read.id, milliCelsius: 19_000 }])
    // Between the formula's 12 °C, which counts twice, and what was read: no further than a degree.
    expect(friction?.milliCelsius).toBe(13_000)
  })

  it('[D53] given what was learnt, then the next water goes by it; with a pre-ferment, or in another mixer, it is another', () => {
    const known: Friction = {
      ...{ id: 'plain 3 Spiral', formulaId: formula().id, mixer: 'Spiral', factors: 3 },
      ...{ readings: [], milliCelsius: 15_000 },
    }
    const state = roomState(shop, { frictions: new Map([[known.id, known]]) })
    const inSpiral = shopWith({ ...shop, mixer: { ...MIXER, name: 'Spiral' } })
    expect(waterFor(state, inSpiral, doughMix())?.milliCelsius).toBe(18_000)
    expect(waterFor(state, shop, doughMix())?.milliCelsius).toBe(21_000)
    expect(frictionKey(inSpiral, doughMix({}, withLine('poolish')))).toBe('plain 4 Spiral')
  })

  it('[D53] given no water read, but weighed out, then what was planned, its ice counted', () => {
    const plan = { milliCelsius: 0, iceMilligrams: 1_350_000, waterMilligrams: 3_650_000, reach: 'reached' } as const
    const read = mixed(
      { dough: C(25), flour: C(35), room: C(35), tap: C(20) },
      {
        water: { ...plan, doughMilliCelsius: 25_000 },
        lines: [sheetLine('flour'), sheetLine('water', { milligrams: 5_000_000, weighedAtMs: at('5:55') })],
      },
    )
    expect(frictionTaught(roomState(shop), shop, read, at('6:12'))?.readings.at(-1)?.milliCelsius).toBe(12_000)
    expect(frictionTaught(roomState(shop), shop, mixed({}), at('6:12'))).toBeNull()
  })

  it.each(['flour', 'room', 'water'] as const)(
    '[D53] given %s that nobody read, then nothing is learnt: what is assumed teaches nothing; read at its place, it does',
    (temp) => {
      const read = mixed({ ...READ, dough: C(27), [temp]: null })
      expect(frictionTaught(roomState(shop), shop, mixed({ ...READ, dough: C(27) }), at('6:12'))).not.toBeNull()
      expect(frictionTaught(roomState(shop), shop, read, at('6:12'))).toBeNull()
      const places = new Map(temp === 'water' ? [] : [[temp, readings(temp, [[at('5:50'), 20]])]])
      const isTaught = frictionTaught(roomState(shop, { readings: places }), shop, read, at('6:12')) !== null
      expect(isTaught).toBe(temp !== 'water')
    },
  )

  it('[D53] given the dough read a second time, then the first reading is put right', () => {
    const first = mixed({ ...READ, dough: C(31) })
    const state = roomState(shop)
    const before = frictionTaught(state, shop, first, at('6:12'))
    if (before === null) throw new Error('nothing taught')
    const since = { ...state, frictions: new Map([[before.id, before]]) }
    const after = frictionTaught(since, shop, mixed({ ...READ, dough: C(26) }), at('6:15'))
    expect(after?.readings).toEqual([{ atMs: at('6:15'), mixId: first.id, milliCelsius: 15_000 }])
  })

  it('[D53] given the next mix read meanwhile, then putting the first right leaves the next one’s reading', () => {
    const [first, next] = [mixed({ ...READ, dough: C(31) }), mixed({ ...READ, dough: C(26) }, { id: mixId('m2') })]
    const read = (before: Friction | null, mix: Mix, when: string) => {
      const frictions = new Map(before === null ? [] : [[before.id, before] as const])
      return frictionTaught(roomState(shop, { frictions }), shop, mix, at(when))
    }
    const both = read(read(null, first, '6:12'), next, '6:42')
    const after = read(both, { ...first, temps: { ...first.temps, dough: C(27) } }, '6:45')
    expect(after?.readings.map((one) => [one.mixId, one.milliCelsius])).toEqual([
      [next.id, 15_000],
      [first.id, 18_000],
    ])
  })

  it('[D53] given readings near each other, then their mean and the formula’s; given a bad one, then a degree at most', () => {
    expect(frictionFrom(12_000, [13_000, 13_400])).toBe(12_600)
    expect(frictionFrom(12_000, [60_000])).toBe(13_000)
    expect(frictionFrom(12_000, [-60_000])).toBe(11_000)
    const good = [14_000, 14_200, 13_900, 14_100, 13_950, 14_050]
    expect(Math.abs(frictionFrom(12_000, [...good, 45_000]) - frictionFrom(12_000, good))).toBeLessThan(400)
    // Mixes that agree, far from what the formula says: it is given up.
    expect(
      frictionFrom(
        12_000,
        Array.from({ length: FRICTIONS_MAX }, () => 20_000),
      ),
    ).toBeGreaterThan(19_000)
  })

  it('[D53] given any readings, then between the least and the most, and a higher one never lowers it', () => {
    const reading = fc.integer({ min: -10_000, max: 60_000 })
    fc.assert(
      fc.property(reading, fc.array(reading, { maxLength: 7 }), reading, fc.nat(20_000), (prior, some, one, more) => {
        const found = frictionFrom(prior, [...some, one])
        expect(found).toBeGreaterThanOrEqual(Math.min(prior, one, ...some))
        expect(found).toBeLessThanOrEqual(Math.max(prior, one, ...some))
        expect(frictionFrom(prior, [...some, one + more])).toBeGreaterThanOrEqual(found - 1)
      }),
      { numRuns: 200 },
    )
  })
})

const MIXER = {
  washMs: doughRoom().coolsIn,
  leastFlour: { thousandths: 5_000, unit: 'kg' },
  mostFlour: { thousandths: 25_000, unit: 'kg' },
} as const

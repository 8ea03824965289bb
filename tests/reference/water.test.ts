import { describe, expect, it } from 'vitest'
import {
  doughDegrees,
  frictionDegrees,
  iceOf,
  MELTING_CELSIUS,
  mixedDegrees,
  waterDegrees,
} from '../../shared-core/dough/water.ts'

/** From °F, and a difference. */
const C = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9
const D = (difference: number) => (difference * 5) / 9

interface Worked {
  readonly source: string
  readonly wished: number
  readonly temps: readonly number[]
  readonly friction: number
  readonly water: number
}

/** Where no source stands, it is the rule by arithmetic. */
const IN_F: readonly Worked[] = [
  { source: 'nxtbook.com, Pizza Today 2018-06', wished: 80, temps: [65, 75], friction: 35, water: 65 },
  { source: 'pizzamaking.com topic 14506: 8 min × 2', wished: 78, temps: [60, 70], friction: 16, water: 88 },
  { source: 'arithmetic', wished: 78, temps: [68, 72], friction: 24, water: 70 },
  { source: 'four temperatures, arithmetic', wished: 76, temps: [68, 72, 65], friction: 24, water: 75 },
]
const IN_C: readonly Worked[] = [
  { source: 'arithmetic', wished: 25, temps: [20, 22], friction: 12, water: 21 },
  { source: 'four temperatures, arithmetic', wished: 24, temps: [20, 22, 18], friction: 12, water: 24 },
]

describe('the water’s temperature', () => {
  it.each([...IN_F, ...IN_C])('$wished wished, $temps, friction $friction: $water ($source)', (worked) => {
    expect(waterDegrees(worked)).toBe(worked.water)
    expect(doughDegrees(worked)).toBeCloseTo(worked.wished, 9)
  })

  it.each(IN_F)('is the same in °C: $water °F ($source)', ({ wished, temps, friction, water }) => {
    const celsius = waterDegrees({ wished: C(wished), temps: temps.map(C), friction: D(friction) })
    expect(celsius).toBeCloseTo(C(water), 9)
  })

  it('78 °F in an 68 °F flour and a 72 °F room is 21.1111 °C', () => {
    expect(waterDegrees({ wished: 25.5556, temps: [20, 22.2222], friction: 13.3333 })).toBeCloseTo(21.1111, 3)
  })

  it('a trial at 81 °F shows a friction of 36 °F, 20 °C; one at 27 °C shows 19 °C', () => {
    expect(frictionDegrees({ dough: 81, water: 64, temps: [73, 70] })).toBe(36)
    expect(frictionDegrees({ dough: C(81), water: C(64), temps: [C(73), C(70)] })).toBeCloseTo(20, 9)
    expect(frictionDegrees({ dough: 27, water: 18, temps: [23, 21] })).toBe(19)
  })
})

/**
 * Ice in the place of water, by the trade's rule with 112 (W. Gisslen, Professional Baking, from memory) and by the heat that
 * melting takes: 334 kJ/kg over 4.186 kJ/(kg·K). Results: exact arithmetic outside this project.
 */
const ICE: readonly (readonly [total: number, tapF: number, wantedF: number, by112: number, physical: number])[] = [
  [20, 60, 40, 2.325581, 2.330709],
  [20, 68, 40, 3.111111, 3.117665],
  [30, 75, 38, 5.935829, 5.947865],
  [25, 65, 32, 4.661017, 4.671003],
  [25, 65, 20, 6.355932, 6.36955],
  [10, 70, 70, 0, 0],
  [40, 68, 50, 4, 4.008427],
]
const PHYSICAL = 334 / 4.186

/** koerner-co.com, ice table: lb of ice for a lb of water in all, by the tap's °F, to be as cold as so many °F. */
const TABLE: readonly (readonly [wantedF: number, byTap: readonly (readonly [tapF: number, ice: number])[]])[] = [
  [
    50,
    [
      [60, 0.057],
      [70, 0.109],
      [80, 0.155],
    ],
  ],
  [
    40,
    [
      [50, 0.061],
      [60, 0.115],
      [70, 0.163],
      [80, 0.206],
    ],
  ],
  [
    30,
    [
      [32, 0.014],
      [40, 0.065],
      [50, 0.122],
      [60, 0.172],
      [70, 0.217],
      [80, 0.258],
    ],
  ],
  [
    0,
    [
      [32, 0.222],
      [40, 0.26],
      [50, 0.305],
      [60, 0.345],
      [70, 0.38],
      [80, 0.416],
    ],
  ],
]

describe('ice', () => {
  it.each(ICE)(
    'of %d of water at %d °F, to be %d °F: %d by the rule of 112, %d by heat',
    (total, tapF, wantedF, by112, physical) => {
      const icing = { total, tap: C(tapF), wanted: C(wantedF) }
      expect(iceOf(icing)).toBeCloseTo(by112, 6)
      expect(iceOf({ ...icing, melting: PHYSICAL })).toBeCloseTo(physical, 6)
      // The heat that both parts bring is that of all of it as wanted.
      expect(mixedDegrees({ total, ice: iceOf(icing), tap: C(tapF) })).toBeCloseTo(C(wantedF), 9)
    },
  )

  it.each(TABLE)('as a published table has it, to be %d °F', (wantedF, byTap) => {
    for (const [tapF, ice] of byTap) {
      expect(Math.abs(iceOf({ total: 1, tap: C(tapF), wanted: C(wantedF) }) - ice)).toBeLessThan(0.005)
    }
  })

  it('that comes colder is less: 20 lb at 68 °F to be 40, ice at 0 °F, 2.857143 lb', () => {
    expect(iceOf({ total: 20, tap: C(68), wanted: C(40), iceAt: C(0) })).toBeCloseTo(2.857143, 6)
  })

  it('is never more than the water, and none where the tap is colder', () => {
    expect(iceOf({ total: 20, tap: 15, wanted: -MELTING_CELSIUS - 5 })).toBe(20)
    expect(iceOf({ total: 20, tap: 15, wanted: 16 })).toBe(0)
  })
})

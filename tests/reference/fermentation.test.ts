import { describe, expect, it } from 'vitest'
import { courseTo } from '../../shared-core/ferment/course.ts'
import { growth, YEAST } from '../../shared-core/ferment/growth.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * The cardinal temperature model of Rosso et al. 1993 with the cardinal temperatures of Salvadó et al. 2011 (Appl. Environ.
 * Microbiol. 77, 2292); the least one, 2.8 °C, is assumed between 1.3 and 4.3 of the genus. Values: numpy, outside this
 * project, printed to eight places.
 */
const GAMMA: readonly (readonly [celsius: number, at13: number, at28: number, at43: number])[] = [
  [1, 0, 0, 0],
  [3, 0.00722971, 0.000119, 0],
  [4, 0.01796449, 0.00421157, 0],
  [5, 0.0332151, 0.0139093, 0.00169976],
  [8, 0.10360335, 0.07346396, 0.04454116],
  [10, 0.1684396, 0.13522302, 0.10094029],
  [15, 0.37628755, 0.34581071, 0.31236726],
  [20, 0.615987, 0.5964857, 0.57490009],
  [24, 0.79767754, 0.78782728, 0.77699912],
  [25, 0.83789332, 0.83015392, 0.82167071],
  [27, 0.90845061, 0.90429406, 0.89976921],
  [30, 0.9809367, 0.98015826, 0.97932145],
  [32.3, 1, 1, 1],
  [35, 0.96913486, 0.96818889, 0.96719819],
  [40, 0.70674523, 0.70162055, 0.69642007],
  [43, 0.37949975, 0.37442171, 0.36937742],
  [45.4, 0, 0, 0],
  [60, 0, 0, 0],
]

describe('growth of yeast by temperature', () => {
  it.each(GAMMA)('at %d °C, with 1.3, 2.8 and 4.3 °C as the least', (celsius, at13, at28, at43) => {
    expect(Math.abs(growth(celsius, { ...YEAST, least: 1.3 }) - at13)).toBeLessThan(1e-8)
    expect(Math.abs(growth(celsius) - at28)).toBeLessThan(1e-8)
    expect(Math.abs(growth(celsius, { ...YEAST, least: 4.3 }) - at43)).toBeLessThan(1e-8)
  })

  it('as the documented call of another implementation: Gamma_T(T=10, Tmin=4, Tmax=37, Topt=20, muopt=0.037)', () => {
    // rdrr.io, Ghayabh/predictive-microbiology; value: numpy.
    expect(0.037 * growth(10, { least: 4, best: 20, most: 37 })).toBeCloseTo(0.024432065, 9)
  })

  it('rises to the best and falls from there, without a jump', () => {
    let before = 0
    for (let celsius = 2.8; celsius < 45.4; celsius += 0.01) {
      const now = growth(celsius)
      if (celsius < 32.29) expect(now).toBeGreaterThanOrEqual(before)
      if (celsius > 32.31) expect(now).toBeLessThanOrEqual(before)
      expect(Math.abs(now - before)).toBeLessThan(0.002)
      before = now
    }
    expect(growth(45.399)).toBeLessThan(0.001)
  })

  it('between 18 and 30 °C says within a quarter what the bakers’ rule of 17 °F says', () => {
    // fornobravo.com, "how to control when your dough doubles in size": 2 h at 80 °F, 4 h at 63 °F, 1 h at 97 °F.
    for (let celsius = 18; celsius <= 30; celsius += 1) {
      const byRule = 2 ** (((celsius - 24) * 1.8) / 17)
      const byModel = growth(celsius) / growth(24)
      expect(Math.abs(byModel / byRule - 1)).toBeLessThan(0.25)
    }
    // At 34 °C the rule goes on doubling, past the best.
    expect(growth(34) / growth(24)).toBeLessThan(1.3)
  })
})

/**
 * An overnight chill: from 24 °C into air of 3 °C, time constant 60 min; minutes at 24 °C. Values: scipy.integrate.quad,
 * outside this project. 450 and 570 min are the same night over the clock changes of spring and autumn.
 */
const NIGHTS: readonly (readonly [elapsedMinutes: number, equivalentMinutes: number, byQ10: number])[] = [
  [450, 38.410059, 135.982555],
  [510, 38.419799, 149.985174],
  [570, 38.429108, 163.98329],
]
const MINUTE = 60_000

describe('what ferments on during a chill', () => {
  it.each(NIGHTS)('%d min come to %d min at 24 °C, to a thousandth of a minute', (elapsed, equivalent) => {
    const points = courseTo(
      {
        sinceMs: epochMs(0),
        airAt: () => 3,
        cooling: { from: 24, timeConstantMs: 60 * MINUTE },
        fermentedMs: 0,
        provesAt: 24,
      },
      epochMs(elapsed * MINUTE),
    )
    // Steps of 5 min by Simpson's rule: 0.06 s.
    expect(Math.abs((points.at(-1)?.fermentedMs ?? 0) / MINUTE - equivalent)).toBeLessThan(0.001)
  })

  it.each(NIGHTS)('%d min would come to more than three times as much by a constant factor', (_, equivalent, byQ10) => {
    expect(byQ10 / equivalent).toBeGreaterThan(3)
  })
})

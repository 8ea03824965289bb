import { describe, expect, it } from 'vitest'
import { limitOfThree, temperatureAfter, timeTo } from '../../../shared-core/oven/first-order.ts'
import type { HeatPrior, HeatReading } from '../../../shared-core/oven/heat.ts'
import { fitHeat, temperatureAt, whenReached } from '../../../shared-core/oven/heat.ts'
import { noise } from './noise.ts'

const PRIOR: HeatPrior = { tau: 25, tauSpread: 0.8, limit: 300, limitSpread: 200, noise: 2 }
const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9

describe('an oven that heats up', () => {
  // Values computed for first-order heating, 70 °F towards 650 °F with τ = 12 min (textbook formula, from memory:
  // Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5).
  it.each([
    [300, 6.061139],
    [450, 12.776529],
    [500, 16.228714],
    [550, 21.094295],
    [600, 29.412061],
    [640, 48.725317],
  ])(
    '[I80] given 70 °F towards 650 °F with τ 12 min, when %i °F is wanted, then it takes %f min',
    (target, minutes) => {
      expect(timeTo({ limit: 650, start: 70, tau: 12 }, target)).toBeCloseTo(minutes, 5)
      const inCelsius = { limit: celsius(650), start: celsius(70), tau: 12 }
      expect(timeTo(inCelsius, celsius(target))).toBeCloseTo(minutes, 5)
    },
  )

  it('[I80] given the same oven, when 650 °F and more is wanted, then it never comes', () => {
    for (const target of [650, 651, 900]) expect(timeTo({ limit: 650, start: 70, tau: 12 }, target)).toBeNull()
    expect(timeTo({ limit: 650, start: 70, tau: 12 }, 60)).toBeNull()
  })

  it('[I81] given three readings 5 min apart, when they bend towards a limit, then it is known; a straight line has none', () => {
    expect(limitOfThree(200, 330, 408)).toBe(525)
    expect(limitOfThree(200, 300, 400)).toBeNull()
    expect(limitOfThree(400, 380, 390)).toBeNull()
  })

  it('[I82] given readings without noise, when nothing much is held beforehand, then the fit finds the course', () => {
    const prior = { ...PRIOR, tauSpread: 1.5, limitSpread: 2_000, noise: 0.05 }
    const readings = [200, 330, 408].map((f, n): HeatReading => ({ minute: 5 * n, celsius: celsius(f) }))
    const fit = fitHeat(readings, prior)
    expect(fit?.likeliest.limit).toBeCloseTo(celsius(525), 0)
    expect(fit?.likeliest.tau).toBeCloseTo(9.788, 1)
    const reached = fit && whenReached(fit, celsius(475), 10)
    expect(reached?.q50).toBeGreaterThan(10 + 8.1)
    expect(reached?.q50).toBeLessThan(10 + 8.6)
  })

  it('[I83] given no reading, when it is fitted, then nothing is said; one reading leaves what is held beforehand', () => {
    expect(fitHeat([], PRIOR)).toBeNull()
    const fit = fitHeat([{ minute: 0, celsius: 100 }], { ...PRIOR, limitSpread: 20 })
    expect(fit?.likeliest.tau).toBeCloseTo(25, 0)
    expect(fit && whenReached(fit, 250, 0).q50).toBeGreaterThan(0)
  })

  it('[I84] given noisy readings of many ovens, when 260 °C is foretold, then 8 of 10 fall between the 10 and 90 % times', () => {
    let [inside, outside, off] = [0, 0, 0]
    for (let seed = 1; seed <= 120; seed += 1) {
      const chance = noise(seed)
      const course = { limit: 300 + 25 * chance(), start: 30, tau: 25 * Math.exp(0.4 * chance()) }
      const truly = timeTo(course, 260)
      if (truly === null) continue
      const until = truly * 0.6
      const readings = Array.from({ length: 6 }, (_, n) => (until * (n + 1)) / 6).map((minute) => ({
        minute,
        celsius: temperatureAfter(course, minute) + 2 * chance(),
      }))
      const fit = fitHeat(readings, { ...PRIOR, tauSpread: 0.5, limitSpread: 30 })
      if (fit === null) continue
      const { q10, q50, q90 } = whenReached(fit, 260, until)
      if ((q10 ?? Infinity) <= truly && truly <= (q90 ?? Infinity)) inside += 1
      else outside += 1
      off += Math.abs((q50 ?? until * 4) - truly)
    }
    expect(inside / (inside + outside)).toBeGreaterThan(0.7)
    expect(inside / (inside + outside)).toBeLessThan(0.95)
    expect(off / (inside + outside)).toBeLessThan(6)
  })

  it('[I85] given one reading that is far off, when it is fitted, then it moves the answer little', () => {
    const course = { limit: 300, start: 40, tau: 20 }
    const at = (minute: number) => ({ minute, celsius: temperatureAfter(course, minute) })
    const good = [2, 6, 10, 14, 18, 22, 26].map(at)
    const bad = good.map((one, n) => (n === 3 ? { ...one, celsius: one.celsius - 60 } : one))
    const when = (readings: readonly HeatReading[]) => {
      const fit = fitHeat(readings, { ...PRIOR, limitSpread: 30 })
      return fit === null ? null : whenReached(fit, 270, 26).q50
    }
    expect(Math.abs((when(bad) ?? 0) - (timeTo(course, 270) ?? 0))).toBeLessThan(4)
    expect(Math.abs((when(good) ?? 0) - (timeTo(course, 270) ?? 0))).toBeLessThan(1.5)
  })

  it('[I86] given an oven that cools towards the room, when a lower temperature is wanted, then its time is told the same way', () => {
    const course = { limit: 25, start: 480, tau: 90 }
    const readings = [0, 10, 20, 30].map((minute) => ({ minute, celsius: temperatureAfter(course, minute) }))
    const fit = fitHeat(readings, { ...PRIOR, tau: 100, limit: 25, limitSpread: 10 })
    expect(fit && whenReached(fit, 260, 30).q50).toBeCloseTo(timeTo(course, 260) ?? 0, -0.5)
    expect(fit && temperatureAt(fit, 40).mean).toBeCloseTo(temperatureAfter(course, 40), -0.5)
  })
})

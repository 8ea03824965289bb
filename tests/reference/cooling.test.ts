import { describe, expect, it } from 'vitest'
import { cooledTo, timeToReach } from '../../shared-core/ferment/cooling.ts'
import { exponential, logarithm } from '../../shared-core/ferment/exponential.ts'

/** Newton's law (Incropera & DeWitt, ch. 5, from memory). Values: worked out outside this project. */
const CASE = { from: 24, air: 3, timeConstant: 60 }
const IN_F = { from: 75.2, air: 37.4, timeConstant: 60 }
const AFTER: readonly (readonly [minutes: number, celsius: number, fahrenheit: number])[] = [
  [0, 24, 75.2],
  [15, 19.354816, 66.83867],
  [30, 15.737144, 60.326859],
  [60, 10.725468, 51.305843],
  [90, 7.685733, 45.83432],
  [120, 5.842041, 42.515675],
  [240, 3.384628, 38.092331],
  [510, 3.004273, 37.407691],
]

describe('a piece that cools', () => {
  it.each(AFTER)('after %d min is at %d °C, %d °F', (minutes, celsius, fahrenheit) => {
    expect(cooledTo(CASE, minutes)).toBeCloseTo(celsius, 6)
    // The last printed place of the °F is not always rounded the same way.
    expect(cooledTo(IN_F, minutes)).toBeCloseTo(fahrenheit, 5)
  })

  it('reaches 5 °C after 141.08 min, 4 °C after 182.67, and 41 °F from 75 in 38 °F air after 150.74', () => {
    expect(timeToReach(CASE, 5)).toBeCloseTo(141.082515, 6)
    expect(timeToReach(CASE, 4)).toBeCloseTo(182.671346, 6)
    expect(timeToReach({ from: 75, air: 38, timeConstant: 60 }, 41)).toBeCloseTo(150.738337, 6)
  })

  it('never reaches what the air is not', () => {
    expect(timeToReach({ from: 75, air: 41, timeConstant: 60 }, 41)).toBeNull()
    expect(timeToReach({ from: 75, air: 42, timeConstant: 60 }, 41)).toBeNull()
    expect(timeToReach({ from: 40, air: 42, timeConstant: 60 }, 43)).toBeNull()
  })

  it('is there at once when it is that cold already, and warms by the same law', () => {
    expect(timeToReach(CASE, 24)).toBe(0)
    expect(timeToReach(CASE, 30)).toBe(0)
    expect(timeToReach({ from: 3, air: 24, timeConstant: 60 }, 13.5)).toBeCloseTo(60 * Math.LN2, 9)
  })
})

describe('e^x and ln x by + − × ÷', () => {
  it('are those of the engine, to 1e-13 of the value', () => {
    for (let x = -30; x <= 30; x += 0.37) expect(Math.abs(exponential(x) / Math.exp(x) - 1)).toBeLessThan(1e-13)
    for (let x = 0.001; x < 5_000; x *= 1.7) {
      expect(Math.abs(logarithm(x) - Math.log(x))).toBeLessThan(1e-13 * Math.max(1, Math.abs(Math.log(x))))
    }
    expect([exponential(0), logarithm(1), exponential(-1_000)]).toEqual([1, 0, 0])
    expect([exponential(1_000), logarithm(0)]).toEqual([Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
    expect(logarithm(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY)
  })
})

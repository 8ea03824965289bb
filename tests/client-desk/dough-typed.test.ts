import { describe, expect, it } from 'vitest'
import { chartOf } from '../../client/desk/dough/chart-view.ts'
import { doughWhere, PAGES, withinOf } from '../../client/desk/dough/pages.ts'
import { readDegrees } from '../../client/desk/dough/typed-degrees.ts'
import { typedWeight } from '../../client/desk/dough/typed-weight.ts'
import { shownDegrees, shownDifference } from '../../client/parts/shop-degrees.ts'
import { shownWeight, weighedWeight } from '../../client/parts/shop-weight.ts'
import { isDate } from '../../shared-core/day/label.ts'
import { epochMs } from '../../shared-core/units.ts'

describe('weights as the shop reads them', () => {
  // An ounce is 28.349523 g: NIST Special Publication 811 (2008), appendix B.8.
  it.each([
    [22_679_619, 'lb-oz', '50 lb'],
    [113_398, 'lb-oz', '4 oz'],
    [120_485, 'lb-oz', '4.25 oz'],
    [245_000, 'lb-oz', '8.6 oz'],
    [580_598, 'lb-oz', '1 lb 4.5 oz'],
    [7_087, 'lb-oz', '0.25 oz'],
    [453_500, 'lb-oz', '1 lb'],
    [0, 'lb-oz', '0 oz'],
    [2_345, 'g', '2.35 g'],
    [9_996, 'g', '10 g'],
    [45_678, 'g', '45.7 g'],
    [580_598, 'g', '581 g'],
    [9_999_600, 'g', '10 kg'],
    [22_679_619, 'g', '22.68 kg'],
    [-450_000, 'g', '−450 g'],
  ] as const)('given %d mg in %s, then "%s"', (milligrams, unit, expected) => {
    expect(shownWeight(milligrams, unit)).toBe(expected)
  })

  it('given what is weighed out in kilograms, then to the gram', () => {
    expect(weighedWeight(22_679_619, 'g')).toBe('22.68 kg')
    expect(weighedWeight(12_345_678, 'g')).toBe('12.346 kg')
  })

  it.each([
    ['', 'none'],
    ['3', { thousandths: 150_000, unit: 'lb' }],
    ['.5', { thousandths: 25_000, unit: 'lb' }],
    ['12.5 kg', { thousandths: 12_500, unit: 'kg' }],
    ['12,5kg', { thousandths: 12_500, unit: 'kg' }],
    ['40 lbs', { thousandths: 40_000, unit: 'lb' }],
    ['2 lb 4 oz', { thousandths: 36_000, unit: 'oz' }],
    ['0', { thousandths: 0, unit: 'lb' }],
    ['-3', null],
    ['3 bags', null],
    ['99999999 kg', null],
  ] as const)('given "%s" typed where bags of 50 lb are bought, then %j', (text, expected) => {
    expect(typedWeight(text, { bag: { thousandths: 50_000, unit: 'lb' }, unit: 'lb' })).toEqual(expected)
  })

  it('given a bare number of what is bought loose, then it is in the unit beside it', () => {
    expect(typedWeight('7', { bag: null, unit: 'kg' })).toEqual({ thousandths: 7_000, unit: 'kg' })
  })
})

describe('temperatures as the shop reads them', () => {
  it.each([
    [24_444, 'F', '76 °F'],
    [24_444, 'C', '24.4 °C'],
    [-18_000, 'C', '−18 °C'],
    [-17_900, 'F', '0 °F'],
    [-40, 'C', '0 °C'],
  ] as const)('given %d thousandths of a °C in %s, then "%s"', (milli, unit, expected) => {
    expect(shownDegrees(milli, unit)).toBe(expected)
  })

  it('given a difference, then no zero is moved', () => {
    expect(shownDifference(13_333, 'F')).toBe('24 °F')
  })

  it.each([
    ['74', 'F', { thousandths: 74_000, unit: 'F' }],
    ['23.5', 'C', { thousandths: 23_500, unit: 'C' }],
    ['−2,5', 'C', { thousandths: -2_500, unit: 'C' }],
    ['240', 'F', null],
    ['', 'F', null],
    ['7a', 'F', null],
  ] as const)('given "%s" in %s, then %j', (text, unit, expected) => {
    expect(readDegrees(text, unit)).toEqual(expected)
  })
})

describe('dates and pages', () => {
  it('given a day that no month has, then it is no date', () => {
    expect([isDate('2026-02-30'), isDate('2026-02-28'), isDate('x')]).toEqual([false, true, false])
  })

  it.each(PAGES)('given the page %s, then its address leads there, with a day or without', (page) => {
    expect(doughWhere(withinOf(page))).toEqual({ page, date: null })
    expect(doughWhere(withinOf(page, '2026-11-27'))).toEqual({ page, date: '2026-11-27' })
  })

  it.each(['', 'nowhere', 'days/2026-99-99'])('given "%s", then it is the days ahead', (within) => {
    expect(doughWhere(within)).toEqual({ page: 'days', date: null })
  })
})

describe('a chart of readings', () => {
  const on = { fromMs: 0, toMs: 100, widthPx: 200, heightPx: 50 }
  const reading = (at: number, milliCelsius: number) => ({ atMs: epochMs(at), milliCelsius })

  it('given readings, then time runs to the right, warmer is higher, and it ends at what is reckoned with', () => {
    const chart = chartOf([reading(0, 20_000), reading(50, 30_000)], 25_000, on)
    expect(chart.points).toBe('0,50 100,0 200,25')
    expect(chart).toMatchObject({ nowY: 25, lowestMilliCelsius: 20_000, highestMilliCelsius: 30_000 })
  })

  it('given a reading from before, then its value reaches in without a dot', () => {
    const chart = chartOf([{ atMs: epochMs(10), milliCelsius: 22_000 }, reading(50, 22_000)], 22_000, {
      ...on,
      fromMs: 20,
    })
    expect(chart.points.split(' ')).toHaveLength(3)
    expect(chart.dots).toHaveLength(1)
  })

  it('given a steady room, then the line lies in the middle and is not blown up', () => {
    const chart = chartOf([reading(0, 22_000), reading(50, 22_400)], 22_200, on)
    expect(chart.nowY).toBe(25)
    expect(Math.max(...chart.dots.map(({ y }) => Math.abs(y - 25)))).toBeLessThan(4)
  })
})

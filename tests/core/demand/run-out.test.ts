import { describe, expect, it } from 'vitest'
import type { RestDemand, RunOut } from '../../../shared-core/demand/demand.ts'
import { partBy } from '../../../shared-core/demand/exposure.ts'
import { negativeBinomial } from '../../../shared-core/demand/pieces.ts'
import { equallyLikelyRates } from '../../../shared-core/demand/rates.ts'
import type { Coming } from '../../../shared-core/demand/refilled.ts'
import { runOut } from '../../../shared-core/demand/run-out.ts'
import type { StockNow } from '../../../shared-core/demand/stock-now.ts'
import { drawer } from '../support/draw.ts'
import { arrivals, chances, HOURS } from './drawn-days.ts'

const OPEN = 360
const CLOSE = 840

function restOf(mean: number, dispersion: number): RestDemand {
  return { mean, dispersion, profile: HOURS, soFar: 0, expected: 0 }
}

const sure = (mean: number): StockNow => ({ mean, doubt: 0 })

describe('when an item is gone', () => {
  it('[Q30] given nothing on the way, when asked, then by each time its chance is the negative binomial’s', () => {
    const gone = runOut(restOf(60, 8), sure(24), [], OPEN, CLOSE)
    for (const [minute, chance] of [
      [gone.t10, 0.1],
      [gone.t50, 0.5],
      [gone.t90, 0.9],
    ] as const) {
      const at = (m: number) => 1 - negativeBinomial(60 * partBy(HOURS, m), 8).cdf(23)
      expect(at(minute ?? 0)).toBeGreaterThanOrEqual(chance)
      expect(at((minute ?? 0) - 0.2)).toBeLessThan(chance)
    }
    expect(gone.beforeMore).toBeNull()
    expect(gone.beforeClose).toBeCloseTo(1 - negativeBinomial(60, 8).cdf(23), 9)
  })

  it('[Q30] given plenty, when asked, then it is not gone before close; given none, it is gone now', () => {
    expect(runOut(restOf(20, 8), sure(90), [], 500, CLOSE)).toMatchObject({ t10: null, t50: null, t90: null })
    expect(runOut(restOf(20, 8), sure(0), [], 500, CLOSE)).toMatchObject({
      t10: 500,
      t90: 500,
      beforeClose: 1,
      left: 0,
    })
    expect(runOut(restOf(20, 8), sure(0), [{ minute: 600, pieces: 400 }], 500, CLOSE)).toMatchObject({
      t50: 500,
      beforeMore: 1,
    })
  })

  it('[Q31] given any rest, when there is more or it comes earlier, then it is gone no earlier and by no greater chance', () => {
    const { upTo } = drawer(31)
    for (let time = 0; time < 200; time += 1) {
      const rest = restOf(1 + upTo(80), 0.4 + upTo(200) / 10)
      const coming = Array.from({ length: upTo(2) }, (_, place) => ({
        minute: 400 + 150 * place + upTo(100),
        pieces: 1 + upTo(20),
      }))
      const stock = { mean: upTo(400) / 10, doubt: (upTo(1) * upTo(60)) / 10 }
      const before = runOut(rest, stock, coming, 380, CLOSE)
      expectNoEarlier(runOut(rest, { ...stock, mean: stock.mean + upTo(40) / 10 }, coming, 380, CLOSE), before)
      if (coming.length > 0) {
        expectNoEarlier(
          runOut(
            rest,
            stock,
            coming.map((one) => ({ ...one, pieces: one.pieces + 3 })),
            380,
            CLOSE,
          ),
          before,
        )
        // What comes earlier is sold earlier: less is lost, and less may be left.
        const earlier = coming.map((one) => ({ ...one, minute: one.minute - 15 }))
        expectTimesNoEarlier(runOut(rest, stock, earlier, 380, CLOSE), before)
      }
    }
  })

  it('[Q31] given any rest, when asked, then the three times are in order, and left less lost is stock less demand', () => {
    const { upTo } = drawer(311)
    for (let time = 0; time < 25; time += 1) {
      const rest = restOf(upTo(90), 0.4 + upTo(200) / 10)
      const coming = Array.from({ length: upTo(2) }, (_, place) => ({
        minute: 400 + 150 * place,
        pieces: 1 + upTo(20),
      }))
      const stock = upTo(60)
      const gone = runOut(rest, sure(stock), coming, 380, CLOSE)
      const late = (minute: number | null) => minute ?? Number.POSITIVE_INFINITY
      expect(late(gone.t10)).toBeLessThanOrEqual(late(gone.t50))
      expect(late(gone.t50)).toBeLessThanOrEqual(late(gone.t90))
      const all = coming.reduce((sum, { pieces }) => sum + pieces, stock)
      // The rest's profile begins before now here: what came by then is not asked for any more.
      const asked = rest.mean * (1 - partBy(HOURS, 380))
      expect(gone.left - gone.lost).toBeCloseTo(all - asked, 4)
      expect(gone.beforeClose).toBeGreaterThanOrEqual(0)
      expect(gone.beforeClose).toBeLessThanOrEqual(1)
    }
  })

  it('[Q32] given more after close, or what was ready by now, when asked, then the one is nothing and the other stock', () => {
    const without = runOut(restOf(60, 8), sure(24), [], 380, CLOSE)
    expect(runOut(restOf(60, 8), sure(24), [{ minute: CLOSE, pieces: 50 }], 380, CLOSE)).toEqual(without)
    expect(runOut(restOf(60, 8), sure(14), [{ minute: 380, pieces: 10 }], 380, CLOSE)).toEqual(without)
  })

  it('[Q32] given a stock that is not sure, when asked, then the first and last times are further apart', () => {
    const known = runOut(restOf(60, 30), sure(30), [], OPEN, CLOSE)
    const doubted = runOut(restOf(60, 30), { mean: 30, doubt: 8 }, [], OPEN, CLOSE)
    const width = ({ t10, t90 }: RunOut) => (t90 ?? CLOSE) - (t10 ?? CLOSE)
    expect(width(doubted)).toBeGreaterThan(width(known) + 20)
    expect(Math.abs((doubted.t50 ?? 0) - (known.t50 ?? 0))).toBeLessThan(5)
  })
})

describe('against days that are drawn one by one', () => {
  it.each([
    [40, 5, { mean: 25, doubt: 0 }, []],
    [40, 5, { mean: 25, doubt: 4 }, []],
    [40, 5, { mean: 20, doubt: 0 }, [{ minute: 480, pieces: 12 }]],
    [
      40,
      1,
      { mean: 20, doubt: 3 },
      [
        { minute: 450, pieces: 12 },
        { minute: 570, pieces: 12 },
      ],
    ],
    [6, 0.5, { mean: 3, doubt: 0 }, [{ minute: 480, pieces: 6 }]],
    [
      160,
      Number.POSITIVE_INFINITY,
      { mean: 60, doubt: 5 },
      [
        { minute: 420, pieces: 36 },
        { minute: 510, pieces: 36 },
      ],
    ],
  ] as const)(
    '[Q32] given mean %d and dispersion %d, stock %o and %o on the way, then chances and pieces agree',
    (mean, k, stock, coming) => {
      const drawn = drawnDays(mean, k, stock, coming)
      const gone = runOut(restOf(mean, k), stock, coming, OPEN, CLOSE)
      // Of 8,000 days a chance is known to 0.011 (two standard errors); the rates' grid adds some thousandths.
      for (const [minute, chance] of [
        [gone.t10, 0.1],
        [gone.t50, 0.5],
        [gone.t90, 0.9],
      ] as const) {
        if (minute === null) expect(drawn.goneBy(CLOSE)).toBeLessThan(chance + 0.02)
        else expect(Math.abs(drawn.goneBy(minute) - chance)).toBeLessThan(0.02)
      }
      expect(Math.abs(gone.beforeClose - drawn.beforeClose)).toBeLessThan(0.02)
      if (gone.beforeMore !== null)
        expect(Math.abs(gone.beforeMore - drawn.goneBy(coming[0]?.minute ?? 0))).toBeLessThan(0.02)
      expect(Math.abs(gone.left - drawn.left)).toBeLessThan(0.05 + 0.02 * mean)
      expect(Math.abs(gone.lost - drawn.lost)).toBeLessThan(0.05 + 0.02 * mean)
    },
  )

  it('[Q32] given few pieces that go by the dozen, shortly before close, when more comes, then all is still a number', () => {
    for (let shape = 0.0002; shape < 0.05; shape *= 1.1) {
      const rates = equallyLikelyRates(shape, 40)
      expect(rates.every((rate, at) => rate >= (rates[at - 1] ?? 0))).toBe(true)
      expect(rates.reduce((sum, rate) => sum + rate, 0) / rates.length).toBeCloseTo(1, 9)
      const { left, lost } = runOut(restOf(2, shape), sure(3), [{ minute: 500, pieces: 12 }], OPEN, CLOSE)
      expect(left - lost).toBeCloseTo(13, 6)
    }
  })

  it.each([0.3, 1, 3, 8, 20, 60])(
    '[Q32] given a gamma of shape %d, when cut into equal parts, then mean and chances are kept',
    (shape) => {
      for (const mean of [3, 10, 40, 120]) {
        const rates = equallyLikelyRates(shape, mean)
        expect(rates.reduce((sum, rate) => sum + rate, 0) / rates.length).toBeCloseTo(1, 9)
        const poissons = rates.map((rate) => negativeBinomial(mean * rate, Number.POSITIVE_INFINITY))
        const exact = negativeBinomial(mean, shape)
        for (let stock = 0; stock < 3 * mean; stock += 1) {
          const mixed = poissons.reduce((sum, { cdf }) => sum + cdf(stock), 0) / rates.length
          expect(Math.abs(mixed - exact.cdf(stock))).toBeLessThan(0.013)
        }
      }
    },
  )
})

function drawnDays(mean: number, k: number, stock: StockNow, coming: readonly Coming[]) {
  const chance = chances(7)
  const days = 8_000
  const times: number[] = []
  const sum = { left: 0, lost: 0, gone: 0 }
  for (let day = 0; day < days; day += 1) {
    const normal = Math.sqrt(-2 * Math.log(chance.part())) * Math.cos(2 * Math.PI * chance.part())
    let there = Math.max(0, Math.round(stock.mean + stock.doubt * normal))
    let time = there === 0 ? OPEN : Number.POSITIVE_INFINITY
    let place = 0
    const comesBy = (minute: number) => {
      for (; (coming[place]?.minute ?? CLOSE) <= minute && place < coming.length; place += 1)
        there += coming[place]?.pieces ?? 0
    }
    for (const { minute } of arrivals(chance, mean * chance.rate(k))) {
      comesBy(minute)
      if (there === 0) sum.lost += 1
      else there -= 1
      if (there === 0) time = Math.min(time, minute)
    }
    comesBy(CLOSE)
    times.push(time)
    sum.left += there
    if (there === 0) sum.gone += 1
  }
  return {
    goneBy: (minute: number) => times.filter((time) => time <= minute).length / days,
    beforeClose: sum.gone / days,
    left: sum.left / days,
    lost: sum.lost / days,
  }
}

function expectNoEarlier(after: RunOut, before: RunOut): void {
  expectTimesNoEarlier(after, before)
  expect(after.beforeClose).toBeLessThanOrEqual(before.beforeClose + 1e-6)
  expect(after.left).toBeGreaterThanOrEqual(before.left - 1e-6)
}

function expectTimesNoEarlier(after: RunOut, before: RunOut): void {
  const late = (minute: number | null) => minute ?? Number.POSITIVE_INFINITY
  for (const time of ['t10', 't50', 't90'] as const)
    expect(late(after[time])).toBeGreaterThanOrEqual(late(before[time]) - 0.11)
  expect(after.lost).toBeLessThanOrEqual(before.lost + 1e-6)
}

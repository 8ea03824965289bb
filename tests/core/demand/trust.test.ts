import { describe, expect, it } from 'vitest'
import { adviseDay, pieceWorths } from '../../../server/work/day-advice.ts'
import { walkForward } from '../../../shared-core/demand/backtest.ts'
import { bakedAs, bakingCost } from '../../../shared-core/demand/baking-cost.ts'
import type { JournalDay } from '../../../shared-core/demand/journal-day.ts'
import { wilson, wilsonOfGroups } from '../../../shared-core/demand/share-interval.ts'
import type { TrustAsked } from '../../../shared-core/demand/trust.ts'
import { trustOf as trustInSteps } from '../../../shared-core/demand/trust.ts'
import { accuracyOf } from '../../../shared-core/demand/trust-figures.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import type { TrustJson } from '../../../shared-core/live/trust.ts'
import { shopWith, table, variety } from '../support/shop.ts'
import { madeDays } from './made-days.ts'

const SHOP = shopWith({
  varieties: table([
    variety({ id: 'sesame', order: 1, priceCents: 180, costCents: 45 }),
    variety({ id: 'poppy', order: 2, priceCents: 180, costCents: 45 }),
  ]),
})
const GUESSES = [...SHOP.varieties.values()].map(({ id, doughId }) => ({ id, group: doughId, usual: null }))

function asked(stock?: number, journalDay: TrustAsked['journalDay'] = () => null): TrustAsked {
  const days = madeDays({ from: '2026-01-05', days: 70, customers: { sesame: 30, poppy: 8 }, ...(stock && { stock }) })
  const from = '2026-02-16'
  const walked = [...walkForward(days, { guesses: GUESSES, judgedFrom: from, restMinutes: [480, 600], restFrom: from })]
  const judged = walked.filter((day) => day.judged.length > 0)
  const demands = (day: (typeof walked)[number]) =>
    new Map(day.judged.map((one) => [varietyId(one.itemId), one.demand] as const))
  const worths = pieceWorths(SHOP, demands(judged[0] ?? fail()))
  return {
    shop: SHOP,
    walked: judged,
    before: walked.slice(0, walked.length - judged.length),
    daysKnown: walked.length,
    ahead: new Map(),
    journalDay,
    advised: new Map(judged.map((day) => [day.day.date, adviseDay(SHOP, demands(day))])),
    worthOf: (id) => worths.get(id) ?? null,
  }
}

function trustOf(given: TrustAsked): TrustJson {
  const steps = trustInSteps(given)
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

function fail(): never {
  throw new Error('no day was judged')
}

describe('how far to trust the forecasts', () => {
  it('[Q122] given weeks of a steady shop, when they are judged, then the board is nearer than both simple ways, and every sum is of the same rows', () => {
    const trust = trustOf(asked())
    const { off } = trust.each
    expect(trust).toMatchObject({ from: '2026-02-16', to: '2026-03-15', days: 28, daysKnown: 70 })
    expect(off?.rows).toBe(56)
    expect(off?.board).toBeLessThan(off?.lastWeek ?? 0)
    expect(off?.board).toBeLessThan(off?.lastFour ?? 0)
    expect(trust.varieties.map(({ id, rows }) => [id, rows])).toEqual([
      ['poppy', 28],
      ['sesame', 28],
    ])
    expect(trust.varieties.every(({ mase }) => mase !== null && mase < 1)).toBe(true)
    expect(trust.shop).toMatchObject({ rows: 28, held: null })
    expect(trust.shop.asked).toBeCloseTo(trust.each.asked * 2, 9)
    expect(trust.weekdays.map(({ id }) => id)).toEqual(['1', '2', '3', '4', '5', '6', '7'])
    expect(trust.rests.map(({ id }) => id)).toEqual(['480', '600'])
  })

  it('[Q124] given forecasts whose range holds by their own word, when few days are judged, then what was inside is told with what should have been', () => {
    const { held } = trustOf(asked()).each
    expect(held?.inside.of).toBe(56)
    expect(held?.inside.expected).toBeGreaterThanOrEqual(0.8 * 56)
    expect(held?.likely.expected).toBeGreaterThanOrEqual(0.5 * 56)
    expect(held?.inside.low).toBeLessThan((held?.inside.hits ?? 0) / 56)
    expect((held?.careful.hits ?? 0) <= (held?.plenty.hits ?? 0)).toBe(true)
  })

  it.each([
    // scipy.stats.binomtest(hits, of).proportion_ci(0.95, method='wilson'), scipy 1.x, computed
    [39, 48, 0.680601328507153, 0.8980860904515235],
    [0, 10, 0, 0.27753279986288926],
    [10, 10, 0.7224672001371109, 1],
    [1, 3, 0.06149194472039626, 0.7923403991979523],
  ])('[Q124] given %i of %i, when a share is told, then it lies between %f and %f', (hits, of, low, high) => {
    expect(wilson(hits, of).low).toBeCloseTo(low, 12)
    expect(wilson(hits, of).high).toBeCloseTo(high, 12)
  })

  it('[Q124] given varieties that all share a day’s luck, when their share is told, then it is as unsure as the days are few', () => {
    const alike = Array.from({ length: 10 }, (_, day) => ({ hits: day < 8 ? 20 : 0, of: 20 }))
    const apart = Array.from({ length: 10 }, () => ({ hits: 16, of: 20 }))
    const { low, high } = wilson(8, 10)
    expect(wilsonOfGroups(alike).low).toBeCloseTo(low, 6)
    expect(wilsonOfGroups(alike).high).toBeCloseTo(high, 6)
    expect(wilsonOfGroups(apart).low).toBeCloseTo(wilson(160, 200).low, 12)
    expect(wilsonOfGroups([])).toEqual({ hits: 0, of: 0, low: 0, high: 1 })
  })

  it('[Q121] given sold-out days, when accuracy is told, then how many rows are estimates, and the error without them', () => {
    const row = { date: '2026-01-05', asked: 50, isEstimated: true, point: 40, lastWeek: 30, lastFour: 30, said: null }
    const sold = { ...row, asked: 44, isEstimated: false }
    const accuracy = accuracyOf([row, sold])
    expect(accuracy.estimated).toBe(1)
    expect(accuracy.off?.board).toBe(7)
    expect(accuracy.offNotSoldOut).toEqual({ rows: 1, asked: 44, board: 4, lastWeek: 14, lastFour: 14 })
    expect(trustOf(asked(40)).each.estimated).toBeGreaterThan(10)
  })

  it('[Q122] given no row that all three ways have a number for, when accuracy is told, then nothing is compared', () => {
    const row = {
      date: '2026-01-05',
      asked: 0,
      isEstimated: false,
      point: 4,
      lastWeek: null,
      lastFour: null,
      said: null,
    }
    expect(accuracyOf([row])).toMatchObject({ off: null, wape: null, rows: 1 })
    expect(accuracyOf([])).toMatchObject({ off: null, wape: null, rows: 0, asked: 0, held: null })
  })
})

describe('what over- and under-baking cost', () => {
  const worth = { costCents: 50, dayOldCents: 40, lostCents: 100 }

  it('[Q125] given 30 left of which a day sells 24 as day-old, when the cost is told, then each has its share of what these bring', () => {
    const rows = [
      { date: '2026-01-05', worth, left: 20, lost: 0 },
      { date: '2026-01-05', worth, left: 10, lost: 0 },
      { date: '2026-01-06', worth, left: 3, lost: 7 },
    ]
    // 33 × 0.50 − (24 + 3) × 0.40, and 7 × 1.00
    expect(bakingCost(rows, 24)).toEqual({ leftPieces: 33, lostPieces: 7, leftCents: 570, lostCents: 700 })
    expect(bakingCost([...rows].reverse(), 24)).toEqual(bakingCost(rows, 24))
    expect(bakedAs(40, 46)).toEqual({ left: 0, lost: 6 })
  })

  it('[Q125] given a week that the journal knows, when costs are told, then as baked stands beside as advised, of the same days', () => {
    const known = (date: string): JournalDay | null => (date < '2026-03-09' ? null : journal(date))
    const { cost } = trustOf(asked(undefined, known))
    expect(cost.days).toBe(7)
    expect(cost.baked?.leftPieces).toBe(7 * 9)
    expect(cost.baked?.leftCents).toBe(7 * (9 * 45 - 9 * 90))
    expect(cost.baked?.lostPieces).toBe(0)
    expect(cost.advised.leftPieces).toBeGreaterThan(0)
    expect(trustOf(asked()).cost).toMatchObject({ days: 28, baked: null })
  })

  it('[Q125] given the advice and what the weekdays before sold, when both are held against what came, then the advice costs less', () => {
    const { advised, lastWeek, lastFour } = trustOf(asked()).cost
    const sum = (cost: typeof advised) => cost.leftCents + cost.lostCents
    expect(sum(advised)).toBeLessThan(sum(lastWeek))
    expect(sum(advised)).toBeLessThan(sum(lastFour))
  })
})

describe('what was typed beside the advice', () => {
  it('[Q129] given lines that went against the advice, when they are told, then how many were nearer to what was asked for and how many farther', () => {
    const from = asked()
    const date = '2026-03-10'
    const came = from.walked.find(({ day }) => day.date === date)?.judged.find(({ itemId }) => itemId === 'sesame')
    const pieces = came?.asked ?? 0
    const line = (typed: number, advised: number | null) => ({
      ...{ doughId: 'plain', varietyId: 'sesame', ordered: 0, pieces: typed, advised },
    })
    const wanted = [
      ...[line(pieces + 1, pieces + 9), line(pieces - 8, pieces), line(pieces, pieces), line(5, null)],
      line(pieces - 2, pieces + 7),
    ]
    const { overrides } = trustOf({
      ...from,
      journalDay: (one) => (one === date ? { ...journal(one), wanted } : null),
    })
    expect(overrides).toMatchObject({ changed: 3, nearer: 2, farther: 1 })
    expect(overrides.lines[2]).toEqual({
      ...{ date, doughId: 'plain', varietyId: 'sesame', advised: pieces + 9, typed: pieces + 1, asked: pieces },
      isEstimated: false,
    })
  })
})

function journal(date: string): JournalDay {
  const item = { sold: [], allotted: [], kitchen: [], unseen: 0, gone: [], wasted: 0, ordered: null }
  const items = ['poppy', 'sesame'].map((id, place) => ({ ...item, id, baked: 50, left: 4 + place, given: 0 }))
  return { date, openMinute: 360, closeMinute: 840, isClosed: true, items, wanted: [] }
}

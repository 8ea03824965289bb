import { describe, expect, it } from 'vitest'
import { frictionTrust, pacePercent } from '../../client/desk/dough/learnt-view.ts'
import { costOf, isSaved, moved, orderAct, orderDays } from '../../client/desk/dough/order-view.ts'
import { hourOffsetMs, timelineOf } from '../../client/desk/dough/timeline-view.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Friction } from '../../shared-core/dough/mix.ts'
import { formulaId, mixId } from '../../shared-core/ids.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { asked, plan, roomShop } from '../core/dough/acts-shop.ts'
import { stateWith } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'

const SHOP = roomShop()
const noonOf = (date: string) => epochMs(Date.parse(`${date}T18:00:00Z`))

function threeMixes(): State {
  const state = stateWith({ shop: SHOP })
  plan(state, [asked('raisin', { raisin: 80 }), asked('plain', { plain: 80 }), asked('plain', { plain: 80 })])
  return state
}

const dayOf = (state: State) =>
  must(new Map(orderDays(state, SHOP, noonOf).map((day) => [day.date, day])), '2026-11-24')

describe('the order of mixing at the desk', () => {
  it.each([
    ['c', 0, ['c', 'a', 'b']],
    ['a', 2, ['b', 'c', 'a']],
    ['b', 1, ['a', 'b', 'c']],
    ['a', 9, ['b', 'c', 'a']],
    ['c', -1, ['c', 'a', 'b']],
  ])('given %s put to %d, then %j', (id, to, expected) => {
    expect(moved(['a', 'b', 'c'], id, to)).toEqual(expected)
  })

  it('given an order that is saved, then it stands with its times, and another one does not', () => {
    const state = threeMixes()
    const day = dayOf(state)
    const turned = costOf(day, [...day.saved].reverse())
    expect(isSaved(day, turned)).toBe(false)
    play(state, orderAct(orderDays(state, SHOP, noonOf), { date: day.date, cost: turned, begin: 'soonest' }))
    expect(dayOf(state).saved).toEqual([...day.saved].reverse())
    expect(isSaved(dayOf(state), turned)).toBe(true)
    expect(isSaved(dayOf(state), costOf(dayOf(state), day.saved))).toBe(false)
  })

  it('given mixes of another day of mixing, then their order and times stay', () => {
    const state = threeMixes()
    play(state, { type: 'planMixes', date: '2026-11-27', mixes: [asked('plain', { plain: 60 })] })
    const days = orderDays(state, SHOP, noonOf)
    const later = must(new Map(days.map((day) => [day.date, day])), '2026-11-26')
    play(state, orderAct(days, { date: later.date, cost: costOf(later, later.saved), begin: 'latest' }))
    const act = orderAct(orderDays(state, SHOP, noonOf), {
      date: '2026-11-24',
      cost: dayOf(state).best,
      begin: 'soonest',
    })
    expect(act.mixes).toHaveLength(4)
    expect(act.mixes.at(-1)).toEqual({
      mixId: later.saved[0],
      startAtMs: costOf(later, later.saved).places[0]?.latestAtMs,
    })
  })
})

describe('the timeline', () => {
  it('given an order, then bars follow each other on one scale within the width, and hours are full ones', () => {
    const day = dayOf(threeMixes())
    const { rows, hours } = timelineOf(day.best, day.tasks, day.rules.washMs)
    expect(rows.map(({ id }) => id)).toEqual(day.best.order)
    for (const { bars, due } of rows) {
      for (const { left, width } of bars) {
        expect(left).toBeGreaterThanOrEqual(0)
        expect(left + width).toBeLessThanOrEqual(100.02)
      }
      const inTurn = bars.map(({ left }) => left)
      expect([...inTurn].sort((one, other) => one - other)).toEqual(inTurn)
      expect(due).toBeLessThanOrEqual(100)
    }
    expect(hours.every(({ atMs }) => atMs % 3_600_000 === 0)).toBe(true)
    expect(hours.length).toBeLessThanOrEqual(14)
    const inHalfHours = timelineOf(day.best, day.tasks, day.rules.washMs, 30 * 60_000)
    expect(inHalfHours.hours.every(({ atMs }) => (atMs + 1_800_000) % 3_600_000 === 0)).toBe(true)
  })
})

describe('full hours of the shop', () => {
  const clock = (offsetMinutes: number) => ({ zone: 'x', offsets: [{ fromMs: epochMs(0), offsetMinutes }] })

  it.each([
    [-360, 0],
    [600, 0],
    [330, 30],
    [-210, 30],
    [345, 45],
  ])('given a zone %d min from UTC, then they lie %d min after those of UTC, at any second', (offset, minutes) => {
    for (const seconds of [0, 59, 1_799, 1_801, 3_599])
      expect(hourOffsetMs(clock(offset), epochMs(1_795_000_000_000 + seconds * 1_000))).toBe(minutes * 60_000)
  })
})

describe('what is learnt', () => {
  const friction = (...values: readonly number[]): Friction => ({
    id: 'x',
    formulaId: formulaId('plain'),
    mixer: 'Spiral',
    factors: 3,
    readings: values.map((milliCelsius, index) => ({ atMs: epochMs(index), mixId: mixId(`m${index}`), milliCelsius })),
    milliCelsius: 13_000,
  })

  it.each([
    [[13_000, 13_200], 'few'],
    [[13_000, 13_200, 12_900], 'good'],
    [[13_000, 13_200, 12_900, 25_000], 'good'],
    [[8_000, 13_000, 18_000, 11_000, 16_000], 'spread'],
  ] as const)('given readings %j, then %s: one odd reading neither makes nor spoils trust', (values, trust) => {
    expect(frictionTrust(friction(...values)).trust).toBe(trust)
  })

  it('given a pace, then it is told in percent of the window', () => {
    expect(pacePercent({ pace: 904 })).toBe(90)
  })
})

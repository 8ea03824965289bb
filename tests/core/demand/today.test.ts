import { describe, expect, it } from 'vitest'
import { outlookOf } from '../../../shared-core/demand/outlook-of.ts'
import type { Today, TodayItem } from '../../../shared-core/demand/today.ts'
import { todayOf } from '../../../shared-core/demand/today-of.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import { freshOutlook } from '../../../shared-core/live/outlook.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at, lines } from '../support/make.ts'
import type { Recording } from '../support/record.ts'
import { shopWith } from '../support/shop.ts'
import { openDay, tallied } from './tallied.ts'

function todayAt(day: Recording, now: EpochMs): Today | null {
  const { state, tally } = tallied(day)
  return todayOf(state, tally, now)
}

function itemAt(day: Recording, now: EpochMs, id: string): TodayItem | undefined {
  return todayAt(day, now)?.items.find((item) => item.id === id)
}

/** The outlook where so many pieces of each are still asked for, evenly until the close, give or take a quarter. */
function outlookAt(
  day: Recording,
  now: EpochMs,
  asked: Readonly<Record<string, number>>,
  unknown: readonly string[] = [],
) {
  const today = todayAt(day, now)
  if (today === null) throw new Error('no day is open')
  const { nowMinute, closeMinute } = today
  const profile = [
    [nowMinute, 0],
    [closeMinute, 1],
  ] as const
  const ids = Object.keys(asked)
  const demandOf = (id: string) => ({ mean: asked[id] ?? 0, dispersion: 16, profile })
  const parts = { level: 1, weekday: 1, special: 1 }
  const basisOf = (id: string) => (unknown.includes(id) ? 'nothing' : 'few')
  const ahead = new Map(ids.map((id) => [id, { ...demandOf(id), basis: basisOf(id), parts } as const]))
  const rest = new Map(ids.map((id) => [id, { ...demandOf(id), soFar: 0, expected: 0 }]))
  return outlookOf({ shop: shopWith(), today, noonMs: at('12:00'), ahead, rest, kitchen: new Map() })
}

describe('today so far', () => {
  it('[Q106] given an open day, when told, then what went, is there, comes and is dough of no load', () => {
    const day = openDay()
    day.at('5:30', {
      type: 'setLoadList',
      loads: [{ shelfId: null, inAtMs: at('9:00'), lines: lines('rye', 12, 'sesame', 24) }],
    })
    day.at('6:30', { type: 'sell', lines: lines('sesame', 6) })
    day.at('7:00', { type: 'remove', varietyId: varietyId('sesame'), pieces: 1, fate: 'kitchen' })
    day.at('7:10', { type: 'keep', lines: lines('sesame', 3) })
    const today = todayAt(day, at('8:00'))
    expect(today).toMatchObject({
      date: '2026-11-24',
      openMinute: 360,
      closeMinute: 900,
      nowMinute: 480,
      changeoverMinute: 660,
      bakingIsOver: false,
    })
    expect(itemAt(day, at('8:00'), 'sesame')).toMatchObject({
      sold: [390, 6, 420, 1],
      unseen: 0,
      gone: [],
      stock: { mean: 14 },
      // In at 9:00, 16 min in the oven, 15 to cool.
      more: [{ minute: 571, pieces: 24 }],
      kept: 3,
    })
    expect(itemAt(day, at('8:00'), 'rye')).toMatchObject({ sold: [], gone: [360, 480], stock: { mean: 0 } })
    // 120 of plain dough, 36 baked, 24 still to be brought to the planned load; of rye there is none.
    expect([...(today?.chilled ?? [])]).toEqual([
      ['plain', 60],
      ['rye', 0],
    ])
  })

  it('[Q106] given varieties that are not made today, when told, then not among them', () => {
    expect(todayAt(openDay(), at('8:00'))?.items.map(({ id }) => id)).toEqual(['poppy', 'sesame'])
  })

  it('[Q106] given a changeover that slips, when told, then where it slipped to', () => {
    const day = openDay()
    day.at('8:00', { type: 'slipChangeover', slipMs: 15 * 60_000 })
    expect(todayAt(day, at('8:05'))?.changeoverMinute).toBe(675)
  })

  it('[Q106] given a day that is closed, when asked, then there is none', () => {
    const day = openDay()
    day.at('15:00', { type: 'closeDay' }, { confirmed: ['still-planned', 'still-baking'] as never })
    expect(todayAt(day, at('15:10'))).toBeNull()
  })

  it('[Q106] given a rod that leaks, when told, then less is there by as much as went unseen', () => {
    const day = openDay()
    for (const [clock, pieces] of [
      ['7:00', 20],
      ['8:00', 16],
      ['9:00', 12],
    ] as const)
      day.at(clock, { type: 'count', varietyId: varietyId('sesame'), pieces })
    const item = itemAt(day, at('10:00'), 'sesame')
    expect(item?.stock.mean).toBeLessThan(11)
    expect((item?.unseen ?? 0) + (item?.stock.mean ?? 0)).toBeCloseTo(24, 9)
  })
})

describe('the outlook of today', () => {
  const asked = { sesame: 120, poppy: 8 }

  it('[Q107] given a day, when looked ahead, then whole numbers in order, as the set-up has its varieties', () => {
    const day = openDay()
    day.at('6:30', { type: 'sell', lines: lines('sesame', 6) })
    const outlook = outlookAt(day, at('7:00'), asked)
    expect(outlook).toMatchObject({
      date: '2026-11-24',
      atMs: at('7:00'),
      closeAtMs: at('15:00'),
      changeoverAtMs: at('11:00'),
    })
    expect(outlook.varieties.map(({ varietyId: id }) => id)).toEqual(['sesame', 'poppy'])
    const [sesame, poppy] = outlook.varieties
    if (sesame === undefined || poppy === undefined) throw new Error('both are known')
    for (const { rest, leftAtClose, lost, beforeClosePercent, gone } of outlook.varieties) {
      expect(rest.q10 <= rest.q50 && rest.q50 <= rest.q90).toBe(true)
      const numbers = [rest.q10, rest.q50, rest.q90, leftAtClose, lost, beforeClosePercent]
      expect(numbers.every(Number.isInteger)).toBe(true)
      const times = [gone.t10Ms, gone.t50Ms, gone.t90Ms].flatMap((ms) => ms ?? [])
      expect(times).toEqual([...times].sort())
      expect(times.every((ms) => ms >= at('7:00') && ms <= at('15:00'))).toBe(true)
    }
    // Eighteen there, 120 asked for in eight hours: gone in an hour and a quarter or so. A dozen there, eight asked for.
    expect(sesame.beforeClosePercent).toBe(100)
    expect(sesame.gone.t50Ms).toBeGreaterThan(at('8:00'))
    expect(sesame.gone.t50Ms).toBeLessThan(at('8:30'))
    expect([sesame.leftAtClose, sesame.lost]).toEqual([0, 102])
    expect(poppy.beforeClosePercent).toBeLessThan(25)
    expect(poppy.gone.t50Ms).toBeNull()
    expect(sesame).toMatchObject({ basis: 'few', moreAtMs: null, beforeMorePercent: null, shortAtMs: null })
  })

  it('[Q107] given a variety of which nothing is known, when looked ahead, then nothing is said of it', () => {
    const day = openDay()
    const asked = { sesame: 120, poppy: 8 }
    const all = outlookAt(day, at('7:00'), asked).varieties
    const some = outlookAt(day, at('7:00'), asked, ['poppy']).varieties
    expect(all.map((one) => one.varietyId)).toEqual(['sesame', 'poppy'])
    expect(some.map((one) => one.varietyId)).toEqual(['sesame'])
    // Nor does it take of the last loads what the others may need.
    expect(some).toEqual(outlookAt(day, at('7:00'), { sesame: 120 }).varieties)
  })

  it('[Q107] given more on the way after it will be gone, when looked ahead, then from when to when there is none', () => {
    const day = openDay()
    day.at('6:30', {
      type: 'setLoadList',
      loads: [{ shelfId: null, inAtMs: at('9:00'), lines: lines('sesame', 36, 'poppy', 12) }],
    })
    const [sesame, poppy] = outlookAt(day, at('7:00'), asked).varieties
    expect(sesame?.moreAtMs).toBe(at('9:31'))
    expect(sesame?.beforeMorePercent).toBeGreaterThan(50)
    expect(sesame?.shortAtMs).toBeGreaterThan(at('7:00'))
    expect(sesame?.shortAtMs).toBeLessThan(at('9:31'))
    expect(poppy).toMatchObject({ moreAtMs: at('9:31'), shortAtMs: null })
  })

  it('[Q107] given the last loads ahead, when looked ahead, then what is left at the changeover and what they should carry', () => {
    const day = openDay()
    const outlook = outlookAt(day, at('9:00'), asked)
    const [sesame, poppy] = outlook.varieties
    expect(outlook.lastLoadInAtMs).toBe(at('10:44'))
    expect(sesame?.atChangeover?.more).toBeGreaterThan(0)
    expect(sesame?.atChangeover?.lastsPercent).toBeLessThan(poppy?.atChangeover?.lastsPercent ?? 0)
    expect(outlookAt(day, at('11:30'), asked).varieties.map(({ atChangeover }) => atChangeover)).toEqual([null, null])
  })

  it('[Q107] given a variety of which nothing is foreseen, when looked ahead, then it is left out', () => {
    expect(outlookAt(openDay(), at('9:00'), { sesame: 12 }).varieties.map(({ varietyId: id }) => id)).toEqual([
      'sesame',
    ])
  })

  it('[Q108] given an outlook, when ten minutes have passed, then it is shown no more', () => {
    const outlook = outlookAt(openDay(), at('9:00'), asked)
    expect(freshOutlook(outlook, at('9:10'))).toBe(outlook)
    expect(freshOutlook(outlook, epochMs(at('9:10') + 1))).toBeNull()
    expect(freshOutlook(null, at('9:00'))).toBeNull()
  })
})

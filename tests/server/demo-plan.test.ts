import { describe, expect, it } from 'vitest'
import { demoLoadList } from '../../server/demo/demo-load-list.ts'
import { demoShop, demoZone } from '../../server/demo/demo-shop.ts'
import { doughForDay } from '../../server/demo/dough-for-day.ts'
import { drawFor, pick } from '../../server/demo/draw.ts'
import { isZone, localDate, localInstant } from '../../server/live/shop-clock.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { loadWindow, windowOf } from '../../shared-core/shop/windows.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'

const MINUTE_MS = 60_000
const at = (utc: string) => epochMs(Date.parse(`2026-11-24T${utc}:00Z`))

describe('the demo’s zone', () => {
  it('given any minute of a day, then it is a known zone in which it is 6:47 to 7:46', () => {
    for (let minute = 0; minute < 24 * 60; minute += 1) {
      const nowMs = epochMs(at('00:00') + minute * MINUTE_MS + 30_000)
      const zone = demoZone(nowMs)
      expect(isZone(zone), zone).toBe(true)
      const localMinutes = (nowMs - localInstant(zone, localDate(zone, nowMs), 0)) / MINUTE_MS
      expect(localMinutes, zone).toBeGreaterThanOrEqual(6 * 60 + 47)
      expect(localMinutes, zone).toBeLessThan(7 * 60 + 47)
    }
  })

  it.each([
    ['12:00', 'Etc/GMT+5', '2026-11-24'],
    ['07:00', 'Etc/GMT', '2026-11-24'],
    ['19:00', 'Etc/GMT-12', '2026-11-25'],
    ['18:00', 'Etc/GMT+11', '2026-11-24'],
    ['23:30', 'Etc/GMT-8', '2026-11-25'],
  ])('given %s UTC, then the shop is in %s and the date there is %s', (utc, zone, date) => {
    expect(demoShop(at(utc)).profile.zone).toBe(zone)
    expect(localDate(demoZone(at(utc)), at(utc))).toBe(date)
  })
})

describe('the demo’s list of loads', () => {
  const shop = demoShop(at('12:00'))
  const dayStartMs = at('05:00')
  const list = demoLoadList(shop, { dayStartMs, waveAtMs: dayStartMs + 7 * 60 * MINUTE_MS })
  const minuteOf = (load: (typeof list)[number]) => (load.inAtMs - dayStartMs) / MINUTE_MS

  it('given the hours, then it begins when the oven is hot, in waves of three shelves, and is out by the changeover', () => {
    const { ovenReadyMinute, changeoverFromMinute } = shop.hours
    expect(minuteOf(must(new Map(list.entries()), 0))).toBe(5 * 60)
    expect(list.slice(0, 3).map(({ shelfId }) => shelfId as string)).toEqual(['1', '2', '3'])
    for (const load of list) {
      const ids = load.lines.map(({ varietyId }) => varietyId)
      const bakeMinutes = (loadWindow(shop, 'bake', ids)?.targetMs ?? 0) / MINUTE_MS
      expect(minuteOf(load)).toBeGreaterThanOrEqual(ovenReadyMinute)
      expect(minuteOf(load) + bakeMinutes).toBeLessThanOrEqual(changeoverFromMinute ?? 0)
    }
  })

  it('given the shelves, then no load is more than fits, all lines are whole boards, and a shelf is free again in time', () => {
    for (const load of list) {
      expect(piecesOf(load.lines)).toBeLessThanOrEqual(must(shop.shelves, load.shelfId).pieces)
      expect(load.lines.filter(({ pieces }) => pieces % shop.boards.pieces !== 0)).toEqual([])
    }
    for (const shelfId of shop.shelves.keys()) {
      const times = list.filter((load) => load.shelfId === shelfId).map(minuteOf)
      const gaps = times.slice(1).map((minute, index) => minute - (times[index] ?? 0))
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(21)
    }
  })

  it('given varieties that bake at different speeds, then none burns while another gets done', () => {
    for (const { lines } of list) {
      const windows = lines.map(({ varietyId }) =>
        windowOf(shop, 'bake', must(shop.varieties, varietyId).doughId, varietyId),
      )
      const slowest = Math.max(...windows.map((window) => window?.targetMs ?? 0))
      expect(windows.filter((window) => (window?.latestMs ?? 0) < slowest)).toEqual([])
    }
  })

  it('given a day, then every variety is baked, and the dough room makes enough of each dough', () => {
    const baked = new Set(list.flatMap(({ lines }) => lines.map(({ varietyId }) => varietyId)))
    expect(baked.size).toBe(shop.varieties.size)
    const total = piecesOf(list.flatMap(({ lines }) => lines))
    expect(total).toBeGreaterThan(1_400)
    expect(total).toBeLessThan(2_000)
    const dough = doughForDay(shop)
    expect(dough.filter(({ pieces, trayPieces }) => pieces % trayPieces !== 0)).toEqual([])
    expect(piecesOf(dough)).toBeGreaterThan(total)
  })
})

describe('chance', () => {
  it('given a seed and a name, then it is always the same, and another name or seed is another', () => {
    const shares = (seed: number, name: string) => Array.from({ length: 5 }, drawFor(seed, name).share)
    expect(shares(1, 'flip:a.1')).toEqual(shares(1, 'flip:a.1'))
    expect(shares(1, 'flip:a.1')).not.toEqual(shares(1, 'flip:a.2'))
    expect(shares(1, 'flip:a.1')).not.toEqual(shares(2, 'flip:a.1'))
  })

  it('given many names, then the shares are spread evenly', () => {
    const tenths = new Array<number>(10).fill(0)
    for (let n = 0; n < 20_000; n += 1) {
      const tenth = Math.floor(drawFor(7, `customer:${n}`).share() * 10)
      tenths[tenth] = (tenths[tenth] ?? 0) + 1
    }
    // 2,000 each; five standard deviations of a binomial are 212.
    for (const count of tenths) expect(Math.abs(count - 2_000)).toBeLessThan(212)
  })

  it('given weights, then what has none is never picked', () => {
    const draw = drawFor(1, 'pick')
    const picked = Array.from({ length: 200 }, () => pick(draw, ['a', 'b', 'c'], (one) => (one === 'b' ? 0 : 1)))
    expect(new Set(picked)).toEqual(new Set(['a', 'c']))
    expect(pick(draw, ['a'], () => 0)).toBeNull()
  })
})

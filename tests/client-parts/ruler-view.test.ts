import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hourMarks } from '../../client/parts/ruler-hours.ts'
import type { RulerDay } from '../../client/parts/ruler-view.ts'
import { rulerView } from '../../client/parts/ruler-view.ts'

const HOUR_MS = 3_600_000
/** Midnight of a day in a place six hours behind UTC. */
const MIDNIGHT_MS = Date.UTC(2026, 10, 24, 6)
const at = (hour: number) => MIDNIGHT_MS + hour * HOUR_MS
const offsetAtMs = () => -6 * HOUR_MS

const day: RulerDay = {
  fromMs: at(4),
  toMs: at(15),
  nowMs: at(6.8),
  lastLoad: { atMs: at(10.566), text: 'last load in by 10:34' },
  changeover: { fromMs: at(11), toMs: at(12), text: 'changeover' },
  secondMenu: { fromMs: at(12), toMs: at(15) },
  orders: [],
}
const order = (hour: number, text: string, trouble = false) => ({
  key: `${text}${hour}`,
  atMs: at(hour),
  text,
  trouble,
})
const more = (count: number) => `+${count}`
const wide = { widthPx: 1200, fontPx: 20, lines: 2 } as const
const textsOf = (view: ReturnType<typeof rulerView>) => view.labels.map(({ text }) => text).sort()

describe('the ruler', () => {
  it('given room, names everything in the line next to it', () => {
    const view = rulerView({ ...day, orders: [order(7.5, 'van'), order(8.25, '3 dz')] }, wide, more)
    expect(textsOf(view)).toEqual(['3 dz', 'changeover', 'last load in by 10:34', 'van'])
    expect(view.labels.every(({ line }) => line === 0)).toBe(true)
    expect(view.more).toBe('')
  })

  it('given a crowd, drops labels to the second line before it hides one', () => {
    const crowd = [order(9.25, '9:15 3 dz, short 6 till 9:04', true), order(10, 'van')]
    const view = rulerView({ ...day, orders: crowd }, wide, more)
    expect(new Set(view.labels.map(({ line }) => line))).toEqual(new Set([0, 1]))
    expect(textsOf(view)).toContain('last load in by 10:34')
    expect(textsOf(view)).toContain('9:15 3 dz, short 6 till 9:04')
  })

  it('given a crowd on a wall, raises what belongs to the day so that nothing of it is lost', () => {
    const orders = [order(9.25, '9:15 3 dz, short 6 till 9:04', true), order(12.5, '2 dz'), order(14.8, 'pick-up')]
    const view = rulerView({ ...day, nowMs: at(8.86), orders }, { widthPx: 1880, fontPx: 44, lines: 2 }, more)
    const ofTheDay = view.labels.filter(({ text }) => ['last load in by 10:34', 'changeover'].includes(text))
    expect(ofTheDay.map(({ line }) => line)).toEqual([1, 1])
    expect(textsOf(view)).toContain('9:15 3 dz, short 6 till 9:04')
    expect(view.more).toBe('')
  })

  it('given a label in the way of the next order, leans it aside', () => {
    const orders = [order(9.25, '9:15 3 dz, short 6 till 9:04', true), order(10, 'van')]
    const counter = { ...day, nowMs: at(8.86), lastLoad: undefined, orders }
    const view = rulerView(counter, { widthPx: 1224, fontPx: 20, lines: 2 }, more)
    expect(textsOf(view)).toEqual(['9:15 3 dz, short 6 till 9:04', 'changeover', 'van'])
  })

  it('given too many orders, hides the later ones and tells how many', () => {
    const orders = Array.from({ length: 30 }, (_, index) => order(7 + index * 0.1, `order ${index}`))
    const view = rulerView({ ...day, orders }, wide, more)
    const named = view.labels.filter(({ text }) => text.startsWith('order ')).length
    expect(named).toBeGreaterThan(3)
    expect(view.more).toBe(`+${30 - named}`)
    expect(textsOf(view)).toContain('order 0')
  })

  it('[I73] names the last dip where there is room, and neither counts it nor lets it hide anything', () => {
    const dip = { ...day, lastDip: { atMs: at(10.45), text: 'last dip' } }
    expect(textsOf(rulerView(dip, wide, more))).toContain('last dip')
    const tight = rulerView(dip, { ...wide, widthPx: 400, lines: 1 }, more)
    expect([textsOf(tight).includes('last dip'), tight.more]).toEqual([false, ''])
    expect(textsOf(tight)).toEqual(textsOf(rulerView(day, { ...wide, widthPx: 400, lines: 1 }, more)))
    expect(textsOf(rulerView({ ...dip, nowMs: at(10.5) }, wide, more))).not.toContain('last dip')
  })

  it('names an order in trouble before all else, past or not, and no other past one', () => {
    const orders = [order(5, 'gone'), order(6, 'short', true), order(6.9, 'next')]
    const view = rulerView({ ...day, orders }, { ...wide, widthPx: 90 }, more)
    expect(textsOf(view)).toContain('short')
    expect(textsOf(view)).not.toContain('gone')
  })

  it('never lets two labels touch, lets none leave the ruler, and keeps each at its mark', () => {
    const orders = fc.array(
      fc.record({
        hour: fc.double({ min: 4, max: 15, noNaN: true }),
        text: fc.string({ minLength: 1, maxLength: 24 }),
        trouble: fc.boolean(),
      }),
      { maxLength: 20 },
    )
    const room = fc.record({
      widthPx: fc.integer({ min: 60, max: 2_000 }),
      fontPx: fc.integer({ min: 12, max: 60 }),
      lines: fc.constantFrom(1 as const, 2 as const),
    })
    fc.assert(
      fc.property(orders, room, (some, space) => {
        const listed = some.map(({ hour, text, trouble }, index) => ({
          key: String(index),
          atMs: at(hour),
          text,
          trouble,
        }))
        const { labels, more: count } = rulerView({ ...day, orders: listed }, space, more)
        for (const label of labels) {
          expect(label.line).toBeLessThan(space.lines)
          expect(label.leftX).toBeGreaterThanOrEqual(0)
          expect(label.leftX + label.widthPx).toBeLessThanOrEqual(space.widthPx)
          expect(label.markX).toBeGreaterThanOrEqual(label.leftX - 1e-6)
          expect(label.markX).toBeLessThanOrEqual(label.leftX + label.widthPx + 1e-6)
          for (const other of labels) if (other !== label) expect(clash(label, other)).toBe(false)
        }
        const wanted = listed.filter(({ trouble, atMs }) => trouble || atMs >= day.nowMs).length
        const named = labels.filter(({ key }) => key.startsWith('order ')).length
        expect(count).toBe(named === wanted ? '' : `+${wanted - named}`)
      }),
    )
  })
})

function clash(one: { line: number; leftX: number; widthPx: number; markX: number }, other: typeof one): boolean {
  const [fromX, toX] = one.line === other.line ? [other.leftX, other.leftX + other.widthPx] : [other.markX, other.markX]
  // A label in the upper line stands over marks of the lower one without harm; its leader must not cross a lower label.
  if (one.line > other.line) return false
  return one.leftX < toX && fromX < one.leftX + one.widthPx
}

describe('hour numbers', () => {
  const text = (ms: number) => String(Math.round((ms - MIDNIGHT_MS) / HOUR_MS))
  it.each([
    [1200, ['5', '6', '7', '8', '9', '10', '11', '12', '13', '14']],
    [400, ['6', '8', '10', '12', '14']],
    [240, ['6', '9', '12']],
    [60, ['12']],
  ])('on %i px keep apart and whole', (widthPx, numbers) => {
    const marks = hourMarks({ fromMs: at(4), toMs: at(15), widthPx, fontPx: 20 }, offsetAtMs, text)
    expect(marks.map((mark) => mark.text)).toEqual(numbers)
  })

  it('stand at full hours of a place that is half an hour off', () => {
    const marks = hourMarks(
      { fromMs: at(4), toMs: at(6), widthPx: 500, fontPx: 20 },
      () => 5.5 * HOUR_MS,
      (ms) => String(ms),
    )
    expect(marks.map(({ atMs }) => (atMs + 5.5 * HOUR_MS) % HOUR_MS)).toEqual([0, 0])
  })

  it('in the night when clocks go forward skip the hour that is missing', () => {
    const changeMs = Date.UTC(2026, 2, 8, 8)
    const offset = (ms: number) => (ms < changeMs ? -6 : -5) * HOUR_MS
    const local = (ms: number) => String(Math.floor((ms + offset(ms)) / HOUR_MS) % 24)
    const marks = hourMarks(
      { fromMs: changeMs - 2.5 * HOUR_MS, toMs: changeMs + 2.5 * HOUR_MS, widthPx: 900, fontPx: 20 },
      offset,
      local,
    )
    expect(marks.map((mark) => mark.text)).toEqual(['0', '1', '3', '4', '5'])
  })

  it.each([
    [at(15), at(4)],
    [at(4), at(4)],
    [at(0), at(49)],
  ])('are refused for a day from %i to %i', (fromMs, toMs) => {
    expect(() => hourMarks({ fromMs, toMs, widthPx: 100, fontPx: 20 }, offsetAtMs, text)).toThrow('48 hours')
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clockMinute,
  clockText,
  dwellObject,
  spanFromObject,
  spanObject,
  spanText,
} from '../../../shared-core/shop/human-time.ts'
import { inOrder, inUse } from '../../../shared-core/shop/in-order.ts'
import { nearestWord } from '../../../shared-core/shop/nearest-word.ts'
import { pointer } from '../../../shared-core/shop/problems.ts'
import type { BatchStage, LineAct, WindowStage } from '../../../shared-core/shop/shop.ts'
import { BATCH_STAGES, LINE_ACTS, WINDOW_STAGES } from '../../../shared-core/shop/stages.ts'
import { durationMs } from '../../../shared-core/units.ts'

describe('the word that was probably meant', () => {
  const KNOWN = ['size', 'name', 'trayPieces', 'secondMenu']
  it.each([
    ['naem', 'name'],
    ['Name', 'name'],
    ['nmae', 'name'],
    ['names', 'name'],
    ['nam', 'name'],
    ['nxxe', null],
    ['', null],
    ['traypeices', 'trayPieces'],
    ['second_menu', 'secondMenu'],
    ['tray', null],
    ['x'.repeat(10_000), null],
  ])('given %s, then %s', (word, nearest) => {
    expect(nearestWord(word, KNOWN)).toBe(nearest)
  })
})

describe('times as people write them', () => {
  it.each([
    [0, '00:00'],
    [270, '04:30'],
    [1_439, '23:59'],
  ])('given minute %i, then %s, and back', (minute, text) => {
    expect(clockText(minute)).toBe(text)
    expect(clockMinute(text)).toBe(minute)
  })

  it.each([
    [300_000, { minutes: 5 }],
    [90_000, { seconds: 90 }],
    [0, { minutes: 0 }],
    [1_500, { seconds: 1.5 }],
  ])('given %i ms, then %j', (ms, span) => {
    expect(spanObject(durationMs(ms))).toEqual(span)
  })

  it('given any whole milliseconds, then what is written comes back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 14 * 24 * 3_600_000 }), (ms) => {
        expect(spanFromObject(spanObject(durationMs(ms)))).toBe(ms)
      }),
    )
  })

  it('given a window, then it is written in its own unit', () => {
    const bounds = { earliestMs: durationMs(180_000), targetMs: durationMs(210_000), latestMs: durationMs(240_000) }
    expect(dwellObject({ ...bounds, unit: 'min' })).toEqual({ unit: 'min', earliest: 3, target: 3.5, latest: 4 })
    expect(spanText(durationMs(210_000), 'min')).toBe('3.5 min')
  })
})

describe('lists', () => {
  it('in the order of the shop, ties by id, the retired last or left out', () => {
    const one = (id: string, order: number, retired = false) => [id, { id, order, retired }] as const
    const map = new Map([one('d', 0, true), one('c', 1), one('b', 1), one('a', 2)])
    expect(inOrder(map).map(({ id }) => id)).toEqual(['b', 'c', 'a', 'd'])
    expect(inUse(map).map(({ id }) => id)).toEqual(['b', 'c', 'a'])
  })

  it('of the words of the line are complete: the compiler checks these three lines', () => {
    const stages: Record<BatchStage, true> = keyed(BATCH_STAGES)
    const windows: Record<WindowStage, true> = keyed(WINDOW_STAGES)
    const acts: Record<LineAct, true> = keyed(LINE_ACTS)
    expect([stages, windows, acts].map((list) => Object.keys(list).length)).toEqual([6, 8, 7])
  })
})

describe('a JSON Pointer', () => {
  it.each([
    [[], ''],
    [['varieties', 3, 'dough'], '/varieties/3/dough'],
    // RFC 6901, section 5
    [['a/b'], '/a~1b'],
    [['m~n'], '/m~0n'],
    [[''], '/'],
  ])('given %j, then %s', (path, text) => {
    expect(pointer(path)).toBe(text)
  })
})

function keyed<Word extends string>(words: readonly Word[]): Record<Word, true> {
  return Object.fromEntries(words.map((word) => [word, true])) as Record<Word, true>
}

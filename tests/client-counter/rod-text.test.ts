import { describe, expect, it } from 'vitest'
import type { CounterRod } from '../../client/counter/counter-rods.ts'
import { rodFacts, rodText } from '../../client/counter/rod-text.ts'
import { at } from '../core/support/make.ts'
import { rod, wordsIn } from './counter-maker.ts'

const TIME = { nowMs: at('8:52'), closeMs: at('15:00') }
const more = (pieces: number, clock: string): Pick<CounterRod, 'onTheWay'> => ({
  onTheWay: [{ pieces, readyAtMs: at(clock), from: 'oven' }],
})

describe('what is said of a rod', () => {
  it.each([
    ['no pace, nothing to come', {}, '', 'no more today', 'quiet', false],
    ['a pace that reaches past closing', { goneAtMs: at('15:30') }, 'lasts to close', '', 'quiet', false],
    [
      'gone within the hour, none to come',
      { goneAtMs: at('9:10') },
      'gone about 9:10',
      'no more today',
      'trouble',
      true,
    ],
    ['gone later, none to come', { goneAtMs: at('12:30') }, 'gone about 12:30', 'no more today', 'quiet', false],
    [
      'gone before more comes',
      { goneAtMs: at('9:00'), ...more(36, '9:04') },
      'none 9:00–9:04',
      '36 at 9:04',
      'coming',
      true,
    ],
    [
      'more before it is gone',
      { goneAtMs: at('9:40'), ...more(24, '9:20') },
      'gone about 9:40',
      '24 at 9:20',
      'coming',
      false,
    ],
    ['none left', { likely: 0, goneSinceMs: at('8:47') }, 'gone since 8:47', 'no more today', 'trouble', true],
    [
      'none left, more to come',
      { likely: 0, goneSinceMs: at('8:47'), ...more(18, '9:04') },
      'gone since 8:47',
      '18 at 9:04',
      'coming',
      true,
    ],
    ['never any', { likely: 0 }, '', 'none today', 'quiet', false],
    ['never any yet', { likely: 0, ...more(18, '9:04') }, '', '18 at 9:04', 'coming', false],
  ] as const)('given %s, then it says when and what comes', (_what, parts, when, comes, moreTone, isTrouble) => {
    expect(rodText(rod(parts), TIME, wordsIn('en'))).toMatchObject({ when, more: comes, moreTone, isTrouble })
  })

  it('given a gap in Spanish, then it is said in words too', () => {
    const short = rod({ goneAtMs: at('8:14'), ...more(36, '8:43') })
    const time = { nowMs: at('7:52'), closeMs: at('15:00') }
    expect(rodText(short, time, wordsIn('es'))).toMatchObject({ when: 'sin 8:14–8:43', isTrouble: true })
  })

  it.each([
    ['en', { how: 'counted', atMs: at('7:30'), lessSales: false }, 'counted 7:30'],
    ['en', { how: 'counted', atMs: at('7:30'), lessSales: true }, 'counted 7:30, less sales'],
    ['en', { how: 'baked', atMs: at('7:50') }, 'baked 7:50'],
    ['es', { how: 'counted', atMs: at('7:30'), lessSales: true }, 'contado 7:30, menos ventas'],
    ['en', { how: 'nothing' }, ''],
  ] as const)('given %s and a number that rests on %o, then it says "%s"', (language, basis, expected) => {
    expect(rodText(rod({ basis }), TIME, wordsIn(language)).known).toBe(expected)
  })

  it('given all of it known, then the facts come in the order in which a seller asks', () => {
    const full = rod({ kept: 6, goneAtMs: at('9:00'), perHour: 30, ...more(36, '9:04') })
    expect(rodFacts(full, TIME, wordsIn('en'))).toEqual([
      '24 for sale',
      'kept 6',
      'none 9:00–9:04 at this pace (30 an hour)',
      '36 at 9:04',
      'counted 6:40',
    ])
  })
})

import { describe, expect, it } from 'vitest'
import type { CounterRod } from '../../client/counter/counter-rods.ts'
import { rackDay, rodFacts, rodText } from '../../client/counter/rod-text.ts'
import { at, stateWith } from '../core/support/make.ts'
import { goneBy, lookingAt, outlookWith } from '../core/support/outlook.ts'
import { play } from '../core/support/play.ts'
import { rod, wordsIn } from './counter-maker.ts'

const TIME = { nowMs: at('8:52'), closeMs: at('15:00'), day: 'running' } as const
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
      '36 about 9:04',
      'coming',
      true,
    ],
    [
      'more before it is gone',
      { goneAtMs: at('9:40'), ...more(24, '9:20') },
      'gone about 9:40',
      '24 about 9:20',
      'coming',
      false,
    ],
    ['none left', { forSale: 0, goneSinceMs: at('8:47') }, 'sold out 8:47', 'no more today', 'trouble', true],
    [
      'none left, more to come',
      { forSale: 0, goneSinceMs: at('8:47'), ...more(18, '9:04') },
      'sold out 8:47',
      '18 about 9:04',
      'coming',
      true,
    ],
    ['never any', { forSale: 0 }, '', 'none today', 'quiet', false],
    ['never any yet', { forSale: 0, ...more(18, '9:04') }, '', '18 about 9:04', 'coming', false],
  ] as const)('given %s, then it says when and what comes', (_what, parts, when, comes, moreTone, isTrouble) => {
    expect(rodText(rod(parts), TIME, wordsIn('en'))).toMatchObject({ when, more: comes, moreTone, isTrouble })
  })

  it.each([
    ['8:30', ''],
    ['8:47', 'counted 8:47'],
  ] as const)(
    'given none left since 8:47 and a count of %s, then it says "%s" of how that is known',
    (clock, known) => {
      const basis = { how: 'counted', atMs: at(clock), isNow: false } as const
      expect(rodText(rod({ forSale: 0, goneSinceMs: at('8:47'), basis }), TIME, wordsIn('en')).known).toBe(known)
    },
  )

  it.each([
    ['en', 'ahead', { forSale: 0 }, 'none yet'],
    ['es', 'ahead', { forSale: 0 }, 'todavía no hay'],
    ['en', 'ahead', {}, ''],
    ['en', 'closed', { forSale: 0 }, 'closed'],
    ['es', 'closed', { forSale: 0, goneSinceMs: at('8:47') }, 'cerrado'],
    ['en', 'closed', { goneAtMs: at('9:10') }, 'closed'],
  ] as const)('given in %s a rack of a day that is %s and %o, then it says "%s"', (language, day, parts, text) => {
    const said = rodText(rod(parts), { ...TIME, day }, wordsIn(language))
    expect(said).toMatchObject({ when: '', more: text, moreTone: 'quiet', isTrouble: false })
  })

  it('given a day before its first load, in it and after the close, then the rack knows which', () => {
    const used = { touchedAtMs: at('5:00'), boardsFreed: 0, boardsWetAtMs: at('5:05') }
    expect(rackDay(stateWith({ day: null }))).toBe('ahead')
    expect(rackDay(stateWith())).toBe('ahead')
    const state = stateWith({ shelves: { s1: used } })
    expect(rackDay(state)).toBe('running')
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    expect(rackDay(state)).toBe('closed')
    play(state, { type: 'openDay' }, { nowMs: at('4:00', 1) })
    expect(rackDay(state)).toBe('ahead')
  })

  it('given a gap in Spanish, then it is said in words too', () => {
    const short = rod({ goneAtMs: at('8:14'), ...more(36, '8:43') })
    const time = { nowMs: at('7:52'), closeMs: at('15:00'), day: 'running' } as const
    expect(rodText(short, time, wordsIn('es'))).toMatchObject({ when: 'sin 8:14–8:43', isTrouble: true })
  })

  it('given pieces that are out and cool, then their time is sure; of a load it is about', () => {
    const cooling = rod({ onTheWay: [{ pieces: 12, readyAtMs: at('9:04'), from: 'cooling' }] })
    expect(rodText(cooling, TIME, wordsIn('en')).more).toBe('12 at 9:04')
    expect(rodText(rod(more(12, '9:04')), TIME, wordsIn('es')).more).toBe('12 hacia 9:04')
  })

  it('[I77] given pieces that are dough still, when more is told, then it is planned and not on the way', () => {
    const dough = rod({ onTheWay: [{ pieces: 12, readyAtMs: at('9:04'), from: 'planned' }] })
    expect(rodText(dough, TIME, wordsIn('en')).more).toBe('12 planned 9:04')
    expect(rodText(dough, TIME, wordsIn('es')).more).toBe('12 plan 9:04')
    const sold = { ...dough, forSale: 0, likely: 0, goneSinceMs: at('8:47') }
    expect(rodFacts(sold, TIME, wordsIn('en'))[1]).toBe('12 more planned 9:04')
    expect(rodFacts(sold, TIME, wordsIn('es'))[1]).toBe('12 más previstos 9:04')
  })

  it('given a rod that may hold none, then it says so before anybody calls it sold out', () => {
    const low = rod({ forSale: 2, likely: 0, within: 2 })
    expect(rodText(low, TIME, wordsIn('en'))).toMatchObject({ when: 'may be gone', isTrouble: true })
  })

  it.each([
    ['en', { how: 'counted', atMs: at('7:30'), isNow: false }, 'counted 7:30'],
    ['en', { how: 'counted', atMs: at('8:52'), isNow: true }, 'counted now'],
    ['en', { how: 'baked', atMs: at('7:50') }, 'baked 7:50'],
    ['es', { how: 'counted', atMs: at('7:30'), isNow: false }, 'contado 7:30'],
    ['en', { how: 'nothing' }, ''],
  ] as const)('given %s and a number that rests on %o, then it says "%s"', (language, basis, expected) => {
    expect(rodText(rod({ basis }), TIME, wordsIn(language)).known).toBe(expected)
  })

  it.each([
    ['an estimate', { likely: 12, within: 3 }, 'about 12 (± 3), counted 6:40', 'about'],
    ['a count to the piece', { likely: 12 }, '12, counted 6:40', ''],
    ['a load', { likely: 36, basis: { how: 'baked', atMs: at('9:05') } as const }, '36, baked 9:05', ''],
    ['nothing', { likely: 4, basis: { how: 'nothing' } as const }, '4 for sale', ''],
  ])('given a number that rests on %s, then it says how well it is known', (_what, parts, fact, about) => {
    const one = rod(parts)
    expect(rodFacts(one, TIME, wordsIn('en'))[0]).toBe(fact)
    expect(rodText(one, TIME, wordsIn('en')).about).toBe(about)
  })

  it.each([
    ['en', more(24, '9:35'), ['sold out since 9:10', '24 more about 9:35']],
    ['en', {}, ['sold out since 9:10', 'no more today']],
    ['es', more(24, '9:35'), ['agotado desde las 9:10', '24 más hacia las 9:35']],
  ] as const)('given a rod sold out, then it says in %s since when and what comes', (language, parts, facts) => {
    const gone = rod({ forSale: 0, likely: 0, goneSinceMs: at('9:10'), ...parts })
    expect(rodFacts(gone, TIME, wordsIn(language))).toEqual(facts)
  })

  it('given all of it known, then the facts come in the order in which a seller asks', () => {
    const full = rod({ kept: 6, dayOld: 2, goneAtMs: at('9:00'), perHour: 30, ...more(36, '9:04') })
    expect(rodFacts(full, TIME, wordsIn('en'))).toEqual([
      '24, counted 6:40',
      'kept 6',
      'day-old 2',
      'none 9:00–9:04 at this pace (30 an hour)',
      '36 about 9:04',
    ])
  })

  it('given kept and day-old pieces, then the rod has room for what is kept, and tells the day-old where nothing is', () => {
    expect(rodText(rod({ kept: 6, dayOld: 2 }), TIME, wordsIn('en')).apart).toBe('kept 6')
    expect(rodText(rod({ dayOld: 2 }), TIME, wordsIn('en')).apart).toBe('day-old 2')
  })

  it.each([
    ['lasts', {}, {}, 'lasts to close', 'about 8 left'],
    ['lasts just so', { leftAtClose: 0 }, {}, 'lasts to close', 'few left'],
    [
      'lasts, with more to come',
      { moreAtMs: at('9:04'), beforeMorePercent: 3 },
      more(24, '9:04'),
      'lasts to close',
      '24 about 9:04',
    ],
    [
      'may be gone',
      { beforeClosePercent: 31, gone: goneBy('11:20', null, null) },
      {},
      'may run out 11:20',
      'no more today',
    ],
    [
      'is gone',
      { beforeClosePercent: 80, gone: goneBy('9:10', '9:40', '10:30') },
      {},
      'gone about 9:40',
      'no more today',
    ],
    [
      'may not reach what comes',
      { beforeMorePercent: 30, moreAtMs: at('9:04') },
      more(24, '9:04'),
      'may run out before',
      '24 about 9:04',
    ],
    [
      'is gone before more comes',
      { beforeMorePercent: 70, moreAtMs: at('9:04'), shortAtMs: at('8:58') },
      more(24, '9:04'),
      'none 8:58–9:04',
      '24 about 9:04',
    ],
  ] as const)(
    '[Q142] given an outlook in which it %s, then the rod says when and what comes',
    (_what, look, parts, when, comes) => {
      const one = rod(parts, outlookWith([lookingAt('sesame', look)]))
      expect(rodText(one, TIME, wordsIn('en'))).toMatchObject({ when, more: comes })
    },
  )

  it.each([
    ['en', 'many', 'gone about 12:30 (11:50 to 1:40)'],
    ['en', 'guess', 'gone about 12:30, a guess'],
    ['es', 'guess', 'acaba hacia 12:30, a ojo'],
  ] as const)(
    '[Q142] given in %s an outlook from %s, then in hand it says how far off it may be',
    (language, basis, fact) => {
      const look = lookingAt('sesame', { basis, beforeClosePercent: 95, gone: goneBy('11:50', '12:30', '13:40') })
      expect(rodFacts(rod({}, outlookWith([look])), TIME, wordsIn(language))[1]).toBe(fact)
    },
  )
})

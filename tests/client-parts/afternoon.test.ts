import { describe, expect, it } from 'vitest'
import { afternoonAhead, isNear, lastLoadTexts } from '../../client/parts/afternoon.ts'
import { outlookNow } from '../../client/parts/outlook-now.ts'
import { afternoonWords } from '../../client/words/afternoon.ts'
import type { AtChangeover } from '../../shared-core/live/outlook.ts'
import { wordsIn } from '../client-counter/counter-maker.ts'
import { at, stateWith } from '../core/support/make.ts'
import { lookingAt, outlookWith } from '../core/support/outlook.ts'

const change = (more: number, lastsPercent: number): { atChangeover: AtChangeover } => ({
  atChangeover: { left: { q10: 12, q50: 18, q90: 24 }, lastsPercent, more },
})
const OUTLOOK = outlookWith([
  lookingAt('sesame', change(12, 61)),
  lookingAt('poppy', change(0, 97)),
  lookingAt('plain', change(18, 40)),
])

describe('what remains for the afternoon', () => {
  it('[Q143] given an outlook, then those that least surely last stand first, and what to add most first', () => {
    const ahead = afternoonAhead(OUTLOOK, at('9:00'))
    expect(ahead?.rows.map(({ varietyId }) => varietyId)).toEqual(['plain', 'sesame', 'poppy'])
    expect(ahead?.more).toEqual([
      { varietyId: 'plain', pieces: 18 },
      { varietyId: 'sesame', pieces: 12 },
    ])
    expect(ahead).toMatchObject({ fromMs: at('11:00'), inByMs: at('10:38'), isGuess: false })
  })

  it.each([
    ['en', '10:38', 'Last load by 10:38: 12 more Sesame'],
    ['es', '10:38', 'Última carga antes de las 10:38: 12 más de Sesame'],
    ['en', '10:39', 'No load goes in any more: what is here and on the way is for the afternoon.'],
  ] as const)(
    '[Q143] given in %s %s, then the last loads are spoken of as long as they can go in',
    (language, clock, text) => {
      const ahead = afternoonAhead(outlookWith([lookingAt('sesame', change(12, 61))]), at(clock))
      expect(ahead === null ? '' : lastLoadTexts(ahead, afternoonWords(wordsIn(language)))[0]).toBe(text)
    },
  )

  it('[Q143] given several kinds to add, then there are shorter ways to say it', () => {
    const ahead = afternoonAhead(OUTLOOK, at('9:00'))
    expect(ahead === null ? [] : lastLoadTexts(ahead, afternoonWords(wordsIn('en')))).toEqual([
      'Last load by 10:38: 18 more Plain, 12 Sesame',
      'Last load by 10:38: 18 more Plain and 1 other kind',
      'by 10:38: +18 Plain and 1 kind',
    ])
  })

  it('[Q143] given nothing worth adding, then what is planned will do', () => {
    const ahead = afternoonAhead(outlookWith([lookingAt('sesame', change(0, 96))]), at('9:00'))
    const text = 'Last load by 10:38: what is planned will do'
    expect(ahead === null ? '' : lastLoadTexts(ahead, afternoonWords(wordsIn('en')))[0]).toBe(text)
  })

  it.each([
    ['9:59', false],
    ['10:00', true],
    ['10:59', true],
    ['11:00', false],
  ] as const)('[Q143] given %s, then it is near: %s', (clock, near) => {
    expect(isNear(afternoonAhead(OUTLOOK, at(clock)), at(clock))).toBe(near)
  })

  it('[Q143] given no changeover, or one that is over, then there is nothing to decide', () => {
    expect(afternoonAhead(null, at('9:00'))).toBeNull()
    expect(afternoonAhead({ ...OUTLOOK, changeoverAtMs: null }, at('9:00'))).toBeNull()
    expect(afternoonAhead(outlookWith([lookingAt('sesame')]), at('9:00'))).toBeNull()
  })

  it('[Q140] given an outlook of ten minutes ago, or of another day, then none is shown', () => {
    const state = stateWith()
    const shown = (outlook: typeof OUTLOOK, clock: string) => outlookNow({ outlook, nowMs: at(clock) }, state)
    expect(shown(OUTLOOK, '8:10')).toBe(OUTLOOK)
    expect(outlookNow({ outlook: OUTLOOK, nowMs: at('8:11') }, state)).toBeNull()
    expect(shown({ ...OUTLOOK, date: '2026-11-23' }, '8:01')).toBeNull()
  })
})

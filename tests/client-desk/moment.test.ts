import { describe, expect, it } from 'vitest'
import { momentOf } from '../../client/desk/moment.ts'
import { clockText } from '../../client/live/clock-text.ts'
import { deskWords } from '../../client/words/desk.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { CLOCK } from '../client-counter/counter-maker.ts'
import { at } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

const parts = (language: 'en' | 'es', hours: 12 | 24) => {
  const shop: Shop = { ...shopWith(), profile: { ...shopWith().profile, clock: hours } }
  const words = deskWords(wordsFor(language, shop, (atMs) => clockText(CLOCK, atMs, hours)))
  return { shopClock: CLOCK, nowMs: at('20:00'), shop, words }
}

describe('a time in a list at the desk', () => {
  it.each([
    ['en', 12, { clock: '9:10 pm', day: '' }],
    ['en', 24, { clock: '21:10', day: '' }],
    ['es', 12, { clock: '9:10 p. m.', day: '' }],
  ] as const)('given %s and a clock of %i hours, then it is told the shop’s way', (language, hours, moment) => {
    expect(momentOf(at('21:10'), parts(language, hours))).toEqual(moment)
  })

  it('given tomorrow or yesterday, then its day is told', () => {
    const tomorrow = momentOf(at('5:10', 1), parts('en', 12))
    expect(tomorrow.clock).toBe('5:10 am')
    expect(tomorrow.day).toMatch(/^[A-Z][a-z]{2}, [A-Z][a-z]{2} \d+$/)
    expect(momentOf(at('18:00', -1), parts('en', 12)).day).not.toBe('')
  })

  it('given a day of another year, then its year is told', () => {
    expect(momentOf(at('21:10', 365), parts('en', 12)).day).toMatch(/^[A-Z][a-z]{2}, [A-Z][a-z]{2} \d+, \d{4}$/)
    expect(momentOf(at('21:10', 365), parts('es', 12)).day).toMatch(/ de \d{4}$/)
    expect(momentOf(at('21:10', 1), parts('es', 12)).day).not.toMatch(/\d{4}/)
  })

  it('given no clock of the shop yet, then no half of the day is claimed', () => {
    expect(momentOf(at('21:10'), { ...parts('en', 12), shopClock: null })).toEqual({ clock: '9:10', day: '' })
  })
})

import { describe, expect, it } from 'vitest'
import { closeWords } from '../../client/words/desk-close.ts'
import { todayWords } from '../../client/words/desk-today.ts'
import { shiftWords } from '../../client/words/shift.ts'
import { CARE_KINDS } from '../../shared-core/day/said.ts'
import { wordsIn } from '../client-counter/counter-maker.ts'
import { at } from '../core/support/make.ts'

const SEVEN = at('7:00')

describe.each(['en', 'es'] as const)('one word per thing on all screens, in %s', (language) => {
  const words = wordsIn(language)
  const today = todayWords(words)
  const close = closeWords(words)

  it.each(CARE_KINDS)('given the care %s, then desk and bench call it the same', (care) => {
    expect(today.kettle.care[care]).toBe(shiftWords(words).care.care(care))
  })

  it('given a number that was counted or baked, then desk and counter say so in the same words', () => {
    const known = (how: 'counted' | 'baked') =>
      words.counter.rod.known(how === 'counted' ? { how, atMs: SEVEN, isNow: false } : { how, atMs: SEVEN })
    expect(known('counted')).toBe(`${today.rods.known.counted} 7:00`)
    expect(known('counted')).toBe(`${today.rods.known.swept} 7:00`)
    expect(known('baked')).toBe(`${today.rods.known.baked} 7:00`)
  })

  it('given a closed day, then desk and counter reopen it with the same verb', () => {
    const [verb] = words.jobs.close.reopen('2026-11-24').split(' ')
    expect(close.closed.reopen.split(' ')[0]).toBe(verb)
  })

  it('given pieces that stay, then both closes name them by one word', () => {
    const { dayOld } = words.jobs.close.fate
    expect(close.fates.columns.dayOld).toContain(dayOld)
    expect(close.close.stays(6)).toContain(dayOld)
  })
})

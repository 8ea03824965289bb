import { describe, expect, it } from 'vitest'
import { deskWords } from '../../client/words/desk.ts'
import { deskOrderWords } from '../../client/words/desk-orders.ts'
import { orderWords } from '../../client/words/orders.ts'
import { wordsFor } from '../../client/words/words.ts'
import { menuItemId, portionId, varietyId } from '../../shared-core/ids.ts'
import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import { askedLine, orderShop } from '../core/orders/order-makers.ts'

const shop = orderShop()
const words = (language: 'en' | 'es') => deskWords(wordsFor(language, shop, () => '9:00'))
const said = (language: 'en' | 'es') => orderWords(words(language))
const rule = (language: 'en' | 'es', parts: Partial<Recurrence>) =>
  deskOrderWords(words(language)).standing.rule({
    ...{ freq: 'weekly', interval: 1, from: '2026-11-24', until: null, weekdays: [], nth: null, except: [], also: [] },
    ...parts,
  })

describe('an order in words', () => {
  it.each([
    [{ dozens: 2, pieces: 24 }, '2 dozen Sesame', '2 docenas Sesame'],
    [{ dozens: 1, pieces: 15, sliced: true }, '1 dozen and 3 Sesame, sliced', '1 docena y 3 Sesame, rebanado'],
    [{ pieces: 6, bagged: true }, '6 Sesame, bagged', '6 Sesame, embolsado'],
    // Taken when a dozen had thirteen.
    [{ dozens: 2, pieces: 20 }, '20 Sesame', '20 Sesame'],
  ])('[M155] given %o, then dozens are told as they were said', (parts, en, es) => {
    const line = { ...askedLine('sesame'), dozens: 0, ...parts }
    expect([said('en').line(line, 12), said('es').line(line, 12)]).toEqual([en, es])
  })

  it('[M155] given a mixed line, then what must not be in it is told with it', () => {
    const line = { ...askedLine(null, { dozens: 1 }), pieces: 12, without: [varietyId('poppy'), varietyId('sesame')] }
    expect(said('en').line(line, 12)).toBe('1 dozen mixed, no Poppy or Sesame')
    expect(said('es').line(line, 12)).toBe('1 docena surtido, sin Poppy ni Sesame')
  })

  it('[M155] given an allergy, then it stands before all else that is said of the item', () => {
    const item = {
      itemId: menuItemId('lox'),
      varietyId: varietyId('sesame'),
      toasted: true,
      without: [portionId('nothing')],
      more: [],
      allergies: ['milk', 'egg'] as const,
    }
    expect(said('en').item(item, 2)).toMatch(/^ALLERGY: milk, egg – 2 × .* on Sesame, toasted, no /)
    expect(said('es').item(item, 1)).toMatch(/^ALERGIA: leche, huevo – .* en Sesame, tostado, sin /)
  })

  it.each([
    [{}, 'every Tue', 'cada mar'],
    [{ weekdays: [5, 2] }, 'every Tue and Fri', 'cada mar y vie'],
    [{ interval: 2, weekdays: [1] }, 'every 2 weeks on Mon', 'cada 2 semanas, lun'],
    [{ freq: 'daily' }, 'every day', 'todos los días'],
    [{ freq: 'daily', interval: 3 }, 'every 3 days', 'cada 3 días'],
    [{ freq: 'monthly' }, 'day 24 of every month', 'día 24 de cada mes'],
    [{ freq: 'monthly', weekdays: [5], nth: -1 }, 'the last Fri of every month', 'el último vie de cada mes'],
    [
      { freq: 'monthly', interval: 2, weekdays: [4], nth: 2 },
      'the 2nd Thu, every 2 months',
      'el segundo jue, cada 2 meses',
    ],
    [{ freq: 'monthly', weekdays: [1] }, 'every Mon of every month', 'todos los lun de cada mes'],
  ] as const)('[M155] given the rule %o, then it is told in both languages', (parts, en, es) => {
    expect([rule('en', parts), rule('es', parts)]).toEqual([en, es])
  })
})

import { describe, expect, it } from 'vitest'
import { minuteText } from '../../client/live/clock-text.ts'
import { doughWords } from '../../client/words/desk-dough.ts'
import { wordsFor } from '../../client/words/words.ts'
import { at } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'

const localTime = (atMs: number) => minuteText(Math.floor((atMs - at('0:00')) / 60_000), 12)
const wordsIn = (language: 'en' | 'es') => doughWords(wordsFor(language, shopWith(), localTime))

/** Every text that stands fixed in a tree of words, by its path. */
function fixed(tree: object, path = ''): [string, string][] {
  return Object.entries(tree).flatMap(([key, value]): [string, string][] => {
    const here = path === '' ? key : `${path}.${key}`
    if (typeof value === 'string') return [[here, value]]
    return typeof value === 'object' && value !== null ? fixed(value, here) : []
  })
}

describe('the words of the dough room at the desk', () => {
  it('given every fixed text, then Spanish says it in other words', () => {
    const es = new Map(fixed(wordsIn('es')))
    const same = fixed(wordsIn('en')).filter(([path, text]) => es.get(path) === text)
    expect(same.map(([path]) => path)).toEqual([])
  })

  it.each([
    ['en', '240 for the counter', '− 32 chilled or proofing and still good'],
    ['es', '240 para el mostrador', '− 32 en frío o leudando y todavía buenas'],
  ] as const)('given reasons in %s, then each has its sign and its number', (language, counter, chilled) => {
    const { plan } = wordsIn(language)
    expect(plan.reason('counter', 240)).toBe(counter)
    expect(plan.reason('chilled', -32)).toBe(chilled)
    for (const code of ['trays', 'bags', 'orders', 'begun', 'earlier', 'boiled', 'loads'] as const)
      expect(plan.reason(code, 7)).toMatch(/^[+−] 7 \p{L}/u)
    expect(plan.reason('bags', -3)).toMatch(/^− 3 /)
  })

  it.each([
    ['en', '9:30 am', 'begin at 9:30 am, not before 9:30 am, by 9:30 am'],
    [
      'en',
      'Fri, Nov 27, 1:05 am',
      'begin on Fri, Nov 27, 1:05 am, not before Fri, Nov 27, 1:05 am, by Fri, Nov 27, 1:05 am',
    ],
    ['es', '9:30', 'empezar a las 9:30, no antes de las 9:30, a más tardar a las 9:30'],
    ['es', '1:05', 'empezar a la 1:05, no antes de la 1:05, a más tardar a la 1:05'],
    ['es', 'vie 27, 1:05', 'empezar el vie 27, 1:05, no antes del vie 27, 1:05, a más tardar el vie 27, 1:05'],
  ] as const)('given in %s the time %s, then its preposition fits it', (language, clock, expected) => {
    expect(wordsIn(language).days.begin(clock, clock, clock)).toBe(expected)
  })

  it.each(['en', 'es'] as const)('given one and many in %s, then number and noun agree', (language) => {
    const { stock, plan, order } = wordsIn(language)
    expect(stock.bags(1, null)).not.toMatch(/bags|bolsas/)
    expect(stock.bags(2, '12 lb')).toMatch(/2 (bags and|bolsas y) 12 lb/)
    expect(plan.noFormula(1)).not.toMatch(/pieces|piezas/)
    expect(order.cost(0, 1, 0)).not.toMatch(/\b0\b/)
    expect(order.more(1, -1, 0)).toMatch(/\+1 .*, −1 .*\.$/)
  })
})

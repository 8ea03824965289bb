import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changesOf, draftOf } from '../../client/desk/set-up/draft.ts'
import { misfitText } from '../../client/desk/set-up/parts/wrong.tsx'
import { spanParts } from '../../client/desk/set-up/say-value.ts'
import { toldChanges } from '../../client/desk/set-up/told-changes.ts'
import { versionLines } from '../../client/desk/set-up/versions.ts'
import { deskWords } from '../../client/words/desk.ts'
import { setUpWords } from '../../client/words/set-up.ts'
import { wordsFor } from '../../client/words/words.ts'
import { doughId, varietyId, weekdayId } from '../../shared-core/ids.ts'
import type { SetUpChange } from '../../shared-core/shop/set-up-change.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { shopMisfits } from '../../shared-core/shop/set-up-rules.ts'
import { changesTold } from '../../shared-core/shop/set-up-told.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import { epochMs, spanMs } from '../../shared-core/units.ts'
import { anyShop } from '../core/shop/shop-maker.ts'
import { dough, dwell, hours, shelf, shopWith, station, table, variety } from '../core/support/shop.ts'

const shop = shopWith()
const tellingIn = (language: Language, then: Shop) => {
  const words = deskWords(wordsFor(language, then))
  return { words, say: setUpWords(words), shop: then }
}
const told = (changes: readonly SetUpChange[], language: Language = 'en') => {
  const then = draftOf(shop, changes)
  return toldChanges(shop, changesOf(shop, changes), tellingIn(language, then)).map(
    ({ what, lines }) => `${what}: ${lines.join('; ')}`,
  )
}
const sesame = variety({ id: 'sesame', order: 1 })

describe('what will change, in words', () => {
  const cases: readonly (readonly [string, SetUpChange, string, string])[] = [
    [
      'a price and a flip',
      { entity: 'variety', value: { ...sesame, priceCents: 175, bakedOn: 'pan', flip: false } },
      'Variety Sesame: First side on: a wet board → a pan; Flipped: yes → no; Price: 1.60 → 1.75',
      'Variedad Sesame: Primer lado sobre: tabla mojada → charola; Se voltea: sí → no; Precio: 1.60 → 1.75',
    ],
    [
      'a window of its own',
      { entity: 'variety', value: { ...sesame, windows: { bake: dwell(14, 15.5, 18, 'min') } } },
      'Variety Sesame: whole bake: as usual → 14 – 15.5 – 18 min',
      'Variedad Sesame: horneado entero: como siempre → 14 – 15.5 – 18 min',
    ],
    [
      'a time of day',
      { entity: 'hours', value: { ...shop.hours, closeMinute: 16 * 60 + 30, secondMenu: 'Flatbreads' } },
      'Hours: Shop closes: 3:00 pm → 4:30 pm; Second menu: Pizza → Flatbreads',
      'Horario: Cierra el local: 3:00 p. m. → 4:30 p. m.; Segundo menú: Pizza → Flatbreads',
    ],
    [
      'a closed day',
      { entity: 'weekday', value: { id: weekdayId('7'), hours: null, retired: false } },
      'Sunday: closed',
      'domingo: cerrado',
    ],
    [
      'something retired',
      { entity: 'shelf', value: { ...shelf({ id: 's3', order: 3 }), retired: true } },
      'Shelf 3: Shelf 3 is retired',
      'Piso 3: Piso 3: retirado',
    ],
    [
      'a kettle',
      {
        entity: 'kettle',
        value: { ...shop.kettle, cycleMs: spanMs(2, 'min'), care: { ...shop.kettle.care, skim: 300 } },
      },
      'Kettle: From one dip to the next: 90 s → 2 min; skim: not said → 300',
      'Olla: De una tanda a la siguiente: 90 s → 2 min; espumar: sin decir → 300',
    ],
  ]

  it.each(cases)('given %s, then it is told in English and Spanish', (_what, change, english, spanish) => {
    expect(told([change])).toEqual([english])
    expect(told([change], 'es')).toEqual([spanish])
  })

  it('given any shop that becomes any other, then every change has a line, none with a hole in it', () => {
    fc.assert(
      fc.property(anyShop, anyShop, fc.constantFrom<Language>('en', 'es'), (from, to, language) => {
        const changes = setUpChanges(from, to)
        const then = draftOf(from, changes)
        for (const { what, lines } of toldChanges(from, changesOf(from, changes), tellingIn(language, then))) {
          expect(what).not.toBe('')
          expect(lines.length).toBeGreaterThan(0)
          for (const line of lines) expect(line).not.toMatch(/undefined|null|NaN|\[object|: →|→ $|^$/)
        }
        const version = { seq: 1, atMs: epochMs(0), device: '', isPlanned: false, lost: 1 }
        const lines = versionLines({ ...version, told: changesTold(from, changes) }, setUpWords(wordsFor(language, to)))
        for (const line of lines) expect(line).not.toMatch(/undefined|null|Ms\b|Cents|Minute/)
      }),
      { numRuns: 60 },
    )
  })

  it('given a version with many changes, then the first few are told and the others counted', () => {
    const { say } = tellingIn('en', shop)
    const one = { entity: 'variety', id: 'a', name: 'Rye', what: 'changed', fields: ['priceCents', 'order'] } as const
    const version = { seq: 7, atMs: epochMs(0), device: 'Office', isPlanned: false, told: Array(8).fill(one), lost: 0 }
    expect(versionLines(version, say)[0]).toBe('Variety Rye: Price, stands elsewhere in its list')
    expect(versionLines(version, say)[6]).toBe('and 2 more')
  })
})

describe('a span', () => {
  it.each([
    [90_000, 's', 90],
    [120_000, 'min', 2],
    [150_000, 'min', 2.5],
    [61_000, 's', 61],
    [300_000, 'min', 5],
    [5_400_000, 'min', 90],
    [9_000_000, 'h', 2.5],
    [50_400_000, 'h', 14],
    [-1_200_000, 'min', -20],
    [0, 'min', 0],
  ] as const)('given %d ms, then it is told in %s as %d', (ms, unit, value) => {
    expect(spanParts(ms)).toEqual({ unit, value })
  })
})

describe('what does not fit', () => {
  const broken = (parts: Partial<Shop>) => shopMisfits(shopWith(parts))
  it.each([
    [
      'closes before it opens',
      broken({
        hours: hours({ closeMinute: 300, changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null }),
      }),
    ],
    ['a changeover backwards', broken({ hours: hours({ changeoverToMinute: 600 }) })],
    [
      'a second menu and no changeover',
      broken({ hours: hours({ changeoverFromMinute: null, changeoverToMinute: null }) }),
    ],
    [
      'a way without its oven',
      broken({ doughs: table([dough({ id: 'plain', route: ['proof', 'kettle'] }), dough({ id: 'rye' })]) }),
    ],
    ['two of one name', broken({ varieties: table([sesame, variety({ id: 'b', name: 'Sesame' })]) })],
    ['no boards', broken({ boards: { ...shop.boards, count: 0 } })],
    [
      'a dough that is retired',
      broken({ doughs: table([dough({ id: 'plain', retired: true }), dough({ id: 'rye' })]) }),
    ],
    ['nobody who loads', broken({ stations: table([station('line', ['flip', 'out'])]) })],
    ['windows out of order', broken({ windows: { ...shop.windows, proof: dwell(90, 60, 45, 'min') } })],
    ['no shelf', broken({ shelves: new Map() })],
    ['not flipped off its board', broken({ varieties: table([variety({ ...sesame, id: 'sesame', flip: false })]) })],
  ])('given %s, then it is told in both languages in words of their own', (_what, misfits) => {
    expect(misfits.length).toBeGreaterThan(0)
    const [english, spanish] = (['en', 'es'] as const).map((language) =>
      misfits.map((misfit) => misfitText(misfit, tellingIn(language, shop).say)),
    )
    for (const [at, { wrong }] of misfits.entries()) {
      expect(english?.[at]).toMatch(/^\p{Lu}.*\.$/su)
      expect(spanish?.[at]).toMatch(/^\p{Lu}.*\.$/su)
      expect(spanish?.[at]).not.toBe(english?.[at])
      expect(spanish?.[at]).not.toContain(wrong)
    }
  })

  it('given a dough with its own name, then a variety names it by name', () => {
    const moved = variety({ ...sesame, id: 'fresh', doughId: doughId('rye') })
    expect(told([{ entity: 'variety', value: moved }])).toEqual(['Variety Sesame: Variety Sesame is new'])
    expect(shop.varieties.has(varietyId('fresh'))).toBe(false)
  })
})

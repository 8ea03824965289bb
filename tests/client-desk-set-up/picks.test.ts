import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { draftOf } from '../../client/desk/set-up/draft.ts'
import {
  withBoards,
  withFloorBoards,
  withOvenKind,
  withShelfCount,
  withShelfPieces,
} from '../../client/desk/set-up/equipment.ts'
import { SHELVES, VARIETIES } from '../../client/desk/set-up/lists.ts'
import { inLanguage, pickVariety, unpickVariety, varietyPicks } from '../../client/desk/set-up/picks.ts'
import { presetOf, TAP_PRESETS, withPreset } from '../../client/desk/set-up/taps.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { shopMisfits } from '../../shared-core/shop/set-up-rules.ts'
import type { Language, OvenKind, Shop } from '../../shared-core/shop/shop.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'
import { anyShop } from '../core/shop/shop-maker.ts'

const KINDS: readonly OvenKind[] = ['shelves', 'rotating', 'hearth']
const start = (kind: OvenKind, language: Language = 'en') =>
  startingPoint(kind, { name: 'Corner', zone: 'America/Chicago', language })
const names = (list: readonly { readonly name: string }[]) => list.map((one) => one.name)
const picked = (shop: Shop, id: string) => {
  const pick = varietyPicks(shop).find(({ variety }) => variety.id === id)
  if (pick === undefined) throw new Error(`no pick ${id}`)
  return pick.variety
}

describe('the oven', () => {
  it.each(KINDS.flatMap((from) => KINDS.map((to) => [from, to] as const)))(
    'given a new shop with %s, when %s is picked, then it is as if it had begun so',
    (from, to) => {
      const draft = draftOf(start(from), withOvenKind(start(from), to))
      const expected = start(to)
      expect(inUse(draft.shelves)).toEqual(inUse(expected.shelves))
      expect(names(inUse(draft.steps)).sort()).toEqual(names(inUse(expected.steps)).sort())
      expect([draft.oven, draft.boards]).toEqual([expected.oven, expected.boards])
      expect(shopMisfits(draft)).toEqual([])
    },
  )

  it('given what people said themselves, when the kind changes and changes back, then they find it again', () => {
    const own = draftOf(start('shelves'), [
      { entity: 'boards', value: { ...start('shelves').boards, count: 33 } },
      ...withShelfPieces(start('shelves'), 60),
    ])
    const hearth = draftOf(own, withOvenKind(own, 'hearth'))
    expect(hearth.boards.count).toBe(33)
    const back = draftOf(hearth, withOvenKind(hearth, 'shelves'))
    expect(inUse(back.shelves).map(({ pieces }) => pieces)).toEqual([60, 60, 60, 60, 60])
  })

  it.each([1, 3, 5, 6, 12])(
    'given five shelves, when there are %d, then so many are in use, named in order',
    (count) => {
      const shop = start('shelves')
      const draft = draftOf(shop, withShelfCount(shop, count))
      expect(names(inUse(draft.shelves))).toEqual(Array.from({ length: count }, (_, n) => String(n + 1)))
      expect(shopMisfits(draft)).toEqual([])
      const again = draftOf(draft, withShelfCount(draft, 5))
      expect(inUse(again.shelves).map(({ id }) => id)).toEqual(inUse(shop.shelves).map(({ id }) => id))
    },
  )

  it('given a shelf that is called 6, when a sixth is added, then it is called otherwise', () => {
    const shop = start('shelves')
    const [first] = inUse(shop.shelves)
    if (first === undefined) throw new Error('no shelf')
    const renamed = draftOf(shop, [SHELVES.change({ ...first, name: '6' })])
    expect(shopMisfits(draftOf(renamed, withShelfCount(renamed, 6)))).toEqual([])
  })

  it('given a hearth, when boards hold fewer pieces, then its floor holds fewer', () => {
    const shop = draftOf(start('hearth'), withFloorBoards(start('hearth'), 16))
    expect(inUse(shop.shelves)[0]).toMatchObject({ floorBoards: 16, pieces: 96 })
    const five = draftOf(shop, withBoards(shop, { ...shop.boards, pieces: 5 }))
    expect(inUse(five.shelves)[0]).toMatchObject({ floorBoards: 16, pieces: 80 })
  })

  it('given any shop, when any kind is picked, then no shelf is amiss', () => {
    fc.assert(
      fc.property(anyShop, fc.constantFrom(...KINDS), (shop, kind) => {
        const draft = draftOf(shop, withOvenKind(shop, kind))
        expect(shopMisfits(draft).filter(({ entity, field }) => entity === 'shelf' && field === '')).toEqual([])
      }),
    )
  })
})

describe('varieties', () => {
  it('given a new shop, when rye is picked, then its dough and topping come with it, and go with it', () => {
    const shop = start('shelves')
    const draft = draftOf(shop, pickVariety(shop, picked(shop, 'rye')))
    expect(names(inUse(draft.doughs))).toContain('Rye')
    expect(names(inUse(draft.toppings))).toContain('Caraway')
    expect(shopMisfits(draft)).toEqual([])
    const without = draftOf(draft, unpickVariety(draft, picked(draft, 'rye')))
    expect(names(inUse(without.doughs))).toEqual(['Plain'])
    expect(names(inUse(without.toppings))).not.toContain('Caraway')
  })

  it('given seeds that two varieties need, when one goes, then they stay', () => {
    const shop = start('shelves')
    const draft = draftOf(shop, pickVariety(shop, picked(shop, 'mini-sesame')))
    const without = draftOf(draft, unpickVariety(draft, picked(draft, 'sesame')))
    expect(names(inUse(without.toppings))).toContain('Sesame')
    expect(names(inUse(without.doughs))).toContain('Plain')
  })

  it('given all of them picked one by one, and a price on one, then all fit and the price comes back with it', () => {
    let shop = start('shelves')
    for (const { variety } of varietyPicks(shop)) shop = draftOf(shop, pickVariety(shop, variety))
    expect(shopMisfits(shop)).toEqual([])
    expect(varietyPicks(shop).every(({ isPicked }) => isPicked)).toBe(true)
    shop = draftOf(shop, [VARIETIES.change({ ...picked(shop, 'rye'), priceCents: 225 })])
    shop = draftOf(shop, unpickVariety(shop, picked(shop, 'rye')))
    expect(
      draftOf(shop, pickVariety(shop, picked(shop, 'rye'))).varieties.get(picked(shop, 'rye').id)?.priceCents,
    ).toBe(225)
  })
})

describe('the language', () => {
  it.each(KINDS)('given a new shop with %s, when Spanish is picked, then it is as if it had begun so', (kind) => {
    const draft = draftOf(start(kind), inLanguage(start(kind), 'es'))
    expect(draft).toEqual(start(kind, 'es'))
  })

  it('given a name and a unit of their own, when Spanish is picked, then those stay and the rest follows', () => {
    const shop = start('shelves')
    const own = draftOf(shop, [
      { entity: 'profile', value: { ...shop.profile, name: 'La Esquina', temperature: 'C' } },
      VARIETIES.change({ ...picked(shop, 'onion'), name: 'Cipolla', priceCents: 190 }),
      VARIETIES.change({ ...picked(shop, 'garlic'), priceCents: 190 }),
      ...pickVariety(shop, picked(shop, 'rye')),
    ])
    const draft = draftOf(own, inLanguage(own, 'es'))
    expect(draft.profile).toMatchObject({ name: 'La Esquina', language: 'es', clock: 24, weight: 'g' })
    expect(picked(draft, 'onion')).toMatchObject({ name: 'Cipolla', priceCents: 190 })
    expect(picked(draft, 'garlic')).toMatchObject({ name: 'Ajo', priceCents: 190 })
    expect(picked(draft, 'rye').name).toBe('Centeno')
    expect(draftOf(draft, inLanguage(draft, 'en')).varieties).toEqual(own.varieties)
  })
})

describe('who taps what', () => {
  it.each(TAP_PRESETS)('given any shop, when %s is picked, then it is that, and it fits', (preset) => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        const draft = draftOf(shop, withPreset(shop, preset))
        expect(presetOf(draft)).toBe(preset)
        expect(shopMisfits(draft)).toEqual([])
      }),
    )
  })

  it('given a new shop, then kettle and oven are tapped', () => {
    expect(presetOf(start('shelves'))).toBe('kettle')
  })
})

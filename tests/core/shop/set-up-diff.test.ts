import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { shopOf, smallFile, withValue } from './set-up-file-maker.ts'
import { anyShop } from './shop-maker.ts'

const SHOP = shopOf(smallFile())
const PARTS = ['profile', 'hours', 'kettle', 'boards', 'oven', 'mixer', 'cooler', 'counter', 'windows'] as const
const LISTS = ['shelves', 'doughs', 'toppings', 'varieties', 'stations', 'people', 'steps'] as const

describe('what changes between two set-ups', () => {
  it('given no set-up before, then every entity is a change, and they make the shop', () => {
    const changes = setUpChanges(null, SHOP)
    expect(changes).toHaveLength(13 + 1 + 2 + 3 + 1)
    expect(applySetUp(null, changes)).toEqual(SHOP)
  })

  it('given the same set-up from another read, then nothing changes', () => {
    expect(setUpChanges(SHOP, shopOf(smallFile()))).toEqual([])
  })

  it('given one other field, then one entity changes, whole', () => {
    const to = shopOf(withValue(smallFile(), '/varieties/1/priceCents', 160))
    expect(setUpChanges(SHOP, to)).toEqual([{ entity: 'variety', value: to.varieties.get(varietyId('sesame')) }])
  })

  it('given a variety that the new set-up lacks, then it is retired after the others, and stays so', () => {
    const file = { ...smallFile(), varieties: smallFile().varieties.filter(({ id }) => id !== 'plain') }
    const after = applySetUp(SHOP, setUpChanges(SHOP, shopOf(file)))
    expect(after.varieties.get(varietyId('plain'))).toEqual({
      ...SHOP.varieties.get(varietyId('plain')),
      order: 2,
      retired: true,
    })
    expect(setUpChanges(after, shopOf(file))).toEqual([])
  })

  it('given any two shops, then the first becomes as the second, with what that lacks retired', () => {
    fc.assert(
      fc.property(anyShop, anyShop, (from, to) => {
        const after = applySetUp(from, setUpChanges(from, to))
        for (const part of PARTS) {
          expect(after[part]).toEqual(to[part])
        }
        for (const list of LISTS) {
          const wanted: ReadonlyMap<string, unknown> = to[list]
          const before: ReadonlyMap<string, object> = from[list]
          const made: ReadonlyMap<string, { id: string; order: number }> = after[list]
          expect(new Set(made.keys())).toEqual(new Set([...wanted.keys(), ...before.keys()]))
          for (const entity of made.values()) {
            const kept = { ...before.get(entity.id), order: entity.order, retired: true }
            expect(entity).toEqual(wanted.get(entity.id) ?? kept)
          }
        }
        for (const [id, weekday] of after.weekdays) {
          expect(weekday).toEqual(to.weekdays.get(id) ?? { ...from.weekdays.get(id), retired: true })
        }
        expect(setUpChanges(after, to)).toEqual([])
      }),
    )
  })
})

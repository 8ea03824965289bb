import { describe, expect, it } from 'vitest'
import { shelfId, varietyId } from '../../../shared-core/ids.ts'
import { applySetUp, isWholeSetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { must } from '../../../shared-core/support.ts'
import { shopOf, smallFile } from './set-up-file-maker.ts'

const SHOP = shopOf(smallFile())
const WHOLE = setUpChanges(null, SHOP)

describe('set-up changes folded into a shop', () => {
  it.each(['profile', 'hours', 'kettle', 'boards', 'oven', 'windows'])(
    'given a first set-up without %s, then it is not whole',
    (part) => {
      const changes = WHOLE.filter(({ entity }) => entity !== part)
      expect(isWholeSetUp(changes)).toBe(false)
      expect(() => applySetUp(null, changes)).toThrow('lacks a part')
      expect(applySetUp(SHOP, changes)).toEqual(SHOP)
    },
  )

  it('given a whole one, then it makes a shop', () => {
    expect(isWholeSetUp(WHOLE)).toBe(true)
    expect(applySetUp(null, WHOLE)).toEqual(SHOP)
  })

  it('given one entity, then the shop before is not touched, and what did not change is the same object', () => {
    const before = structuredClone(SHOP)
    const sesame = { ...must(SHOP.varieties, varietyId('sesame')), priceCents: 175 }
    const after = applySetUp(SHOP, [{ entity: 'variety', value: sesame }])
    expect(SHOP).toEqual(before)
    expect(after.varieties.get(varietyId('sesame'))).toBe(sesame)
    expect(after.varieties.get(varietyId('plain'))).toBe(SHOP.varieties.get(varietyId('plain')))
    expect({ ...after, varieties: null }).toEqual({ ...SHOP, varieties: null })
    expect(after.shelves).toBe(SHOP.shelves)
  })

  it('given an entity twice, then the later one stands', () => {
    const shelf = must(SHOP.shelves, shelfId('1'))
    const after = applySetUp(SHOP, [
      { entity: 'shelf', value: { ...shelf, pieces: 10 } },
      { entity: 'shelf', value: { ...shelf, pieces: 20 } },
    ])
    expect(after.shelves.get(shelf.id)?.pieces).toBe(20)
  })
})

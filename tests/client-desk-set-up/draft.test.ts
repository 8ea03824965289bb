import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changesOf, draftOf, edited } from '../../client/desk/set-up/draft.ts'
import { added, hasRoom, moved, VARIETIES } from '../../client/desk/set-up/lists.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { shopMisfits } from '../../shared-core/shop/set-up-rules.ts'
import { startingPoint } from '../../shared-core/shop/starting-points.ts'
import { anyShop } from '../core/shop/shop-maker.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'

const shop = startingPoint('shelves', { name: 'Corner', zone: 'America/Chicago', language: 'en' })
const sesame = variety({ ...(shop.varieties.get(varietyId('sesame')) ?? variety({ id: 'sesame' })), id: 'sesame' })

describe('a draft', () => {
  it('given two edits of one variety, then the later one stands and a save sends one change', () => {
    const once = edited(shop, [], [VARIETIES.change({ ...sesame, priceCents: 150 })])
    const twice = edited(shop, once, [VARIETIES.change({ ...sesame, priceCents: 175 })])
    expect(changesOf(shop, twice)).toEqual([VARIETIES.change({ ...sesame, priceCents: 175 })])
  })

  it('given an edit that is undone by hand, then there is nothing to save', () => {
    const once = edited(shop, [], [VARIETIES.change({ ...sesame, priceCents: 150 })])
    expect(changesOf(shop, edited(shop, once, [VARIETIES.change(sesame)]))).toEqual([])
  })

  it('given a variety that was added here and retired again, then it never was', () => {
    const pumpkin = added(VARIETIES, shop, sesame, 'Pumpkin')
    const once = edited(shop, [], [VARIETIES.change(pumpkin)])
    expect(draftOf(shop, once).varieties.has(pumpkin.id)).toBe(true)
    expect(edited(shop, once, [VARIETIES.change({ ...pumpkin, retired: true })])).toEqual([])
  })

  it('given a change by another desk meanwhile, then the draft lies on top of it and touches nothing else', () => {
    const edits = edited(shop, [], [VARIETIES.change({ ...sesame, priceCents: 150 })])
    const other = { ...shop, boards: { ...shop.boards, count: 5 } }
    expect(draftOf(other, edits).boards.count).toBe(5)
    expect(changesOf(other, edits)).toHaveLength(1)
  })

  it('given any shop, without edits there is nothing to save', () => {
    fc.assert(fc.property(anyShop, (any) => changesOf(any, []).length === 0))
  })
})

describe('a list', () => {
  const three = shopWith({
    varieties: table([
      variety({ id: 'a', order: 7 }),
      variety({ id: 'b', order: 7 }),
      variety({ id: 'c', order: 9 }),
      variety({ id: 'old', order: 8, retired: true }),
    ]),
  })
  const after = (id: string, by: -1 | 1) =>
    inUse(draftOf(three, moved(VARIETIES, three, { id, by })).varieties).map((one) => one.id)

  it.each([
    ['a', 1, ['b', 'a', 'c']],
    ['c', -1, ['a', 'c', 'b']],
    ['a', -1, ['a', 'b', 'c']],
    ['c', 1, ['a', 'b', 'c']],
    ['nobody', 1, ['a', 'b', 'c']],
  ] as const)('given a, b, c in use, when %s moves by %d, then %j', (id, by, order) => {
    expect(after(id, by)).toEqual(order)
  })

  it('given only some on show, when one moves, then it passes those that are not shown', () => {
    const among = (one: { readonly id: string }) => one.id !== 'b'
    const changes = moved(VARIETIES, three, { id: 'c', by: -1, among })
    expect(inUse(draftOf(three, changes).varieties).map((one) => one.id)).toEqual(['c', 'b', 'a'])
  })

  it.each([
    ['Jalapeño & Käse', 'jalapeno-kase'],
    ['  Rye  ', 'rye-2'],
    ['¡!', 'variety'],
    ['焼き', 'variety'],
  ])('given a shop with rye, when "%s" is added, then its id is %s', (name, id) => {
    expect(added(VARIETIES, shopWith(), sesame, name).id).toBe(id)
  })

  it('given a full list, then there is no room; retired ones take none', () => {
    const many = (count: number, retired: boolean) =>
      shopWith({ varieties: table(Array.from({ length: count }, (_, n) => variety({ id: `v${n}`, retired }))) })
    expect(hasRoom(VARIETIES, many(60, false))).toBe(false)
    expect(hasRoom(VARIETIES, many(59, false))).toBe(true)
    expect(hasRoom(VARIETIES, many(60, true))).toBe(true)
  })

  it('given any shop, when a variety like one in use is added, then only its name can be amiss', () => {
    fc.assert(
      fc.property(anyShop, (any) => {
        const [first] = inUse(any.varieties)
        if (first === undefined || !hasRoom(VARIETIES, any)) return
        const next = draftOf(any, [VARIETIES.change(added(VARIETIES, any, first, 'Quite new'))])
        expect(shopMisfits(next)).toEqual([])
      }),
    )
  })
})

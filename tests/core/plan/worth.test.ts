import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import { worthOf, worthOfOneMore, worthOfPool } from '../../../shared-core/plan/worth.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { must } from '../../../shared-core/support.ts'
import { shopWith, table, variety } from '../support/shop.ts'

const SESAME = varietyId('sesame')
const POPPY = varietyId('poppy')
const SALT = varietyId('salt')

/** Sesame at 1.60 that costs 0.40, beside poppy and salt; asking in vain costs 0.50. */
function shop(takeAnotherPercent: number, parts: Parameters<typeof variety>[0] = { id: 'sesame' }): Shop {
  return shopWith({
    varieties: table([
      variety({ priceCents: 160, costCents: 40, order: 1, ...parts }),
      variety({ id: 'poppy', order: 2, priceCents: 150, costCents: 50 }),
      variety({ id: 'salt', order: 3, priceCents: 200, costCents: 50 }),
    ]),
    demand: { region: null, disappointCents: 50, takeAnotherPercent, dayOldSells: 12 },
  })
}

const MEANS = new Map([
  [SESAME, 40],
  [POPPY, 30],
  [SALT, 10],
])
const NO_KITCHEN = { means: MEANS, kitchen: new Map() }

function worth(of: Shop, kitchen = new Map<typeof SESAME, number>()) {
  return worthOf(of, must(of.varieties, SESAME), { means: MEANS, kitchen })
}

describe('what a piece is worth', () => {
  it('[Q45] given nobody who takes another, when a piece is missing, then its price and the disappointment are lost', () => {
    expect(worth(shop(0))).toEqual({
      uses: [{ part: 1, worthCents: 210 }],
      costCents: 40,
      dayOldCents: 80,
      isAssumed: false,
    })
  })

  it('[Q45] given half who take another, when a piece is missing, then these cost only the difference in margin', () => {
    // The others' margin: (30 · 100 + 10 · 150) / 40 = 112.5, against 120 of sesame.
    expect(worth(shop(50)).uses[0]?.worthCents).toBeCloseTo(40 + 0.5 * (120 + 50) + 0.5 * 7.5, 9)
  })

  it('[Q45] given others that bring more, when all take another, then asking in vain is no gain', () => {
    const cheap = shop(100, { id: 'sesame', priceCents: 100 })
    expect(worth(cheap).uses[0]?.worthCents).toBe(40)
  })

  it('[Q44] given a quarter that the kitchen uses, when worth is asked, then it stands first with what it brings', () => {
    const kitchen = new Map([[SESAME, 0.25]])
    const found = worth(shop(0, { id: 'sesame', kitchenCents: 420 }), kitchen)
    expect(found.uses).toEqual([
      { part: 0.25, worthCents: 470 },
      { part: 0.75, worthCents: 210 },
    ])
    expect(worthOfOneMore(found, (part) => (part < 1 ? 0.1 : 0.4))).toBeCloseTo(260 * 0.1 + 210 * 0.4, 9)
    // No value in the kitchen: nobody makes anything of it there.
    expect(worth(shop(0), kitchen).uses).toHaveLength(1)
  })

  it('[Q46] given no price and no cost, when worth is asked, then those of the others are assumed, and it is said', () => {
    const found = worth(shop(0, { id: 'sesame', priceCents: 0, costCents: 0 }))
    expect(found.isAssumed).toBe(true)
    expect(found.uses[0]?.worthCents).toBeCloseTo(175 + 50, 9)
    expect(found.costCents).toBeCloseTo(0.3 * 175, 9)
  })

  it('[Q48] given a dough of two varieties, when its worth is asked, then the dearer goes without last', () => {
    const given = shop(0)
    const some = [POPPY, SALT].map((id) => must(given.varieties, id))
    const found = worthOfPool(given, some, NO_KITCHEN)
    expect(found.costCents).toBe(50)
    expect(found.uses.map(({ part, worthCents }) => [part, worthCents])).toEqual([
      [0.25, 250],
      [0.75, 200],
    ])
  })

  it('[Q48] given a dough that is most of what is asked for, when it is gone, then fewer can take another', () => {
    const given = shop(50)
    const all = [...given.varieties.values()]
    const whole = worthOfPool(given, all, NO_KITCHEN)
    const none = worthOfPool(shop(0), [...shop(0).varieties.values()], NO_KITCHEN)
    expect(whole.uses).toEqual(none.uses)
  })
})

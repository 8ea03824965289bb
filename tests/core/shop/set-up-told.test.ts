import { describe, expect, it } from 'vitest'
import { varietyId } from '../../../shared-core/ids.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { changesTold } from '../../../shared-core/shop/set-up-told.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { must } from '../../../shared-core/support.ts'
import { shopWith, table } from '../support/shop.ts'

const SHOP = shopWith()
const sesame = must(SHOP.varieties, varietyId('sesame'))
const withSesame = (parts: Partial<typeof sesame>): Shop => ({
  ...SHOP,
  varieties: new Map([...SHOP.varieties, [sesame.id, { ...sesame, ...parts }]]),
})
const told = (from: Shop | null, to: Shop) =>
  changesTold(from, setUpChanges(from, to)).map(({ entity, id, name, what, fields }) =>
    [entity, id, name, what, fields.join(' ')].filter((part) => part !== null && part !== '').join(' '),
  )

describe('what changes of a set-up do, in codes', () => {
  it.each<readonly [string, Shop | null, Shop, readonly string[]]>([
    ['nothing', SHOP, shopWith(), []],
    [
      'a price and a name',
      SHOP,
      withSesame({ priceCents: 1, name: 'Seeded' }),
      ['variety sesame Seeded changed name priceCents'],
    ],
    ['a place in the list', SHOP, withSesame({ order: 9 }), ['variety sesame Sesame moved order']],
    ['one retired', SHOP, withSesame({ retired: true }), ['variety sesame Sesame retired retired']],
    ['one back in use', withSesame({ retired: true }), SHOP, ['variety sesame Sesame back retired']],
    ['hours', SHOP, { ...SHOP, hours: { ...SHOP.hours, openMinute: 420 } }, ['hours changed openMinute']],
    ['a cooler where there was none', SHOP, { ...SHOP, cooler: { trays: 40, keepsAt: null } }, ['cooler added']],
    [
      'no cooler where there was one',
      { ...SHOP, cooler: { trays: 40, keepsAt: null } },
      SHOP,
      ['cooler retired trays'],
    ],
    [
      'a weekday',
      SHOP,
      { ...SHOP, weekdays: table([{ id: '7' as never, hours: null, retired: false }]) },
      ['weekday 7 added'],
    ],
  ])('[U10] given %s, then it is told so', (_what, from, to, expected) => {
    expect(told(from, to)).toEqual(expected)
  })

  it('[U10] given the first set-up, then all that there is was added', () => {
    const first = told(null, SHOP)
    expect(first).toContain('variety sesame Sesame added')
    expect(first.every((line) => line.endsWith('added'))).toBe(true)
    expect(first).not.toContain('mixer added')
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import demoFile from '../../../server/demo/demo-set-up.json' with { type: 'json' }
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { problemsOfFile, shopOf, smallFile } from './set-up-file-maker.ts'
import { anyShop, renumbered } from './shop-maker.ts'

describe('an exported set-up file', () => {
  it('given a file that says everything in the units of the export, then it comes out as it went in', () => {
    const hours = { ...smallFile().hours, changeover: { from: '11:00', to: '12:00' }, secondMenu: 'Flatbreads' }
    const file = toSetUpFile(shopOf({ ...smallFile(), hours }))
    expect(file.hours).toEqual(hours)
    expect(file.kettle).toEqual({
      pieces: 36,
      cycle: { seconds: 90 },
      recover: { minutes: 5 },
      care: { topUp: null, malt: null, skim: null, change: null },
    })
    expect(file.boards.rewet).toEqual({ minutes: 5 })
    expect(file.windows?.firstSide).toEqual({ unit: 'min', earliest: 3, target: 3.5, latest: 4 })
    expect(file.varieties[0]).not.toHaveProperty('windows')
    expect(file.varieties[0]).not.toHaveProperty('retired')
  })

  it('given the demo, then its export read again is the same shop', () => {
    expect(shopOf(toSetUpFile(shopOf(demoFile)))).toEqual(shopOf(demoFile))
  })

  it('[U1] given any shop, then its export is plain JSON, and read again it is the same but for counting order anew', () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        expect(shopMisfits(shop)).toEqual([])
        const file: unknown = JSON.parse(JSON.stringify(toSetUpFile(shop)))
        expect(problemsOfFile(file)).toEqual([])
        expect(shopOf(file)).toEqual(renumbered(shop))
      }),
    )
  })

  it('[U1] given a shop that came from one file after another, then its export read again changes nothing', () => {
    fc.assert(
      fc.property(anyShop, anyShop, (first, second) => {
        const read = (shop: Shop) => shopOf(toSetUpFile(shop))
        const before = read(first)
        const shop = applySetUp(before, setUpChanges(before, read(second)))
        fc.pre(shopMisfits(shop).length === 0)
        expect(setUpChanges(shop, read(shop))).toEqual([])
      }),
      { numRuns: 50 },
    )
  })
})

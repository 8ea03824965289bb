import { describe, expect, it } from 'vitest'
import { doughId, varietyId } from '../../../shared-core/ids.ts'
import { dwell } from '../../../shared-core/shop/default-windows.ts'
import type { Variety, Windows } from '../../../shared-core/shop/shop.ts'
import { loadWindow, untilFrom, windowOf } from '../../../shared-core/shop/windows.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { shopOf, smallFile } from './set-up-file-maker.ts'

const SHOP = shopOf(smallFile())
const [PLAIN, RYE] = [doughId('plain'), doughId('rye')]
const SESAME = varietyId('sesame')

function shopWith(windows: { shop?: Windows; dough?: Windows; variety?: Windows }) {
  return {
    ...SHOP,
    windows: windows.shop ?? {},
    doughs: new Map(
      [...SHOP.doughs].map(([id, one]) => [id, { ...one, windows: id === PLAIN ? (windows.dough ?? {}) : {} }]),
    ),
    varieties: new Map(
      [...SHOP.varieties].map(([id, one]) => [id, { ...one, windows: id === SESAME ? (windows.variety ?? {}) : {} }]),
    ),
  }
}

describe('the window of pieces', () => {
  const [shop, dough, variety] = [
    { cool: dwell('min', 1, 2, 3) },
    { cool: dwell('min', 4, 5, 6) },
    { cool: dwell('min', 7, 8, 9) },
  ]
  it.each([
    // given windows of,         pieces of, then the one of
    [{ shop, dough, variety }, PLAIN, SESAME, variety.cool],
    [{ shop, dough, variety }, PLAIN, null, dough.cool],
    [{ shop, dough, variety }, PLAIN, varietyId('plain'), dough.cool],
    [{ shop, dough, variety }, RYE, null, shop.cool],
    [{ shop, dough }, PLAIN, SESAME, dough.cool],
    [{ shop }, PLAIN, SESAME, shop.cool],
    [{ variety }, PLAIN, SESAME, variety.cool],
    [{}, PLAIN, SESAME, null],
    [{ shop }, doughId('gone'), varietyId('gone'), shop.cool],
  ])('given %j, when asked for %s %s, then the nearest', (windows, ofDough, ofVariety, expected) => {
    expect(windowOf(shopWith(windows), 'cool', ofDough, ofVariety)).toEqual(expected)
  })
})

describe('the instants of a window', () => {
  it('count from when the stage began', () => {
    expect(untilFrom(dwell('s', 30, 40, 45), epochMs(1_000_000))).toEqual({
      earliestAtMs: 1_030_000,
      targetAtMs: 1_040_000,
      latestAtMs: 1_045_000,
    })
    expect(untilFrom(null, epochMs(1_000_000))).toBeNull()
  })
})

describe('the window of a load', () => {
  const shop = (bakes: Record<string, Windows['bake']>, flips: Partial<Variety> = {}) => ({
    ...shopWith({ shop: { firstSide: dwell('min', 3, 3.5, 4) } }),
    varieties: new Map(
      Object.entries(bakes).map(([id, bake]) => {
        const one = [...SHOP.varieties.values()][0]
        if (one === undefined) throw new Error('no variety')
        return [varietyId(id), { ...one, ...flips, id: varietyId(id), windows: bake === undefined ? {} : { bake } }]
      }),
    ),
  })
  const ids = (...names: string[]) => names.map(varietyId)
  it.each([
    // given bakes of a and b, then that of the load
    [dwell('min', 15, 18, 25), dwell('min', 16, 20, 22), dwell('min', 16, 20, 22)],
    [dwell('min', 15, 18, 25), dwell('min', 11, 13, 16), dwell('min', 15, 18, 18)],
    [dwell('min', 15, 18, 25), undefined, dwell('min', 15, 18, 25)],
    [undefined, undefined, null],
  ])('given %j and %j, then the slowest sets the target and the quickest the latest', (a, b, expected) => {
    expect(loadWindow(shop({ a, b }), 'bake', ids('a', 'b'))).toEqual(expected)
    expect(loadWindow(shop({ a, b }), 'bake', ids('b', 'a'))).toEqual(expected)
  })

  it('given nothing that is flipped, then there is no first side; given nothing known, then no bake', () => {
    expect(loadWindow(shop({ a: undefined }), 'firstSide', ids('a'))).toEqual(dwell('min', 3, 3.5, 4))
    expect(loadWindow(shop({ a: undefined }, { flip: false }), 'firstSide', ids('a'))).toBeNull()
    expect(loadWindow(SHOP, 'bake', [])).toBeNull()
    expect(loadWindow(SHOP, 'bake', ids('gone'))).toBeNull()
  })
})

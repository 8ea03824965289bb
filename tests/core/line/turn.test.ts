import { describe, expect, it } from 'vitest'
import { doorShelf, shelvesInOrder, turnOrder } from '../../../shared-core/line/turn.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, load, stateWith } from '../support/make.ts'
import { shelf, shopWith, table } from '../support/shop.ts'

const ROTATING = shopWith({ oven: { kind: 'rotating', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null } })
const touched = (clock: string) => ({ touchedAtMs: at(clock), boardsFreed: 0, boardsWetAtMs: at(clock) })
const ids = (shelves: readonly { readonly id: string }[]) => shelves.map((one) => one.id)

describe('the turn of shelves', () => {
  it.each([
    ['none touched', {}, ['s1', 's2', 's3']],
    ['the second touched last', { s1: touched('6:40'), s2: touched('6:45') }, ['s2', 's3', 's1']],
    ['the third touched last', { s3: touched('6:45'), s1: touched('6:40') }, ['s3', 's1', 's2']],
    ['two touched at once: the first of them', { s2: touched('6:45'), s3: touched('6:45') }, ['s2', 's3', 's1']],
  ] as const)('[L34] given a rotating oven, %s, then the order follows from it', (_what, shelves, order) => {
    const state = stateWith({ shop: ROTATING, shelves })
    expect(ids(turnOrder(state, ROTATING))).toEqual(order)
    expect(doorShelf(state, ROTATING)).toBe(order[0])
  })

  it('[L34] given shelves loaded separately, then the set-up gives the order and nothing stands at the door', () => {
    const shop = shopWith()
    const state = stateWith({ shop, shelves: { s2: touched('6:45') } })
    expect(ids(turnOrder(state, shop))).toEqual(['s1', 's2', 's3'])
    expect(doorShelf(state, shop)).toBeNull()
  })

  it('[L34] given a retired shelf, then it is gone once nothing is on it', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1', order: 2 }), shelf({ id: 's2', retired: true })]) })
    expect(ids(shelvesInOrder(stateWith({ shop }), shop))).toEqual(['s1'])
    expect(ids(shelvesInOrder(stateWith({ shop, loads: [load({ shelf: 's2' })] }), shop))).toEqual(['s2', 's1'])
  })
})

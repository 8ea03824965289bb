import { describe, expect, it } from 'vitest'
import { orderId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { promiseFor } from '../../../shared-core/orders/promise.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at, batch, lines, loadOf, lot, stateWith, stock, until } from '../support/make.ts'
import { planLoad, planWith } from '../support/plan.ts'
import { keepFor, onRod, order, orderLine, promiseShop, promising, walkIns } from './promise-makers.ts'

const clock = (ms: EpochMs | null) => (ms === null ? null : new Date(ms - at('0:00')).toISOString().slice(11, 16))

/** 24 sesame on the rod, 24 in the oven (ready at 7:11), 48 poppy advised (ready at 8:31). */
const SHOP = promiseShop()
const OVEN = loadOf({ shelf: 's2', out: until('6:54', '6:56', '6:58') }, lines('sesame', 24), SHOP)
const PLAN = planWith([planLoad('8:00', 1, { shelfId: shelfId('s3'), lines: lines('poppy', 48) })])
const stateOf = (parts: Parameters<typeof stateWith>[0] = {}) =>
  stateWith({ shop: SHOP, stock: [onRod('sesame', 24)], loaded: [OVEN], ...parts })

describe('the earliest time', () => {
  it.each([
    ['24 sesame', [orderLine('sesame', 24)], '07:00', { code: 'there' }],
    ['30 sesame', [orderLine('sesame', 30)], '07:15', { code: 'load', shelfId: 's2', varietyId: 'sesame' }],
    ['30 sesame on two lines', [orderLine('sesame', 15), orderLine('sesame', 15)], '07:15', { code: 'load' }],
    ['poppy beside', [orderLine('sesame', 6), orderLine('poppy', 6)], '08:31', { code: 'load', shelfId: 's3' }],
    ['a mixed 40', [orderLine(null, 40)], '07:15', { code: 'load', varietyId: null, shelfId: 's2' }],
    ['a mixed 30, no sesame', [orderLine(null, 30, { without: [varietyId('sesame')] })], '08:31', { code: 'load' }],
    ['60 sesame', [orderLine('sesame', 60)], null, { code: 'dough', doughId: 'plain' }],
    ['nothing that anybody bakes', [orderLine('cheddar', 1)], null, { code: 'dough' }],
  ])(
    '[M45, M49] given a rod, a load and a plan, when %s is asked for, then it is promised',
    (_what, asked, by, why) => {
      const { atMs, why: reason } = promiseFor(promising(stateOf(), asked, { plan: PLAN }))
      expect([clock(atMs), reason]).toEqual([by, expect.objectContaining(why)])
    },
  )

  it('[M45] given orders that are due later, when theirs is asked for, then it waits for what is nobody’s', () => {
    const orders = [order('A', '9:00', [orderLine('sesame', 20)])]
    const { atMs, why } = promiseFor(promising(stateOf({ orders }), [orderLine('sesame', 24)], { plan: PLAN }))
    // 48 come in all, 20 of them are A's: 24 are free at once, as A is served by the load.
    expect([clock(atMs), why.code]).toEqual(['07:00', 'there'])
    const more = promiseFor(promising(stateOf({ orders }), [orderLine('sesame', 29)], { plan: PLAN }))
    expect([more.atMs, more.why]).toEqual([null, { code: 'orders', varietyId: 'sesame', orderId: orderId('A') }])
  })

  it('[M45] given an order that is due before the load, when its pieces are asked for, then they are not given away', () => {
    const orders = [order('A', '7:05', [orderLine('sesame', 20)])]
    const { atMs, why } = promiseFor(promising(stateOf({ orders }), [orderLine('sesame', 12)], { plan: PLAN }))
    expect([clock(atMs), why]).toEqual(['07:15', { code: 'orders', varietyId: 'sesame', orderId: orderId('A') }])
    const kept = stateOf({ orders, keeps: [keepFor('A', lines('sesame', 20))], stock: [onRod('sesame', 24)] })
    expect(clock(promiseFor(promising(kept, [orderLine('sesame', 12)], { plan: PLAN })).atMs)).toBe('07:00')
    const changed = promising(stateOf({ orders }), [orderLine('sesame', 24)], { plan: PLAN, leaveOut: orderId('A') })
    expect(clock(promiseFor(changed).atMs)).toBe('07:00')
  })

  it('[M45] given an estimate of the rod, when something is asked for, then only what is there for sure counts', () => {
    const seen = { seen: { atMs: at('4:30'), sold: 0, shopSold: 0 } }
    const unsure = stock('sesame', { lots: [lot({ pieces: 40, readyAt: at('4:30'), outAt: at('4:15') })], ...seen })
    const state = stateOf({ stock: [unsure], loaded: [] })
    expect(promiseFor(promising(state, [orderLine('sesame', 40)])).atMs).toBeNull()
    expect(clock(promiseFor(promising(state, [orderLine('sesame', 12)])).atMs)).toBe('07:00')
  })

  it('[M45] given cooling pieces and the hour after the close, when they are asked for, then it says so', () => {
    const hot = stock('sesame', { lots: [lot({ pieces: 12, outAt: at('6:55'), readyAt: at('7:10') })] })
    const { atMs, why } = promiseFor(promising(stateOf({ stock: [hot], loaded: [] }), [orderLine('sesame', 6)]))
    expect([clock(atMs), why.code]).toEqual(['07:10', 'cooling'])
    const closing = promising(stateOf({ stock: [hot], loaded: [] }), [orderLine('sesame', 6)], {
      closesAtMs: at('7:05'),
    })
    expect(promiseFor(closing)).toMatchObject({ atMs: null, why: { code: 'tooLate' } })
    const over = promising(stateOf(), [orderLine('sesame', 6)], { nowMs: at('15:01') })
    expect(promiseFor(over)).toMatchObject({ atMs: null, why: { code: 'tooLate' } })
  })

  it('[M49] given dough that no load takes, when its variety is asked for, then the reason is that no load brings it', () => {
    const state = stateOf({ batches: [batch({ pieces: 30, stage: 'chill' })] })
    const { why } = promiseFor(promising(state, [orderLine('poppy', 6)]))
    expect(why).toEqual({ code: 'noLoad', varietyId: 'poppy' })
  })
})

describe('walk-ins', () => {
  const shop = promiseShop({ walkInPercent: 100 })
  const rod = (pieces: number) => stateWith({ shop, stock: [onRod('sesame', pieces)] })

  it('[M46] given what walk-ins will ask for until the close, when pieces are asked for, then theirs are left to them', () => {
    const outlook = walkIns('sesame', 16)
    expect(clock(promiseFor(promising(rod(24), [orderLine('sesame', 8)], { outlook })).atMs)).toBe('07:00')
    const { atMs, why } = promiseFor(promising(rod(24), [orderLine('sesame', 9)], { outlook }))
    expect([atMs, why]).toEqual([null, { code: 'walkIns', varietyId: 'sesame' }])
    const half = { ...rod(24), shop: promiseShop({ walkInPercent: 50 }) }
    expect(clock(promiseFor(promising(half, [orderLine('sesame', 16)], { outlook })).atMs)).toBe('07:00')
    const least = { ...rod(24), shop: promiseShop({ walkInLeast: 3 }) }
    expect(promiseFor(promising(least, [orderLine('sesame', 22)], { outlook })).atMs).toBeNull()
    expect(clock(promiseFor(promising(least, [orderLine('sesame', 21)], { outlook })).atMs)).toBe('07:00')
  })

  it('[M49] given an order and walk-ins, when there is too little, then the reason is the one without which there would be enough', () => {
    const state = stateWith({
      shop,
      stock: [onRod('sesame', 24)],
      orders: [order('A', '9:00', [orderLine('sesame', 4)])],
    })
    const outlook = walkIns('sesame', 16)
    const why = (pieces: number) => promiseFor(promising(state, [orderLine('sesame', pieces)], { outlook })).why
    expect(why(8)).toEqual({ code: 'walkIns', varietyId: 'sesame' })
    expect(why(22)).toEqual({ code: 'orders', varietyId: 'sesame', orderId: 'A' })
  })

  it('[M46] given that walk-ins empty the rod before the next load, when it comes, then it owes nothing to those who found none', () => {
    const outlook = walkIns('sesame', 80)
    const plan = planWith([planLoad('14:00', 1)])
    const { atMs, why } = promiseFor(promising(rod(10), [orderLine('sesame', 18)], { outlook, plan }))
    // Ten an hour: those who found none until 14:31 have gone; of the 24 five are left to the last half hour.
    expect([clock(atMs), why.code]).toEqual(['14:31', 'load'])
    expect(clock(promiseFor(promising(rod(10), [orderLine('sesame', 19)], { outlook, plan })).atMs)).toBe('14:31')
    expect(promiseFor(promising(rod(10), [orderLine('sesame', 20)], { outlook, plan })).atMs).toBeNull()
  })
})

describe('slicing, splitting, the next day', () => {
  it('[M48] given pieces that are still warm, when they are asked for sliced, then they cool and are packed before', () => {
    // Out at 6:30, on sale at 6:45, to be sliced from 7:00: four minutes for two dozen.
    const asked = [orderLine('sesame', 24, { sliced: true })]
    const { atMs, why, now } = promiseFor(promising(stateOf({ loaded: [] }), asked))
    expect([clock(atMs), why.code, now]).toEqual(['07:04', 'packing', []])
    const later = promiseFor(promising(stateOf(), [orderLine('sesame', 30, { bagged: true })], { plan: PLAN }))
    expect([clock(later.atMs), later.why.code]).toEqual(['07:36', 'load'])
  })

  it('[M50] given more than there is, when it is asked for, then some can go now and the rest when it is there', () => {
    const asked = [orderLine('sesame', 30), orderLine('poppy', 6)]
    const { atMs, now, split } = promiseFor(promising(stateOf(), asked, { plan: PLAN }))
    expect([clock(atMs), now]).toEqual(['08:31', lines('sesame', 24)])
    expect(split).toEqual({ nowLines: lines('sesame', 24), restAtMs: at('8:31') })
    const mixed = promiseFor(
      promising(stateOf({ stock: [onRod('sesame', 20), onRod('poppy', 10)] }), [orderLine(null, 12)]),
    )
    expect([clock(mixed.atMs), mixed.now, mixed.split]).toEqual(['07:00', lines('sesame', 8, 'poppy', 4), null])
  })

  it.each([
    [null, '7:00', '2026-11-25 06:00'],
    [18 * 60, '17:59', '2026-11-25 06:00'],
    [18 * 60, '18:01', '2026-11-26 06:00'],
  ])('[M51] given a cut-off at %s, when it is %s, then the next day is', (cutOffMinute, now, opens) => {
    const state = stateWith({ shop: promiseShop({ cutOffMinute }) })
    const { nextDayAtMs } = promiseFor(promising(state, [orderLine('sesame')], { nowMs: at(now) }))
    const local = nextDayAtMs === null ? '' : new Date(nextDayAtMs - 6 * 3_600_000).toISOString()
    expect(local.slice(0, 16).replace('T', ' ')).toBe(opens)
  })
})

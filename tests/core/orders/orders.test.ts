import { describe, expect, it } from 'vitest'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, orderId, standingId, varietyId } from '../../../shared-core/ids.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import { later, spanMs } from '../../../shared-core/units.ts'
import { at, lines, loadOf, lot, stateWith, stock } from '../support/make.ts'
import { decided, eventsOf, outcome, places, play } from '../support/play.ts'
import { askedItem, askedLine, orderShop, slip, takeOrder } from './order-makers.ts'

/** 24 sesame and 12 poppy for sale; 36 sesame in the oven. */
function shopState(rules: Partial<OrderRules> = {}): State {
  const shop = orderShop(rules)
  return stateWith({
    shop,
    loaded: [loadOf({}, lines('sesame', 36), shop)],
    stock: [
      stock('sesame', { lots: [lot({ id: 'a', pieces: 24 })] }, shop),
      stock('poppy', { lots: [lot({ id: 'b', pieces: 12 })] }, shop),
    ],
  })
}

function orderOf(state: State): Order {
  const [order] = state.orders.values()
  if (order === undefined) throw new Error('no order')
  return order
}

const out: Act = { type: 'out', loadId: 'l1' as never, from: 'first-side', lines: null }

describe('taking an order', () => {
  it('[M1] given slips, when taken, then each gets the next number, and none that somebody waits with', () => {
    const state = shopState()
    play(state, takeOrder({ mark: '2', lines: [askedLine('sesame')] }))
    for (let n = 0; n < 3; n += 1) play(state, slip(askedItem('coffee')))
    expect([...state.orders.values()].map(({ mark }) => mark)).toEqual(['2', '1', '3', '4'])
    const first = [...state.orders.values()][1]?.id ?? orderId('')
    play(state, { type: 'handOverOrder', orderId: first, lines: null })
    play(state, slip(askedItem('coffee')))
    expect([...state.orders.values()].map(({ mark }) => mark)).toEqual(['2', '3', '4', '5'])
  })

  it('[M2] given somebody who waits, when taken, then it is due as the shop promises', () => {
    const state = shopState({ madeInMs: spanMs(7, 'min') })
    play(state, slip(askedItem('coffee')))
    expect(orderOf(state).dueAtMs).toBe(later(at('6:47'), spanMs(7, 'min')))
    expect(outcome(decided(state, takeOrder({ dueAtMs: null, lines: [askedLine('sesame')] })))).toBe('order-when')
  })

  it('[M3] given a baker’s dozen, when two and four are ordered, then they are thirty', () => {
    const state = shopState({ dozenPieces: 13 })
    play(state, takeOrder({ lines: [askedLine(null, { dozens: 2, pieces: 4, without: [varietyId('rye')] })] }))
    expect(orderOf(state).lines).toMatchObject([{ pieces: 30, dozens: 2, without: ['rye'] }])
  })

  it.each([
    ['nothing at all', takeOrder({}), 'order-empty'],
    ['a line of nothing', takeOrder({ lines: [askedLine('sesame', { pieces: 0 })] }), 'order-empty'],
    ['what is not made', takeOrder({ lines: [askedLine('pumpkin')] }), 'unknown-variety'],
    [
      'a dozen without any',
      takeOrder({
        lines: [
          askedLine(null, { without: ['sesame', 'poppy', 'plain', 'focaccia', 'cheddar', 'rye'].map(varietyId) }),
        ],
      }),
      'order-nothing-left',
    ],
    ['a sandwich on nothing', slip(askedItem('lox')), 'which-bagel'],
    ['what is not on the menu', slip(askedItem('soup')), 'unknown-menu-item'],
    [
      'no such run',
      takeOrder({ lines: [askedLine('sesame')], way: 'delivery', runId: 'west' as never }),
      'unknown-run',
    ],
    ['a day long past', takeOrder({ lines: [askedLine('sesame')], dueAtMs: at('9:00', -3) }), 'date-over'],
    ['a day far ahead', takeOrder({ lines: [askedLine('sesame')], dueAtMs: at('9:00', 500) }), 'date-too-far'],
  ])('[M4] given %s, then it is refused', (_what, act, code) => {
    expect(outcome(decided(shopState(), act))).toBe(code)
  })

  it('[M5] given an order that a till sent before, then it is not taken twice', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine('sesame')], ref: 'till 4711' }))
    expect(outcome(decided(state, takeOrder({ lines: [askedLine('poppy')], ref: 'till 4711' })))).toBe('order-known')
  })

  it('[M14] given a name, a phone number and a note, then none of it is in events or state', () => {
    const state = shopState()
    const details = { name: 'Quentin Qux', phone: '555 0142', note: 'rings twice' }
    const events = play(state, takeOrder({ lines: [askedLine('sesame')], details }))
    const told = JSON.stringify([events, [...state.orders.values()], state.traces])
    for (const said of Object.values(details)) expect(told).not.toContain(said)
    expect(orderOf(state).details).toBe(1)
    play(state, {
      ...takeOrder({ lines: [askedLine('sesame')], details }),
      type: 'changeOrder',
      orderId: orderOf(state).id,
    })
    expect(orderOf(state).details).toBe(2)
  })

  it('[M16] given a closed shop, when an order for tomorrow is taken, then no day is opened', () => {
    const state = stateWith({ shop: orderShop(), day: null })
    const when = { nowMs: at('20:00'), localDate: '2026-11-24' }
    const events = play(state, takeOrder({ lines: [askedLine('sesame')], dueAtMs: at('9:00', 1) }), when)
    expect(events.map(({ type }) => type)).toEqual(['orderTaken'])
    expect(state.day).toBeNull()
  })
})

describe('keeping and handing over', () => {
  it('[M6] given orders, when their pieces come out, then they are kept, the soonest due first and no more than ordered', () => {
    const state = shopState()
    play(state, takeOrder({ mark: 'B', dueAtMs: at('9:00'), lines: [askedLine('sesame', { pieces: 24 })] }))
    play(state, takeOrder({ mark: 'A', dueAtMs: at('8:00'), lines: [askedLine('sesame', { pieces: 20 })] }))
    play(state, out, { nowMs: at('6:56') })
    const kept = [...state.keeps.values()].map((keep) => [
      state.orders.get(keep.orderId ?? orderId(''))?.mark,
      keep.lines[0]?.pieces,
    ])
    expect(kept).toEqual([
      ['A', 20],
      ['B', 16],
    ])
    expect(state.stock.get(varietyId('sesame'))?.kept).toBe(36)
  })

  it('[M6] given a shop that keeps by hand, when pieces come out, then nothing is kept', () => {
    const state = shopState({ keepsAsTheyCome: false })
    play(state, takeOrder({ lines: [askedLine('sesame')] }))
    play(state, out, { nowMs: at('6:56') })
    expect(state.keeps.size).toBe(0)
  })

  it('[M7] given a part that is kept, when handed over, then that goes first, the rest comes off the rod, and all is sold', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine('sesame', { pieces: 30 })] }))
    const { id } = orderOf(state)
    play(state, { type: 'keep', lines: lines('sesame', 10), orderId: id })
    const events = play(state, { type: 'handOverOrder', orderId: id, lines: null }, { nowMs: at('8:50') })
    expect(eventsOf(events, 'handedOver')).toHaveLength(1)
    expect(eventsOf(events, 'stockTaken')).toMatchObject([{ fate: 'sold', found: 6 }])
    expect(eventsOf(events, 'orderShort')).toEqual([])
    expect([state.orders.size, state.keeps.size]).toEqual([0, 0])
    expect(state.stock.get(varietyId('sesame'))?.soldToday).toBe(30)
  })

  it('[M8] given fewer and others in the bag, when handed over, then what is missing is on record and the rest for sale again', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine('sesame', { pieces: 12 }), askedLine(null, { pieces: 6 })] }))
    const { id } = orderOf(state)
    play(state, { type: 'keep', lines: lines('sesame', 12), orderId: id })
    const events = play(state, { type: 'handOverOrder', orderId: id, lines: lines('sesame', 8, 'poppy', 3) })
    expect(eventsOf(events, 'orderShort')[0]?.missing).toEqual([
      { varietyId: 'sesame', pieces: 4 },
      { varietyId: null, pieces: 3 },
    ])
    expect(places(state)).toEqual(expect.arrayContaining(['out sesame 16', 'out poppy 9']))
  })

  it('[M7] given a mixed dozen, when handed over, then it is of what there is most of, and nothing that it must not have', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine(null, { dozens: 1, pieces: 0, without: [varietyId('sesame')] })] }))
    const events = play(state, { type: 'handOverOrder', orderId: orderOf(state).id, lines: null })
    expect(eventsOf(events, 'stockTaken').some((event) => event.varietyId === 'sesame')).toBe(false)
    expect(eventsOf(events, 'orderShort')).toEqual([])
  })

  it('[M8] given a mixed line of which all varieties went out of use meanwhile, when handed over, then it leaves without it', () => {
    const shop = orderShop()
    const state = stateWith({ shop })
    const without = [...shop.varieties.keys()].filter((id) => id !== 'rye')
    play(state, takeOrder({ lines: [askedLine(null, { without }), askedLine('sesame')] }))
    const varieties = [...shop.varieties.values()].map(
      (one) => [one.id, { ...one, retired: one.id === 'rye' }] as const,
    )
    state.shop = { ...shop, varieties: new Map(varieties) }
    const events = play(state, { type: 'handOverOrder', orderId: orderOf(state).id, lines: null })
    expect(eventsOf(events, 'orderShort')[0]?.missing).toEqual([{ varietyId: null, pieces: 6 }])
  })

  it.each(['cancelOrder', 'missOrder'] as const)(
    '[M9] given kept pieces, when %s, then they are for sale again',
    (type) => {
      const state = shopState()
      play(state, takeOrder({ lines: [askedLine('sesame', { pieces: 12 })] }))
      const { id } = orderOf(state)
      play(state, { type: 'keep', lines: lines('sesame', 12), orderId: id })
      expect(places(state)).toContain('out sesame 12')
      play(state, { type, orderId: id })
      expect(places(state)).toContain('out sesame 24')
      expect([state.orders.size, state.keeps.size]).toEqual([0, 0])
    },
  )

  it('[M15] given an order handed over, when taken back, then it is open again with what was kept for it', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine('sesame', { pieces: 12 })] }))
    const { id } = orderOf(state)
    play(state, { type: 'keep', lines: lines('sesame', 12), orderId: id })
    const before = places(state)
    play(state, { type: 'handOverOrder', orderId: id, lines: null }, { id: 'handed0001' })
    play(state, { type: 'takeBack', commandId: commandId('handed0001') })
    expect(places(state)).toEqual(before)
    expect([...state.keeps.values()].map((keep) => keep.orderId)).toEqual([id])
  })

  it('[M23] given two people who keep the rest of an order at once, then it is kept once; for another order it is meant', () => {
    const state = shopState()
    for (const mark of ['A', 'B']) play(state, takeOrder({ mark, lines: [askedLine('sesame')] }))
    const [one, other] = [...state.orders.keys()]
    const keepFor = (id = orderId('')): Act => ({ type: 'keep', lines: lines('sesame', 6), orderId: id })
    const seen = { seenSeq: state.seq, device: 'phone' }
    play(state, keepFor(one), { device: 'counter' })
    expect(outcome(decided(state, keepFor(one), seen))).toBe('already-moved')
    expect(outcome(decided(state, keepFor(other), seen))).toBe('taken')
    expect(outcome(decided(state, keepFor(one), { ...seen, device: 'counter' }))).toBe('taken')
  })

  it('[M22] given pieces that were kept since, when taking the order is taken back, then that comes after them; nothing stays kept for nobody', () => {
    const state = shopState()
    play(state, takeOrder({ lines: [askedLine('sesame')] }), { id: 'taken00001' })
    const { id } = orderOf(state)
    play(state, { type: 'keep', lines: lines('sesame', 6), orderId: id }, { id: 'kept000001' })
    const back = (command: string): Act => ({ type: 'takeBack', commandId: commandId(command) })
    expect(outcome(decided(state, back('taken00001')))).toBe('take-back-changed-since')
    play(state, { type: 'release', keepId: [...state.keeps.keys()][0] as never }, { id: 'freed00001' })
    expect(outcome(decided(state, back('taken00001')))).toBe('take-back-changed-since')
    play(state, { type: 'cancelOrder', orderId: id }, { id: 'ended00001' })
    expect(outcome(decided(state, back('freed00001')))).toBe('take-back-changed-since')
    for (const command of ['ended00001', 'freed00001', 'kept000001', 'taken00001']) play(state, back(command))
    expect([state.orders.size, state.keeps.size, places(state).includes('out sesame 24')]).toEqual([0, 0, true])
  })
})

const SCHOOL: Extract<Act, { type: 'setStanding' }> = {
  type: 'setStanding',
  standingId: null,
  way: 'pickUp',
  ...{ mark: 'SCH', runId: null, stop: 0, dueMinute: 7 * 60 },
  ...{ lines: [askedLine('sesame', { dozens: 2, pieces: 0 })], isPaid: true, onHolidays: false },
  recurrence: {
    freq: 'weekly',
    ...{ interval: 1, from: '2026-11-01', until: null, weekdays: [1, 2, 3, 4, 5] },
    ...{ nth: null, except: ['2026-11-25'], also: [] },
  },
}

describe('standing orders and the day', () => {
  it('[M11] given one that stands, when days open, then each has its order once, but for dates that are excepted', () => {
    const state = stateWith({ shop: orderShop(), day: null })
    play(state, SCHOOL, { nowMs: at('20:00', -1), localDate: '2026-11-23' })
    play(state, { type: 'openDay' }, { nowMs: at('4:00'), localDate: '2026-11-24' })
    expect(orderOf(state)).toMatchObject({ mark: 'SCH', dueAtMs: at('7:00'), standing: { date: '2026-11-24' } })
    play(state, { type: 'handOverOrder', orderId: orderOf(state).id, lines: null }, { nowMs: at('7:00') })
    expect(outcome(decided(state, { type: 'takeUpOrders' }, { nowMs: at('7:05') }))).toBe('nothing-due')
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    play(state, { type: 'openDay' }, { nowMs: at('4:00', 1), localDate: '2026-11-25' })
    expect(state.orders.size).toBe(0)
  })

  it('[M11] given a morning that the first act opens, when it is taken up, then its orders are there; set anew they stay', () => {
    const state = stateWith({ shop: orderShop() })
    play(state, SCHOOL)
    play(state, { type: 'takeUpOrders' })
    const [standing] = state.standing.keys()
    play(state, { ...SCHOOL, standingId: standing ?? standingId(''), dueMinute: 480 })
    expect(outcome(decided(state, { type: 'takeUpOrders' }))).toBe('nothing-due')
    expect(orderOf(state).dueAtMs).toBe(at('7:00'))
    play(state, { type: 'endStanding', standingId: standing ?? standingId('') })
    expect([state.standing.size, state.orders.size]).toEqual([0, 1])
  })

  it('[M11] given one that is said after its time of the day, when that day is open, then it comes from the next one on', () => {
    const state = stateWith({ shop: orderShop() })
    play(state, SCHOOL, { nowMs: at('6:59') })
    play(state, { ...SCHOOL, mark: 'LATE' }, { nowMs: at('7:01') })
    play(state, { type: 'takeUpOrders' }, { nowMs: at('7:02') })
    expect([...state.orders.values()].map(({ mark }) => mark)).toEqual(['SCH'])
    play(state, { type: 'closeDay' }, { nowMs: at('15:00'), confirmed: ['orders-open'] })
    const thursday = { nowMs: at('4:00', 2), localDate: '2026-11-26' }
    play(state, { type: 'openDay' }, thursday)
    expect([...state.orders.values()].map(({ mark }) => mark).sort()).toEqual(['LATE', 'SCH'])
  })

  it('[M12] given a shop that waits an hour, when nobody came, then the order ends and its pieces go back', () => {
    const state = shopState({ noShowMs: spanMs(1, 'h') })
    play(state, takeOrder({ lines: [askedLine('sesame')] }))
    play(state, { type: 'keep', lines: lines('sesame', 6), orderId: orderOf(state).id })
    expect(outcome(decided(state, { type: 'takeUpOrders' }, { nowMs: at('9:59') }))).toBe('nothing-due')
    play(state, { type: 'takeUpOrders' }, { nowMs: at('10:01') })
    expect([state.orders.size, places(state).includes('out sesame 24')]).toEqual([0, true])
  })

  it('[M13] given a day that nobody closed, when the next morning’s guest waits already, then its late close does not end their slip', () => {
    const state = shopState()
    play(state, out, { nowMs: at('6:56') })
    play(state, slip(askedItem('coffee')), { nowMs: at('14:00') })
    const morning = (clock: string) => ({ nowMs: at(clock, 1), localDate: '2026-11-25' })
    play(state, slip(askedItem('coffee')), morning('6:58'))
    const id = [...state.orders.keys()][1] ?? orderId('')
    const events = play(state, { type: 'handOverOrder', orderId: id, lines: null }, morning('7:00'))
    expect(events.map(({ type }) => type)).toEqual(['orderEnded', 'dayClosed', 'dayOpened', 'orderEnded'])
    expect(state.orders.size).toBe(0)
  })

  it('[M13] given open orders, when the day is closed, then it asks, today’s end with their pieces day-old, tomorrow’s stay kept', () => {
    const state = shopState()
    play(state, out, { nowMs: at('6:56') })
    play(state, takeOrder({ mark: 'T', dueAtMs: at('8:00', 1), lines: [askedLine('poppy')] }))
    play(state, { type: 'keep', lines: lines('poppy', 6), orderId: orderOf(state).id })
    play(state, takeOrder({ mark: 'N', lines: [askedLine('sesame')] }))
    const now = [...state.orders.values()][1]?.id ?? orderId('')
    play(state, { type: 'keep', lines: lines('sesame', 6), orderId: now })
    expect(outcome(decided(state, { type: 'closeDay' }, { nowMs: at('15:00') }))).toBe('ask orders-open')
    play(state, { type: 'closeDay' }, { nowMs: at('15:00'), confirmed: ['orders-open'] })
    expect([...state.orders.values()].map(({ mark }) => mark)).toEqual(['T'])
    expect([...state.keeps.values()].map((keep) => keep.lines)).toEqual([lines('poppy', 6)])
    play(state, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: at('15:05') })
    expect([...state.orders.values()].map(({ mark }) => mark).sort()).toEqual(['N', 'T'])
    expect(state.keeps.size).toBe(2)
  })
})

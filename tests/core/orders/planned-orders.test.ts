import { describe, expect, it } from 'vitest'
import { planDays } from '../../../shared-core/dough/plan-days.ts'
import { doughId, runId, standingId, varietyId } from '../../../shared-core/ids.ts'
import { dueOn } from '../../../shared-core/orders/due-on.ts'
import type { StandingOrder } from '../../../shared-core/orders/order.ts'
import { orderedOn } from '../../../shared-core/orders/ordered-on.ts'
import { bakeOffOf } from '../../../shared-core/plan/bake-off-of.ts'
import { Carry, carryNow } from '../../../shared-core/plan/carried.ts'
import { dayAheadLine } from '../../../shared-core/plan/day-ahead-line.ts'
import { lessOrdered } from '../../../shared-core/plan/less-ordered.ts'
import { lineToday } from '../../../shared-core/plan/line-today.ts'
import { planDay } from '../../../shared-core/plan/plan-day.ts'
import { doughShop, noonOf, planState, THURSDAY, TOMORROW } from '../dough/plan-make.ts'
import { eveningLine, asking as planning } from '../plan/plan-day-support.ts'
import { at, lines, minuteToMs as minute, stateWith } from '../support/make.ts'
import { kitchenParts } from '../support/shop-kitchen.ts'
import { DATE, keepFor, onRod, order, orderLine, promiseShop } from './promise-makers.ts'

const AT = { date: DATE, noonMs: at('12:00') }
const LINE_AT = { ...AT, nowMs: at('7:00') }

/** A dozen plain every Wednesday and Thursday at 6:30. */
function standing(parts: Partial<StandingOrder> = {}): StandingOrder {
  const recurrence = { interval: 1, from: '2026-11-25', until: null, nth: null, except: [], also: [] }
  return {
    id: standingId('school'),
    mark: 'SC',
    way: 'pickUp',
    runId: null,
    stop: 0,
    dueMinute: 390,
    lines: [orderLine('plain', 12)],
    isPaid: true,
    details: 0,
    recurrence: { freq: 'weekly', weekdays: [3, 4], ...recurrence },
    onHolidays: false,
    takenUp: null,
    ...parts,
  }
}

describe('what is due on a date', () => {
  it('[M42] given open orders and standing ones, when a date is asked for, then both come by due time, each once', () => {
    const late = order('late', '9:00', [])
    const open = [late, order('soon', '6:20', []), order('other', '9:00', [], { dueAtMs: at('9:00', 2) })]
    const ids = (date: string, state = stateWith({ shop: promiseShop(), orders: open, standing: [standing()] })) =>
      dueOn(state, { date, noonMs: noonOf(date) }).map(({ id }) => id)
    expect(ids(DATE)).toEqual(['soon', 'late'])
    expect(ids('2026-11-25')).toEqual(['school.2026-11-25'])
    expect(ids(THURSDAY)).toEqual(['school.2026-11-26', 'other'])
    const takenUp = stateWith({ shop: promiseShop(), standing: [standing({ takenUp: '2026-11-25' })] })
    expect([ids('2026-11-25', takenUp), ids(THURSDAY, takenUp)]).toEqual([[], ['school.2026-11-26']])
    const [wednesday] = dueOn(stateWith({ shop: promiseShop(), standing: [standing()] }), {
      date: TOMORROW,
      noonMs: noonOf(TOMORROW),
    })
    expect(wednesday).toMatchObject({ dueAtMs: at('6:30', 1), standing: { standingId: 'school', date: TOMORROW } })
  })
})

describe('orders for the oven', () => {
  it('[M57] given orders of a day, when the line is looked at, then each has its due time, its packing and its cooling; what is kept needs none', () => {
    const orders = [
      order('A', '9:10', [orderLine('sesame', 12), orderLine('poppy', 6)]),
      order('B', '9:10', [orderLine('sesame', 6)]),
      order('C', '9:10', [orderLine('plain', 24, { sliced: true })]),
    ]
    const state = stateWith({ shop: promiseShop(), orders, keeps: [keepFor('A', lines('sesame', 12))] })
    const named = (some: readonly { varietyId: string | null; pieces: number }[]) =>
      some.map((one) => [one.varietyId, one.pieces])
    expect(orderedOn(state, AT).map((one) => ({ ...one, lines: named(one.lines) }))).toEqual([
      {
        dueAtMs: at('9:10'),
        takenAtMs: at('5:00'),
        leadMs: 0,
        coolMs: 0,
        lines: [
          ['poppy', 6],
          ['sesame', 6],
        ],
      },
      { dueAtMs: at('9:10'), takenAtMs: at('5:00'), leadMs: 240_000, coolMs: 1_800_000, lines: [['plain', 24]] },
    ])
  })

  it('[M57] given orders for many times of a day, when the line is looked at, then those of a quarter of an hour are one, due with the first', () => {
    const some = (count: number) =>
      Array.from({ length: count }, (_, n) =>
        order(`o${n}`, '9:00', [orderLine('sesame', 1)], { dueAtMs: minute(540 + 5 * n) }),
      )
    const due = (count: number) =>
      orderedOn(stateWith({ shop: promiseShop(), orders: some(count) }), AT).map(({ dueAtMs }) => dueAtMs)
    expect(due(16)).toHaveLength(16)
    expect(due(18)).toEqual([0, 15, 30, 45, 60, 75].map((after) => minute(540 + after)))
  })

  it('[M57] given an order on the van, when the line is looked at, then boxing and loading come before it is out of the door', () => {
    const shop = promiseShop({}, kitchenParts())
    const [van] = shop.runs.values()
    const onVan = order('A', '9:00', [orderLine('sesame', 24)], { way: 'delivery', runId: van?.id ?? runId('van') })
    expect(orderedOn(stateWith({ shop, orders: [onVan] }), AT)[0]?.leadMs).toBe((van?.loadMs ?? 0) + 240_000)
  })

  it('[M57] given the open day, when it is planned, then orders by name are baked in time and say so; what is overdue is due now', () => {
    const orders = [order('A', '8:30', [orderLine('poppy', 30)]), order('B', '6:30', [orderLine('sesame', 6)])]
    const state = stateWith({ shop: promiseShop(), orders, stock: [onRod('sesame', 12)] })
    const line = { ...lineToday(state, LINE_AT), doughs: eveningLine().doughs }
    const asked = planning({ line, effort: 0.02 })
    expect(bakeOffOf(asked).orders).toEqual([
      { due: 420, lines: [['sesame', 6]] },
      { due: 510, lines: [['poppy', 30]] },
    ])
    const plan = planDay(asked, null, 7)
    const before = plan.loads.filter(({ readyAtMs }) => readyAtMs <= at('8:30'))
    const poppy = before.flatMap((one) => one.lines).filter(({ varietyId: id }) => id === 'poppy')
    expect(poppy.reduce((sum, { pieces }) => sum + pieces, 0)).toBeGreaterThanOrEqual(30)
    expect(before.flatMap(({ why }) => why)).toContainEqual(
      expect.objectContaining({ kind: 'order', varietyId: 'poppy', dueAtMs: at('8:30') }),
    )
  })

  it('[M57] given a plan, when an order comes that changes it, then that is the cause', () => {
    const line = eveningLine({ isOpen: true, nowMs: at('6:47') })
    const before = planDay(planning({ line, effort: 0.02 }), null, 7)
    const ordered = (takenAtMs: ReturnType<typeof at>) => [
      {
        dueAtMs: at('9:30'),
        takenAtMs,
        leadMs: 0,
        coolMs: 0,
        lines: [{ varietyId: varietyId('rye'), without: [], pieces: 48 }],
      },
    ]
    const cause = (takenAtMs: ReturnType<typeof at>) =>
      planDay(planning({ line: { ...line, ordered: ordered(takenAtMs) }, effort: 0.02 }), before, 8).changed?.cause.kind
    expect(cause(at('6:47:30'))).toBe('order')
    expect(cause(at('6:30'))).not.toBe('order')
  })

  it('[M57] given pieces that were typed as ordered, when a keep is for a board’s order, then theirs are still to be baked', () => {
    const typed = { doughId: doughId('plain'), varietyId: varietyId('sesame'), pieces: 0, ordered: 12 }
    const state = stateWith({
      shop: promiseShop(),
      orders: [order('A', '9:00', [orderLine('sesame', 6)])],
      keeps: [keepFor('A', lines('sesame', 6)), { ...keepFor('B', lines('sesame', 4)), orderId: undefined as never }],
    })
    state.wanted.set(DATE, { date: DATE, lines: [typed] })
    const early = lineToday(state, { ...LINE_AT, nowMs: at('5:00') })
    expect(early.ordered).toEqual([
      {
        dueAtMs: at('6:00'),
        takenAtMs: null,
        leadMs: 0,
        coolMs: 0,
        lines: [{ varietyId: 'sesame', without: [], pieces: 8 }],
      },
    ])
    expect(lineToday(state, LINE_AT).ordered).toEqual([])
  })

  it('[M58] given mixed lines, when they are planned, then of what there is too much of, then in the shares of demand, never of what must not be in them', () => {
    const mixed = orderLine(null, 24, { without: [varietyId('plain')] })
    const asked = (stock: ReturnType<typeof onRod>[]) => {
      const state = stateWith({ shop: promiseShop(), orders: [order('A', '9:00', [mixed])], stock })
      return bakeOffOf(planning({ line: lineToday(state, LINE_AT) })).orders[0]?.lines
    }
    // 90 sesame, 40 poppy and 24 rye are asked for, and of the others nobody knows.
    expect(asked([])).toEqual([
      ['sesame', 15],
      ['poppy', 6],
      ['rye', 3],
    ])
    expect(asked([onRod('poppy', 60)])).toEqual([
      ['poppy', 21],
      ['sesame', 3],
    ])
  })
})

describe('what walk-ins find', () => {
  it('[M60] given orders that are not kept yet, when the rest of the day is foreseen, then their pieces are not there for walk-ins: what comes in time first, then what is there', () => {
    const items = [
      {
        id: 'sesame',
        sold: [],
        unseen: 0,
        gone: [],
        stock: { mean: 10, doubt: 2 },
        more: [
          { minute: 500, pieces: 12 },
          { minute: 600, pieces: 20 },
        ],
        kept: 0,
      },
      { id: 'poppy', sold: [], unseen: 0, gone: [], stock: { mean: 5, doubt: 0 }, more: [], kept: 0 },
    ]
    const today = {
      date: DATE,
      openMinute: 360,
      closeMinute: 900,
      nowMinute: 420,
      changeoverMinute: null,
      lastLoadInMinute: null,
      bakingIsOver: false,
      chilled: null,
      items,
    }
    const of = (clock: string, pieces: number) => ({
      dueAtMs: at(clock),
      takenAtMs: null,
      leadMs: 0,
      coolMs: 0,
      lines: lines('sesame', pieces),
    })
    const left = (orders: ReturnType<typeof of>[]) => {
      const [sesame, poppy] = lessOrdered(today, orders, at('12:00')).items
      expect(poppy).toEqual(items[1])
      return [sesame?.stock, sesame?.more]
    }
    expect(left([of('9:00', 15)])).toEqual([{ mean: 7, doubt: 2 }, [{ minute: 600, pieces: 20 }]])
    expect(left([of('9:00', 8), of('11:00', 8)])).toEqual([{ mean: 10, doubt: 2 }, [{ minute: 600, pieces: 16 }]])
    expect(left([of('8:00', 25)])).toEqual([{ mean: 0, doubt: 2 }, [{ minute: 600, pieces: 17 }]])
  })
})

describe('the days ahead', () => {
  const orders = [order('A', '9:00', [orderLine('plain', 24), orderLine('sesame', 12)], { dueAtMs: at('9:00', 1) })]

  it('[M59] given orders for tomorrow, when its dough is planned, then they are in it and in the reasons', () => {
    const state = planState({
      recordedAt: at('13:00'),
      orders,
      standing: [standing()],
      wanted: { [TOMORROW]: { plain: 102 } },
    })
    const plan = planDays({ state, shop: doughShop(), noonOf }, TOMORROW).plans.find(({ date }) => date === TOMORROW)
    const [plain] = plan?.doughs ?? []
    // 24 and 12 ordered, and 12 that stand.
    expect(plain?.why).toContainEqual({ code: 'orders', pieces: 48 })
    expect(plain?.pieces).toBe(150)
  })

  it('[M59] given the same, when advice is asked for, then it knows them by variety, mixed ones by what is asked for', () => {
    const mixed = order('M', '9:00', [orderLine(null, 12, { without: [varietyId('plain')] })], {
      dueAtMs: at('9:00', 1),
    })
    const state = planState({ recordedAt: at('13:00'), orders: [...orders, mixed], standing: [standing()] })
    const now = carryNow({ state, shop: doughShop(), noonOf }, THURSDAY)
    const carry = new Carry(doughShop(), noonOf, now)
    const means = new Map([
      ['sesame', 60],
      ['poppy', 30],
      ['plain', 100],
    ])
    expect(carry.orders(TOMORROW, means)).toEqual([
      { doughId: 'plain', varietyId: 'plain', pieces: 36 },
      { doughId: 'plain', varietyId: 'sesame', pieces: 20 },
      { doughId: 'plain', varietyId: 'poppy', pieces: 4 },
    ])
    expect(carry.orders(THURSDAY, means)).toEqual([{ doughId: 'plain', varietyId: 'plain', pieces: 12 }])
  })

  it('[M59] given a day that is not open, when its line is looked at, then its orders are due and their dough is there', () => {
    const state = stateWith({ shop: promiseShop(), day: null, standing: [standing()], orders })
    state.wanted.set(TOMORROW, {
      date: TOMORROW,
      lines: [{ doughId: doughId('plain'), varietyId: null, pieces: 100, ordered: 0 }],
    })
    const line = dayAheadLine(state, { date: TOMORROW, noonMs: noonOf(TOMORROW), nowMs: at('20:00') })
    expect(line.ordered.map(({ dueAtMs }) => dueAtMs)).toEqual([at('6:30', 1), at('9:00', 1)])
    expect(line.doughIsOpen).toBe(false)
    expect(line.doughs.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(148)
    const unsaid = dayAheadLine(
      { ...state, wanted: new Map() },
      { date: TOMORROW, noonMs: noonOf(TOMORROW), nowMs: at('20:00') },
    )
    expect([unsaid.doughIsOpen, unsaid.doughs.length]).toEqual([true, 2])
  })
})

import { describe, expect, it } from 'vitest'
import { boardsMark, changeoverMark, shelfMark } from '../../../shared-core/day/marks.ts'
import type { Mark } from '../../../shared-core/day/said.ts'
import { deviceId, doughId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { advisedId } from '../../../shared-core/live/plan.ts'
import { bakeOffOf, problemOf } from '../../../shared-core/plan/bake-off-of.ts'
import { dayAheadLine } from '../../../shared-core/plan/day-ahead-line.ts'
import { lineToday } from '../../../shared-core/plan/line-today.ts'
import { minuteOf } from '../../../shared-core/plan/plan-asked.ts'
import { valuedVarieties } from '../../../shared-core/plan/variety-given.ts'
import { DEFAULT_DEMAND } from '../../../shared-core/shop/default-rules.ts'
import { at, batch, lines, loadOf, lot, planned, stateWith, stock, until } from '../support/make.ts'
import { planLoad, planWith } from '../support/plan.ts'
import { shelf, shopWith, table } from '../support/shop.ts'
import { asking, DATE, DEMAND, eveningLine, NOON_MS, SHOP } from './plan-day-support.ts'

const AT = { nowMs: at('6:47'), noonMs: NOON_MS, date: DATE }
const by = { atMs: at('6:00'), deviceId: deviceId('desk-1') }

describe('the line as it stands', () => {
  const state = stateWith({
    shop: SHOP,
    batches: [
      batch({ id: 'old', pieces: 30, stage: 'chill', until: until('5:00', '6:00', '9:00'), since: at('20:00', -1) }),
      batch({ id: 'young', pieces: 60, stage: 'chill', until: until('7:00', '9:00', '18:00'), since: at('23:00', -1) }),
      batch({ id: 'rack', pieces: 18, stage: 'rack', until: until('6:50', '7:10', '8:00') }),
      batch({ id: 'dip', pieces: 36, stage: 'kettle', since: at('6:46:30') }),
      batch({ id: 'board', pieces: 12, stage: 'boards', variety: 'sesame', since: at('6:45') }),
    ],
    loaded: [
      loadOf({ planned: advisedId(3, 1) }, lines('sesame', 24), SHOP),
      loadOf(
        { id: 'l2', shelf: 's2', phase: 'second-side', flippedAt: at('6:40'), out: until('6:40', '6:45', '6:48') },
        lines('plain', 36),
        SHOP,
      ),
    ],
    stock: [stock('sesame', { lots: [lot({ pieces: 20 }), lot({ id: 'hot', pieces: 12, readyAt: at('6:55') })] })],
    planned: [
      planned({ id: 'own', shelf: 's2', inAt: at('8:00') }),
      planned({ id: advisedId(3, 2), inAt: at('7:00') }),
      planned({ id: 'gone', done: true }),
    ],
    forbids: [
      { shelfId: shelfId('s1'), varietyId: null, fromMs: at('5:00'), toMs: at('6:00') },
      { shelfId: shelfId('s1'), varietyId: null, fromMs: at('9:00'), toMs: at('9:30') },
    ],
    marks: [
      { id: boardsMark(), kind: 'boards', usable: 20, ...by } as unknown as Mark,
      { id: shelfMark(shelfId('s3')), kind: 'shelf-over', shelfId: shelfId('s3'), ...by } as unknown as Mark,
      { id: changeoverMark(), kind: 'changeover', slipMs: 900_000, ...by } as unknown as Mark,
    ],
  })
  const line = lineToday(state, AT)

  it('[I40] has boards, shelves and the changeover as they are today', () => {
    expect([line.isOpen, line.isOver, line.boards, line.slipMs]).toEqual([true, false, 20, 900_000])
    expect(line.shelves.map(({ shelfId: id }) => id)).toEqual(['s1', 's2'])
    expect(line.forbids.map(({ fromMs }) => fromMs)).toEqual([at('9:00')])
  })

  it('[I40] has loads with their ends, what is late as if it were done now, and what was begun', () => {
    expect(line.loads.map((one) => [one.shelfId, one.plannedId, one.isFlipped, one.outAtMs])).toEqual([
      ['s1', advisedId(3, 1), false, at('6:56')],
      ['s2', null, true, at('6:47')],
    ])
    expect(line.loads[0]?.flipAtMs).toBe(at('6:47'))
    expect(line.begun.map(({ stage, pieces, varietyId: of }) => [stage, pieces, of])).toEqual([
      ['boards', 12, 'sesame'],
      ['kettle', 36, null],
    ])
  })

  it('[I28] [I40] has dough with the soonest that it can be boiled, whose window closes first going first', () => {
    expect(line.doughs.map(({ stage, pieces, boilFromMs }) => [stage, pieces, boilFromMs])).toEqual([
      ['rack', 18, at('6:50')],
      ['chill', 30, at('7:07')],
      ['chill', 60, at('7:20')],
    ])
    expect(line.doughs.map(({ latestAtMs }) => latestAtMs)).toEqual([at('8:00'), at('9:00'), at('18:00')])
  })

  it('[I40] has stock, what cools, and loads that people set: neither advised nor done ones', () => {
    expect(line.stock).toEqual(lines('sesame', 20))
    expect(line.cooling).toEqual([{ ...lines('sesame', 12)[0], readyAtMs: at('6:55') }])
    expect(line.pinned.map(({ id, inAtMs }) => [id, inAtMs])).toEqual([['own', at('8:00')]])
  })

  it('[I40] goes from one thread to another as it is', () => {
    expect(structuredClone(line)).toEqual(line)
  })

  it('[I21] pieces in the kettle and on boards go into the next load that has them, and what is left of it is still taken from the dough', () => {
    const next = planLoad('6:58', 5, {
      kettleAtMs: at('6:45'),
      lines: lines('sesame', 30, 'plain', 24),
      shelfId: shelfId('s1'),
    })
    const before = planWith([next, planLoad('7:30', 6)], { date: DATE })
    const { started, given } = problemOf(asking({ line: { ...line, pinned: [] } }), before)
    expect(started.begun.map(({ id }) => id)).toEqual([next.id])
    expect(started.begun[0]?.load.lines).toEqual([
      ['sesame', 30],
      ['plain', 24],
    ])
    // 12 sesame and 36 of plain dough are dipped: six more are to come.
    expect(started.stillTaken.reduce((sum, [, pieces]) => sum + pieces, 0)).toBe(6)
    expect(given.doughs.plain?.pieces).toBe(18 + 30 + 60 - 6)
    expect(started.begun[0]?.load.in).toBeGreaterThanOrEqual(minuteOf(asking(), at('6:57')))
  })

  it('[I21] they are not kept waiting for a load that people set for much later', () => {
    const pinned = line.pinned.map((one) => ({ ...one, lines: lines('sesame', 30) }))
    const { started } = problemOf(asking({ line: { ...line, pinned } }), null)
    expect(started.begun.map(({ id }) => id)).toEqual([null])
    const eight = minuteOf(asking(), at('8:00'))
    expect(started.pinned.map(({ id, load }) => [id, load.in, eight - load.kettleStart < 10])).toEqual([
      ['own', eight, true],
    ])
  })

  it('[I21] pieces of no load are a load of their own', () => {
    const { started } = problemOf(asking({ line: { ...line, pinned: [] } }), null)
    expect(started.begun).toHaveLength(1)
    const pieces = started.begun[0]?.load.lines.reduce((sum, [, some]) => sum + some, 0)
    expect(pieces).toBe(48)
  })
})

describe('a day that is not open yet', () => {
  const state = stateWith({ shop: SHOP, day: null })

  it('[I41] has all shelves and boards, and as much dough as is worth baking where nobody has said', () => {
    const line = dayAheadLine(state, { ...AT, nowMs: at('20:00', -1) })
    expect([line.isOpen, line.doughIsOpen, line.shelves.length, line.boards]).toEqual([false, true, 3, 24])
    const given = bakeOffOf(asking({ line }))
    expect(given.now).toBeUndefined()
    expect(given.doughs.plain?.pieces).toBeGreaterThan(250)
  })

  it('[I41] takes the dough and the orders that are typed for that day', () => {
    const wanted = { doughId: doughId('plain'), varietyId: null, pieces: 120, ordered: 0 }
    const rye = { doughId: doughId('rye'), varietyId: varietyId('rye'), pieces: 30, ordered: 12 }
    const typed = { ...state, wanted: new Map([[DATE, { date: DATE, lines: [wanted, rye] }]]) }
    const line = dayAheadLine(typed, { ...AT, nowMs: at('20:00', -1) })
    const given = bakeOffOf(asking({ line }))
    expect(line.doughIsOpen).toBe(false)
    expect([given.doughs.plain?.pieces, given.doughs.rye?.pieces]).toEqual([120, 42])
    expect(given.orders).toEqual([{ due: 360, lines: [['rye', 12]] }])
  })
})

describe('the shop as a planning problem', () => {
  it('[I44] price and lost sale sum up to the worth of a piece; day-old is always below its cost', () => {
    for (const { given } of valuedVarieties(asking(), new Set())) {
      // Price 1.60, cost 0.45: nobody takes another here but one in so many, who pays the same.
      const takes = DEFAULT_DEMAND.takeAnotherPercent / 100
      const worth = 45 + (1 - takes) * (160 - 45 + DEFAULT_DEMAND.disappointCents)
      expect(given.price + given.lostSale).toBeCloseTo(worth, 6)
      expect(given.salvage).toBeLessThan(given.cost)
      expect(given.stalePerHour).toBeCloseTo((160 * SHOP.baking.stalePercentPerHour) / 100, 6)
    }
    const dear = { ...SHOP, demand: { ...SHOP.demand, takeAnotherPercent: 0, disappointCents: 80 } }
    for (const { given } of valuedVarieties(asking({ shop: dear }), new Set()))
      expect([given.price, given.lostSale]).toEqual([160, 80])
    const others = { ...SHOP, demand: { ...SHOP.demand, dayOldSells: 0 } }
    expect(valuedVarieties(asking({ shop: others }), new Set()).every(({ given }) => given.salvage === 0)).toBe(true)
  })

  it('[I46] a hearth is parts of its floor, each a load', () => {
    const floor = table([shelf({ id: 'floor', pieces: 240, floorBoards: 40 })])
    const shop = { ...SHOP, oven: { ...SHOP.oven, kind: 'hearth' as const }, shelves: floor }
    const { oven } = bakeOffOf(asking({ shop, line: eveningLine({}, shop) }))
    expect(oven.shelves.map(({ name, pieces }) => [name, pieces])).toEqual([
      ['floor#1', 72],
      ['floor#2', 72],
      ['floor#3', 72],
    ])
  })

  it('[I46] what is decided at the mixer has its own dough, unless all of that dough is the same', () => {
    const varieties = new Map(
      [...shopWith().varieties].map(([id, one]) => [
        id,
        id === 'poppy' ? { ...one, decidedAt: 'mixer' as const } : one,
      ]),
    )
    const shop = shopWith({ varieties })
    const raisin = { ...eveningLine().doughs[0], varietyId: varietyId('poppy'), pieces: 24 } as never
    const { doughs, varieties: known } = bakeOffOf(
      asking({ shop, demand: DEMAND, line: eveningLine({ doughs: [...eveningLine().doughs, raisin] }, shop) }),
    )
    const of = (name: string) => known.find((one) => one.name === name)?.dough ?? ''
    expect(doughs[of('poppy')]?.pieces).toBe(24)
    expect(of('poppy')).not.toBe(of('sesame'))
    expect(of('rye')).toBe('rye')
  })

  it('[I40] is in minutes of the day, the rest of it from now', () => {
    const open = eveningLine({ isOpen: true, nowMs: at('6:47') })
    const given = bakeOffOf(asking({ line: open }))
    expect(given.now).toBe(407)
    expect([given.open, given.close, given.oven.readyMin, given.oven.mustBeEmptyMin]).toEqual([360, 900, 270, 660])
  })
})

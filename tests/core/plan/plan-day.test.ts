import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { doughId, plannedId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { isAdvised } from '../../../shared-core/live/plan.ts'
import type { BakeLoad, BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { problemOf } from '../../../shared-core/plan/bake-off-of.ts'
import type { PlanAsked } from '../../../shared-core/plan/plan-asked.ts'
import { minuteOf } from '../../../shared-core/plan/plan-asked.ts'
import { planDay } from '../../../shared-core/plan/plan-day.ts'
import { violationsOf } from '../../reference/bake-off/feasible.ts'
import { at, lines } from '../support/make.ts'
import { asBakeLoads, asking, eveningLine, followedTo, orderedAt, SHOP } from './plan-day-support.ts'

const EVENING = asking()
const PLAN = planDay(EVENING, null, 7)

/** Instants are whole milliseconds: a plan's times read back from them may miss so much of a minute. */
const MS_MIN = 1e-4
const slack = (given: BakeOff, loads: readonly BakeLoad[]) => {
  // The checker allows 1e-6 min; what was rounded to the millisecond is put back onto its own sums.
  const rounded = loads.map((load) => {
    const bake = Math.max(...load.lines.map(([name]) => given.varieties.find((one) => one.name === name)?.bakeMin ?? 0))
    return { ...load, flip: load.in + given.oven.firstSideMin, out: load.in + bake }
  })
  return violationsOf(
    {
      ...given,
      oven: { ...given.oven, handlingMin: given.oven.handlingMin - MS_MIN },
      now: (given.now ?? 0) - MS_MIN,
      kettle: { ...given.kettle, cycleMin: given.kettle.cycleMin - MS_MIN / 10 },
      boards: { ...given.boards, maxWaitMin: given.boards.maxWaitMin + MS_MIN },
    },
    { loads: rounded },
  )
}

describe('a day is planned', () => {
  it('[I20] given tomorrow, when it is planned, then its loads keep kettle, boards, shelves, oven and dough', () => {
    expect(PLAN.loads.length).toBeGreaterThan(4)
    expect(slack(problemOf(EVENING, null).given, asBakeLoads(PLAN))).toEqual([])
    expect(PLAN.loads.every(({ lines: its }) => its.every(({ pieces }) => pieces % SHOP.baking.unitPieces === 0))).toBe(
      true,
    )
    expect(planDay(EVENING, null, 7)).toEqual(PLAN)
  })

  it('[I21] given any moment of a morning on which the plan is followed, when it is planned again, then what has started stands and all is feasible', () => {
    fc.assert(
      fc.property(fc.integer({ min: 250, max: 700 }), fc.constantFrom(0.6, 1, 1.5), (minute, busy) => {
        const asked = followedTo(EVENING, PLAN, minute, busy)
        const again = planDay(asked, PLAN, 9)
        const { given, started } = problemOf(asked, PLAN)
        const nowMs = at('0:00') + minute * 60_000
        const waiting = PLAN.loads.filter((load) => (load.kettleAtMs ?? 0) < nowMs && load.inAtMs > nowMs)
        for (const was of waiting) {
          const is = again.loads.find(({ id }) => id === was.id)
          expect(is).toMatchObject({ lines: was.lines, shelfId: was.shelfId })
          expect(is?.inAtMs).toBeGreaterThanOrEqual(nowMs)
          expect(started.begun.map(({ id }) => id)).toContain(was.id)
        }
        const inOven = new Set(asked.line.loads.map(({ plannedId: id }) => id))
        expect(again.loads.some(({ id }) => inOven.has(id))).toBe(false)
        const begun = new Set(started.begun.flatMap(({ id }) => id ?? []))
        expect(slack(given, asBakeLoads(again, begun))).toEqual([])
      }),
      { numRuns: 8 },
    )
  })

  it('[I21] given pieces on boards of no load, and loads set on every shelf for later, then they go in before those, and stay so', () => {
    const nowMs = at('6:00')
    const later = ['s1', 's2', 's3'].map((id) => {
      return { id: plannedId(`own-${id}`), shelfId: shelfId(id), inAtMs: at('9:00'), lines: lines('poppy', 36) }
    })
    const rye = SHOP.varieties.get(varietyId('rye'))
    const boarded = {
      doughId: rye?.doughId ?? doughId(''),
      varietyId: varietyId('rye'),
      pieces: 12,
      sinceMs: at('5:58'),
    }
    const line = eveningLine({ nowMs, isOpen: true, begun: [{ ...boarded, stage: 'boards' }], pinned: later })
    const plan = planDay(asking({ line }), null, 7)
    const own = plan.loads.find((load) => load.lines.some(({ varietyId: id }) => id === 'rye'))
    expect(own?.inAtMs).toBe(nowMs)
    expect(planDay(asking({ line }), plan, 8).loads.map(({ id }) => id)).toEqual(plan.loads.map(({ id }) => id))
  })

  it('[I22] given a load that people set, when the day is planned, then it stands as it is and the others keep clear of it', () => {
    const pin = { id: plannedId('own'), shelfId: shelfId('s2'), inAtMs: at('6:10'), lines: lines('poppy', 36) }
    const plan = planDay(asking({ line: eveningLine({ pinned: [pin] }) }), null, 7)
    const own = plan.loads.find(({ id }) => id === 'own')
    expect(own).toMatchObject({ isPinned: true, shelfId: 's2', inAtMs: at('6:10'), lines: pin.lines })
    expect(own?.why).toEqual([{ varietyId: 'poppy', kind: 'pinned' }])
    const clash = plan.loads.filter((one) => one !== own && one.shelfId === 's2')
    expect(clash.every((one) => one.outAtMs <= at('6:09') || one.inAtMs >= at('6:27'))).toBe(true)
    const given = { ...problemOf(EVENING, null).given }
    expect(slack(given, asBakeLoads(plan))).toEqual([])
  })

  it('[I22] given a pinned load that is too large for its shelf, then it stands all the same and its limit is said', () => {
    const pin = { id: plannedId('own'), shelfId: shelfId('s2'), inAtMs: at('6:30'), lines: lines('poppy', 90) }
    const plan = planDay(asking({ line: eveningLine({ pinned: [pin] }) }), null, 7)
    expect(plan.loads.find(({ id }) => id === 'own')?.lines).toEqual(pin.lines)
    expect(plan.cannot).toContainEqual({ kind: 'pinned-over', loadId: 'own', limit: 'shelf' })
    const limits = plan.cannot.filter(({ kind }) => kind === 'pinned-over')
    const free = planDay(asking({ line: eveningLine({ pinned: [{ ...pin, lines: lines('poppy', 36) }] }) }), null, 7)
    expect(limits.length).toBeGreaterThan(0)
    expect(free.cannot).toEqual([])
  })

  it('[I23] given what people forbid, when the day is planned, then no advised load goes in then, on that shelf or with that variety', () => {
    const forbids = [
      { shelfId: shelfId('s1'), varietyId: null, fromMs: at('4:00'), toMs: at('9:00') },
      { shelfId: null, varietyId: varietyId('sesame'), fromMs: at('4:00'), toMs: at('6:30') },
    ]
    const plan = planDay(asking({ line: eveningLine({ forbids }) }), null, 7)
    const early = plan.loads.filter(({ inAtMs }) => inAtMs < at('9:00'))
    expect(early.some(({ shelfId: id }) => id === 's1')).toBe(false)
    const sesame = plan.loads.filter((one) => one.lines.some(({ varietyId: id }) => id === 'sesame'))
    expect(sesame.length).toBeGreaterThan(0)
    expect(sesame.every(({ inAtMs }) => inAtMs >= at('6:30'))).toBe(true)
  })

  it('[I24] given hands that are one and a door that takes time, then nobody boils while standing at the oven', () => {
    const shop = {
      ...SHOP,
      baking: {
        ...SHOP.baking,
        door: { loadMs: 60_000, flipMs: 60_000, outMs: 60_000 },
        people: [
          { fromMinute: 240, people: 1 },
          { fromMinute: 480, people: 2 },
        ],
      },
    } as unknown as PlanAsked['shop']
    const plan = planDay(asking({ shop }), null, 7)
    const alone = plan.loads.filter(({ outAtMs }) => outAtMs < at('8:00'))
    expect(alone.length).toBeGreaterThan(1)
    const cycle = SHOP.kettle.cycleMs
    const dips = alone.map(
      ({ kettleAtMs, dips: count }) => [kettleAtMs ?? 0, (kettleAtMs ?? 0) + count * cycle] as const,
    )
    const door = alone.flatMap(({ inAtMs, flipAtMs, outAtMs }) => [inAtMs - 60_000, flipAtMs ?? 0, outAtMs])
    for (const from of door)
      for (const [start, end] of dips) expect(start >= from + 60_000 - 1 || end <= from + 1).toBe(true)
    for (const [n, from] of door.entries())
      for (const other of door.slice(n + 1)) expect(Math.abs(from - other)).toBeGreaterThanOrEqual(60_000 - 1)
  })

  it('[I25] given no shelf any more, or baking that is over, then nothing is advised', () => {
    expect(planDay(asking({ line: eveningLine({ shelves: [] }) }), null, 7).loads).toEqual([])
    expect(planDay(asking({ line: eveningLine({ isOver: true }) }), null, 7).loads).toEqual([])
  })

  it('[I26] given what must be on show, then it is ready at the opening; where there is no dough for it, that is said', () => {
    const sparse = new Map(
      [...EVENING.demand].map(([id, one]) => [id, { ...one, mean: id === 'poppy' ? 0.5 : one.mean }]),
    )
    const varieties = new Map(
      [...SHOP.varieties].map(([id, one]) => [id, { ...one, showLeast: id === 'poppy' ? 12 : 0 }]),
    )
    const shop = { ...SHOP, varieties }
    const ready = (plan: typeof PLAN) =>
      plan.loads
        .filter(({ readyAtMs }) => readyAtMs <= at('6:00'))
        .flatMap((one) => one.lines)
        .reduce((sum, { varietyId: id, pieces }) => (id === 'poppy' ? sum + pieces : sum), 0)
    expect(ready(planDay(asking({ demand: sparse }), null, 7))).toBe(0)
    const plan = planDay(asking({ shop, demand: sparse }), null, 7)
    expect(ready(plan)).toBeGreaterThanOrEqual(12)
    expect(plan.cannot).toEqual([])
    const none = planDay(asking({ shop, demand: sparse, line: eveningLine({ doughs: [] }) }), null, 7)
    expect(none.cannot).toContainEqual({ kind: 'show-short', varietyId: 'poppy', pieces: 12 })
  })

  it('[I27] given an order larger than the dough, then it is planned as far as it goes and what is short is said', () => {
    const ordered = orderedAt('6:00', lines('rye', 120))
    const plan = planDay(asking({ line: eveningLine({ ordered }) }), null, 7)
    expect(plan.cannot).toContainEqual({ kind: 'dough-short', doughId: 'rye', pieces: 60 })
    expect(plan.cannot).toContainEqual({ kind: 'order-short', varietyId: 'rye', dueAtMs: at('6:00'), pieces: 60 })
    const rye = plan.loads.flatMap((one) => one.lines).filter(({ varietyId: id }) => id === 'rye')
    expect(rye.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(60)
    const why = plan.loads.flatMap((one) => one.why).filter(({ varietyId: id }) => id === 'rye')
    expect(why.map(({ kind }) => kind)).toContain('order')
  })

  it('[I28] given a dough that is not ready until then, then none of it is boiled before', () => {
    const [plain, rye] = eveningLine().doughs
    if (plain === undefined || rye === undefined) throw new Error('the test line has two doughs')
    const line = eveningLine({ doughs: [plain, { ...rye, boilFromMs: at('7:30') }] })
    const plan = planDay(asking({ line }), null, 7)
    const withRye = plan.loads.filter((one) => one.lines.some(({ varietyId: id }) => id === 'rye'))
    expect(withRye.length).toBeGreaterThan(0)
    expect(withRye.every(({ kettleAtMs }) => (kettleAtMs ?? 0) >= at('7:30'))).toBe(true)
    expect(
      PLAN.loads.some(
        (one) => (one.kettleAtMs ?? 0) < at('7:30') && one.lines.some(({ varietyId: id }) => id === 'rye'),
      ),
    ).toBe(true)
  })

  it('[I29] given a shelf that changes over before the oven, then its last load is out by then; with the slip of the day', () => {
    const shelves = new Map(
      [...SHOP.shelves].map(([id, one]) => [id, { ...one, emptyByMinute: id === 's3' ? 540 : null }]),
    )
    const shop = { ...SHOP, shelves }
    const lastOut = (plan: typeof PLAN, id: string) =>
      Math.max(...plan.loads.filter((one) => one.shelfId === id).map((one) => minuteOf(EVENING, one.outAtMs)), 0)
    expect(lastOut(planDay(asking({ shop }), null, 7), 's3')).toBeLessThanOrEqual(540)
    const slipped = planDay(asking({ shop, line: eveningLine({ slipMs: -30 * 60_000 }) }), null, 7)
    expect(lastOut(slipped, 's3')).toBeLessThanOrEqual(510)
    expect(Math.max(lastOut(slipped, 's1'), lastOut(slipped, 's2'))).toBeLessThanOrEqual(630)
    expect(slipped.last?.emptyByMs).toBe(at('10:30'))
  })

  it('[I29] given a shelf that takes bagels again, then before the changeover it still ends with it, and after it with the day', () => {
    const shelves = eveningLine().shelves.map((one) => ({ ...one, isReopened: one.shelfId === 's1' }))
    const emptyBy = (clock: string) => {
      const { oven } = problemOf(asking({ line: eveningLine({ shelves, nowMs: at(clock) }) }), null).given
      return oven.shelves.map(({ emptyByMin }) => emptyByMin)
    }
    const { closeMinute } = SHOP.hours
    expect(emptyBy('7:00')).toEqual([660, 660, 660])
    expect(emptyBy('11:05')).toEqual([closeMinute, 660, 660])
  })
})

describe('a plan says', () => {
  it('[I30] why each line is in its load, in their order', () => {
    for (const load of PLAN.loads)
      expect(load.why.map(({ varietyId: id }) => id)).toEqual(load.lines.map((one) => one.varietyId))
    const first = PLAN.loads[0]
    expect(first?.why.every(({ kind }) => kind === 'opening')).toBe(true)
    const runsOut = PLAN.loads.flatMap((load) =>
      load.why.flatMap((why) => (why.kind === 'runsOut' ? [{ load, why }] : [])),
    )
    expect(runsOut.length).toBeGreaterThan(0)
    for (const { load, why } of runsOut) {
      expect(why.atMs).toBeGreaterThanOrEqual(at('6:00'))
      if (why.kettleByMs !== null) expect(why.kettleByMs).toBeGreaterThanOrEqual(load.kettleAtMs ?? 0)
    }
    const afternoon = PLAN.loads.filter((load) => load.why.some(({ kind }) => kind === 'afternoon'))
    expect(afternoon.length).toBeGreaterThan(0)
    expect(afternoon.every(({ inAtMs }) => inAtMs > at('9:00'))).toBe(true)
  })

  it('[I31] what it comes to: nothing is counted twice between supply, figures and loads', () => {
    const { figures, supply, loads } = PLAN
    const pieces = loads.flatMap((one) => one.lines).reduce((sum, one) => sum + one.pieces, 0)
    expect(figures.baked).toBe(pieces)
    const ready = supply.reduce((sum, one) => sum + (one.ready[one.ready.length - 1]?.[1] ?? 0), 0)
    expect(ready).toBe(pieces)
    const sum = (of: (one: (typeof supply)[number]) => number) => supply.reduce((all, one) => all + of(one), 0)
    expect(sum((one) => one.lost)).toBeCloseTo(figures.lost, 0)
    expect(sum((one) => one.left)).toBeCloseTo(figures.left, 0)
    // Who comes gets a piece or goes without: baked = sold + left, asked for = sold + lost.
    const asked = sum((one) => one.asked[one.asked.length - 1]?.[2] ?? 0)
    expect(pieces - figures.left).toBeCloseTo(asked - figures.lost, 0)
    expect(figures.firstKettleAtMs).toBe(loads[0]?.kettleAtMs)
    expect(figures.profitCents).toBeGreaterThan(figures.wavesProfitCents ?? 0)
    expect(figures.crewMinutes).toBeNull()
  })

  it('[I32] the last loads, and what a slip of a quarter of an hour does either way', () => {
    const { last } = PLAN
    expect(last?.emptyByMs).toBe(at('11:00'))
    expect(last?.inByMs).toBe(at('10:44'))
    const ids = new Set(last?.loadIds)
    const lastLoads = PLAN.loads.filter(({ id }) => ids.has(id))
    expect(lastLoads.length).toBeGreaterThan(0)
    expect(lastLoads.every((one) => one.isLast && one.outAtMs <= at('11:00') && one.outAtMs >= at('10:00'))).toBe(true)
    const [sooner, later] = last?.slips ?? []
    expect([sooner?.byMs, later?.byMs]).toEqual([-900_000, 900_000])
    expect(sooner?.gainCents).toBeLessThanOrEqual(0)
    expect(later?.gainCents).toBeGreaterThanOrEqual(0)
    const { changeoverFromMinute: _, ...hours } = SHOP.hours
    const allDay = { ...SHOP, hours: { ...hours, changeoverFromMinute: null, changeoverToMinute: null } }
    expect(planDay(asking({ shop: allDay }), null, 7).last).toBeNull()
  })

  it('[I33] what each load meets that its varieties should not, by what touched each place and by the loads before it', () => {
    const varieties = new Map(
      [...SHOP.varieties].map(([id, one]) => [id, id === 'plain' ? { ...one, avoids: ['sesame' as const] } : one]),
    )
    const shop = { ...SHOP, varieties }
    const line = eveningLine({ contacts: [{ place: 'peel', allergens: ['sesame'] }] })
    const plan = planDay(asking({ shop, line }), null, 7)
    const withPlain = plan.loads.filter((one) => one.lines.some(({ varietyId: id }) => id === 'plain'))
    expect(withPlain[0]?.contacts).toEqual([{ varietyId: 'plain', allergens: ['sesame'], where: ['peel'] }])
    expect(planDay(asking({ shop }), null, 7).loads[0]?.contacts).toEqual([])
    const others = plan.loads.filter((one) => !withPlain.includes(one))
    expect(others.every((one) => one.contacts.length === 0)).toBe(true)
  })

  it('[I34] only advised loads have ids that say so, each its own', () => {
    expect(PLAN.loads.every(({ id }) => isAdvised(id))).toBe(true)
    expect(new Set(PLAN.loads.map(({ id }) => id)).size).toBe(PLAN.loads.length)
  })
})

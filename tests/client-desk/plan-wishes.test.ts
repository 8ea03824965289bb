import { describe, expect, it } from 'vitest'
import { nextDay, planWhere, withinOf } from '../../client/desk/plan/plan-where.ts'
import type { Pin } from '../../client/desk/plan/wishes.ts'
import {
  actsOf,
  movedInTime,
  pinOf,
  rebased,
  shownLoads,
  wishesOf,
  withForbid,
  withoutForbid,
  withoutPin,
  withPin,
} from '../../client/desk/plan/wishes.ts'
import type { Forbid, PlannedLoad } from '../../shared-core/day/state.ts'
import { plannedId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { advisedId } from '../../shared-core/live/plan.ts'
import { leftOut } from '../../shared-core/plan/leave-out.ts'
import { assert } from '../../shared-core/support.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, lines } from '../core/support/make.ts'
import { planLoad, planWith } from '../core/support/plan.ts'

const [TODAY, TOMORROW] = ['2026-11-24', '2026-11-25']
/** The test shop is six hours behind. */
const dateOf = (atMs: EpochMs) => new Date(atMs - 6 * 3_600_000).toISOString().slice(0, 10)

function planned(id: string, inAtMs: EpochMs | null, parts: Partial<PlannedLoad> = {}): PlannedLoad {
  return {
    id: plannedId(id),
    order: 1,
    shelfId: shelfId('s1'),
    inAtMs,
    lines: lines('poppy', 24),
    done: false,
    ...parts,
  }
}

function own(loads: readonly PlannedLoad[], forbids: readonly Forbid[] = []) {
  return { planned: new Map(loads.map((load) => [load.id, load])), forbids }
}

const stands = (state: ReturnType<typeof own>, date = TODAY) => wishesOf(state, date, TODAY, dateOf)
const forbid = (fromMs: EpochMs, toMs: EpochMs): Forbid => ({ shelfId: shelfId('s2'), varietyId: null, fromMs, toMs })

describe('the day that is planned', () => {
  const days = { today: TODAY, tomorrow: TOMORROW }
  it.each([
    ['open', TODAY, false, TODAY],
    ['open and past its hours', TODAY, true, TODAY],
    ['before the opening', null, false, TODAY],
    ['closed or past its hours', null, true, TOMORROW],
    ['open since yesterday, closed by nobody', '2026-11-23', false, TODAY],
  ] as const)('[I60] given a day that is %s, then that day comes next', (_what, openLabel, isOver, expected) => {
    expect(nextDay({ ...days, openLabel, isOver })).toBe(expected)
  })

  it('[I60] given an address, then its day and page', () => {
    expect(planWhere('')).toEqual({ date: null, page: 'day' })
    for (const where of [
      { date: TOMORROW, page: 'what-if' },
      { date: null, page: 'what-if' },
      { date: TOMORROW, page: 'day' },
    ] as const)
      expect(planWhere(withinOf(where))).toEqual(where)
  })
})

describe('a load that people move', () => {
  const pin: Pin = { key: 'k', shelfId: shelfId('s1'), inAtMs: at('7:42'), lines: lines('sesame', 36) }
  it.each([
    [5, null, '7:45'],
    [-5, null, '7:35'],
    [-60, at('7:20'), '7:20'],
    [0, null, '7:40'],
  ] as const)('[I61] given %s minutes, then to full five minutes and not before now', (minutes, leastMs, expected) => {
    expect(movedInTime(pin, minutes, leastMs)).toEqual({ ...pin, inAtMs: at(expected) })
  })

  it('[I61] given an advised load, when it is moved, then it is shown there at once with all its times', () => {
    const plan = planWith([planLoad('7:40', 1)])
    const [shown] = shownLoads(plan, stands(own([])))
    assert(shown !== undefined, 'one load')
    const wishes = withPin(stands(own([])), { ...movedInTime(pinOf(shown), 20), shelfId: shelfId('s3') })
    const [moved] = shownLoads(plan, wishes)
    expect(moved?.key).toBe(advisedId(7, 1))
    expect(moved?.load).toMatchObject({ shelfId: 's3', inAtMs: at('8:00'), kettleAtMs: at('7:57'), isPinned: true })
    expect(moved?.load.outAtMs).toBe(at('8:16'))
  })

  it('[I61] given the server’s answer, then it is the same load on the screen, and an advised one in its place another', () => {
    const key = advisedId(7, 1)
    const wishes = withPin(stands(own([])), { ...pin, key, inAtMs: at('8:00') })
    const set = planLoad('8:00', 9, { id: plannedId('set'), isPinned: true })
    const advised = planLoad('7:20', 1)
    const shown = shownLoads(planWith([advised, set]), wishes)
    expect(shown.map((one) => [one.key, one.load.id])).toEqual([
      [`${key} again`, key],
      [key, set.id],
    ])
  })
})

describe('what is kept', () => {
  const elsewhere = planned('tomorrow', at('5:00', 1), { order: 2 })
  const mine = planned('mine', at('7:40'))
  const state = own(
    [mine, elsewhere, planned('done', at('6:00'), { done: true }), planned(advisedId(7, 3), at('9:00'))],
    [forbid(at('9:00'), at('9:30')), forbid(at('9:00', 1), at('9:30', 1))],
  )

  it('[I62] given loads of two days, one done and one advised, then a day’s own are what people set for it', () => {
    expect(stands(state).pins.map(({ key }) => key)).toEqual(['mine'])
    expect(stands(state, TOMORROW).pins.map(({ key }) => key)).toEqual(['tomorrow'])
    expect(stands(state, TOMORROW).forbids).toEqual([forbid(at('9:00', 1), at('9:30', 1))])
    expect(stands(own([planned('any', null)])).pins).toHaveLength(1)
    expect(stands(own([planned('any', null)]), TOMORROW).pins).toEqual([])
  })

  it('[I62] given nothing changed, then nothing is sent', () => {
    expect(actsOf(state, stands(state), stands(state))).toEqual([])
  })

  it('[I62] given a load moved, then the whole list goes, another day’s loads with it, and no word of the rest', () => {
    const [pin] = stands(state).pins
    assert(pin !== undefined, 'one load')
    const acts = actsOf(state, stands(state), withPin(stands(state), movedInTime(pin, 20)))
    const { id: _id, order: _order, done: _done, ...other } = elsewhere
    const moved = { shelfId: shelfId('s1'), inAtMs: at('8:00'), lines: lines('poppy', 24) }
    expect(acts).toEqual([{ type: 'setLoadList', loads: [other, moved] }])
  })

  it('[I62] given a load let go and a time allowed again, then both lists go without them', () => {
    const wishes = withoutForbid(withoutPin(stands(state), 'mine'), forbid(at('9:00'), at('9:30')))
    const [list, forbidden] = actsOf(state, stands(state), wishes)
    expect(list).toMatchObject({ type: 'setLoadList', loads: [{ inAtMs: at('5:00', 1) }] })
    expect(forbidden).toEqual({ type: 'forbidLoads', forbids: [forbid(at('9:00', 1), at('9:30', 1))] })
  })
})

describe('two desks at a time', () => {
  const [mine, theirs] = [planned('mine', at('7:40')), planned('theirs', at('9:00'))]
  const base = stands(own([mine], [forbid(at('9:00'), at('9:30'))]))

  it('[I62] given a change begun here, when another desk sets a load, then keeping keeps that too', () => {
    const now = stands(own([mine, theirs]))
    const [pin] = base.pins
    assert(pin !== undefined, 'one load')
    const both = rebased(base, now, withPin(base, movedInTime(pin, 20)))
    expect(both.pins.map(({ key, inAtMs }) => [key, inAtMs])).toEqual([
      ['mine', at('8:00')],
      ['theirs', at('9:00')],
    ])
    // What was left free is allowed again by the other desk.
    expect(both.forbids).toEqual([])
  })

  it('[I62] given a load that another desk let go, when something else is changed here, then it stays let go', () => {
    const changed = withForbid(base, forbid(at('10:00'), at('10:30')))
    const both = rebased(base, stands(own([], base.forbids)), changed)
    expect(both).toEqual({ pins: [], forbids: changed.forbids })
  })
})

describe('a load that is left out', () => {
  it('[I63] given an advised load, then its shelf stays free ten minutes before and after, and that is said once', () => {
    const load = planLoad('7:40', 1, { shelfId: shelfId('s2') })
    const free = leftOut(load)
    expect(free).toEqual({ shelfId: 's2', varietyId: null, fromMs: at('7:30'), toMs: at('7:50') })
    const once = withForbid(stands(own([])), free)
    expect(withForbid(once, { ...free }).forbids).toEqual([free])
    const sesame = { ...free, varietyId: varietyId('sesame') }
    expect(withForbid(once, sesame).forbids).toEqual([free, sesame])
    expect(withForbid(once, { ...free, toMs: epochMs(free.toMs + 1) }).forbids).toHaveLength(2)
  })
})

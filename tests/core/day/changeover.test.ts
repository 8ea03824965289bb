import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bakingIsOver, changeoverNow } from '../../../shared-core/day/changeover.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Ruler } from '../../../shared-core/day/ruler.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, plannedId, shelfId, weekdayId } from '../../../shared-core/ids.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { expectedLoads, loadsWithoutShelf } from '../../../shared-core/line/planned.ts'
import { shelfKeys } from '../../../shared-core/line/shelf-keys.ts'
import type { StateParts } from '../support/make.ts'
import { at, batch, lines, loadOf, lot, minuteToMs, planned, stateWith, stock, until } from '../support/make.ts'
import { decided, eventsOf, outcome, play } from '../support/play.ts'
import { hours, shelf, shopWith, table } from '../support/shop.ts'

const MINUTE = 60_000
const rulerAt = (state: State, clock: string): Ruler | null => rulerOf(state, at(clock), minuteToMs)
const now = (state: State, clock = '10:30') => {
  const made = changeoverNow(state, at(clock), rulerAt(state, clock))
  if (made === null) throw new Error('no changeover')
  return made
}
const turns = (state: State, clock?: string) =>
  now(state, clock).shelves.map(({ shelfId: id, state: so, freeAtMs }) => [id, so, freeAtMs])
const over = (shelf: string, to: 'secondMenu' | 'bagels' = 'secondMenu'): Act => ({
  type: 'changeOverShelf',
  shelfId: shelfId(shelf),
  to,
})
const slip = (minutes: number): Act => ({ type: 'slipChangeover', slipMs: minutes * MINUTE })
const loadOn = (shelf: string, out: string, id = `on-${shelf}`) =>
  loadOf({ id, shelf, loadedAt: at('10:20'), out: until('10:30', out, '11:30') }, lines('sesame', 36))
const isOver = (state: State, clock: string) => bakingIsOver(state, at(clock), rulerAt(state, clock))
const load = (shelf: string, planned: string | null = null): Act => ({
  type: 'load',
  shelfId: shelfId(shelf),
  plannedId: planned === null ? null : plannedId(planned),
  lines: lines('sesame', 24),
})

describe('slipping the changeover', () => {
  it('[X2] given two who slip it by 15 min, then it is slipped by 15 min, and the second is told', () => {
    const state = stateWith()
    play(state, slip(15), { nowMs: at('10:00') })
    expect(outcome(decided(state, slip(15)))).toBe('already-moved')
    expect(now(state)).toMatchObject({ fromMs: at('11:15'), toMs: at('12:15'), slipMs: 15 * MINUTE })
    expect(rulerAt(state, '10:30')?.lastLoadInByMs).toBe(at('10:59'))
  })

  it('[X2] given it is as the set-up says again, then nothing is left said; nothing said is not said again', () => {
    const state = stateWith()
    play(state, slip(-15), { nowMs: at('10:00') })
    expect(now(state).fromMs).toBe(at('10:45'))
    play(state, slip(0), { nowMs: at('10:01') })
    expect(now(state)).toMatchObject({ fromMs: at('11:00'), slipMs: 0 })
    expect(state.marks.size).toBe(0)
    expect(outcome(decided(state, slip(0)))).toBe('already-moved')
  })

  it('[X2] given the day closed, then tomorrow it is as the set-up says', () => {
    const state = stateWith()
    play(state, slip(15), { nowMs: at('10:00') })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    play(state, { type: 'openDay' }, { nowMs: at('15:30') })
    expect(now(state).slipMs).toBe(0)
  })

  it('[X2] given a day without a second menu, by the shop or by its weekday, then it is refused', () => {
    const none = hours({ changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null })
    expect(outcome(decided(stateWith({ shop: shopWith({ hours: none }) }), slip(15)))).toBe('no-changeover')
    // 2026-11-24 is a Tuesday.
    const tuesdays = { id: weekdayId('2'), hours: none, retired: false }
    expect(outcome(decided(stateWith({ shop: shopWith({ weekdays: table([tuesdays]) }) }), slip(15)))).toBe(
      'no-changeover',
    )
    const closed = { ...tuesdays, hours: null }
    expect(outcome(decided(stateWith({ shop: shopWith({ weekdays: table([closed]) }) }), slip(15)))).toBe(
      'no-changeover',
    )
  })
})

describe('the oven shelf by shelf', () => {
  it('[X3] given a load in and another to come, then bagels until that one is out; the last one in is emptying', () => {
    const state = stateWith({
      loaded: [loadOn('s1', '10:36'), loadOn('s2', '10:40')],
      planned: [planned({ shelf: 's1', lines: lines('sesame', 36) })],
    })
    expect(turns(state)).toEqual([
      ['s1', 'bagels', at('10:53')],
      ['s2', 'emptying', at('10:40')],
      ['s3', 'bagels', null],
    ])
    expect(now(state).ovenEmptyAtMs).toBe(at('10:53'))
  })

  it('[X3] given a load that is late, then its shelf is free when it is taken out now', () => {
    const state = stateWith({ loaded: [loadOn('s1', '10:36')], planned: [planned({ done: true })] })
    expect(turns(state, '10:45')[0]).toEqual(['s1', 'emptying', at('10:45')])
  })

  it('[X3] given a shop that plans nothing, then a load is its last from the time at which no other would be out', () => {
    const state = stateWith({ loaded: [loadOn('s1', '10:50')] })
    expect(turns(state, '10:43')[0]?.[1]).toBe('bagels')
    expect(turns(state, '10:44')[0]?.[1]).toBe('emptying')
  })

  it('[X3] given a shelf said to be over with a load in it, then it is emptying, and over when that is out', () => {
    const state = stateWith({ loaded: [loadOn('s1', '10:36')] })
    play(state, over('s1'), { nowMs: at('10:30') })
    expect(turns(state)[0]).toEqual(['s1', 'emptying', at('10:36')])
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    play(state, { type: 'out', loadId: inside, from: 'first-side', lines: null }, { nowMs: at('10:36') })
    expect(turns(state, '10:37')[0]).toEqual(['s1', 'over', null])
    expect(now(state, '10:37').ovenEmptyAtMs).toBeNull()
  })

  it('[X3] given the same said of a shelf by two people, then the second is told; a shelf there is not is refused', () => {
    const state = stateWith()
    play(state, over('s1'), { nowMs: at('10:30') })
    expect(outcome(decided(state, over('s1')))).toBe('already-moved')
    expect(outcome(decided(state, over('none')))).toBe('unknown-shelf')
    play(state, over('s1', 'bagels'), { nowMs: at('10:31') })
    expect(outcome(decided(state, over('s1', 'bagels')))).toBe('already-moved')
    expect(turns(state)[0]?.[1]).toBe('bagels')
  })

  it('[X3] given "over" taken back, then it bakes on', () => {
    const state = stateWith()
    play(state, over('s1'), { nowMs: at('10:30'), id: 'over000001' })
    play(state, { type: 'takeBack', commandId: commandId('over000001') }, { nowMs: at('10:31') })
    expect(turns(state)[0]?.[1]).toBe('bagels')
  })

  it('[X3] given no second menu, no open day or no set-up, then there is no changeover', () => {
    const none = hours({ changeoverFromMinute: null, changeoverToMinute: null })
    for (const state of [
      stateWith({ shop: shopWith({ hours: none }) }),
      stateWith({ day: null }),
      stateWith({ shop: null }),
    ])
      expect(changeoverNow(state, at('10:30'), rulerAt(state, '10:30'))).toBeNull()
  })
})

describe('a shelf that is over', () => {
  const plan = (parts: StateParts = {}) =>
    stateWith({
      planned: [
        planned({ id: 'p1', order: 1, shelf: 's1', inAt: at('6:50') }),
        planned({ id: 'p2', order: 2 }),
        planned({ id: 'p3', order: 3 }),
      ],
      batches: [batch({ pieces: 300 })],
      ...parts,
    })
  const offered = (state: State) =>
    shelfKeys(state, at('6:50')).map(({ shelfId: id, plannedId: of, isOver: so }) => [id, of, so])

  it('[X4] given shelf 1 over, then it offers no load, and what was planned for it goes to another', () => {
    const state = plan()
    expect(offered(state)).toEqual([
      ['s1', 'p1', false],
      ['s2', 'p2', false],
      ['s3', 'p3', false],
    ])
    play(state, over('s1'), { nowMs: at('6:48') })
    expect(offered(state)).toEqual([
      ['s1', null, true],
      ['s2', 'p1', false],
      ['s3', 'p2', false],
    ])
    expect(shelfKeys(state, at('6:50'))[0]).toMatchObject({ act: 'load', lines: [], atMs: null })
    expect(nextActs(state, at('6:50')).some(({ shelfId: id }) => id === 's1')).toBe(false)
    expect(loadsWithoutShelf(state, at('6:50'))).toEqual([])
  })

  it('[X4] given all of them over, then the loads still planned are told as without a shelf', () => {
    const state = plan()
    for (const one of ['s1', 's2', 's3']) play(state, over(one), { nowMs: at('6:48') })
    expect(expectedLoads(state, at('6:50'))).toEqual([])
    expect(now(state).withoutShelf.map(({ id }) => id)).toEqual(['p1', 'p2', 'p3'])
  })

  it('[X4] given a load in a shelf that is over, then its key flips and takes out, and offers none after it', () => {
    const state = plan({ loaded: [loadOn('s1', '10:36')] })
    play(state, over('s1'), { nowMs: at('6:48') })
    expect(shelfKeys(state, at('6:50'))[0]).toMatchObject({ shelfId: 's1', act: 'flip', isOver: true })
  })

  it('[X4] given a hearth that is over with a load on it, then it has no key that loads', () => {
    const shop = shopWith({
      oven: { ...shopWith().oven, kind: 'hearth' },
      shelves: table([shelf({ id: 's1', floorBoards: 20, pieces: 120 })]),
    })
    const state = stateWith({ shop, loaded: [loadOn('s1', '10:36')] })
    expect(shelfKeys(state, at('10:30')).map(({ act }) => act)).toEqual(['flip', 'load'])
    play(state, over('s1'), { nowMs: at('10:30') })
    expect(shelfKeys(state, at('10:30')).map(({ act }) => act)).toEqual(['flip'])
  })

  it('[X5] given a load on it all the same, then it is taken and the shelf takes bagels again', () => {
    const state = plan()
    play(state, over('s1'), { nowMs: at('6:48') })
    play(state, load('s1'), { nowMs: at('6:50'), id: 'load000001' })
    expect(turns(state, '6:51')[0]?.[1]).toBe('bagels')
    play(state, { type: 'takeBack', commandId: commandId('load000001') }, { nowMs: at('6:52') })
    expect(turns(state, '6:53')[0]?.[1]).toBe('over')
  })

  it('[X5] given a load moved onto it, then it takes bagels again; a load put right in it does not reopen it', () => {
    const state = stateWith({ loaded: [loadOn('s1', '10:50'), loadOn('s2', '10:50')] })
    play(state, over('s1'), { nowMs: at('10:30') })
    play(state, over('s3'), { nowMs: at('10:30') })
    const move = (id: string, to: string, phase: 'first-side' | 'second-side') =>
      play(
        state,
        { type: 'moveLoad', loadId: id as never, from: 'first-side', to: phase, shelfId: shelfId(to) },
        { nowMs: at('10:31') },
      )
    expect(eventsOf(move('on-s1', 's1', 'second-side'), 'marked')).toEqual([])
    move('on-s2', 's3', 'first-side')
    expect(turns(state, '10:32').map(([id, so]) => [id, so])).toEqual([
      ['s1', 'emptying'],
      ['s2', 'bagels'],
      // A shop that plans nothing: it bakes on until no other load would be out.
      ['s3', 'bagels'],
    ])
  })
})

describe('what a slip would mean', () => {
  /** Three free shelves, 16 min a load and a minute between two: by 11:00 from 10:30 one load each, not two. */
  it('[X6] given 15 min more, then the loads and pieces that fit more are told, and what it moves', () => {
    expect(now(stateWith(), '10:30').slipped(15 * MINUTE)).toEqual({
      fromMs: at('11:15'),
      toMs: at('12:15'),
      lastLoadInByMs: at('10:59'),
      plannedMore: 0,
      loadsMoreThatFit: 3,
      piecesMoreThatFit: 144,
    })
  })

  it.each([
    [0, 0],
    [-15, -3],
    [2, 0],
    [3, 3],
    [20, 6],
  ])('[X6] given a slip by %s min at 10:30 with three shelves free, then %s more loads', (minutes, more) => {
    expect(now(stateWith(), '10:30').slipped(minutes * MINUTE)).toMatchObject({
      loadsMoreThatFit: more,
      piecesMoreThatFit: more * 48,
    })
  })

  it('[X6] given planned loads that would be too late, then how many of them would not be', () => {
    const late = [1, 2, 3, 4].map((n) => planned({ id: `p${n}`, order: n, shelf: 's1', lines: lines('sesame', 24) }))
    const state = stateWith({ planned: late })
    // One after the other on shelf 1: out at 10:46, 11:03, 11:20, 11:37.
    expect([15, 20, 45, -15].map((minutes) => now(state).slipped(minutes * MINUTE).plannedMore)).toEqual([1, 2, 3, -1])
  })

  it('[X6] given a shelf that is over, then it gets no more loads', () => {
    const [large, ...rest] = [shelf({ id: 's1', pieces: 90 }), shelf({ id: 's2' }), shelf({ id: 's3' })]
    const state = stateWith({ shop: shopWith({ shelves: table([large, ...rest]) }) })
    play(state, over('s1'), { nowMs: at('10:30') })
    expect(now(state).slipped(15 * MINUTE)).toMatchObject({ loadsMoreThatFit: 2, piecesMoreThatFit: 96 })
  })

  it('[X6] given nobody has said how long anything bakes, then nothing fits more', () => {
    const state = stateWith({ shop: shopWith({ windows: {} }) })
    expect(now(state).slipped(15 * MINUTE).loadsMoreThatFit).toBe(0)
  })

  it('[X6] given any slips, then a later changeover never fits fewer loads', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -90, max: 90 }),
        fc.integer({ min: 0, max: 90 }),
        fc.array(fc.constantFrom(null, 's1', 's2', 's3'), { maxLength: 8 }),
        (one, more, shelves) => {
          const state = stateWith({
            planned: shelves.map((on, n) => planned({ id: `p${n}`, order: n, shelf: on, lines: lines('sesame', 24) })),
          })
          const { slipped } = now(state, '9:30')
          const [less, then] = [slipped(one * MINUTE), slipped((one + more) * MINUTE)]
          expect(then.loadsMoreThatFit).toBeGreaterThanOrEqual(less.loadsMoreThatFit)
          expect(then.plannedMore).toBeGreaterThanOrEqual(less.plannedMore)
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('none baked after this', () => {
  it.each([
    ['before the changeover', {}, '10:59', false],
    ['from the changeover on', {}, '11:00', true],
    ['with a load in the oven', { loaded: [loadOn('s1', '11:10')] }, '11:05', false],
    ['with a load planned', { planned: [planned()] }, '11:05', false],
    ['with a planned load done', { planned: [planned({ done: true })] }, '11:05', true],
    ['with pieces on boards', { batches: [batch({ stage: 'boards' })] }, '11:05', false],
    ['with pieces in the cooler', { batches: [batch({ stage: 'chill' })] }, '11:05', true],
    ['with no day open', { day: null }, '11:05', false],
    [
      'without a second menu',
      { shop: shopWith({ hours: hours({ changeoverFromMinute: null, changeoverToMinute: null }) }) },
      '14:00',
      false,
    ],
  ])('[X7] given a shop %s, then whether baking is over', (_what, parts, clock, expected) => {
    expect(isOver(stateWith(parts), clock)).toBe(expected)
  })

  it('[X7] given every shelf said to be over, then it is, before the time and whatever is planned', () => {
    const state = stateWith({ planned: [planned()], batches: [batch({ stage: 'boards' })] })
    play(state, over('s1'), { nowMs: at('10:00') })
    play(state, over('s2'), { nowMs: at('10:00') })
    expect(isOver(state, '10:01')).toBe(false)
    play(state, over('s3'), { nowMs: at('10:00') })
    expect(isOver(state, '10:01')).toBe(true)
    expect(now(state, '10:01').isOver).toBe(true)
  })

  it('[X7] given a shelf reopened after the time, then it is not, until that shelf is over again', () => {
    const state = stateWith()
    play(state, over('s1', 'bagels'), { nowMs: at('11:30') })
    expect(isOver(state, '11:31')).toBe(false)
    play(state, over('s1'), { nowMs: at('11:50') })
    expect(isOver(state, '11:51')).toBe(true)
  })
})

describe('a list for tomorrow, typed today', () => {
  it('[X10] given its loads, then the oven is empty today, baking is over and none of it is left today', () => {
    const tomorrow = [1, 2].map((n) => planned({ id: `t${n}`, order: n, shelf: 's1', inAt: at('5:00', 1) }))
    const state = stateWith({ planned: tomorrow, loaded: [loadOn('s2', '10:40')] })
    expect(turns(state)).toEqual([
      ['s1', 'bagels', null],
      ['s2', 'emptying', at('10:40')],
      ['s3', 'bagels', null],
    ])
    expect(now(state).left).toEqual(lines('sesame', 36))
    expect(now(state).slipped(15 * MINUTE).plannedMore).toBe(0)
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    play(state, { type: 'out', loadId: inside, from: 'first-side', lines: null }, { nowMs: at('10:40') })
    expect(now(state, '11:00')).toMatchObject({ ovenEmptyAtMs: null, isOver: true })
    for (const one of ['s1', 's2', 's3']) play(state, over(one), { nowMs: at('11:01') })
    expect(now(state, '11:02').withoutShelf).toEqual([])
  })
})

describe('readings and what is left', () => {
  it('[X8] given readings in another unit than the shop’s, then they are told in its own, with their age', () => {
    const state = stateWith()
    play(state, { type: 'readOven', shelfId: null, degrees: 250, unit: 'C' }, { nowMs: at('10:20') })
    play(state, { type: 'readOven', shelfId: shelfId('s2'), degrees: 480, unit: 'F' }, { nowMs: at('10:25') })
    const { reading, shelves } = now(state, '10:30')
    // 250 °C = 482 °F (NIST SP 811, appendix B.9).
    expect(reading).toEqual({ degrees: 482, unit: 'F', atMs: at('10:20'), ageMs: 10 * MINUTE })
    expect(shelves.map((one) => one.reading?.degrees ?? null)).toEqual([null, 480, null])
  })

  it('[X8] given a newer reading, then it stands; what a script posts by the minute pushes no tap out', () => {
    const state = stateWith()
    const read = (degrees: number, clock: string): Act => {
      play(state, { type: 'readOven', shelfId: null, degrees, unit: 'F' }, { nowMs: at(clock) })
      return { type: 'readOven', shelfId: null, degrees, unit: 'F' }
    }
    read(480, '10:20')
    read(470, '10:21')
    expect(now(state).reading?.degrees).toBe(470)
    expect(state.traces).toEqual([])
    expect(outcome(decided(state, { type: 'readOven', shelfId: shelfId('none'), degrees: 1, unit: 'C' }))).toBe(
      'unknown-shelf',
    )
  })

  it('[X9] given pieces for sale, in the oven and planned, then that is what there is for the afternoon', () => {
    const state = stateWith({
      stock: [stock('sesame', { lots: [lot({ pieces: 12 })] }), stock('poppy')],
      loaded: [loadOn('s1', '10:36')],
      planned: [planned({ lines: lines('poppy', 24) })],
      batches: [],
    })
    expect(now(state).left).toEqual(lines('sesame', 48, 'poppy', 24))
  })
})

import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { actsForStation, nextActs } from '../../../shared-core/line/acts.ts'
import type { LineAct, Station } from '../../../shared-core/shop/shop.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, batch, lines, load, loadOf, planned, stateWith, until } from '../support/make.ts'
import { ALL_STATIONS, shopWith, station, table } from '../support/shop.ts'

const FULL = shopWith({ stations: table(ALL_STATIONS) })
const tapping = (...acts: readonly LineAct[]) => shopWith({ stations: table([station('one', acts)]) })
const keys = (state: State, clock = '6:47') => nextActs(state, at(clock)).map((one) => one.key)
const only = (state: State, key: string, clock = '6:47') => nextActs(state, at(clock)).find((one) => one.key === key)

const inKettle = batch({ id: 'k', stage: 'kettle', since: at('6:46'), until: until('6:46:45', '6:47', '6:47:30') })
const onBoards = batch({ id: 'b', stage: 'boards', since: at('6:44'), until: until('6:44', '6:46', '6:52') })

describe('the order of the next acts', () => {
  it('[L20] given acts all along the line, then the soonest stands first', () => {
    const state = stateWith({
      shop: FULL,
      batches: [inKettle],
      loads: [
        load({ id: 'x', flip: until('6:47', '6:47:40', '6:49') }),
        load({ id: 'y', shelf: 's2', phase: 'second-side', out: until('6:53', '6:55', '6:57') }),
      ],
    })
    expect(keys(state, '6:46:30')).toEqual(['lift:k', 'flip:x', 'out:y'])
  })

  it('[L20] given a load that may wait and is past its time, then it does not stand before a flip that is late', () => {
    const state = stateWith({
      planned: [planned({ inAt: at('6:00'), shelf: 's2' })],
      loads: [load({ id: 'x' }), load({ id: 'y', shelf: 's3', flip: until('6:47', '6:47:40', '6:49') })],
    })
    expect(keys(state, '6:47')).toEqual(['flip:x', 'load:p1', 'flip:y'])
    expect(keys(state, '6:47:15')).toEqual(['flip:x', 'flip:y', 'load:p1'])
  })

  it.each([
    ['due in 3 s', '6:46:57', true],
    ['due now', '6:47:20', true],
    ['late', '6:47:50', true],
    ['due in 40 s', '6:46:20', false],
  ])(
    '[L20] given a lift %s and boards, dough and a load that are due or late, at %s, is the lift first: %s',
    (_what, clock, isFirst) => {
      const tired = { ...onBoards, until: until('6:30', '6:35', '6:40') }
      const rack = batch({ id: 'r', until: until('5:30', '6:00', '6:20') })
      const loads = [planned({ inAt: at('6:30'), shelf: 's2' }), planned({ id: 'p2', order: 2, inAt: at('6:40') })]
      const state = stateWith({ shop: FULL, batches: [inKettle, tired, rack], planned: loads })
      const all = keys(state, clock)
      expect(new Set(all.map((key) => key.split(':')[0]))).toEqual(new Set(['lift', 'load', 'board', 'dip']))
      expect(all[0] === 'lift:k').toBe(isFirst)
    },
  )

  it.each([
    ['the kettle before the oven', 'lift:k', 'flip:x'],
    ['an out before a flip of the shelf after it', 'out:y', 'flip:x'],
  ])('[L20] given the same instant, then %s', (_what, first, second) => {
    const same = until('6:46', '6:47', '6:48')
    const state = stateWith({
      shop: FULL,
      batches: [{ ...inKettle, until: same }],
      loads: [
        load({ id: 'x', shelf: 's2', flip: same }),
        load({ id: 'y', shelf: 's1', phase: 'second-side', out: same }),
      ],
    })
    const all = keys(state)
    expect(all.indexOf(first)).toBeLessThan(all.indexOf(second))
  })

  it('[L34] given a rotating oven and three outs at once, then they follow the turn from the door', () => {
    const shop = shopWith({ oven: { kind: 'rotating', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null } })
    const due = (id: string, shelf: string) => load({ id, shelf, phase: 'second-side' })
    const s2 = { touchedAtMs: at('6:45'), boardsFreed: 0, boardsWetAtMs: at('6:45') }
    const state = stateWith({ shop, loads: [due('a', 's1'), due('b', 's2'), due('c', 's3')], shelves: { s2 } })
    expect(keys(state)).toEqual(['out:b', 'out:c', 'out:a'])
  })
})

describe('ties', () => {
  const same = until('6:46', '6:47', '6:48')
  const stations = table(ALL_STATIONS)

  it('[L20] given a dip and an out of the last shelf at the same instant, then the oven comes first', () => {
    const sold = planned({ inAt: at('6:48:30'), shelf: 's1', lines: lines('sesame', 36) })
    const ready = batch({ until: until('6:00', '6:20', '6:47') })
    const out = load({ id: 'y', shelf: 's3', phase: 'second-side', out: same })
    const state = stateWith({ shop: FULL, planned: [sold], batches: [ready], loads: [out] })
    expect(keys(state).slice(0, 2)).toEqual(['out:y', 'dip:p1:plain:1'])
  })

  it('[L20] given a flip and an out on one hearth at the same instant, then the out comes first', () => {
    const shop = shopWith({
      stations,
      oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
    })
    const loads = [load({ id: 'a', flip: same }), load({ id: 'b', phase: 'second-side', out: same })]
    expect(keys(stateWith({ shop, loads }))).toEqual(['out:b', 'flip:a'])
  })
})

describe('who is called', () => {
  it.each([
    [['flip', 'out'], ['flip:l1']],
    [['out'], ['out:l1']],
    [['lift'], ['lift:k']],
    [['board'], ['board:b']],
    [[], []],
  ] as const)('[L21] given a shop that taps %j, then %j is called for', (acts, called) => {
    expect(keys(stateWith({ shop: tapping(...acts), batches: [inKettle, onBoards], loads: [load()] }))).toEqual(called)
  })

  it('[L21] given a retired station, then what only it tapped is not called for', () => {
    const shop = shopWith({ stations: table([station('old', ['flip'], { retired: true })]) })
    expect(keys(stateWith({ shop, loads: [load()] }))).toEqual([])
  })

  it('[L21] given the acts of the whole line, then a station sees its own', () => {
    const state = stateWith({ shop: FULL, batches: [inKettle, onBoards], loads: [load()] })
    const of = (one: Station) => actsForStation(nextActs(state, at('6:47')), one).map((act) => act.key)
    expect(of(station('kettle', ['dip', 'lift']))).toEqual(['lift:k'])
    expect(of(station('oven', ['load', 'flip', 'out']))).toEqual(['flip:l1'])
  })

  it('[L21] given no set-up, then nothing is called for', () => {
    expect(keys(stateWith({ shop: null, batches: [inKettle] }))).toEqual([])
  })
})

describe('when an act is due', () => {
  it.each([
    ['6:42', 'coming'],
    ['6:43:29', 'coming'],
    ['6:43:30', 'due'],
    ['6:45', 'due'],
    ['6:45:01', 'late'],
  ])('[L22] given a flip 6:43–6:43:30–6:45, when it is %s, then it is %s', (clock, status) => {
    expect(only(stateWith({ loads: [load()] }), 'flip:l1', clock)).toMatchObject({
      status,
      atMs: at('6:43:30'),
      earliestAtMs: at('6:43'),
      latestAtMs: at('6:45'),
    })
  })

  it('[L22] given pieces in the kettle without a window, then they are lifted by the end of the cycle', () => {
    const state = stateWith({ shop: FULL, batches: [{ ...inKettle, until: null }] })
    expect(only(state, 'lift:k')).toMatchObject({ atMs: at('6:47:30'), latestAtMs: null })
  })

  it.each([
    ['before its flip', load(), 'flip:l1'],
    ['after its flip', load({ phase: 'second-side', flippedAt: at('6:44') }), 'out:l1'],
    ['with nothing to flip', load({ flip: null }), 'out:l1'],
    ['without a bake window', load({ flip: null, out: null }), undefined],
  ])('[L23] given a load %s, then %s is its act', (_what, one, key) => {
    expect(keys(stateWith({ loads: [one] }))[0]).toBe(key)
  })

  it('[L23] given a load, then its act says what is in it, in the order of the set-up', () => {
    const state = stateWith({ loaded: [loadOf({ planned: 'p9' }, lines('cheddar', 12, 'sesame', 24))] })
    expect(only(state, 'flip:l1')).toMatchObject({
      lines: lines('sesame', 24, 'cheddar', 12),
      pieces: 36,
      shelfId: 's1',
      loadId: 'l1',
      plannedId: 'p9',
    })
  })
})

describe('loads that are called for', () => {
  const timed = planned({ inAt: at('6:50'), lines: lines('sesame', 36) })
  const whenFree = planned({ lines: lines('sesame', 36) })
  const topped = { ...onBoards, varietyId: lines('sesame', 1)[0]?.varietyId ?? null }

  it('[L24] given a planned time, then the load is called for then, with what makes its dough late', () => {
    expect(only(stateWith({ planned: [timed], batches: [topped] }), 'load:p1')).toMatchObject({
      atMs: at('6:50'),
      latestAtMs: at('6:52'),
      shelfId: 's1',
      plannedId: 'p1',
      status: 'coming',
      lines: lines('sesame', 36),
    })
  })

  it('[L24] given two batches on boards, then the one that has waited longest makes the load late', () => {
    const part = (id: string, latest: string) =>
      batch({ id, stage: 'boards', variety: 'sesame', pieces: 18, until: until('6:40', '6:42', latest) })
    const batches = [part('a', '6:55'), part('b', '6:51')]
    expect(only(stateWith({ planned: [timed], batches }), 'load:p1')?.latestAtMs).toBe(at('6:51'))
  })

  it.each([
    ['all of it is on boards', [topped], at('6:44')],
    ['all of it is on boards as plain dough', [onBoards], at('6:44')],
    ['it is in the kettle: at the lift', [inKettle], at('6:47')],
    ['some of it is missing', [{ ...topped, pieces: 30 }], undefined],
    [
      'it is topped as something else',
      [{ ...onBoards, varietyId: lines('poppy', 1)[0]?.varietyId ?? null }],
      undefined,
    ],
    ['nothing is boiled yet', [batch()], undefined],
  ])(
    '[L24] given no time and stations that tap the boil, when %s, then it is called for then',
    (_what, batches, atMs) => {
      expect(only(stateWith({ shop: FULL, planned: [whenFree], batches }), 'load:p1')?.atMs).toBe(atMs)
    },
  )

  it('[L24] given nobody who taps the boil, then a load without a time is called for when its shelf is free', () => {
    const used = { touchedAtMs: at('6:40'), boardsFreed: 0, boardsWetAtMs: at('6:40') }
    const state = stateWith({ planned: [whenFree], shelves: { s1: used, s2: used, s3: used } })
    expect(only(state, 'load:p1')).toMatchObject({ atMs: at('6:41'), latestAtMs: null, status: 'due' })
  })

  it('[L24] given a day that is not open, then only loads with a time are called for', () => {
    const state = stateWith({ day: null, planned: [whenFree, planned({ id: 'p2', order: 2, inAt: at('7:00') })] })
    expect(keys(state)).toEqual(['load:p2'])
  })

  it('[L24] given every shelf taken, then no load is called for', () => {
    const loads = ['s1', 's2', 's3'].map((shelf) => load({ id: `on ${shelf}`, shelf }))
    expect(keys(stateWith({ planned: [timed], loads })).filter((key) => key.startsWith('load'))).toEqual([])
  })

  it('[L25] given boards for one load and two free shelves, then only the first load is called for', () => {
    const all = [whenFree, planned({ id: 'p2', order: 2, lines: lines('sesame', 36) })]
    expect(keys(stateWith({ shop: tapping('load', 'lift'), planned: all, batches: [onBoards] }))).toEqual(['load:p1'])
  })
})

describe('what pieces become', () => {
  const both = planned({ lines: lines('sesame', 24, 'poppy', 24) })

  it('[L28] given plain dough in the kettle, then the lift says what the planned load makes of it', () => {
    const state = stateWith({ shop: FULL, planned: [both], batches: [inKettle] })
    expect(only(state, 'lift:k')?.lines).toEqual(lines('sesame', 24, 'poppy', 12))
  })

  it('[L28] given topped pieces on boards, then the kettle makes only what is still missing', () => {
    const topped = { ...onBoards, varietyId: lines('sesame', 1)[0]?.varietyId ?? null, pieces: 18 }
    const state = stateWith({ shop: FULL, planned: [both], batches: [topped, inKettle] })
    expect(only(state, 'lift:k')?.lines).toEqual(lines('sesame', 6, 'poppy', 24))
  })

  it('[L28] given boards without a limit and a kettle with one, then the boards are used first all the same', () => {
    const state = stateWith({
      shop: FULL,
      planned: [planned({ lines: lines('sesame', 36) })],
      batches: [inKettle, { ...onBoards, until: null }],
    })
    expect(only(state, 'board:b')?.lines).toEqual(lines('sesame', 36))
    expect(only(state, 'lift:k')?.lines).toEqual([])
  })

  it('[L28] given another dough or no plan, then nothing is said', () => {
    const rye = { ...inKettle, doughId: batch({ dough: 'rye' }).doughId }
    expect(only(stateWith({ shop: FULL, planned: [both], batches: [rye] }), 'lift:k')?.lines).toEqual([])
    expect(only(stateWith({ shop: FULL, batches: [inKettle] }), 'lift:k')?.lines).toEqual([])
  })

  it('[L29] given plain pieces on boards, then boarding is called for with what they become; topped ones are left alone', () => {
    const topped = { ...onBoards, id: batch({ id: 't' }).id, varietyId: lines('poppy', 1)[0]?.varietyId ?? null }
    const state = stateWith({ shop: FULL, planned: [both], batches: [onBoards, topped] })
    expect(keys(state).filter((key) => key.startsWith('board'))).toEqual(['board:b'])
    expect(only(state, 'board:b')).toMatchObject({
      atMs: at('6:44'),
      latestAtMs: at('6:52'),
      status: 'due',
      pieces: 36,
      lines: lines('sesame', 24),
    })
  })
})

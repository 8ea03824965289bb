import { describe, expect, it } from 'vitest'
import { emptyState } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { toJson } from '../../../shared-core/day/state-json.ts'
import { commandId, doughId, keepId, plannedId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { openHoursOf } from '../../../shared-core/stock/open-hours.ts'
import { nextSweepMs } from '../../../shared-core/stock/sweep.ts'
import { at, batch, lines, loadOf, lot, planned, stateWith, stock } from '../support/make.ts'
import { decided, eventsOf, outcome, places, play } from '../support/play.ts'
import { dwell, shopWith, TRADE_WINDOWS, variety } from '../support/shop.ts'

const PLAIN = doughId('plain')
const sell: Act = { type: 'sell', lines: lines('sesame', 1) }

describe('opening', () => {
  it('[T2] given no open day, when something is sold at dawn, then the day opens with it', () => {
    const state = stateWith({ day: null })
    play(state, sell)
    expect(state.day).toEqual({ label: '2026-11-24', openedAtMs: at('6:47'), noonMs: at('12:00') })
  })

  it('[T2] given a day closed this afternoon, when dough is shaped at 4, then it is tomorrow already', () => {
    const state = stateWith()
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    play(state, { type: 'shape', doughId: PLAIN, varietyId: null, pieces: 96, stage: 'proof' }, { nowMs: at('16:00') })
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[T2] given a shop that works past midnight, then it stays the same day', () => {
    const state = stateWith()
    play(state, sell, { nowMs: at('23:50') })
    play(state, sell, { nowMs: at('0:30', 1), localDate: '2026-11-25' })
    expect(state.day?.label).toBe('2026-11-24')
    expect(outcome(decided(state, { type: 'openDay' }))).toBe('already-open')
  })

  it('[T2] given a year end, when the day was closed, then the next label is in the new year', () => {
    const state = stateWith({ day: { label: '2026-12-31', openedAtMs: at('4:00'), noonMs: null } })
    play(state, { type: 'closeDay' }, { localDate: '2026-12-31' })
    play(state, { type: 'openDay' }, { localDate: '2026-12-31' })
    expect(state.day?.label).toBe('2027-01-01')
  })
})

describe('a day that nobody closed', () => {
  const evening = () => {
    const state = stateWith({
      batches: [batch({ stage: 'chill', pieces: 48, since: at('16:00') })],
      stock: [stock('sesame', { lots: [lot({ pieces: 12 })] })],
      planned: [
        planned({ id: 'done', done: true }),
        planned({ id: 'stale', inAt: at('9:00') }),
        planned({ id: 'tomorrow', inAt: at('5:00', 1) }),
        planned({ id: 'untimed' }),
      ],
    })
    play(state, sell, { nowMs: at('16:30') })
    return state
  }
  const morning = { nowMs: at('4:30', 1), localDate: '2026-11-25', id: 'morning001' }

  it('[T12] given the first act of the next morning, then yesterday is closed as of its last tap and today opens', () => {
    const state = evening()
    play(state, { type: 'shape', doughId: PLAIN, varietyId: null, pieces: 24, stage: 'proof' }, morning)
    expect(state.lastDay).toMatchObject({ label: '2026-11-24', closedAtMs: at('16:30'), left: lines('sesame', 11) })
    expect(state.day).toEqual({ label: '2026-11-25', openedAtMs: at('4:30', 1), noonMs: at('12:00', 1) })
    expect([...state.planned.keys()]).toEqual(['tomorrow', 'untimed'])
    expect(places(state)).toEqual(['chill plain dough 48', 'proof plain dough 24'])
    expect(outcome(decided(state, { type: 'takeBack', commandId: commandId('morning001') }))).toBe('take-back-unknown')
  })

  it('[T12] given a sale as the first act, then it is of what the morning has, not of what yesterday left', () => {
    const state = evening()
    play(state, sell, morning)
    expect([...state.account.values()][0]).toMatchObject({ sold: 1, unexplained: -1, carriedIn: 48 })
  })

  it('[T12] given ninety days that nobody closes, then the running state does not grow', () => {
    const state = stateWith({ batches: [] })
    const sizes: number[] = []
    for (let day = 0; day < 90; day += 1) {
      const localDate = new Date(at('5:00', day)).toISOString().slice(0, 10)
      const when = (clock: string, n: number) => ({ nowMs: at(clock, day), localDate, id: `day${day}tap${n}0000` })
      play(
        state,
        { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 36) },
        when('5:00', 1),
      )
      const [loadId] = state.loads.keys()
      if (loadId === undefined) throw new Error('nothing loaded')
      play(state, { type: 'out', loadId, from: 'first-side', lines: null }, when('5:20', 2))
      sizes.push(JSON.stringify(toJson(state)).length)
    }
    expect(sizes[89]).toBeLessThan((sizes[2] ?? 0) * 2)
  })
})

describe('closing', () => {
  it('[T3] given pieces in the cooler, for sale and kept, when closed, then each goes where it belongs', () => {
    const state = stateWith({
      batches: [batch({ stage: 'chill', pieces: 48 })],
      stock: [stock('sesame', { lots: [lot({ pieces: 12 })], kept: 6, soldToday: 30 })],
      planned: [planned()],
    })
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    expect(state.lastDay).toMatchObject({ label: '2026-11-24', left: lines('sesame', 12) })
    expect(state.lastDay?.account[0]?.account).toMatchObject({ carriedIn: 96, sold: 30, dayOld: 12 })
    expect(state.account.get(PLAIN)).toMatchObject({ carriedIn: 54, sold: 0, dayOld: 0 })
    expect(places(state)).toEqual(['chill plain dough 48', 'kept sesame 6'])
    expect([state.day, state.planned.size, state.traces.length]).toEqual([null, 0, 0])
  })

  it('[T4] given boards full, when closed, then it is asked back once', () => {
    const state = stateWith({ batches: [batch({ stage: 'boards' })] })
    expect(outcome(decided(state, { type: 'closeDay' }))).toBe('ask line-not-empty')
    play(state, { type: 'closeDay' }, { confirmed: ['line-not-empty'] })
    expect(places(state)).toEqual(['boards plain dough 36'])
    expect(outcome(decided(state, { type: 'closeDay' }))).toBe('day-not-open')
  })

  it('[T4] given a close tapped for yesterday, when it arrives today, then today stays open', () => {
    expect(outcome(decided(stateWith(), { type: 'closeDay', label: '2026-11-23' }))).toBe('day-not-open')
    expect(outcome(decided(stateWith(), { type: 'closeDay', label: '2026-11-24' }))).toBe('taken')
  })

  it('[T2] given a second close on one date, then labels do not run ahead of the calendar', () => {
    const state = stateWith()
    for (const clock of ['11:00', '15:00', '17:00']) {
      play(state, { type: 'closeDay' }, { nowMs: at(clock), id: `close${clock.replace(':', '')}00` })
      play(state, sell, { nowMs: at(clock), id: `sell${clock.replace(':', '')}000` })
    }
    expect(state.day?.label).toBe('2026-11-25')
    play(state, { type: 'closeDay' }, { nowMs: at('18:00'), id: 'closelast01' })
    play(state, sell, { nowMs: at('6:00', 1), localDate: '2026-11-25', id: 'sellnext001' })
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[T2] given a sale from before the close that arrives after it, then the next day begins with the close', () => {
    const state = stateWith()
    play(state, { type: 'closeDay' }, { nowMs: at('17:00') })
    play(state, sell, { nowMs: at('17:10'), tappedAtMs: at('16:50') })
    expect(state.day).toEqual({ label: '2026-11-25', openedAtMs: at('17:00'), noonMs: at('12:00', 1) })
  })
})

describe('a day that is opened the evening before', () => {
  it('[T2] given dough shaped after the close, then the next day knows its noon and is swept in its time', () => {
    const state = stateWith()
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    const dough = { doughId: PLAIN, varietyId: null, pieces: 60, stage: 'chill' } as const
    play(state, { type: 'shape', ...dough }, { nowMs: at('16:00') })
    expect(openHoursOf(state)).toMatchObject({ openMs: at('6:00', 1), closeMs: at('15:00', 1) })
    expect(nextSweepMs(state)).toBeGreaterThan(at('6:00', 1))
  })
})

describe('what nobody touched', () => {
  it('[T3] given a load, boards and a keep forgotten since yesterday, when closed, then they leave the account', () => {
    const yesterday = at('9:00', -1)
    const forgotten = loadOf({ id: 'l1', loadedAt: yesterday }, lines('sesame', 36))
    const state = stateWith({
      loaded: [forgotten],
      batches: [
        batch({ id: 'onBoards', stage: 'boards', pieces: 12, since: yesterday }),
        batch({ id: 'cold', stage: 'chill', pieces: 48, since: yesterday }),
      ],
      stock: [stock('sesame', { kept: 6 })],
      keeps: [
        { id: keepId('k1'), lines: lines('sesame', 6), keptAtMs: yesterday, outAtMs: yesterday, readyAtMs: yesterday },
      ],
    })
    play(state, { type: 'closeDay' }, { nowMs: at('15:10'), confirmed: ['line-not-empty'] })
    expect(places(state)).toEqual(['chill plain dough 48'])
    expect(state.lastDay?.account[0]?.account).toMatchObject({ unexplained: 48, dayOld: 6 })
    expect([state.loads.size, state.keeps.size, state.stock.size]).toEqual([0, 0, 0])
  })

  it.each([
    ['a day past its window', '15:00', -1, 1],
    ['more than a day past its window', '15:00', -2, 0],
  ] as const)('[T3] given chilled dough %s, when closed, then %s', (_how, latest, day, left) => {
    const window = { earliestAtMs: at('4:00', -3), targetAtMs: at('6:00', -3), latestAtMs: at(latest, day) }
    const state = stateWith({ batches: [batch({ stage: 'chill', since: at('18:00', -4), until: window })] })
    play(state, { type: 'closeDay' }, { nowMs: at('14:50') })
    expect(state.batches.size).toBe(left)
  })
})

describe('the load list', () => {
  it('[T7] given one load done and one to come, when a new list is set, then the done one stays', () => {
    const state = stateWith({ planned: [planned({ id: 'done', done: true }), planned({ id: 'open' })] })
    play(state, { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: at('7:00'), lines: lines('poppy', 36) }] })
    expect([...state.planned.values()].map((one) => one.lines)).toEqual([lines('sesame', 48), lines('poppy', 36)])
  })

  it('[T7] given a planned load, when skipped, then it is done; skipped again, already-loaded', () => {
    const state = stateWith({ planned: [planned({ id: 'p1' })] })
    play(state, { type: 'skipPlanned', plannedId: plannedId('p1') })
    expect(outcome(decided(state, { type: 'skipPlanned', plannedId: plannedId('p1') }))).toBe('already-loaded')
    expect(outcome(decided(state, { type: 'skipPlanned', plannedId: plannedId('p9') }))).toBe('unknown-planned')
  })

  it.each([
    [{ shelfId: shelfId('s9'), inAtMs: null, lines: lines('sesame', 6) }, 'unknown-shelf'],
    [{ shelfId: null, inAtMs: null, lines: lines('bialy', 6) }, 'unknown-variety'],
  ] as const)('[L14] given a list with %o, then %s', (load, code) => {
    expect(outcome(decided(stateWith(), { type: 'setLoadList', loads: [load] }))).toBe(code)
  })
})

describe('set-up', () => {
  const whole = setUpChanges(null, shopWith())
  it('[T11] given an empty shop, when anything but a set-up comes, then no-set-up', () => {
    expect(outcome(decided(emptyState(), sell))).toBe('no-set-up')
    expect(outcome(decided(emptyState(), { type: 'changeSetUp', changes: whole.slice(1) }))).toBe('set-up-mismatch')
    const state = emptyState()
    play(state, { type: 'changeSetUp', changes: whole })
    expect(state.shop).toEqual(shopWith())
  })

  it('[T8] given a load baking, when the bake window changes, then it keeps the times that it began with', () => {
    const state = stateWith({ batches: [batch({ pieces: 72 })] })
    play(state, { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 36) })
    const windows = { ...TRADE_WINDOWS, bake: dwell(18, 20, 25, 'min') }
    play(state, { type: 'changeSetUp', changes: [{ entity: 'windows', value: windows }] })
    play(state, { type: 'load', shelfId: shelfId('s2'), plannedId: null, lines: lines('sesame', 36) })
    expect([...state.loads.values()].map((one) => one.out?.targetAtMs)).toEqual([at('7:03'), at('7:07')])
  })

  it('[T9] given sesame for sale, when sesame is retired, then it is asked back once', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })] })
    const retire: Act = {
      type: 'changeSetUp',
      changes: [{ entity: 'variety', value: variety({ id: 'sesame', retired: true }) }],
    }
    expect(outcome(decided(state, retire))).toBe('ask retires-in-use')
    play(state, retire, { confirmed: ['retires-in-use'] })
    expect(outcome(decided(state, retire))).toBe('taken')
  })

  it('[T8] given sesame, when it would become a rye, then set-up-mismatch: its pieces are booked by dough', () => {
    const rye = variety({ id: 'sesame', doughId: doughId('rye') })
    expect(outcome(decided(stateWith(), { type: 'changeSetUp', changes: [{ entity: 'variety', value: rye }] }))).toBe(
      'set-up-mismatch',
    )
  })

  it('[T8] given a variety of a dough that is not there, then set-up-mismatch', () => {
    const stray = variety({ id: 'oat', doughId: doughId('oat') })
    expect(outcome(decided(stateWith(), { type: 'changeSetUp', changes: [{ entity: 'variety', value: stray }] }))).toBe(
      'set-up-mismatch',
    )
  })
})

describe('old taps and take-back', () => {
  it.each([
    ['36 h 0 min', at('18:47', -2), 'taken'],
    ['36 h 1 min', at('18:46', -2), 'ask old-tap'],
  ] as const)('[T10] given a tap %s old, then %s', (_age, tappedAtMs, expected) => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })] })
    expect(outcome(decided(state, sell, { tappedAtMs }))).toBe(expected)
  })

  it('[T6] given a sale, when another of the same rod came after, then take-back names it', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })] })
    play(state, sell, { id: 'first00001' })
    play(state, sell, { id: 'second0001', nowMs: at('6:48') })
    const decision = decided(state, { type: 'takeBack', commandId: commandId('first00001') })
    expect(decision).toMatchObject({
      refusal: { code: 'take-back-changed-since', params: { type: 'sell', atMs: at('6:48'), commandId: 'second0001' } },
    })
    play(state, { type: 'takeBack', commandId: commandId('second0001') })
    play(state, { type: 'takeBack', commandId: commandId('first00001') })
    expect(places(state)).toEqual(['out sesame 12'])
  })

  it('[T6] given a command unknown or never taken back, then it says so', () => {
    const state = stateWith({ planned: [] })
    play(state, { type: 'setLoadList', loads: [] }, { id: 'list000001' })
    expect(outcome(decided(state, { type: 'takeBack', commandId: commandId('list000001') }))).toBe('take-back-never')
    expect(outcome(decided(state, { type: 'takeBack', commandId: commandId('nothing001') }))).toBe('take-back-unknown')
  })

  it('[T5] given a load tap that found, presumed and used a planned load, when taken back, then all is as before', () => {
    const state = stateWith({ batches: [batch({ pieces: 12 })], planned: [planned({ id: 'p1' })] })
    const before = [places(state), [...state.planned], [...state.account]]
    const load: Act = { type: 'load', shelfId: shelfId('s1'), plannedId: plannedId('p1'), lines: lines('sesame', 48) }
    const events = play(state, load, { id: 'load000001' })
    expect(eventsOf(events, 'piecesFound')).toHaveLength(1)
    play(state, { type: 'takeBack', commandId: commandId('load000001') })
    expect([places(state), [...state.planned], [...state.account]]).toEqual(before)
    expect([state.loads.size, state.unsure.size]).toEqual([0, 0])
  })

  it('[T5] given varieties that two shelves share, when the first out is taken back after the second, then it is named', () => {
    const state = stateWith({ batches: [batch({ pieces: 96 })] })
    for (const shelf of ['s1', 's2']) {
      play(state, { type: 'load', shelfId: shelfId(shelf), plannedId: null, lines: lines('sesame', 48) })
    }
    const ids = [...state.loads.keys()]
    ids.forEach((loadId, n) => {
      play(state, { type: 'out', loadId, from: 'first-side', lines: null }, { id: `out000000${n}`, nowMs: at('7:05') })
    })
    expect(outcome(decided(state, { type: 'takeBack', commandId: commandId('out0000000') }))).toBe(
      'take-back-changed-since',
    )
    expect(varietyId('sesame')).toBe([...state.stock.keys()][0])
  })
})

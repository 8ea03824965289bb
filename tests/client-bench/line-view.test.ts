import { describe, expect, it } from 'vitest'
import { actsOnShow } from '../../client/bench/calls.ts'
import { freePieces } from '../../client/bench/free-pieces.ts'
import type { LineView, StationKey } from '../../client/bench/line-view.ts'
import { lineView, tappedHere } from '../../client/bench/line-view.ts'
import { shelfViews } from '../../client/bench/shelf-view.ts'
import { isWorthASound, pedalAct, soundingAct } from '../../client/parts/calls.ts'
import type { State } from '../../shared-core/day/state.ts'
import { stationId, varietyId } from '../../shared-core/ids.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import type { Outlook, VarietyOutlook } from '../../shared-core/live/outlook.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { at, batch, lines, loadOf, planned, stateWith, until } from '../core/support/make.ts'
import { goneBy, lookingAt, outlookWith } from '../core/support/outlook.ts'
import { ALL_STATIONS, dough, shopWith, table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

const ALL = shopWith({ stations: table(ALL_STATIONS) })
const NOW = at('6:41')

function lineOf(
  state: State,
  nowMs: EpochMs = NOW,
  station: string | null = null,
  outlook: Outlook | null = null,
): LineView {
  const shop: Shop = state.shop ?? ALL
  const free = freePieces(state, shop, outlook)
  return lineView({
    state,
    plan: null,
    shop,
    nowMs,
    words: wordsOf(shop),
    stationId: station === null ? null : stationId(station),
    free,
  })
}

const said = (key: StationKey | null) => key && [key.what, key.when, ...key.contents].filter((text) => text !== '')

describe('given a shop whose stations tap load, flip and out only', () => {
  it('[B4] when shown, then nothing else is a key, and the next dip is told all the same', () => {
    const state = stateWith({
      batches: [batch({ stage: 'chill', pieces: 120 })],
      planned: [planned({ shelf: 's1', lines: lines('sesame', 36) })],
    })
    const line = lineOf(state)
    expect([line.pull, line.kettleKey, line.boardKey]).toEqual([null, null, null])
    expect([line.kettle.title, line.kettle.details]).toEqual(['empty', ['next Plain 36']])
  })
})

describe('given a shop that taps every stage', () => {
  const cold = batch({ id: 'cold', stage: 'chill', pieces: 120 })
  const load = planned({ shelf: 's1', inAt: at('7:20'), lines: lines('sesame', 36) })

  it('when a load is planned, then the pull is what it needs, in trays, and a touch does it', () => {
    const pull = lineOf(stateWith({ shop: ALL, batches: [cold], planned: [load] })).pull
    expect(pull?.what).toBe('Pull 3 trays Plain')
    expect(pull?.act).toEqual({ type: 'pull', doughId: 'plain', varietyId: null, pieces: 45 })
  })

  it('when nothing is planned, then a touch asks what', () => {
    const line = lineOf(stateWith({ shop: ALL }))
    for (const key of [line.pull, line.kettleKey, line.boardKey]) {
      expect(key?.act).toBeNull()
      expect(key?.contents).toEqual(['nothing planned'])
    }
  })

  it('when the kettle is empty, then its key dips; when it is full, then it lifts', () => {
    const rack = batch({ id: 'rack', stage: 'rack', pieces: 48 })
    const empty = lineOf(stateWith({ shop: ALL, batches: [rack], planned: [load] }))
    expect(empty.kettleKey?.contents).toEqual(['becomes 36 Sesame'])
    expect(empty.kettleKey?.act).toEqual({ type: 'dip', doughId: 'plain', varietyId: null, pieces: 36 })
    const inside = batch({
      id: 'k',
      stage: 'kettle',
      since: at('6:40:20'),
      until: until('6:41:05', '6:41:20', '6:41:50'),
    })
    const full = lineOf(stateWith({ shop: ALL, batches: [inside], planned: [load] }))
    expect(said(full.kettleKey)).toEqual(['Lift', 'in 20 s', 'Plain 36', 'becomes 36 Sesame'])
    expect(full.kettleKey?.act).toEqual({ type: 'lift', batchId: 'k' })
    expect([full.kettle.label, full.kettle.ring.state]).toEqual(['20 s', 'running'])
    expect(full.kettle.ring.fraction).toBeCloseTo(1 / 3)
  })

  it.each([
    [at('6:41:20'), 'act', 'act'],
    [at('6:42:00'), 'late', 'late'],
  ])('when the lift is due or late at %s, then key and ring say so', (nowMs, tone, ring) => {
    const inside = batch({ stage: 'kettle', since: at('6:40:20'), until: until('6:41:05', '6:41:20', '6:41:50') })
    const line = lineOf(stateWith({ shop: ALL, batches: [inside] }), nowMs)
    expect([line.kettleKey?.tone, line.kettle.ring.state]).toEqual([tone, ring])
  })

  it('when plain pieces lie on boards, then the board key says what they become', () => {
    const boarded = batch({ id: 'b', stage: 'boards', pieces: 36 })
    const line = lineOf(stateWith({ shop: ALL, batches: [boarded], planned: [load] }))
    expect(said(line.boardKey)).toEqual(['Board', 'Sesame 36'])
    expect(line.boardKey?.act).toEqual({ type: 'board', lines: lines('sesame', 36) })
  })

  it('when this screen is one station’s, then only its acts are large', () => {
    const line = lineOf(stateWith({ shop: ALL }), NOW, 'kettle')
    expect([line.pull === null, line.kettleKey === null, line.boardKey === null]).toEqual([true, false, true])
    expect([...tappedHere(ALL, stationId('kettle'))]).toEqual(['dip', 'lift'])
    // A station that the set-up has lost is none: better a key too many.
    expect(tappedHere(ALL, stationId('gone')).size).toBe(7)
  })
})

it('given dough that stands, when shown, then the rack before the cooler, each with its window', () => {
  const standing = lineOf(
    stateWith({
      batches: [
        batch({ id: 'c', stage: 'chill', dough: 'rye', pieces: 48, until: until('0:00', '6:00', '20:00') }),
        batch({ id: 'p', stage: 'proof', dough: 'rye', pieces: 24, until: until('7:00', '7:30', '8:00') }),
        batch({ id: 'r', stage: 'rack', pieces: 96, until: until('6:20', '6:40', '7:40') }),
      ],
    }),
  ).standing
  expect(standing.map(({ title, detail }) => `${title}, ${detail}`)).toEqual([
    'Plain 96, ready, boil by 7:40',
    'Rye 48, chilled, ready',
    'Rye 24, proofing, not ready, look at 7:00',
  ])
  const over = lineOf(stateWith({ batches: [batch({ until: until('5:20', '5:40', '6:40') })] })).standing
  expect(over.map(({ detail, isOver }) => [detail, isOver])).toEqual([['past its time since 6:40', true]])
})

it('given boards under pieces, when there are fewer than that, then it says how many are short', () => {
  const { boards } = lineOf(stateWith({ batches: [batch({ stage: 'boards', pieces: 180, variety: 'sesame' })] }))
  expect([boards.title, boards.detail]).toEqual(['0 wet, 30 out', '6 boards short'])
  // There are 24: more are not drawn.
  expect(boards.drawn).toEqual({ free: 0, out: 24, drying: 0 })
})

describe('given pedals and sounds', () => {
  const inKettle = batch({ id: 'k', stage: 'kettle', since: at('6:40'), until: until('6:40:45', '6:41', '6:41:30') })
  const state = stateWith({ shop: ALL, batches: [inKettle], loaded: [loadOf({}, lines('sesame', 36))] })
  const acts = nextActs(state, at('6:44'))
  const shelves = shelfViews({ state, plan: null, nowMs: at('6:44'), words: wordsOf(ALL), unconfirmed: new Set() })

  it('[B9] when an act can be read here, then its station’s pedal does it and no other’s', () => {
    const shown = { acts, onShow: actsOnShow(shelves, lineOf(state, at('6:44'))) }
    expect(pedalAct(stationId('kettle'), state, shown)?.key).toBe('lift:k')
    expect(pedalAct(stationId('oven'), state, shown)?.key).toBe('flip:l1')
    expect(pedalAct(stationId('cooler'), state, shown)).toBeNull()
    expect(pedalAct(stationId('gone'), state, shown)).toBeNull()
  })

  it('[B9] when an act cannot be read here, then no pedal does it', () => {
    const shown = { acts, onShow: actsOnShow(shelves, lineOf(state, at('6:44'), 'oven')) }
    expect(pedalAct(stationId('kettle'), state, shown)).toBeNull()
  })

  it('when several are due, then the first that nobody is coming to sounds', () => {
    const nowMs = at('6:44')
    expect(soundingAct(acts, new Map(), nowMs)?.key).toBe('lift:k')
    expect(soundingAct(acts, new Map([['lift:k', at('6:45')]]), nowMs)?.key).toBe('flip:l1')
    expect(soundingAct(acts, new Map([['lift:k', nowMs]]), nowMs)?.key).toBe('lift:k')
    expect(soundingAct(acts, new Map(), at('6:40'))).toBeNull()
  })

  it.each([
    ['lift', 'due', true],
    ['load', 'due', false],
    ['load', 'late', true],
    ['pull', 'coming', false],
  ] as const)('when %s is %s, then it is worth a sound or not', (act, status, isWorth) => {
    expect(isWorthASound({ act, status })).toBe(isWorth)
  })
})

it('[K5] given a dough with egg, when it is dipped next, then the key says first that it brings egg to the water', () => {
  const egg = dough({ id: 'plain', order: 1, contains: ['wheat', 'egg'] })
  const doughs = table([egg, dough({ id: 'rye', order: 2, contains: ['wheat'] })])
  const shop = shopWith({ stations: table(ALL_STATIONS), doughs })
  const rack = batch({ id: 'r', stage: 'rack', pieces: 60, until: until('6:00', '6:30', '7:40') })
  const state = stateWith({ shop, batches: [rack], planned: [planned({ shelf: 's1', lines: lines('sesame', 36) })] })
  expect(lineOf(state).kettleKey?.contents).toEqual(['brings egg to the water', 'becomes 36 Sesame'])
})

describe('what free pieces had best become', () => {
  const dough = batch({ id: 'cold', stage: 'chill', pieces: 120 })
  const gone = (clock: string, lost: number): Partial<VarietyOutlook> => ({
    beforeClosePercent: 70,
    lost,
    gone: goneBy(clock, clock, null),
  })
  const said = (state: State, looks: readonly VarietyOutlook[], lastLoad = '8:40') => {
    const [first] = lineOf(state, NOW, null, outlookWith(looks, { atMs: NOW, lastLoadInAtMs: at(lastLoad) })).standing
    return first?.id === 'free' ? [first.title, first.detail] : null
  }
  const wanted = { left: { q10: 4, q50: 8, q90: 12 }, lastsPercent: 40, more: 12 }

  it.each([
    ['one is gone', [lookingAt('sesame', gone('7:40', 7))], ['Free pieces: 12 Sesame', 'else gone 7:40']],
    ['one is gone now', [lookingAt('sesame', gone('6:40', 7))], ['Free pieces: 12 Sesame', 'there is none']],
    [
      'two are gone',
      [lookingAt('sesame', gone('7:40', 5)), lookingAt('poppy', gone('7:20', 9))],
      ['Free pieces: 12 Poppy and 6 Sesame', 'else gone 7:20'],
    ],
    [
      'the afternoon lacks one',
      [lookingAt('sesame', { atChangeover: wanted })],
      ['Free pieces: 12 Sesame', 'wanted for the afternoon'],
    ],
    ['all last', [lookingAt('sesame'), lookingAt('poppy', { lost: 2 })], null],
  ] as const)(
    '[Q144] given plain dough and an outlook in which %s, then it is said before the rack',
    (_what, looks, text) => {
      expect(said(stateWith({ batches: [dough] }), looks)).toEqual(text)
    },
  )

  it('[Q144] given what is gone in two hours, or last loads that are farther away, then it is no matter yet', () => {
    const plain = stateWith({ batches: [batch({ id: 'cold', stage: 'chill', pieces: 120 })] })
    expect(said(plain, [lookingAt('sesame', gone('8:41', 7))])).toBeNull()
    expect(said(plain, [lookingAt('sesame', { atChangeover: wanted })], '8:41')).toBeNull()
  })

  it('[Q144] given no dough without a name, or no outlook, then nothing is said', () => {
    const named = { ...dough, varietyId: varietyId('sesame') }
    const looks = [lookingAt('sesame', gone('7:40', 7))]
    expect(said(stateWith({ batches: [named] }), looks)).toBeNull()
    expect(said(stateWith({ batches: [batch({ stage: 'proof' })] }), looks)).toBeNull()
    expect(lineOf(stateWith({ batches: [dough] })).standing.map(({ id }) => id)).toEqual(['chill plain'])
  })
})

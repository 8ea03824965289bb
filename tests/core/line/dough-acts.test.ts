import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { kettleNow } from '../../../shared-core/line/kettle.ts'
import { at, batch, lines, load, planned, stateWith, until } from '../support/make.ts'
import { ALL_STATIONS, dough, shopWith, station, table } from '../support/shop.ts'

const FULL = shopWith({ stations: table(ALL_STATIONS) })
const acts = (state: State, clock = '6:00') =>
  nextActs(state, at(clock)).filter((one) => one.act === 'dip' || one.act === 'pull')
/** "dip:p1:plain:2 36": key, pieces and time. */
const told = (state: State, clock?: string) => acts(state, clock).map((one) => [one.key, one.pieces, one.atMs])

const rack = (id: string, pieces: number, more: Parameters<typeof batch>[0] = {}) =>
  batch({ id, pieces, stage: 'rack', until: until('5:50', '6:10', '7:00'), ...more })
const timed = (id: string, clock: string, shelf: string, some = lines('sesame', 48)) =>
  planned({ id, order: Number(id.slice(1)), inAt: at(clock), shelf, lines: some })

describe('dips', () => {
  it('[L26] given a load of 48 in at 6:10 and a kettle of 36 every 90 s, then dips at 6:07 and 6:08:30', () => {
    const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches: [rack('r', 60)] })
    expect(told(state)).toEqual([
      ['dip:p1:plain:2', 36, at('6:07')],
      ['dip:p1:plain:1', 12, at('6:08:30')],
    ])
    expect(acts(state)[0]).toMatchObject({
      doughId: 'plain',
      varietyId: null,
      plannedId: 'p1',
      lines: lines('sesame', 36),
      earliestAtMs: at('5:50'),
      latestAtMs: at('7:00'),
    })
  })

  it('[L26] given a load that is partly boiled, then the dip that is left keeps its name and time', () => {
    const boiled = batch({ id: 'b', stage: 'boards', pieces: 36 })
    const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches: [boiled, rack('r', 24)] })
    expect(told(state)).toEqual([['dip:p1:plain:1', 12, at('6:08:30')]])
  })

  it('[L26] given two loads in at once, then the kettle takes one after the other', () => {
    const all = [timed('p1', '6:10', 's1', lines('sesame', 36)), timed('p2', '6:10', 's2', lines('poppy', 36))]
    const state = stateWith({ shop: FULL, planned: all, batches: [rack('r', 72)] })
    expect(told(state)).toEqual([
      ['dip:p1:plain:1', 36, at('6:07')],
      ['dip:p2:plain:1', 36, at('6:08:30')],
    ])
  })

  it('[L26] given pieces in the kettle, then no dip begins before their cycle is over', () => {
    const inKettle = batch({ id: 'k', stage: 'kettle', since: at('6:09'), until: until('6:09:45', '6:10', '6:10:30') })
    const all = [timed('p1', '6:10', 's1', lines('sesame', 72))]
    const state = stateWith({ shop: FULL, planned: all, batches: [inKettle, rack('r', 60)] })
    expect(told(state)).toEqual([['dip:p1:plain:1', 36, at('6:10:30')]])
  })

  it('[L26] given pieces in the kettle and two dips behind them, then each waits a cycle for the one before', () => {
    const inKettle = batch({ id: 'k', stage: 'kettle', since: at('6:09'), until: until('6:09:45', '6:10', '6:10:30') })
    const all = [timed('p1', '6:10', 's1', lines('sesame', 108))]
    expect(told(stateWith({ shop: FULL, planned: all, batches: [inKettle, rack('r', 72)] }))).toEqual([
      ['dip:p1:plain:2', 36, at('6:10:30')],
      ['dip:p1:plain:1', 36, at('6:12')],
    ])
  })

  it('[L26] given lines of two doughs, then each is dipped by itself; what the mixer decided is named', () => {
    const all = [timed('p1', '6:10', 's1', lines('sesame', 24, 'rye', 24))]
    const state = stateWith({ shop: FULL, planned: all, batches: [rack('r', 24)] })
    expect(told(state)).toEqual([
      ['dip:p1:plain:2', 24, at('6:07')],
      ['dip:p1:rye:1', 24, at('6:08:30')],
    ])
    expect(acts(state)[1]).toMatchObject({ doughId: 'rye', varietyId: 'rye' })
  })

  it('[L26] given dough that is not boiled, then no dip is called for', () => {
    const doughs = table([dough({ id: 'plain', route: ['proof', 'chill', 'rack', 'oven'] }), dough({ id: 'rye' })])
    const shop = shopWith({ stations: table(ALL_STATIONS), doughs })
    expect(told(stateWith({ shop, planned: [timed('p1', '6:10', 's1')], batches: [rack('r', 60)] }))).toEqual([])
  })

  it('[L21] given nobody who taps dips or pulls, then neither is called for', () => {
    const shop = shopWith({ stations: table([station('oven', ['load', 'flip', 'out', 'lift', 'board'])]) })
    expect(told(stateWith({ shop, planned: [timed('p1', '6:10', 's1')], batches: [rack('r', 60)] }))).toEqual([])
  })

  it('[L26] given a load for when a shelf is free, then its dips are worked back from the out before it', () => {
    const loads = ['s1', 's2', 's3'].map((shelf) => load({ id: shelf, shelf })) // out at 6:56, handled by 6:57
    const state = stateWith({
      shop: FULL,
      planned: [planned({ lines: lines('sesame', 36) })],
      loads,
      batches: [rack('r', 36)],
    })
    expect(told(state)).toEqual([['dip:p1:plain:1', 36, at('6:55:30')]])
  })

  it('[L24] given a day that is not open, then a load without a time calls for no dough', () => {
    const state = stateWith({ shop: FULL, day: null, planned: [planned()], batches: [rack('r', 48)] })
    expect(told(state)).toEqual([])
  })
})

describe('pulls', () => {
  const chilled = (pieces: number, more: Parameters<typeof batch>[0] = {}) =>
    batch({ id: 'c', pieces, stage: 'chill', since: at('18:00', -1), until: until('2:00', '8:00', '18:00'), ...more })

  it('[L27] given 48 needed at 6:07 and trays of 15, then four trays are pulled for the rack target before it', () => {
    const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches: [chilled(240)] })
    const [pull] = acts(state, '5:00').filter((one) => one.act === 'pull')
    expect(pull).toMatchObject({
      key: 'pull:p1:plain',
      trays: 4,
      pieces: 60,
      atMs: at('5:27'), // 40 min on the rack before 6:07
      earliestAtMs: at('4:37'), // no longer than 90 min there
      latestAtMs: at('5:47'), // at least 20 min there
      lines: lines('sesame', 48),
    })
  })

  it('[L27] given dough on the rack, then only what is missing is pulled, and a begun tray serves the next load', () => {
    const all = [timed('p1', '6:10', 's1', lines('sesame', 36)), timed('p2', '6:30', 's2', lines('poppy', 36))]
    const state = stateWith({ shop: FULL, planned: all, batches: [rack('r', 30), chilled(240)] })
    // 6 short of 36: one tray; its 9 others leave 27 short of the next 36: two trays.
    const pulls = acts(state, '5:00').filter((one) => one.act === 'pull')
    expect(pulls.map((one) => [one.key, one.trays, one.pieces])).toEqual([
      ['pull:p1:plain', 1, 15],
      ['pull:p2:plain', 2, 30],
    ])
  })

  it.each([
    [20, 2, 20],
    [0, undefined, undefined],
  ])(
    '[L27] given %i pieces in the cooler and 48 needed, then no more than these are pulled',
    (pieces, trays, pulled) => {
      const batches = pieces === 0 ? [] : [chilled(pieces)]
      const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches })
      const pull = acts(state).find((one) => one.act === 'pull')
      expect([pull?.trays, pull?.pieces]).toEqual([trays, pulled])
    },
  )

  it('[L27] given dough that is boiled cold, then it is not pulled but dipped, by the window of the cooler', () => {
    const rye = chilled(30, { dough: 'rye', variety: 'rye' })
    const all = [timed('p1', '6:10', 's1', lines('rye', 24))]
    const state = stateWith({ shop: FULL, planned: all, batches: [rye] })
    expect(told(state)).toEqual([['dip:p1:rye:1', 24, at('6:08:30')]])
    expect(acts(state)[0]).toMatchObject({ earliestAtMs: at('2:00'), latestAtMs: at('18:00') })
  })

  it('[L27] given pieces that are not chilled long enough, then the pull is too early until they are', () => {
    const young = chilled(240, { until: until('5:40', '11:00', '20:00') })
    const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches: [young] })
    expect(acts(state, '5:00').find((one) => one.act === 'pull')?.earliestAtMs).toBe(at('5:40'))
  })

  it('[L27] given chilled pieces that the mixer made another variety, then they are not pulled for this one', () => {
    const raisin = chilled(60, { variety: 'raisin' })
    const state = stateWith({ shop: FULL, planned: [timed('p1', '6:10', 's1')], batches: [raisin] })
    expect(acts(state).filter((one) => one.act === 'pull')).toEqual([])
  })

  it('[L27] given a load for when a shelf is free, then only the cooler makes its pull late', () => {
    const state = stateWith({ shop: FULL, planned: [planned()], batches: [chilled(240)] })
    expect(acts(state).find((one) => one.act === 'pull')).toMatchObject({
      earliestAtMs: at('2:00'),
      latestAtMs: at('18:00'),
      status: 'due',
    })
  })
})

describe('the kettle', () => {
  it('[L28] given pieces in it and more planned, then it says what they become and what is dipped next', () => {
    const inKettle = batch({ id: 'k', stage: 'kettle', since: at('6:06'), until: until('6:06:45', '6:07', '6:07:30') })
    const all = [timed('p1', '6:10', 's1', lines('sesame', 24, 'poppy', 24))]
    const state = stateWith({ planned: all, batches: [inKettle, rack('r', 60)] })
    expect(kettleNow(state, at('6:06:30'))).toEqual({
      in: [
        {
          batchId: 'k',
          doughId: 'plain',
          varietyId: null,
          pieces: 36,
          sinceMs: at('6:06'),
          until: until('6:06:45', '6:07', '6:07:30'),
          becomes: lines('sesame', 24, 'poppy', 12),
        },
      ],
      next: {
        plannedId: 'p1',
        doughId: 'plain',
        varietyId: null,
        pieces: 12,
        becomes: lines('poppy', 12),
        atMs: at('6:08:30'),
        dipsLeft: 1,
      },
    })
  })

  it('[L28] given nothing planned and nothing in it, then it is empty', () => {
    expect(kettleNow(stateWith(), at('6:00'))).toEqual({ in: [], next: null })
    expect(kettleNow(stateWith({ shop: null }), at('6:00'))).toEqual({ in: [], next: null })
  })
})

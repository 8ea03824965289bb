import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CareKind } from '../../../shared-core/day/said.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, doughId, shelfId } from '../../../shared-core/ids.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { boardsNow } from '../../../shared-core/line/boards.ts'
import { kettleCare } from '../../../shared-core/line/kettle-care.ts'
import type { KettleCare } from '../../../shared-core/shop/shop.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, batch, lines, planned, stateWith } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'
import { ALL_STATIONS, shopWith, table } from '../support/shop.ts'

const PLAIN = doughId('plain')
const KETTLE = {
  pieces: 36,
  cycleMs: spanMs(90, 's'),
  recoverMs: spanMs(5, 'min'),
  care: { topUp: 300, malt: 600, skim: null, change: 3_000 },
}
const SHOP = shopWith({ kettle: KETTLE, stations: table(ALL_STATIONS) })
const shop = (touches: { readonly [key: string]: number } = {}) =>
  stateWith({ shop: SHOP, touches, batches: [batch({ pieces: 500 })] })
const care = (state: State, kind: CareKind, clock: string, id = `care${clock.replace(':', '')}0000`) =>
  play(state, { type: 'care', care: kind }, { nowMs: at(clock), id })
const dip = (state: State, pieces: number, clock: string) =>
  play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces }, { nowMs: at(clock) })
const boiled = (state: State, clock = '6:47') =>
  Object.fromEntries(kettleCare(state, at(clock)).reminders.map((one) => [one.care, one.boiled]))

describe('reminders of the kettle', () => {
  it('[K1] given a shop that is not reminded of skimming, then it is not told; nobody is without a set-up', () => {
    expect(kettleCare(shop(), at('6:00')).reminders).toEqual([
      { care: 'topUp', boiled: 0, every: 300, isDue: false, atMs: null },
      { care: 'malt', boiled: 0, every: 600, isDue: false, atMs: null },
      { care: 'change', boiled: 0, every: 3_000, isDue: false, atMs: null },
    ])
    expect(kettleCare(stateWith({ shop: null }), at('6:00'))).toEqual({ reminders: [], boilsAgainAtMs: null })
  })

  it('[K1] given pieces of two doughs boiled since ever, then the water has had both', () => {
    expect(boiled(shop({ 'kettle plain': 250, 'kettle rye': 50, 'board sesame': 999 }))).toMatchObject({ topUp: 300 })
  })

  it.each([
    [299, false],
    [300, true],
  ])('[K1] given %s pieces of 300 boiled, then whether it is due: %s', (pieces, due) => {
    const state = shop({ 'kettle plain': pieces })
    expect(kettleCare(state, at('6:00')).reminders[0]).toMatchObject({ boiled: pieces, isDue: due })
  })

  it('[K1] given the kettle topped up, then it counts from there; malt goes on counting', () => {
    const state = shop({ 'kettle plain': 310 })
    care(state, 'topUp', '6:00')
    dip(state, 36, '6:10')
    expect(boiled(state)).toEqual({ topUp: 36, malt: 346, change: 346 })
    expect(kettleCare(state, at('6:47')).reminders[0]?.atMs).toBe(at('6:00'))
  })

  it('[K1] given the water changed, then everything counts from there, until each is done again', () => {
    const state = shop({ 'kettle plain': 310 })
    care(state, 'malt', '5:50')
    care(state, 'change', '6:00')
    dip(state, 36, '6:10')
    expect(boiled(state)).toEqual({ topUp: 36, malt: 36, change: 36 })
    expect(kettleCare(state, at('6:47')).reminders[1]?.atMs).toBeNull()
    care(state, 'topUp', '6:20')
    expect(boiled(state)).toEqual({ topUp: 0, malt: 36, change: 36 })
  })

  it('[K1] given a care taken back, then it counts as before', () => {
    const state = shop({ 'kettle plain': 310 })
    care(state, 'topUp', '6:00', 'topup00001')
    play(state, { type: 'takeBack', commandId: commandId('topup00001') }, { nowMs: at('6:01') })
    expect(boiled(state)).toMatchObject({ topUp: 310 })
  })

  it('[K1] given dips taken back after a care, then fewer than none is none', () => {
    const state = shop()
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 }, { nowMs: at('6:00'), id: 'dip0000001' })
    care(state, 'topUp', '6:01')
    play(state, { type: 'takeBack', commandId: commandId('dip0000001') }, { nowMs: at('6:02') })
    expect(boiled(state)).toMatchObject({ topUp: 0 })
  })

  it('[K1] given the day closed, then what was boiled yesterday counts on', () => {
    const state = shop({ 'kettle plain': 310 })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect(boiled(state)).toMatchObject({ topUp: 310 })
  })

  it('[K1] given any dips and cares, then each counts what was boiled since it or since the change, and never less', () => {
    type Step = { readonly care: KettleCare } | { readonly pieces: number }
    const steps = fc.array(
      fc.oneof(
        fc.constantFrom<KettleCare>('topUp', 'malt', 'change').map((one): Step => ({ care: one })),
        fc.integer({ min: 1, max: 40 }).map((pieces): Step => ({ pieces })),
      ),
      { maxLength: 40 },
    )
    fc.assert(
      fc.property(steps, (all) => {
        const state = shop()
        const since = { topUp: 0, malt: 0, change: 0 }
        all.forEach((one, n) => {
          const clock = `${6 + Math.floor(n / 60)}:${n % 60}`
          if ('pieces' in one) {
            dip(state, one.pieces, clock)
            for (const kind of ['topUp', 'malt', 'change'] as const) since[kind] += one.pieces
          } else {
            care(state, one.care, clock, `care${String(n).padStart(8, '0')}`)
            if (one.care === 'change') Object.assign(since, { topUp: 0, malt: 0, change: 0 })
            else Object.assign(since, { [one.care]: 0 })
          }
        })
        expect(boiled(state, '9:00')).toEqual(since)
      }),
      { numRuns: 60 },
    )
  })

  it('[K7] given the kettle topped up by two people at once, then it was once; malt beside it counts too', () => {
    const state = shop()
    const seenSeq = state.seq
    play(state, { type: 'care', care: 'topUp' }, { nowMs: at('6:00'), device: 'bench-1', seenSeq })
    const other = { nowMs: at('6:00:05'), device: 'bench-2', seenSeq, id: 'other00001' }
    expect(outcome(decided(state, { type: 'care', care: 'topUp' }, other))).toBe('already-moved')
    expect(outcome(decided(state, { type: 'care', care: 'malt' }, other))).toBe('taken')
  })
})

describe('cold water', () => {
  const again = (state: State, clock: string) => kettleCare(state, at(clock)).boilsAgainAtMs

  it.each(['topUp', 'change'] as const)('[K2] given %s, then the kettle is off the boil for 5 min', (kind) => {
    const state = shop()
    care(state, kind, '6:00')
    expect(again(state, '6:00')).toBe(at('6:05'))
    expect(again(state, '6:04:59')).toBe(at('6:05'))
    expect(again(state, '6:05')).toBeNull()
  })

  it.each(['malt', 'skim', 'washBoards', 'boiling'] as const)('[K2] given %s, then the kettle boils on', (kind) => {
    const state = shop()
    care(state, kind, '6:00')
    expect(again(state, '6:00')).toBeNull()
  })

  it('[K2] given somebody says that it boils, then it does; topped up again, it does not', () => {
    const state = shop()
    care(state, 'topUp', '6:00', 'care000001')
    care(state, 'boiling', '6:02', 'care000002')
    expect(again(state, '6:02')).toBeNull()
    care(state, 'topUp', '6:03', 'care000003')
    expect(again(state, '6:03')).toBe(at('6:08'))
  })

  it('[K3] given the kettle off the boil, then dips are called for when it boils again, and a dip now is taken', () => {
    const state = stateWith({
      shop: SHOP,
      planned: [planned({ inAt: at('6:10'), shelf: 's1', lines: lines('sesame', 48) })],
      batches: [batch({ pieces: 60 })],
    })
    const dips = (clock: string) => nextActs(state, at(clock)).flatMap(({ act, atMs }) => (act === 'dip' ? atMs : []))
    expect(dips('6:05')).toEqual([at('6:07'), at('6:08:30')])
    care(state, 'topUp', '6:05')
    expect(dips('6:05')).toEqual([at('6:10'), at('6:11:30')])
    expect(
      outcome(decided(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 }, { nowMs: at('6:06') })),
    ).toBe('taken')
    care(state, 'boiling', '6:06')
    expect(dips('6:06')).toEqual([at('6:07'), at('6:08:30')])
  })
})

describe('boards that can be used today', () => {
  it('[K6] given 20 of 24, then 20 are counted with; given all again, nothing is left said', () => {
    const state = shop()
    play(state, { type: 'setBoards', usable: 20 }, { nowMs: at('5:00') })
    expect(boardsNow(state, at('6:00'))).toMatchObject({ count: 20, free: 20, over: 0 })
    play(state, { type: 'setBoards', usable: 24 }, { nowMs: at('5:10') })
    expect(boardsNow(state, at('6:00'))).toMatchObject({ count: 24, free: 24 })
    expect(state.marks.size).toBe(0)
  })

  it('[K6] given fewer than are in use, then it says by how many, and a load all the same is taken as over', () => {
    const state = stateWith({ shop: SHOP, batches: [batch({ pieces: 60 })] })
    play(state, { type: 'setBoards', usable: 4 }, { nowMs: at('5:00') })
    const [loaded] = play(
      state,
      { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 48) },
      { nowMs: at('6:00') },
    )
    expect(loaded).toMatchObject({ type: 'loaded', over: ['boards'] })
    expect(boardsNow(state, at('6:01'))).toMatchObject({ count: 4, free: 0, over: 4 })
  })

  it('[K6] given the day closed, then tomorrow all of them can be used', () => {
    const state = shop()
    play(state, { type: 'setBoards', usable: 20 }, { nowMs: at('5:00') })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect(boardsNow(state, at('16:00')).count).toBe(24)
  })
})

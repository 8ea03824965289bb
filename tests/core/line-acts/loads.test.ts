import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import type { LoadId } from '../../../shared-core/ids.ts'
import { loadId, shelfId } from '../../../shared-core/ids.ts'
import { at, batch, lines, loadOf, planned, stateWith } from '../support/make.ts'
import { decided, eventsOf, outcome, places, play } from '../support/play.ts'
import { ALL_STATIONS, shelf, shopWith, table } from '../support/shop.ts'

const S1 = shelfId('s1')
const S2 = shelfId('s2')

function loadOn(state: State, ...what: readonly (string | number)[]): LoadId {
  play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines(...what) })
  const [id] = [...state.loads.keys()].slice(-1)
  return id ?? loadId('none')
}

describe('a load tap', () => {
  it.each([
    // stands at    acts presumed
    ['boards', ['board']],
    ['kettle', ['lift', 'board']],
    ['rack', ['dip', 'lift', 'board']],
    ['chill', ['pull', 'dip', 'lift', 'board']],
    ['proof', ['pull', 'dip', 'lift', 'board']],
  ] as const)('[L1] given 36 plain at %s, when loaded as sesame, then %s are presumed', (stage, acts) => {
    const state = stateWith({ batches: [batch({ stage, pieces: 36 })] })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 36) })
    expect(
      eventsOf(events, 'loaded')[0]
        ?.presumed.map((one) => one.act)
        .sort(),
    ).toEqual([...acts].sort())
    expect(places(state)).toEqual(['oven sesame 36'])
  })

  it('[L1] given two varieties boarded by their own taps, when both load together, then nothing is presumed', () => {
    const boarded = (variety: string) => batch({ id: variety, stage: 'boards', variety, pieces: 12 })
    const state = stateWith({ batches: [boarded('sesame'), boarded('poppy')] })
    const load = { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 12, 'poppy', 12) } as const
    expect(eventsOf(play(state, load), 'loaded')[0]?.presumed).toEqual([])
  })

  it('[L1] given a dough whose route has no rack, when loaded from the cooler, then no pull is presumed', () => {
    const state = stateWith({ batches: [batch({ dough: 'rye', variety: 'rye', stage: 'chill', pieces: 24 })] })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('rye', 24) })
    expect(eventsOf(events, 'loaded')[0]?.presumed.map((one) => one.act)).toEqual(['dip', 'lift'])
  })

  it('[L2] given sesame and plain dough on boards and plain on the rack, when 36 sesame load, then near and named go first', () => {
    const state = stateWith({
      batches: [
        batch({ id: 'named', stage: 'boards', variety: 'sesame', pieces: 12 }),
        batch({ id: 'near', stage: 'boards', pieces: 12 }),
        batch({ id: 'far', stage: 'rack', pieces: 36 }),
      ],
    })
    loadOn(state, 'sesame', 36)
    expect(places(state)).toEqual(['oven sesame 36', 'rack plain dough 24'])
  })

  it('[L2] given two batches in the cooler, when pulled, then the one whose window closes first goes first', () => {
    const closes = (clock: string) => ({ earliestAtMs: at('2:00'), targetAtMs: at('6:00'), latestAtMs: at(clock) })
    const state = stateWith({
      batches: [
        batch({ id: 'late', stage: 'chill', pieces: 24, until: closes('18:00') }),
        batch({ id: 'soon', stage: 'chill', pieces: 24, until: closes('9:00') }),
      ],
    })
    play(state, { type: 'pull', doughId: batch().doughId, varietyId: null, pieces: 24 })
    expect([...state.batches.keys()].filter((id) => id === 'late' || id === 'soon')).toEqual(['late'])
  })

  it('[L3] given 12 pieces known, when 36 load, then 24 are found, unexplained and asked about', () => {
    const state = stateWith({ batches: [batch({ pieces: 12 })] })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 36) })
    expect(eventsOf(events, 'piecesFound')[0]?.batch.pieces).toBe(24)
    expect([...state.account.values()][0]?.unexplained).toBe(-24)
    expect([...state.unsure.values()].map((one) => one.what.kind)).toContain('found')
  })

  it('[L2] given sesame boarded by an earlier tap, when the same pieces load as poppy, then no pieces are invented', () => {
    const state = stateWith({ batches: [batch({ stage: 'boards', variety: 'sesame', pieces: 24 })] })
    loadOn(state, 'poppy', 24)
    expect(places(state)).toEqual(['oven poppy 24'])
  })

  it('[L7] given a shelf of 48, when 60 load, then it is taken and the limit recorded', () => {
    const state = stateWith({ batches: [batch({ pieces: 60 })] })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 60) })
    expect(eventsOf(events, 'loaded')[0]?.over).toContain('shelf')
    expect([...state.unsure.values()].map((one) => one.what)).toContainEqual(
      expect.objectContaining({ kind: 'over', limit: 'shelf', pieces: 60, most: 48 }),
    )
  })

  it('[L7] given 24 boards of which 20 are under loads, when 48 more load, then boards are recorded as short', () => {
    const state = stateWith({
      batches: [batch({ pieces: 48 })],
      loads: [loadOf({ shelf: 's2', boards: 20 }, []).load],
    })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 48) })
    expect(eventsOf(events, 'loaded')[0]?.over).toContain('boards')
  })

  it('[L8] given stations that tap every act, when a load presumes three, then three wait for dry hands', () => {
    const state = stateWith({ shop: shopWith({ stations: table(ALL_STATIONS) }), batches: [batch({ pieces: 36 })] })
    loadOn(state, 'sesame', 36)
    expect([...state.unsure.values()].map(({ what }) => what.kind === 'presumed' && what.act).sort()).toEqual([
      'board',
      'dip',
      'lift',
    ])
    const [first] = state.unsure.keys()
    if (first === undefined) throw new Error('nothing to confirm')
    play(state, { type: 'confirmPresumed', unsureIds: [first] })
    expect(state.unsure.size).toBe(2)
    expect(outcome(decided(state, { type: 'confirmPresumed', unsureIds: [first] }))).toBe('already-confirmed')
  })

  it('[L8] given a shop that taps loads only, when a load presumes the rest, then nothing waits', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    loadOn(state, 'sesame', 36)
    expect(state.unsure.size).toBe(0)
  })
})

describe('two people at one shelf', () => {
  it('[L4] given a load in, when loaded again, then already-loaded', () => {
    const state = stateWith({ batches: [batch({ pieces: 72 })] })
    loadOn(state, 'sesame', 36)
    const again = decided(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 36) })
    expect(outcome(again)).toBe('already-loaded')
  })

  it('[L4] given a planned load taken on one shelf, when taken on another, then already-loaded', () => {
    const plan = planned({ id: 'p1' })
    const state = stateWith({ batches: [batch({ pieces: 96 })], planned: [plan] })
    play(state, { type: 'load', shelfId: S1, plannedId: plan.id, lines: plan.lines })
    expect(state.planned.get(plan.id)?.done).toBe(true)
    const again = decided(state, { type: 'load', shelfId: S2, plannedId: plan.id, lines: plan.lines })
    expect(outcome(again)).toBe('already-loaded')
  })

  it('[L4] given a flipped load, when flipped again, then already-flipped; out again, then already-out', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'flip', loadId: id })
    expect(outcome(decided(state, { type: 'flip', loadId: id }))).toBe('already-flipped')
    expect(outcome(decided(state, { type: 'out', loadId: id, from: 'first-side', lines: null }))).toBe(
      'already-flipped',
    )
    play(state, { type: 'out', loadId: id, from: 'second-side', lines: null })
    expect(outcome(decided(state, { type: 'out', loadId: id, from: 'second-side', lines: null }))).toBe('already-out')
    expect(outcome(decided(state, { type: 'flip', loadId: id }))).toBe('already-out')
  })
})

describe('flip and out', () => {
  it('[L5] given a load whose flip was forgotten, when out is tapped, then the flip is presumed at its due time', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    const events = play(state, { type: 'out', loadId: id, from: 'first-side', lines: null }, { nowMs: at('7:04') })
    expect(eventsOf(events, 'flipped')).toEqual([expect.objectContaining({ presumed: true, atMs: at('6:50:30') })])
    expect(state.loads.size).toBe(0)
    expect([...state.unsure.values()].map((one) => one.what)).toContainEqual(
      expect.objectContaining({ kind: 'presumed', act: 'flip' }),
    )
  })

  it('[L6] given 36 out at 7:04, when it is 7:10 and 7:19, then they cool and are for sale, without a tap', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'flip', loadId: id }, { nowMs: at('6:50:30') })
    play(state, { type: 'out', loadId: id, from: 'second-side', lines: null }, { nowMs: at('7:04') })
    const [sesame] = state.stock.values()
    expect(sesame?.lots).toEqual([expect.objectContaining({ pieces: 36, outAtMs: at('7:04'), readyAtMs: at('7:19') })])
  })

  it.each([
    ['6:47:30', ['too-early']],
    ['6:50:30', []],
    ['6:55', ['too-late']],
  ] as const)('[L7] given a flip at %s, then recorded as %s', (clock, over) => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    const events = play(state, { type: 'flip', loadId: id }, { nowMs: at(clock) })
    expect(eventsOf(events, 'flipped')[0]?.over).toEqual(over)
  })

  it('[L14] given pan bread only, when flipped, then nothing-to-flip, and the key goes straight to out', () => {
    const state = stateWith({ batches: [batch({ pieces: 24 })] })
    const id = loadOn(state, 'focaccia', 24)
    expect(outcome(decided(state, { type: 'flip', loadId: id }))).toBe('nothing-to-flip')
    const events = play(state, { type: 'out', loadId: id, from: 'first-side', lines: null }, { nowMs: at('7:03') })
    expect(eventsOf(events, 'flipped')).toEqual([])
  })

  it('[L12] given an offline tap from before the load, when the flip arrives, then it counts from the load', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    const when = { nowMs: at('6:52'), tappedAtMs: at('6:00') }
    expect(play(state, { type: 'flip', loadId: id }, when)[0]?.atMs).toBe(at('6:47'))
  })

  it('[L12] given a tap from the future or an unknown clock, then it counts from now', () => {
    for (const tappedAtMs of [at('9:00'), null]) {
      const state = stateWith({ batches: [batch({ pieces: 36 })] })
      const id = loadOn(state, 'sesame', 36)
      expect(play(state, { type: 'flip', loadId: id }, { nowMs: at('6:51'), tappedAtMs })[0]?.atMs).toBe(at('6:51'))
    }
  })
})

describe('boards and clocks of a load', () => {
  it('[L12] given an offline out from before the flip, when it arrives, then it counts from the flip', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'flip', loadId: id }, { nowMs: at('6:51') })
    const when = { nowMs: at('7:05'), tappedAtMs: at('6:48') }
    const out = play(state, { type: 'out', loadId: id, from: 'second-side', lines: null }, when)
    expect(out[0]?.atMs).toBe(at('6:51'))
  })

  it('[L7] given all boards in use, 8 of them under the very pieces that load, then none are short', () => {
    const state = stateWith({
      batches: [batch({ stage: 'boards', variety: 'sesame', pieces: 48 })],
      loads: [loadOf({ shelf: 's2', boards: 16 }, []).load],
    })
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 48) })
    expect(eventsOf(events, 'loaded')[0]?.over).toEqual([])
  })

  it.each([
    ['flipped at 6:51', true, at('6:56')],
    ['never tapped as flipped: wet since the flip that was due', false, at('6:55:30')],
  ] as const)(
    '[L5] given 6 boards %s, when out at 7:05, then the shelf remembers when they are wet',
    (_how, flips, wetAtMs) => {
      const state = stateWith({ batches: [batch({ pieces: 36 })] })
      const id = loadOn(state, 'sesame', 36)
      if (flips) play(state, { type: 'flip', loadId: id }, { nowMs: at('6:51') })
      const from = flips ? 'second-side' : 'first-side'
      play(state, { type: 'out', loadId: id, from, lines: null }, { nowMs: at('7:05') })
      expect(state.shelves.get(S1)).toEqual({ touchedAtMs: at('7:05'), boardsFreed: 6, boardsWetAtMs: wetAtMs })
    },
  )

  it('[L9] given two varieties in a load, when all of one is dropped, then the load stays with the other', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 24, 'poppy', 12)
    const [sesame] = [...state.batches.values()].filter((one) => one.varietyId === 'sesame')
    if (sesame === undefined) throw new Error('no sesame in the load')
    play(state, { type: 'wasteBatch', batchId: sesame.id, from: 'oven', pieces: 24 })
    expect(places(state)).toEqual(['oven poppy 12'])
    expect(state.loads.has(id)).toBe(true)
  })
})

describe('a load put right', () => {
  it('[L10] given 36 sesame baking, when it was 24 poppy, then 24 poppy bake and 12 lie on boards', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'changeLoad', loadId: id, lines: lines('poppy', 24) })
    expect(places(state)).toEqual(['boards sesame 12', 'oven poppy 24'])
  })

  it('[L10] given 24 baking and 24 on the rack, when it was 36, then 12 more are taken from the rack', () => {
    const state = stateWith({ batches: [batch({ pieces: 48 })] })
    const id = loadOn(state, 'sesame', 24)
    play(state, { type: 'changeLoad', loadId: id, lines: lines('sesame', 24, 'poppy', 12) })
    expect(places(state)).toEqual(['oven poppy 12', 'oven sesame 24', 'rack plain dough 12'])
  })

  it('[L7, L8] given a shelf of 48, when its load was 60 all the time, then that is recorded and asked about', () => {
    const state = stateWith({ shop: shopWith({ stations: table(ALL_STATIONS) }), batches: [batch({ pieces: 60 })] })
    const id = loadOn(state, 'sesame', 24)
    const before = state.unsure.size
    const events = play(state, { type: 'changeLoad', loadId: id, lines: lines('sesame', 60) })
    expect(eventsOf(events, 'loadChanged')[0]?.over).toEqual(['shelf'])
    expect([...state.unsure.values()].slice(before).map(({ what }) => what.kind)).toEqual([
      'presumed',
      'presumed',
      'presumed',
      'over',
    ])
  })

  it('[L7] given a load of 48, when moved to a shelf of 12, then recorded; to a retired one, then refused', () => {
    const shelves = table([shelf({ id: 's1' }), shelf({ id: 's2', pieces: 12 }), shelf({ id: 'old', retired: true })])
    const state = stateWith({ shop: shopWith({ shelves }), batches: [batch({ pieces: 48 })] })
    const id = loadOn(state, 'sesame', 48)
    const move = { type: 'moveLoad', loadId: id, from: 'first-side', to: 'first-side' } as const
    expect(outcome(decided(state, { ...move, shelfId: shelfId('old') }))).toBe('retired')
    expect(eventsOf(play(state, { ...move, shelfId: S2 }), 'loadMoved')[0]?.over).toEqual(['shelf'])
  })

  it('[L12] given a load tapped offline in time, when it arrives late, then it is not recorded as too late', () => {
    const window = { earliestAtMs: at('5:00'), targetAtMs: at('5:02'), latestAtMs: at('5:08') }
    const state = stateWith({ batches: [batch({ stage: 'boards', until: window, since: at('5:00') })] })
    const load = { type: 'load', shelfId: S1, plannedId: null, lines: lines('sesame', 36) } as const
    const events = play(state, load, { nowMs: at('5:30'), tappedAtMs: at('5:03') })
    expect(eventsOf(events, 'loaded')[0]).toMatchObject({ atMs: at('5:03'), over: [] })
  })

  it('[L13] given a load, when moved to a free shelf, back a side, or back to boards, then it is there', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'flip', loadId: id })
    play(state, { type: 'moveLoad', loadId: id, from: 'second-side', to: 'first-side', shelfId: S2 })
    expect(state.loads.get(id)).toMatchObject({ phase: 'first-side', shelfId: 's2', flippedAtMs: null })
    play(state, { type: 'moveLoad', loadId: id, from: 'first-side', to: 'boards', shelfId: S2 })
    expect(places(state)).toEqual(['boards sesame 36'])
    expect(state.loads.size).toBe(0)
  })

  it.each([
    [S1, 'first-side', 'same-place'],
    [S2, 'first-side', 'already-loaded'],
    [shelfId('s9'), 'first-side', 'unknown-shelf'],
  ] as const)('[L13] given shelf 2 full, when a load moves to %s, then %s %s', (to, phase, code) => {
    const state = stateWith({
      batches: [batch({ pieces: 36 })],
      loads: [loadOf({ id: 'other', shelf: 's2' }, []).load],
    })
    const id = loadOn(state, 'sesame', 36)
    const move = decided(state, { type: 'moveLoad', loadId: id, from: 'first-side', to: phase, shelfId: to })
    expect(outcome(move)).toBe(code)
  })

  it('[L15] given a hearth with one load, when another goes on and a part comes out, then both are told apart', () => {
    const shop = shopWith({
      oven: { ...shopWith().oven, kind: 'hearth' },
      shelves: table([shelf({ id: 's1', pieces: 120, floorBoards: 20 })]),
    })
    const state = stateWith({ shop, batches: [batch({ pieces: 96 })] })
    const first = loadOn(state, 'sesame', 36)
    const second = loadOn(state, 'poppy', 24)
    play(state, { type: 'flip', loadId: first }, { nowMs: at('6:51') })
    play(state, { type: 'out', loadId: first, from: 'second-side', lines: lines('sesame', 12) }, { nowMs: at('7:03') })
    expect([...state.loads.keys()]).toEqual([first, second])
    play(state, { type: 'out', loadId: first, from: 'second-side', lines: null }, { nowMs: at('7:06') })
    expect(places(state)).toEqual(['out sesame 36', 'oven poppy 24', 'rack plain dough 36'])
    const tooMany = decided(state, { type: 'out', loadId: second, from: 'first-side', lines: lines('poppy', 25) })
    expect(outcome(tooMany)).toBe('too-few')
  })

  it('[L15] given two outs within the time that boards take to wet, then the floor remembers the boards of both', () => {
    const shop = shopWith({
      oven: { ...shopWith().oven, kind: 'hearth' },
      shelves: table([shelf({ id: 's1', pieces: 120, floorBoards: 20 })]),
    })
    const state = stateWith({ shop, batches: [batch({ pieces: 96 })] })
    const [first, second] = [loadOn(state, 'sesame', 36), loadOn(state, 'poppy', 24)]
    play(state, { type: 'flip', loadId: first }, { nowMs: at('7:00') })
    play(state, { type: 'flip', loadId: second }, { nowMs: at('7:01') })
    play(state, { type: 'out', loadId: first, from: 'second-side', lines: null }, { nowMs: at('7:03') })
    play(state, { type: 'out', loadId: second, from: 'second-side', lines: null }, { nowMs: at('7:04') })
    expect(state.shelves.get(S1)).toMatchObject({ boardsFreed: 10, boardsWetAtMs: at('7:06') })
  })

  it('[L10] given a load put right, then the door of the oven stays where it was', () => {
    const state = stateWith({ batches: [batch({ pieces: 36 })] })
    const id = loadOn(state, 'sesame', 36)
    play(state, { type: 'changeLoad', loadId: id, lines: lines('poppy', 36) }, { nowMs: at('6:50') })
    expect(state.shelves.get(S1)?.touchedAtMs).toBe(at('6:47'))
  })

  it('[L15] given a floor of 20 boards with 12 on it, when 9 boards more go on, then the shelf is over', () => {
    const shop = shopWith({
      oven: { ...shopWith().oven, kind: 'hearth' },
      shelves: table([shelf({ id: 's1', pieces: 120, floorBoards: 20 })]),
    })
    const state = stateWith({ shop, batches: [batch({ pieces: 200 })] })
    loadOn(state, 'sesame', 72)
    const events = play(state, { type: 'load', shelfId: S1, plannedId: null, lines: lines('poppy', 54) })
    expect(eventsOf(events, 'loaded')[0]?.over).toContain('shelf')
  })
})

describe('what the shop does not have', () => {
  const state = () =>
    stateWith({ shop: shopWith({ shelves: table([shelf({ id: 's1' }), shelf({ id: 'old', retired: true })]) }) })
  it.each([
    [{ type: 'load', shelfId: shelfId('s9'), plannedId: null, lines: lines('sesame', 6) }, 'unknown-shelf'],
    [{ type: 'load', shelfId: shelfId('old'), plannedId: null, lines: lines('sesame', 6) }, 'retired'],
    [{ type: 'load', shelfId: S1, plannedId: null, lines: lines('bialy', 6) }, 'unknown-variety'],
    [{ type: 'load', shelfId: S1, plannedId: planned({ id: 'p9' }).id, lines: lines('sesame', 6) }, 'unknown-planned'],
    [{ type: 'flip', loadId: loadId('none') }, 'unknown-load'],
    [{ type: 'out', loadId: loadId('none'), from: 'first-side', lines: null }, 'unknown-load'],
    [{ type: 'changeLoad', loadId: loadId('none'), lines: lines('sesame', 6) }, 'unknown-load'],
    [{ type: 'moveLoad', loadId: loadId('none'), from: 'first-side', to: 'boards', shelfId: S1 }, 'unknown-load'],
  ] as const)('[L14] given %o, then %s', (act, code) => {
    expect(outcome(decided(state(), act))).toBe(code)
  })
})

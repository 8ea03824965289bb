import { describe, expect, it } from 'vitest'
import { leftOf } from '../../../shared-core/dough/mix-left.ts'
import { buildId, formulaId, preparationId } from '../../../shared-core/ids.ts'
import { at, stateWith } from '../support/make.ts'
import { decided, eventsOf, outcome, play } from '../support/play.ts'
import { table } from '../support/shop.ts'
import { asked, g, mixOf, move, NO_MIX, plan, planMixes, roomShop, shape, TOMORROW } from './acts-shop.ts'
import { formula } from './room-mix.ts'

const started = () => stateWith({ shop: roomShop() })
/** 10 kg of flour, 55 % water, 2 % salt. */
const DOUGH_MG = 15_700_000

describe('planning mixes', () => {
  it('[D61] given planned mixes, when planned anew, then those that nobody has begun go, and one that comes out the same stays with what was weighed of it', () => {
    const state = started()
    const [first, second] = plan(state, [asked('plain', { plain: 100 }), asked('raisin')])
    if (first === undefined || second === undefined) throw new Error('two mixes')
    play(state, { type: 'weighLine', mixId: first, line: 'flour', done: true })
    play(state, planMixes(asked('sour'), asked('plain', { plain: 90 })))
    const mixes = [...state.mixes.values()].sort((one, other) => one.order - other.order)
    expect(mixes.map((mix) => mix.formula.id)).toEqual(['sour', 'plain'])
    expect(mixes[1]).toMatchObject({ id: first, gives: [{ doughId: 'plain', pieces: 90, pieceMilligrams: 120_000 }] })
    expect(mixes[1]?.lines[0]?.weighedAtMs).toBe(at('6:47'))
    play(state, move(first, 'planned', 'mixing'))
    play(state, planMixes())
    expect([...state.mixes.keys()]).toEqual([first])
  })

  it('[D62] given a planned mix, when its formula is changed in the set-up, then the mix keeps what it was planned with', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    const changed = formula({ id: 'plain', lines: [], mixMs: 60_000 as never })
    state.shop = { ...roomShop(), formulas: table([changed]) }
    expect(mixOf(state, id).formula.lines).toHaveLength(3)
    const [event] = eventsOf(play(state, move(id, 'planned', 'mixing')), 'mixMoved')
    expect(event?.until?.targetAtMs).toBe(at('6:59'))
  })

  it.each([
    [asked('none'), 'unknown-formula'],
    [asked('plain', { none: 1 }), 'unknown-dough'],
    [asked('plain', { rye: 1 }), 'other-formula'],
    [asked('plain', { old: 1 }), 'other-formula'],
  ])('[D62] given mixes of %j, then they are refused: %s', (mix, code) => {
    expect(outcome(decided(started(), planMixes(mix)))).toBe(code)
  })

  it('[D63] given an order of some mixes, then these stand first with their times, the others follow as they stood; what has begun is passed over', () => {
    const state = started()
    const [one, two, three, four] = plan(state, [asked('plain'), asked('plain'), asked('sour'), asked('raisin')])
    if (one === undefined || two === undefined || three === undefined || four === undefined)
      throw new Error('four mixes')
    play(state, move(two, 'planned', 'mixing'))
    const startAtMs = at('9:00')
    play(state, {
      type: 'orderMixes',
      mixes: [
        { mixId: four, startAtMs },
        { mixId: two, startAtMs },
      ],
    })
    expect([one, three, four].map((id) => mixOf(state, id).order)).toEqual([1, 2, 0])
    expect(mixOf(state, four).startAtMs).toBe(startAtMs)
    expect(mixOf(state, two)).toMatchObject({ stage: 'mixing', startAtMs: null })
    const began = { type: 'orderMixes', mixes: [{ mixId: two, startAtMs: null }] } as const
    expect(outcome(decided(state, began))).toBe('already-moved')
    const unknown = { type: 'orderMixes', mixes: [{ mixId: NO_MIX, startAtMs: null }] } as const
    expect(outcome(decided(state, unknown))).toBe('unknown-mix')
  })

  it('[D63] given a mix that has begun, when dropped, then it is refused; a planned one goes', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    expect(outcome(decided(state, { type: 'dropMix', mixId: id }))).toBe('taken')
    play(state, move(id, 'planned', 'mixing'))
    expect(outcome(decided(state, { type: 'dropMix', mixId: id }))).toBe('mix-begun')
    expect(outcome(decided(state, { type: 'dropMix', mixId: NO_MIX }))).toBe('unknown-mix')
  })

  it('[D60] given a day that is over, one more than a year ahead, or more days than there can be, then it is refused', () => {
    const state = started()
    const lines = [{ doughId: 'plain' as never, varietyId: null, pieces: 12, ordered: 0 }]
    const wanted = (date: string) => outcome(decided(state, { type: 'setWanted', date, lines }))
    expect(wanted('2026-11-23')).toBe('date-over')
    expect(wanted('2026-11-24')).toBe('taken')
    expect(wanted('2027-11-25')).toBe('taken')
    expect(wanted('2027-11-26')).toBe('date-too-far')
    for (let day = 0; day < 60; day += 1) {
      const date = `2027-0${1 + Math.floor(day / 20)}-${String(1 + (day % 20)).padStart(2, '0')}`
      play(state, { type: 'setWanted', date, lines })
    }
    expect(wanted(TOMORROW)).toBe('too-many')
    expect(wanted('2027-01-01')).toBe('taken')
  })

  it('[D60] given what is wanted for a day, when said anew, then it is replaced, and nothing takes the day off the list', () => {
    const state = started()
    const line = { doughId: 'plain' as never, varietyId: null, pieces: 120, ordered: 12 }
    play(state, { type: 'setWanted', date: TOMORROW, lines: [line] })
    play(state, {
      type: 'setWanted',
      date: TOMORROW,
      lines: [
        { ...line, pieces: 60 },
        { ...line, doughId: 'rye' as never, pieces: 0, ordered: 0 },
      ],
    })
    expect(state.wanted.get(TOMORROW)?.lines).toEqual([{ ...line, pieces: 60 }])
    play(state, { type: 'setWanted', date: TOMORROW, lines: [] })
    expect(state.wanted.size).toBe(0)
    const nothing = { type: 'setWanted', date: TOMORROW, lines: [] } as const
    expect(outcome(decided(state, nothing))).toBe('already-moved')
    const unknown = { type: 'setWanted', date: TOMORROW, lines: [{ ...line, varietyId: 'rye' as never }] } as const
    expect(outcome(decided(state, unknown))).toBe('unknown-variety')
  })
})

describe('a mix from the scale to the bench', () => {
  it('[D64] given builds of a pre-ferment, when a mix begins, then it takes the ripe ones first, the oldest first, and is stamped with mixer and time', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('sour')], { nowMs: at('5:00') })
    const make = (n: number, nowMs: number, milligrams: number) =>
      play(
        state,
        { type: 'makePreparation', preparationId: preparationId('poolish'), milligrams, forDate: TOMORROW },
        { nowMs: nowMs as never, id: `build0000${n}` },
      )
    // Sorted by time of making: over by 20:00, ripe, ripe, not yet ripe.
    make(1, at('2:00', 0), 5_000_000)
    make(2, at('7:00'), 1_000_000)
    make(3, at('8:00'), 2_500_000)
    make(4, at('18:00'), 5_000_000)
    play(state, { type: 'dropBuild', buildId: buildId('build00002.1') }, { nowMs: at('19:00') })
    const [event] = eventsOf(play(state, move(id, 'planned', 'mixing'), { nowMs: at('20:00') }), 'mixMoved')
    // 20 % of 10 kg of flour as a poolish of equal parts: 4 kg.
    expect(event?.begun).toEqual({
      mixer: 'Spiral',
      builds: [
        { buildId: 'build00003.1', milligrams: 2_500_000 },
        { buildId: 'build00001.1', milligrams: 1_500_000 },
      ],
    })
    expect(mixOf(state, id)).toMatchObject({ stage: 'mixing', mixedAtMs: at('20:00'), mixer: 'Spiral' })
  })

  it('[D65] given a mix, when it goes on early, late, back or past a stage, then it is taken and recorded; never back to the plan', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('sour')])
    const over = (act: ReturnType<typeof move>, time: string) =>
      eventsOf(play(state, act, { nowMs: at(time) }), 'mixMoved').map((event) => event.over)
    expect(over(move(id, 'planned', 'mixing'), '7:00')).toEqual([[]])
    expect(over(move(id, 'mixing', 'rest'), '7:05')).toEqual([['too-early']])
    expect(over(move(id, 'rest', 'mixing'), '7:06')).toEqual([[]])
    expect(over(move(id, 'mixing', 'bulk'), '7:18')).toEqual([[]])
    expect(mixOf(state, id).until).toEqual({ earliestAtMs: at('8:18'), targetAtMs: at('8:48'), latestAtMs: at('9:18') })
    expect(over(move(id, 'bulk', 'bench'), '9:30')).toEqual([['too-late']])
    expect(mixOf(state, id)).toMatchObject({ mixedAtMs: at('7:00'), stage: 'bench', until: null })
  })

  it('[D65] given a mix, when the tap names another stage, the same one, or one that its formula has not, then it is refused', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, move(id, 'planned', 'mixing'))
    expect(outcome(decided(state, move(id, 'planned', 'mixing')))).toBe('already-moved')
    expect(outcome(decided(state, move(id, 'mixing', 'mixing')))).toBe('same-place')
    expect(outcome(decided(state, move(id, 'mixing', 'bulk')))).toBe('not-of-formula')
    expect(outcome(decided(state, move(NO_MIX, 'mixing', 'rest')))).toBe('unknown-mix')
    play(state, { type: 'endMix', mixId: id, left: 'spoilt' })
    expect(outcome(decided(state, move(id, 'ended', 'bench')))).toBe('mix-ended')
  })

  it('[D66] given folds, when tapped, then each counts once, and those that nobody tapped are done', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('sour')])
    const fold = (n: number) => ({ type: 'foldMix', mixId: id, fold: n }) as const
    expect(outcome(decided(state, fold(1)))).toBe('already-moved')
    play(state, move(id, 'planned', 'bulk'))
    play(state, fold(2))
    expect(mixOf(state, id).folds).toBe(2)
    for (const n of [1, 2]) expect(outcome(decided(state, fold(n)))).toBe('already-moved')
    expect(outcome(decided(state, fold(3)))).toBe('taken')
  })

  it.each([
    ['unknown mix', { mixId: NO_MIX, line: 'flour', done: true }, 'unknown-mix'],
    ['unknown line', { line: 'sugar', done: true }, 'unknown-line'],
    ['not weighed', { line: 'flour', done: false }, 'already-moved'],
    ['weighed', { line: 'flour', done: true }, 'taken'],
  ])('[D61] given a line of a sheet, %s, then %s', (_what, parts, code) => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    expect(outcome(decided(state, { type: 'weighLine', mixId: id, ...parts }))).toBe(code)
  })
})

describe('dough of a mix', () => {
  it('[D67] given a mix on the scale, when pieces of it are shaped, then it has begun, is on the bench, and has so much less', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain', { plain: 100, mini: 20 })])
    const events = play(state, { ...shape(id, 60), place: 'Rack 1' } as never)
    expect(eventsOf(events, 'mixMoved').map(({ stage, begun }) => [stage, begun?.mixer])).toEqual([['bench', 'Spiral']])
    expect([...state.batches.values()]).toMatchObject([{ mixId: id, place: 'Rack 1', pieces: 60 }])
    play(state, shape(id, 10, { dough: 'mini' }))
    expect(mixOf(state, id).shapedMilligrams).toBe(60 * 120_000 + 10 * 60_000)
    expect(leftOf(mixOf(state, id))).toBe(DOUGH_MG - 7_800_000)
  })

  it('[D67] given more pieces than the mix has dough for, then they are taken, and what is too much is unexplained', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, shape(id, 140))
    expect(mixOf(state, id)).toMatchObject({
      shapedMilligrams: 16_800_000,
      unexplainedMilligrams: DOUGH_MG - 16_800_000,
    })
    play(state, shape(id, 1, { isLast: true }))
    expect(mixOf(state, id)).toMatchObject({ stage: 'ended', lostMilligrams: 0 })
    play(state, shape(id, 1))
    expect(mixOf(state, id).unexplainedMilligrams).toBe(DOUGH_MG - 142 * 120_000)
  })

  it('[D67] given pieces of a dough that another formula makes, or of no known mix, then they are refused', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    expect(outcome(decided(state, shape(id, 1, { dough: 'rye' })))).toBe('other-formula')
    expect(outcome(decided(state, shape(NO_MIX, 1)))).toBe('unknown-mix')
    const weigh = { type: 'weighPieces', doughId: 'rye' as never, mixId: id, weights: [g(120)] } as const
    expect(outcome(decided(state, weigh))).toBe('other-formula')
  })

  it('[D68] given the last pieces, then the mix ends and what is left was lost; ended by hand, lost or spoilt', () => {
    const state = started()
    const [one = NO_MIX, two = NO_MIX] = plan(state, [asked('plain'), asked('plain')])
    play(state, shape(one, 130, { isLast: true }))
    expect(mixOf(state, one)).toMatchObject({ stage: 'ended', lostMilligrams: DOUGH_MG - 15_600_000, until: null })
    const end = { type: 'endMix', mixId: two, left: 'spoilt' } as const
    expect(outcome(decided(state, end))).toBe('mix-not-begun')
    play(state, move(two, 'planned', 'mixing'))
    play(state, end)
    expect(mixOf(state, two)).toMatchObject({ stage: 'ended', spoiltMilligrams: DOUGH_MG, lostMilligrams: 0 })
    expect(outcome(decided(state, end))).toBe('mix-ended')
  })

  it('[D67] given a dough without a piece weight, when shaped of a mix that gives it, then nothing is taken off the mix', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    const doughs = new Map(roomShop().doughs)
    const plain = doughs.get('plain' as never)
    if (plain === undefined) throw new Error('plain dough')
    state.shop = {
      ...roomShop(),
      doughs: doughs.set(plain.id, { ...plain, pieceWeight: null, formulaId: formulaId('plain') }),
    }
    play(state, shape(id, 12))
    expect(leftOf(mixOf(state, id))).toBe(DOUGH_MG)
  })
})

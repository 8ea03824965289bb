import { describe, expect, it } from 'vitest'
import type { Act } from '../../../shared-core/day/commands.ts'
import { dayAccount } from '../../../shared-core/day/day-account.ts'
import { doughAccount } from '../../../shared-core/day/dough-account.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { toJson } from '../../../shared-core/day/state-json.ts'
import { preparationId } from '../../../shared-core/ids.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { at, stateWith } from '../support/make.ts'
import { decided, eventsOf, outcome, play } from '../support/play.ts'
import { record } from '../support/record.ts'
import { asked, celsius, g, kg, mixOf, move, NO_MIX, plan, planMixes, roomShop, shape, TOMORROW } from './acts-shop.ts'

const started = () => stateWith({ shop: roomShop() })
const poolish = (milligrams: number): Act => ({
  type: 'makePreparation',
  preparationId: preparationId('poolish'),
  milligrams,
  forDate: TOMORROW,
})

describe('a close', () => {
  it('[D74] given mixes and lists, when the day is closed, then ended mixes, plans of that day and what is used up leave; the rest stays', () => {
    const state = started()
    const wanted = (date: string): Act => ({
      type: 'setWanted',
      date,
      lines: [{ doughId: 'plain' as never, varietyId: null, pieces: 12, ordered: 0 }],
    })
    play(state, wanted('2026-11-24'))
    play(state, wanted(TOMORROW))
    const [ended = NO_MIX, begun = NO_MIX, planned = NO_MIX] = plan(state, [
      asked('plain'),
      asked('plain'),
      asked('sour'),
    ])
    play(state, { ...planMixes(asked('raisin')), date: '2026-11-24' } as Act)
    play(state, shape(ended, 130, { isLast: true }))
    play(state, move(begun, 'planned', 'mixing'))
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect([...state.mixes.keys()].sort()).toEqual([begun, planned].sort())
    expect([...state.wanted.keys()]).toEqual([TOMORROW])
    // The next day, closed a day after nobody touched the mix any more.
    play(state, { type: 'openDay' }, { nowMs: at('4:00', 1), localDate: TOMORROW })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00', 1), localDate: TOMORROW })
    expect([...state.mixes.keys()]).toEqual([])
  })

  it('[D74] given a closed day, when reopened, then the room is as it was, with what was wanted and thrown away since', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('sour')], { nowMs: at('5:00') })
    play(state, poolish(5_000_000), { nowMs: at('6:00') })
    play(state, shape(id, 12, { dough: 'rye', isLast: true }))
    const mix = mixOf(state, id)
    const [build] = [...state.builds.values()]
    if (build === undefined) throw new Error('a build')
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    play(state, { type: 'dropBuild', buildId: build.id }, { nowMs: at('15:01') })
    play(state, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: at('15:02') })
    expect(mixOf(state, id)).toEqual(mix)
    expect(state.builds.get(build.id)).toEqual({ ...build, dropped: true })
  })

  it('[D75] given no open day, when mixes are planned, mixed and weighed, then none is opened; pieces shaped open one', () => {
    const state = stateWith({ shop: roomShop(), day: null })
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, move(id, 'planned', 'mixing'))
    play(state, { type: 'weighPieces', doughId: 'plain' as never, mixId: id, weights: [g(120)] })
    play(state, { type: 'readPlace', place: 'room', read: celsius(21) })
    expect(state.day).toBeNull()
    play(state, shape(id, 12))
    expect(state.day?.label).toBe('2026-11-24')
  })

  it('[D75] given a day that nobody closed, when planned, read or mixed the next morning, then only the mixing closes it; planning is no work', () => {
    const state = started()
    play(state, planMixes(asked('plain')), { nowMs: at('14:00') })
    expect(state.lastActAtMs).toBe(at('4:00'))
    const morning = { nowMs: at('5:00', 1), localDate: TOMORROW }
    const [id = NO_MIX] = [...state.mixes.keys()]
    play(state, { type: 'readPlace', place: 'room', read: celsius(21) }, morning)
    play(state, { type: 'orderMixes', mixes: [{ mixId: id, startAtMs: null }] }, morning)
    expect(state.day?.label).toBe('2026-11-24')
    const events = play(state, move(id, 'planned', 'mixing'), morning)
    expect(events.map(({ type }) => type)).toEqual(['dayClosed', 'mixMoved'])
    expect(state.day).toBeNull()
  })
})

describe('two devices', () => {
  const acts: readonly (readonly [string, (id: typeof NO_MIX) => Act, string])[] = [
    [
      'a delivery',
      () => ({ type: 'receiveIngredient', ingredientId: 'flour' as never, weight: kg(25) }),
      'already-moved',
    ],
    ['a poolish', () => poolish(1_000), 'already-moved'],
    [
      'pieces weighed',
      () => ({ type: 'weighPieces', doughId: 'plain' as never, mixId: null, weights: [g(1)] }),
      'already-moved',
    ],
    ['mixing begun', (id) => move(id, 'planned', 'mixing'), 'already-moved'],
    ['a line weighed', (id) => ({ type: 'weighLine', mixId: id, line: 'flour', done: true }), 'already-moved'],
    ['pieces shaped', (id) => shape(id, 24), 'already-moved'],
  ]
  it.each(acts)(
    '[D76] given %s by one, when the other taps it too before seeing it, then it is done once',
    (_what, act, code) => {
      const state = started()
      const [id = NO_MIX] = plan(state, [asked('plain')])
      const seenSeq = state.seq
      play(state, act(id), { device: 'bench-1', seenSeq })
      expect(outcome(decided(state, act(id), { device: 'bench-2', seenSeq }))).toBe(code)
    },
  )

  it('[D76] given as many pieces shaped by two people of two mixes, then both are done', () => {
    const state = started()
    const [one = NO_MIX, two = NO_MIX] = plan(state, [asked('plain'), asked('plain')])
    const seenSeq = state.seq
    play(state, shape(one, 24), { device: 'bench-1', seenSeq })
    play(state, shape(two, 24), { device: 'bench-2', seenSeq })
    expect([one, two].map((id) => mixOf(state, id).shapedMilligrams)).toEqual([2_880_000, 2_880_000])
  })

  it('[D76] given a mix ended by one, when the other ends it too, then it is told that it has ended', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, shape(id, 24, { isLast: true }))
    expect(outcome(decided(state, { type: 'endMix', mixId: id, left: 'spoilt' }))).toBe('mix-ended')
    expect(outcome(decided(state, { type: 'dropMix', mixId: id }))).toBe('mix-begun')
  })
})

describe('the account of a day', () => {
  it('[D77] given mixes of two days, then each day has what was mixed in it, what came over, and what became of it', () => {
    const day = record(stateWith({ shop: roomShop(), day: null }))
    const planned = planMixes(asked('plain'), asked('plain'))
    day.at('5:00', planned)
    const [one = NO_MIX, two = NO_MIX] = [...day.state.mixes.keys()]
    day.at('5:10', move(one, 'planned', 'mixing'))
    const start = day.entries.length
    day.at('5:30', shape(one, 100))
    day.at('6:00', move(two, 'planned', 'mixing'))
    day.at('6:30', { type: 'endMix', mixId: one, left: 'spoilt' })
    day.at('15:00', { type: 'closeDay' })
    const before = record(day.start)
    for (const entry of day.entries.slice(0, start)) before.fold(entry)
    const dough = 15_700_000
    const [row] = dayAccount(before.state, day.entries.slice(start)).formulas
    const shaped = 12_000_000
    const sums = { lost: 0, unexplained: 0, carriedIn: 0, shaped, spoilt: dough - shaped, left: dough }
    expect(row).toEqual({ formulaId: 'plain', name: 'Plain', mixes: 2, mixed: 2 * dough, ...sums })
    expect(doughAccount(day.state.mixes.values())).toMatchObject([{ mixes: 1, mixed: dough, left: dough }])
    // The next day finds the rest, and its close writes it off.
    const second = record(day.state)
    const next = (clock: string, act: Act) => second.at(clock, act, { nowMs: at(clock, 2), localDate: '2026-11-26' })
    next('5:00', { type: 'openDay' })
    next('15:00', { type: 'closeDay' })
    expect(dayAccount(second.start, second.entries).formulas).toMatchObject([
      { mixes: 0, mixed: 0, carriedIn: dough, shaped: 0, unexplained: dough, left: 0 },
    ])
  })
})

describe('a year of the dough room', () => {
  it('[D78] given the same day 366 times, then the state is no larger than after two', () => {
    const state = stateWith({ shop: roomShop(), day: null })
    const sizes: number[] = []
    for (let n = 0; n < 366; n += 1) {
      roomDay(state, n)
      sizes.push(JSON.stringify(toJson({ ...state, traces: [] })).length)
    }
    // Samples, readings and builds of the days before are kept for some time.
    expect(sizes[365]).toBeLessThan(1.2 * (sizes[20] ?? 0))
    expect(state.mixes.size + state.builds.size + state.wanted.size).toBeLessThan(12)
  })
})

/** Wanted, made, planned, mixed, shaped, weighed and read, all on one day; one mix and one build are forgotten. */
function roomDay(state: State, n: number): void {
  const localDate = dateOf(n)
  const tomorrow = dateOf(n + 1)
  const time = (clock: string) => epochMs(at(clock) + n * spanMs(24, 'h'))
  const day = (clock: string, act: Act) => play(state, act, { nowMs: time(clock), localDate })
  day('4:00', { type: 'openDay' })
  day('5:00', {
    type: 'setWanted',
    date: tomorrow,
    lines: [{ doughId: 'plain' as never, varietyId: null, pieces: 100, ordered: 0 }],
  })
  day('5:10', { ...(poolish(4_000_000) as object), forDate: tomorrow } as Act)
  const known = new Set(state.mixes.keys())
  day('5:20', { ...planMixes(asked('plain'), asked('sour'), asked('raisin')), date: tomorrow } as Act)
  const [plain = NO_MIX, sour = NO_MIX] = [...state.mixes.keys()].filter((id) => !known.has(id))
  day('6:00', move(sour, 'planned', 'mixing'))
  day('6:10', { type: 'readMix', mixId: plain, temp: 'dough', read: celsius(25) })
  for (const clock of ['7:00', '7:05', '7:30']) day(clock, { type: 'readPlace', place: 'room', read: celsius(22) })
  day('8:00', { type: 'weighPieces', doughId: 'plain' as never, mixId: plain, weights: [g(119), g(122)] })
  const events = day('8:10', shape(plain, 100, { isLast: true }))
  const [batch] = eventsOf(events, 'piecesShaped')
  if (batch !== undefined)
    day('14:00', { type: 'wasteBatch', batchId: batch.batch.id, from: 'proof', pieces: batch.batch.pieces })
  day('15:00', { type: 'closeDay' })
}

function dateOf(n: number): string {
  return new Date(Date.parse('2026-11-24T00:00:00Z') + n * 86_400_000).toISOString().slice(0, 10)
}

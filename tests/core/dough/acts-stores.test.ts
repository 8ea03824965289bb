import { describe, expect, it } from 'vitest'
import type { Act } from '../../../shared-core/day/commands.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import { onHandNow } from '../../../shared-core/dough/on-hand.ts'
import { commandId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type { Weight } from '../../../shared-core/shop/shop.ts'
import { at, stateWith } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'
import {
  asked,
  celsius,
  g,
  kg,
  mixOf,
  move,
  NO_MIX,
  onHand,
  plan,
  planMixes,
  roomShop,
  shape,
  TOMORROW,
} from './acts-shop.ts'

const started = () => stateWith({ shop: roomShop() })
const count = (...counts: readonly (readonly [string, Weight | null])[]): Act => ({
  type: 'countIngredients',
  counts: counts.map(([id, weight]) => ({ ingredientId: ingredientId(id), weight })),
})
const receive = (id: string, weight: Weight): Act => ({
  type: 'receiveIngredient',
  ingredientId: ingredientId(id),
  weight,
})
const make = (milligrams: number): Act => ({
  type: 'makePreparation',
  preparationId: preparationId('poolish'),
  milligrams,
  forDate: TOMORROW,
})
/** Kilograms of flour that the shop thinks it has; null: nobody knows. */
function flour(state: State): number | null {
  const row = onHandNow(state).find((one) => one.ingredientId === 'flour')
  return row === undefined ? null : row.milligrams / 1_000_000
}
const takeBack = (id: string): Act => ({ type: 'takeBack', commandId: commandId(id) })

describe('what is on hand', () => {
  it('[D71] given counts and deliveries before and after a mix has begun, then its flour is taken off once', () => {
    const state = started()
    play(state, count(['flour', kg(50)]))
    const [one = NO_MIX, two = NO_MIX] = plan(state, [asked('plain'), asked('plain')])
    expect(flour(state)).toBe(50)
    play(state, move(one, 'planned', 'mixing'))
    expect(flour(state)).toBe(40)
    play(state, receive('flour', kg(25)))
    expect(flour(state)).toBe(65)
    play(state, count(['flour', kg(60)]))
    play(state, shape(two, 12))
    expect(flour(state)).toBe(50)
    play(state, make(4_000_000))
    expect(flour(state)).toBe(48)
    play(state, count(['flour', null]))
    expect(flour(state)).toBeNull()
    play(state, receive('flour', kg(25)))
    expect(flour(state)).toBe(25)
  })

  it('[D71] given a day with mixes, when closed and reopened, then what is on hand is the same; counted in between, the count holds', () => {
    const state = started()
    play(state, count(['flour', kg(50)]))
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, shape(id, 12, { isLast: true }))
    play(state, make(4_000_000))
    expect(flour(state)).toBe(38)
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect(state.mixes.size).toBe(0)
    expect([flour(state), onHand(state).flour]).toEqual([38, 40_000_000])
    const counted = forkState(state)
    play(counted, count(['flour', kg(30)]), { nowMs: at('15:05') })
    for (const [shop, kilograms] of [
      [state, 38],
      [counted, 30],
    ] as const) {
      play(shop, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: at('15:10') })
      expect([flour(shop), shop.mixes.size]).toEqual([kilograms, 1])
      play(shop, { type: 'closeDay' }, { nowMs: at('15:20') })
      expect(flour(shop)).toBe(kilograms)
    }
  })

  it('[D71] given a count after a mix began, when the beginning is taken back, then it is refused by the name of the count; after that it goes', () => {
    const state = started()
    play(state, count(['flour', kg(50)]))
    const [id = NO_MIX] = plan(state, [asked('plain')])
    play(state, move(id, 'planned', 'mixing'), { id: 'begin00001' })
    play(state, receive('flour', kg(25)))
    expect(outcome(decided(state, takeBack('begin00001')))).toBe('taken')
    play(state, count(['flour', kg(60)]), { id: 'count00001' })
    const refused = decided(state, takeBack('begin00001'))
    expect(refused).toMatchObject({
      refusal: { code: 'take-back-changed-since', params: { type: 'countIngredients' } },
    })
    play(state, takeBack('count00001'))
    play(state, takeBack('begin00001'))
    expect(flour(state)).toBe(75)
  })

  it.each([
    [count(['sugar', g(1)]), 'unknown-ingredient'],
    [receive('sugar', g(1)), 'unknown-ingredient'],
    [
      { type: 'makePreparation', preparationId: preparationId('none'), milligrams: 1, forDate: null },
      'unknown-preparation',
    ],
    [
      { type: 'makePreparation', preparationId: preparationId('poolish'), milligrams: 1, forDate: '2026-11-23' },
      'date-over',
    ],
    [{ type: 'dropBuild', buildId: 'none' as never }, 'unknown-build'],
    [{ type: 'placeBatch', batchId: 'none' as never, place: 'Rack 1' }, 'unknown-batch'],
    [{ type: 'weighPieces', doughId: 'none' as never, mixId: null, weights: [g(1)] }, 'unknown-dough'],
    [{ type: 'weighPieces', doughId: 'plain' as never, mixId: NO_MIX, weights: [g(1)] }, 'unknown-mix'],
    [{ type: 'weighPieces', doughId: 'old' as never, mixId: null, weights: [g(1)] }, 'no-piece-weight'],
    [{ type: 'foldMix', mixId: NO_MIX, fold: 1 }, 'unknown-mix'],
    [{ type: 'endMix', mixId: NO_MIX, left: 'lost' }, 'unknown-mix'],
    [{ type: 'readMix', mixId: NO_MIX, temp: 'flour', read: celsius(20) }, 'unknown-mix'],
  ] as const satisfies readonly (readonly [Act, string])[])('[D72] given %j, then it is refused: %s', (act, code) => {
    expect(outcome(decided(started(), act))).toBe(code)
  })
})

describe('pre-ferments and soakers', () => {
  it('[D72] given a poolish that is made, then it says when it is ready and what went into it, to the milligram; thrown away once', () => {
    const state = started()
    play(state, make(4_000_001), { nowMs: at('18:00') })
    const [build] = [...state.builds.values()]
    if (build === undefined) throw new Error('a build')
    expect(build).toMatchObject({
      forDate: TOMORROW,
      ready: { earliestAtMs: at('2:00', 1), latestAtMs: at('10:00', 1) },
    })
    expect(build.lines.reduce((sum, one) => sum + one.milligrams, 0)).toBe(4_000_001)
    const drop = { type: 'dropBuild', buildId: build.id } as const
    play(state, drop)
    expect(outcome(decided(state, drop))).toBe('already-moved')
  })

  it('[D72] given a poolish of which mixes took a part, when these leave with the day, then only the rest is still there', () => {
    const state = started()
    play(state, make(5_000_000), { nowMs: at('5:00') })
    const [one = NO_MIX, two = NO_MIX] = plan(state, [asked('sour'), asked('sour')])
    play(state, shape(one, 1, { dough: 'rye', isLast: true }))
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect([...state.builds.values()]).toMatchObject([{ milligrams: 1_000_000 }])
    play(state, { ...planMixes(asked('sour')), date: '2026-11-26' } as Act, { nowMs: at('15:30') })
    const [three = NO_MIX] = [...state.mixes.keys()].filter((id) => id !== two)
    play(state, move(three, 'planned', 'mixing'), { nowMs: at('16:00') })
    expect(mixOf(state, three).builds).toMatchObject([{ milligrams: 1_000_000 }])
    const full = decided(state, make(1), { nowMs: at('16:00') })
    expect(outcome(full)).toBe('taken')
  })
})

describe('taking back', () => {
  it('[D73] given lines weighed and places read, then nothing of it is a trace, nor taken back', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('plain')])
    const before = state.traces.length
    play(state, { type: 'weighLine', mixId: id, line: 'flour', done: true }, { id: 'weigh00001' })
    play(state, { type: 'readPlace', place: 'room', read: celsius(22) }, { id: 'read000001' })
    expect(state.traces).toHaveLength(before)
    expect(outcome(decided(state, takeBack('weigh00001')))).toBe('take-back-unknown')
  })

  it('[D73] given a poolish that a mix took of, when its making is taken back, then it is refused by the name of the mixing', () => {
    const state = started()
    play(state, make(5_000_000), { nowMs: at('5:00'), id: 'make000001' })
    const [id = NO_MIX] = plan(state, [asked('sour')])
    expect(outcome(decided(state, takeBack('make000001')))).toBe('taken')
    play(state, move(id, 'planned', 'mixing'), { id: 'begin00001' })
    const refused = decided(state, takeBack('make000001'))
    expect(refused).toMatchObject({ refusal: { code: 'take-back-changed-since', params: { type: 'moveMix' } } })
    play(state, takeBack('begin00001'))
    play(state, takeBack('make000001'))
    expect(state.builds.size).toBe(0)
  })

  it('[D73] given an act on a mix and a line weighed after it, when the act is taken back, then the line stays weighed', () => {
    const state = started()
    const [id = NO_MIX] = plan(state, [asked('raisin')])
    play(state, move(id, 'planned', 'mixing'), { id: 'begin00001' })
    play(state, { type: 'weighLine', mixId: id, line: 'raisins', done: true })
    play(state, takeBack('begin00001'))
    expect(mixOf(state, id)).toMatchObject({ stage: 'planned', mixedAtMs: null })
    expect(mixOf(state, id).lines.find(({ key }) => key === 'raisins')?.weighedAtMs).toBe(at('6:47'))
  })

  const acts: readonly (readonly [string, (id: typeof NO_MIX) => Act])[] = [
    [
      'setWanted',
      () => ({
        type: 'setWanted',
        date: TOMORROW,
        lines: [{ doughId: 'plain' as never, varietyId: null, pieces: 9, ordered: 0 }],
      }),
    ],
    ['planMixes', () => planMixes(asked('raisin'), asked('sour'))],
    ['orderMixes', (id) => ({ type: 'orderMixes', mixes: [{ mixId: id, startAtMs: at('9:00') }] })],
    ['dropMix', (id) => ({ type: 'dropMix', mixId: id })],
    ['moveMix', (id) => move(id, 'planned', 'mixing')],
    ['readMix', (id) => ({ type: 'readMix', mixId: id, temp: 'dough', read: celsius(25) })],
    ['shape', (id) => shape(id, 12, { isLast: true })],
    ['countIngredients', () => count(['flour', kg(3)])],
    ['receiveIngredient', () => receive('water', kg(3))],
    ['makePreparation', () => make(100)],
    ['weighPieces', (id) => ({ type: 'weighPieces', doughId: 'plain' as never, mixId: id, weights: [g(118), g(121)] })],
    [
      'testFloat',
      () => ({ type: 'testFloat', doughId: 'plain' as never, passed: true, lookAgainMs: null, personId: null }),
    ],
  ]
  it.each(acts)('[D73] given %s, when taken back, then the shop is as it was', (_type, act) => {
    const state = started()
    play(state, count(['flour', kg(50)]))
    const [id = NO_MIX] = plan(state, [asked('plain')])
    // Pieces in proof that a float test speaks of.
    play(
      state,
      { type: 'shape', doughId: 'plain' as never, varietyId: null, pieces: 24, stage: 'proof' },
      { nowMs: at('6:00') },
    )
    const same = ({ seq, recordedAtMs, lastActAtMs }: State) =>
      hashState({ ...forkState(state), seq, recordedAtMs, lastActAtMs, traces: [] })
    const first = { ...forkState(state), traces: [] }
    play(state, act(id), { id: 'act0000001' })
    expect(same(first)).not.toBe(hashState(first))
    play(state, takeBack('act0000001'))
    expect(same(first)).toBe(hashState(first))
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accountGaps } from '../../../shared-core/day/account.ts'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { undoAll } from '../../../shared-core/day/recorder.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import { shelfId, varietyId } from '../../../shared-core/ids.ts'
import { NO_HABIT } from '../../../shared-core/stock/learn.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct, startedShop } from '../support/any-act.ts'
import { at, batch, lines, loadOf, lot, planned, stateWith, stock } from '../support/make.ts'
import { context, decided, entryOf, outcome, play, tap } from '../support/play.ts'

const reopen = (label = '2026-11-24'): Act => ({ type: 'reopenDay', label })
const CLOSE: Act = { type: 'closeDay' }
const closing = { nowMs: at('15:00'), confirmed: ['line-not-empty', 'orders-open'], id: 'close00001' } as const

/** What a day is, besides how it was recorded. */
function dayOf(state: State): unknown {
  const { seq, recordedAtMs, lastActAtMs, traces, ...rest } = state
  return rest
}

/** A morning of drawn acts, with its day open. */
function drawn(seeds: readonly number[]): State {
  const state = startedShop()
  seeds.forEach((seed, n) => {
    const act = anyAct(state, seed)
    if (act.type === 'closeDay' || act.type === 'reopenDay') return
    const when = { nowMs: epochMs(at('5:00') + n * 45_000), id: `act${String(n).padStart(8, '0')}` }
    const command = tap(act, { ...when, confirmed: ['far-count', 'line-not-empty', 'orders-open'] })
    const decision = decide(state, command, context(when))
    if (decision.kind === 'taken') applyEntry(state, entryOf(state, command, decision, when))
  })
  return state
}

function evening(): State {
  return stateWith({
    batches: [
      batch({ id: 'c', stage: 'chill', pieces: 48 }),
      batch({ id: 'old', stage: 'boards', pieces: 6, since: at('9:00', -1) }),
    ],
    loaded: [loadOf({ id: 'l1' }, lines('sesame', 24))],
    stock: [stock('sesame', { lots: [lot({ pieces: 12 })], soldToday: 30 }), stock('poppy')],
    planned: [planned({ id: 'done', done: true }), planned({ id: 'p2' })],
    habits: [{ ...NO_HABIT, varietyId: varietyId('sesame'), hours: [{ hour: 8, missing: 7, usual: 31 }] }],
  })
}

describe('a day closed and reopened', () => {
  it('[T14] given a day with pieces everywhere, when closed and reopened, then it is as it was', () => {
    const state = evening()
    const before = structuredClone(dayOf(state))
    play(state, CLOSE, closing)
    expect(state.batches.has('old' as never)).toBe(false)
    play(state, reopen(), { nowMs: at('15:05'), id: 'reopen0001' })
    expect(dayOf(state)).toEqual(before)
    expect([...accountGaps(state)]).toEqual([])
  })

  it('[T14] given any morning, when closed and reopened, then every table and the account are as they were', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 2 ** 31 - 1 }), { maxLength: 60 }), (seeds) => {
        const state = drawn(seeds)
        const before = structuredClone(dayOf(state))
        const label = state.day?.label ?? ''
        const closed = tap(CLOSE, closing)
        const decision = decide(state, closed, context(closing))
        if (decision.kind !== 'taken') throw new Error(outcome(decision))
        applyEntry(state, entryOf(state, closed, decision, closing))
        expect([...accountGaps(state)]).toEqual([])
        const first = structuredClone(state.lastDay)
        play(state, reopen(label), { nowMs: at('15:05'), id: 'reopen0001' })
        expect(inOrder(dayOf(state))).toEqual(inOrder(before))
        expect([...accountGaps(state)]).toEqual([])
        // Closed again, it comes to the same.
        play(state, CLOSE, { ...closing, nowMs: at('15:10'), id: 'close00002' })
        expect(inOrder({ ...state.lastDay, closedAtMs: 0 })).toEqual(inOrder({ ...first, closedAtMs: 0 }))
        expect([...accountGaps(state)]).toEqual([])
      }),
      { numRuns: 150 },
    )
  })

  it('[T14] given a reopening rolled back, then the day is closed as it was', () => {
    const state = evening()
    play(state, CLOSE, closing)
    const before = hashState(state)
    const command = tap(reopen(), { nowMs: at('15:05'), id: 'reopen0001' })
    const decision = decide(state, command, context({ nowMs: at('15:05') }))
    if (decision.kind !== 'taken') throw new Error(outcome(decision))
    undoAll(state, applyEntry(state, entryOf(state, command, decision, { nowMs: at('15:05') })))
    expect(hashState(state)).toBe(before)
  })

  it('[T14] given a note, a list and readings since the close, then they stay', () => {
    const state = evening()
    const read = (degrees: number, shelf: string | null): Act => ({
      type: 'readOven',
      shelfId: shelf === null ? null : shelfId(shelf),
      degrees,
      unit: 'F',
    })
    play(state, read(480, null), { nowMs: at('14:00'), id: 'read000001' })
    play(state, read(470, 's1'), { nowMs: at('14:00'), id: 'read000002' })
    play(state, CLOSE, closing)
    play(state, read(300, null), { nowMs: at('15:01'), id: 'read000003' })
    play(state, { type: 'writeNote', text: 'rye slow' }, { nowMs: at('15:02'), id: 'note000001' })
    const tomorrow = [{ shelfId: null, inAtMs: at('5:00', 1), lines: lines('poppy', 48) }]
    play(state, { type: 'setLoadList', loads: tomorrow }, { nowMs: at('15:03'), id: 'list000001' })
    play(state, reopen(), { nowMs: at('15:05'), id: 'reopen0001' })
    const degrees = [...state.marks.values()].flatMap((mark) => (mark.kind === 'oven' ? mark.read.degrees : []))
    expect(degrees.sort()).toEqual([300, 470])
    expect([...state.notes.values()].map(({ text }) => text)).toEqual(['rye slow'])
    expect([...state.planned.keys()].sort()).toEqual(['done', 'list000001.1', 'p2'])
  })

  it('[T14] given a count after reopening, then the close says what was counted', () => {
    const state = evening()
    play(state, CLOSE, closing)
    expect(state.lastDay?.left).toEqual(lines('sesame', 12))
    play(state, reopen(), { nowMs: at('15:05'), id: 'reopen0001' })
    play(state, { type: 'count', varietyId: varietyId('sesame'), pieces: 9 }, { nowMs: at('15:06'), id: 'count00001' })
    play(state, CLOSE, { ...closing, nowMs: at('15:10'), id: 'close00002' })
    expect(state.lastDay?.left).toEqual(lines('sesame', 9))
    expect(state.lastDay?.account[0]?.account).toMatchObject({ dayOld: 9 })
  })

  it('[T14] given it is reopened the next morning to be put right, then today is today all the same', () => {
    const state = evening()
    const morning = (clock: string) => ({ nowMs: at(clock, 1), localDate: '2026-11-25' })
    play(state, CLOSE, closing)
    play(state, reopen(), { ...morning('4:10'), id: 'reopen0001' })
    play(state, { type: 'count', varietyId: varietyId('sesame'), pieces: 9 }, { ...morning('4:12'), id: 'count00001' })
    play(state, CLOSE, { ...morning('4:15'), confirmed: ['line-not-empty', 'orders-open'], id: 'close00002' })
    play(state, { type: 'openDay' }, { ...morning('4:20'), id: 'open000001' })
    expect(state.lastDay?.label).toBe('2026-11-24')
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[T15] given the next day begun, another date, or nothing closed, then it is refused by name', () => {
    const state = evening()
    expect(outcome(decided(state, reopen()))).toBe('already-open')
    play(state, CLOSE, closing)
    expect(outcome(decided(state, reopen('2026-11-23')))).toBe('cannot-reopen')
    const again = forkState(state)
    play(again, reopen(), { nowMs: at('15:05'), id: 'reopen0001' })
    expect(outcome(decided(again, reopen()))).toBe('already-open')
    play(state, { type: 'openDay' }, { nowMs: at('15:05'), id: 'open000001' })
    expect(decided(state, reopen())).toMatchObject({
      refusal: { code: 'already-open', params: { label: '2026-11-25' } },
    })
    play(state, CLOSE, { ...closing, nowMs: at('15:10'), id: 'close00002' })
    expect(outcome(decided(state, reopen()))).toBe('cannot-reopen')
    expect(outcome(decided(state, reopen('2026-11-25')))).toBe('taken')
    expect(outcome(decided(stateWith({ day: null }), reopen()))).toBe('cannot-reopen')
  })
})

/** Maps and lists of pairs in one order: a row that was taken out and put back stands last in its map. */
function inOrder(value: unknown): unknown {
  if (value instanceof Map) return [...value].map(([key, one]) => [key, inOrder(one)]).sort(byKey)
  if (Array.isArray(value)) return value.map(inOrder)
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inOrder(one)]))
  return value
}

function byKey(one: unknown, other: unknown): number {
  return JSON.stringify(one) < JSON.stringify(other) ? -1 : 1
}

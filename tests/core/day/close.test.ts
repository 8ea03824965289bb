import { describe, expect, it } from 'vitest'
import { closeNow } from '../../../shared-core/day/close.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { doughId, personId, stepId, varietyId } from '../../../shared-core/ids.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { startedShop } from '../support/any-act.ts'
import type { StateParts } from '../support/make.ts'
import { at, batch, lines, loadOf, lot, minuteToMs, planned, stateWith, stock } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'
import { PEOPLE, STEPS, shopWith, table } from '../support/shop.ts'

const PLAIN = doughId('plain')
const now = (state: State, clock = '14:50') => {
  const made = closeNow(state, at(clock), rulerOf(state, at(clock), minuteToMs))
  if (made === null) throw new Error('no day is open')
  return made
}
const evening = (parts: StateParts = {}) =>
  stateWith({ shop: shopWith({ steps: table(STEPS), people: table(PEOPLE) }), ...parts })
const sold = { type: 'sell', lines: lines('sesame', 1) } as const

describe('what there is to know before a close', () => {
  it('[T16] given rods, then those with pieces are told, how each is known, and which of them must be counted', () => {
    const state = evening({
      stock: [
        stock('sesame', { lots: [lot({ pieces: 12 })] }),
        stock('poppy', { lots: [lot({ id: 'lot2', pieces: 5 })] }),
        stock('plain'),
      ],
    })
    play(state, { type: 'count', varietyId: varietyId('poppy'), pieces: 4 }, { nowMs: at('14:50') })
    expect(now(state).left.map(({ varietyId: id, known }) => [id, known.how])).toEqual([
      ['sesame', 'baked'],
      ['poppy', 'counted'],
    ])
    expect(now(state).toCount).toEqual(['sesame'])
  })

  it('[T16] given pieces at every stage, then those on the line are told apart from those that go on tomorrow', () => {
    const state = evening({
      batches: [
        batch({ id: '1', stage: 'chill', pieces: 48 }),
        batch({ id: '2', stage: 'chill', pieces: 12 }),
        batch({ id: '3', stage: 'chill', dough: 'rye', variety: 'rye', pieces: 10 }),
        batch({ id: '4', stage: 'boards', variety: 'poppy', pieces: 6 }),
        batch({ id: '5', stage: 'boards', pieces: 6 }),
      ],
      loaded: [loadOf({ id: 'l1' }, lines('sesame', 24))],
    })
    const told = (all: ReturnType<typeof now>['standing']) =>
      all.map(({ stage, doughId: of, varietyId: id, pieces }) => [stage, of, id, pieces])
    expect(told(now(state).standing)).toEqual([
      ['chill', 'plain', null, 60],
      ['chill', 'rye', 'rye', 10],
    ])
    expect(told(now(state).onTheLine)).toEqual([
      ['boards', 'plain', null, 6],
      ['boards', 'plain', 'poppy', 6],
      ['oven', 'plain', 'sesame', 24],
    ])
  })

  it('[T16] given keeps, notes and steps of the changeover that nobody has done, then they are told', () => {
    const state = evening({ stock: [stock('sesame', { lots: [lot({ pieces: 12 })] })] })
    play(state, { type: 'keep', lines: lines('sesame', 6) }, { nowMs: at('12:00'), id: 'keep000001' })
    play(state, { type: 'writeNote', text: 'rye slow' }, { nowMs: at('13:00'), id: 'note000001' })
    const done = { type: 'doStep', stepId: stepId('drain'), doughId: null, personId: personId('ana') } as const
    play(state, done, { nowMs: at('10:50') })
    expect(now(state)).toMatchObject({
      label: '2026-11-24',
      openedAtMs: at('4:00'),
      kept: [{ lines: lines('sesame', 6), keptAtMs: at('12:00') }],
      openSteps: [{ stepId: 'stones', status: 'late' }],
      notes: [{ text: 'rye slow' }],
    })
  })

  it('[T16] given a busy day, then the account adds up by dough and in all, with what is unexplained', () => {
    const state = startedShop()
    play(state, { type: 'pull', doughId: PLAIN, varietyId: null, pieces: 48 }, { nowMs: at('5:00'), id: 'act0000001' })
    play(state, { type: 'sell', lines: lines('sesame', 20) }, { nowMs: at('7:00'), id: 'act0000002' })
    play(state, { type: 'dayOldIn', lines: lines('rye', 5) }, { nowMs: at('7:10'), id: 'act0000003' })
    const fate = { type: 'remove', varietyId: varietyId('sesame'), pieces: 2, fate: 'given' } as const
    play(state, fate, { nowMs: at('7:20'), id: 'act0000004' })
    const { account, total } = now(state)
    expect(account.map(({ doughId: id }) => id)).toEqual(['plain', 'rye'])
    for (const row of [...account, total]) {
      const gone = row.sold + row.kitchen + row.wasted + row.given + row.dayOld + row.unexplained
      expect(row.shaped + row.carriedIn).toBe(row.present + gone)
    }
    expect(total.unexplained).toBe(account.reduce((sum, row) => sum + row.unexplained, 0))
    // 18 were counted, 22 left: more than were known by then.
    expect(total).toMatchObject({ sold: 20, given: 2, unexplained: -22, carriedIn: 305 })
  })

  it('[T16] given no day open or no set-up, then there is nothing to close', () => {
    expect(closeNow(evening({ day: null }), at('14:50'), null)).toBeNull()
    expect(closeNow(stateWith({ shop: null }), at('14:50'), null)).toBeNull()
  })
})

describe('a day closed late', () => {
  const yesterday = () => {
    const state = evening({
      stock: [stock('sesame', { lots: [lot({ pieces: 12 })] })],
      planned: [planned({ id: 'stale', inAt: at('9:00') }), planned({ id: 'untimed' })],
    })
    play(state, sold, { nowMs: at('16:30'), id: 'sold000001' })
    return state
  }
  const morning = (clock: string) => ({ nowMs: at(clock, 1), localDate: '2026-11-25' })

  it('[T13] given it is closed by hand the morning after, then it counts from its last work, and today is today', () => {
    const state = yesterday()
    play(state, { type: 'closeDay', label: '2026-11-24', crewMinutes: 900 }, { ...morning('4:30'), id: 'close00001' })
    expect(state.lastDay).toMatchObject({ closedAtMs: at('16:30'), crewMinutes: 900, left: lines('sesame', 11) })
    expect([...state.planned.keys()]).toEqual(['untimed'])
    play(state, sold, { ...morning('4:40'), id: 'sold000002' })
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[T13] given it is closed in the evening, or past midnight, then it counts from the tap', () => {
    const state = yesterday()
    play(state, { type: 'closeDay' }, { nowMs: at('19:00'), id: 'close00001' })
    expect(state.lastDay?.closedAtMs).toBe(at('19:00'))
    expect([...state.planned.keys()]).toEqual([])

    const late = yesterday()
    play(late, sold, { nowMs: at('23:30'), id: 'sold000002' })
    play(late, { type: 'closeDay' }, { ...morning('0:30'), id: 'close00001' })
    expect(late.lastDay?.closedAtMs).toBe(at('0:30', 1))
  })

  it('[T13] given a day closed past midnight, then the morning after is not the day after tomorrow', () => {
    const state = yesterday()
    play(state, sold, { nowMs: at('23:30'), id: 'sold000002' })
    play(state, { type: 'closeDay' }, { ...morning('0:30'), id: 'close00001' })
    play(state, { type: 'openDay' }, { ...morning('4:30'), id: 'open000001' })
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[T13] given a day that was closed days ago, then the day that opens is today', () => {
    const state = yesterday()
    const friday = { nowMs: at('4:30', 3), localDate: '2026-11-27' }
    play(state, { type: 'closeDay' }, { ...friday, id: 'close00001' })
    play(state, { type: 'openDay' }, { ...friday, id: 'open000001' })
    expect(state.day?.label).toBe('2026-11-27')
  })

  it.each([
    ['a list for today', { type: 'setLoadList', loads: [{ shelfId: null, inAtMs: null, lines: lines('sesame', 24) }] }],
    ['a note', { type: 'writeNote', text: 'rye slow' }],
    ['a slip', { type: 'slipChangeover', slipMs: spanMs(15, 'min') }],
    ['the oven’s heat', { type: 'readOven', shelfId: null, degrees: 300, unit: 'F' }],
  ] as const)('[T17] given %s said in the morning, then the first work still closes yesterday', (_what, act) => {
    const state = yesterday()
    play(state, act, { ...morning('4:00'), id: 'first00001' })
    expect(state.day?.label).toBe('2026-11-24')
    play(state, sold, { ...morning('4:10'), id: 'sold000002' })
    expect(state.day?.label).toBe('2026-11-25')
    expect(state.lastDay).toMatchObject({ label: '2026-11-24', closedAtMs: at('16:30') })
  })

  it('[T17] given work through the night, then the day goes on', () => {
    const state = yesterday()
    for (const [n, clock] of ['19:00', '22:00'].entries()) play(state, sold, { nowMs: at(clock), id: `night00000${n}` })
    play(state, sold, { ...morning('1:30'), id: 'night000003' })
    play(state, sold, { ...morning('5:00'), id: 'night000004' })
    expect(state.day?.label).toBe('2026-11-24')
  })

  it('[T13] given a tap for the day before, when another is open, then it is refused', () => {
    expect(outcome(decided(yesterday(), { type: 'closeDay', label: '2026-11-23' }))).toBe('day-not-open')
  })
})

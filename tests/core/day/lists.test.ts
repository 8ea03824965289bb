import { describe, expect, it } from 'vitest'
import { changeoverList } from '../../../shared-core/day/changeover-list.ts'
import { openingList } from '../../../shared-core/day/opening-list.ts'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { StepLine } from '../../../shared-core/day/step-list.ts'
import { commandId, doughId, personId, shelfId, stepId } from '../../../shared-core/ids.ts'
import { durationMs } from '../../../shared-core/units.ts'
import type { StateParts } from '../support/make.ts'
import { at, batch, lines, minuteToMs, planned, stateWith } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'
import { dough, PEOPLE, STEPS, shopWith, step, table } from '../support/shop.ts'

const ANA = personId('ana')
const BEN = personId('ben')
const PLAIN = doughId('plain')
const MINUTE = 60_000

const SHOP = shopWith({ steps: table(STEPS), people: table(PEOPLE) })
const shop = (parts: StateParts = {}) => stateWith({ shop: SHOP, ...parts })
const opening = (state: State, clock = '4:00') => {
  const nowMs = at(clock)
  return openingList(state, nowMs, rulerOf(state, nowMs, minuteToMs))
}
const changeover = (state: State, clock = '10:00') => {
  const nowMs = at(clock)
  return changeoverList(state, nowMs, rulerOf(state, nowMs, minuteToMs))
}
const told = (lined: readonly StepLine[] | undefined) =>
  (lined ?? []).map((line) => [line.doughId === null ? line.stepId : `${line.stepId} ${line.doughId}`, line.dueAtMs])
const statuses = (state: State, clock: string) => (opening(state, clock)?.lines ?? []).map(({ status }) => status)
const line = (state: State, id: string, clock = '4:00') =>
  [...(opening(state, clock)?.lines ?? [])].find(({ stepId: of }) => of === stepId(id))
const doStep = (id: string, who: typeof ANA | null = null) =>
  ({ type: 'doStep', stepId: stepId(id), doughId: null, personId: who }) as const
const giveStep = (id: string, who: typeof ANA | null) =>
  ({ type: 'giveStep', stepId: stepId(id), doughId: null, personId: who }) as const
const test = (passed: boolean, lookAgainMin: number | null, dough = PLAIN, who: typeof ANA | null = null) =>
  ({
    type: 'testFloat',
    doughId: dough,
    passed,
    lookAgainMs: lookAgainMin === null ? null : durationMs(lookAgainMin * MINUTE),
    personId: who,
  }) as const

describe('the opening list', () => {
  it('[O1] given an oven ready at 4:30 and no load planned for a time, then each step counts back from 4:30', () => {
    const state = shop({ planned: [planned()] })
    expect(opening(state)).toMatchObject({ zeroAtMs: at('4:30'), doneCount: 0 })
    expect(told(opening(state)?.lines)).toEqual([
      ['oven-on', at('3:30')],
      ['kettle-lit', at('3:45')],
    ])
  })

  it('[O1] given a first load planned for 5:10, then it counts back from 5:10; another that is done does not count', () => {
    const first = planned({ id: 'p0', inAt: at('4:40'), done: true })
    const state = shop({ planned: [first, planned({ inAt: at('5:10'), order: 2 }), planned({ id: 'p2', order: 3 })] })
    expect(opening(state)?.zeroAtMs).toBe(at('5:10'))
    expect(line(state, 'oven-on')?.dueAtMs).toBe(at('4:10'))
  })

  it('[O1] given steps of one time, then they stand in the order of the set-up, and retired ones not at all', () => {
    const steps = [
      step({ id: 'b', order: 2 }),
      step({ id: 'a', order: 2 }),
      step({ id: 'c', order: 1 }),
      step({ id: 'old', order: 0, retired: true }),
      step({ id: 'first', order: 9, offsetMs: -90 * MINUTE }),
    ]
    const state = shop({ shop: shopWith({ steps: table(steps) }) })
    expect(opening(state)?.lines.map((one) => one.stepId)).toEqual(['first', 'c', 'a', 'b'])
  })

  it.each([
    ['3:29:59', 'coming'],
    ['3:30', 'due'],
    ['3:35', 'due'],
    ['3:35:01', 'late'],
  ])('[O2] given a step for 3:30, when it is %s, then it is %s', (clock, status) => {
    expect(line(shop({ recordedAt: at('3:00') }), 'oven-on', clock)?.status).toBe(status)
  })

  it('[O2] given a step that Ana does at 3:32, then it is done, with who and when', () => {
    const state = shop()
    play(state, doStep('oven-on', ANA), { nowMs: at('4:02') })
    expect(line(state, 'oven-on', '4:05')).toMatchObject({ status: 'done', personId: ANA, doneAtMs: at('4:02') })
    expect(opening(state, '4:05')?.doneCount).toBe(1)
  })

  it('[O2] given a step given to Ben and done by nobody named, then he is asked for until it is done', () => {
    const state = shop({ day: { ...OPEN, openedAtMs: at('3:00') } })
    play(state, giveStep('oven-on', BEN), { nowMs: at('3:05') })
    expect(line(state, 'oven-on', '3:10')).toMatchObject({ status: 'coming', personId: BEN, doneAtMs: null })
    play(state, giveStep('oven-on', null), { nowMs: at('3:06') })
    expect(line(state, 'oven-on', '3:10')).toMatchObject({ personId: null })
    expect(state.marks.size).toBe(0)
    expect(outcome(decided(state, giveStep('oven-on', null)))).toBe('already-moved')
  })

  it('[O2] given a step that is done, when it is given to Ben, then it was he, at the time said before', () => {
    const state = shop()
    play(state, doStep('oven-on', ANA), { nowMs: at('4:02') })
    play(state, giveStep('oven-on', BEN), { nowMs: at('4:20') })
    expect(line(state, 'oven-on', '4:30')).toMatchObject({ personId: BEN, doneAtMs: at('4:02') })
    play(state, doStep('oven-on', null), { nowMs: at('4:25') })
    expect(line(state, 'oven-on', '4:30')).toMatchObject({ personId: null, doneAtMs: at('4:25') })
  })

  it('[O2] given a step that is done, when that is taken back, then it is as it was given', () => {
    const state = shop()
    play(state, giveStep('oven-on', BEN), { nowMs: at('4:01') })
    play(state, doStep('oven-on', ANA), { nowMs: at('4:02'), id: 'done000001' })
    play(state, { type: 'takeBack', commandId: commandId('done000001') }, { nowMs: at('4:03') })
    expect(line(state, 'oven-on', '4:05')).toMatchObject({ status: 'late', personId: BEN, doneAtMs: null })
  })

  it('[O6] given the same step done on two screens at once, then it counts once; another step counts too', () => {
    const state = shop()
    const seenSeq = state.seq
    play(state, doStep('oven-on', ANA), { nowMs: at('4:02'), device: 'bench-1', seenSeq })
    const other = { nowMs: at('4:03'), device: 'wall', seenSeq, id: 'other00001' }
    expect(outcome(decided(state, doStep('oven-on', ANA), other))).toBe('already-moved')
    expect(outcome(decided(state, doStep('kettle-lit', ANA), other))).toBe('taken')
  })

  it.each([
    ['a step', { type: 'doStep', stepId: stepId('none'), doughId: null, personId: null }, 'unknown-step'],
    ['a person', doStep('oven-on', personId('none')), 'unknown-person'],
    ['a dough', { ...doStep('oven-on'), doughId: doughId('none') }, 'unknown-dough'],
    ['a dough of a test', test(true, null, doughId('none')), 'unknown-dough'],
    ['a person who tests', test(true, null, PLAIN, personId('none')), 'unknown-person'],
  ] as const)('[O2] given %s that the shop does not have, then it is refused by name', (_what, act, code) => {
    expect(outcome(decided(shop(), act))).toBe(code)
  })

  it('[O5] given the first load in, then the list is gone, and it stays gone when the load is out', () => {
    const state = shop({ batches: [batch({ pieces: 96 })], day: { ...OPEN, openedAtMs: at('4:00') } })
    expect(opening(state, '5:00')).not.toBeNull()
    const load = { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 48) } as const
    play(state, load, { nowMs: at('5:00') })
    expect(opening(state, '5:01')).toBeNull()
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    play(state, { type: 'out', loadId: inside, from: 'first-side', lines: null }, { nowMs: at('5:16') })
    expect(opening(state, '5:20')).toBeNull()
  })

  it('[O5] given the first load taken back, then the list is there again', () => {
    const state = shop({ batches: [batch({ pieces: 96 })] })
    const load = { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 48) } as const
    play(state, load, { nowMs: at('5:00'), id: 'load000001' })
    play(state, { type: 'takeBack', commandId: commandId('load000001') }, { nowMs: at('5:01') })
    expect(opening(state, '5:01')).not.toBeNull()
  })

  it('[O5] given a shelf touched yesterday, then today has not had its first load', () => {
    const used = { touchedAtMs: at('14:00', -1), boardsFreed: 0, boardsWetAtMs: at('14:05', -1) }
    expect(opening(shop({ shelves: { s1: used } }))).not.toBeNull()
  })

  it.each([
    ['no day open, more than four hours before the first step', false, '23:29:59', -1, null],
    ['no day open, four hours before the first step', true, '23:30', -1, null],
    ['the day closed and its list over', false, '16:00', 0, '15:10'],
  ])('[O5] given %s, then whether the list is shown: %s', (_what, shown, clock, day, closed) => {
    const state = shop({ day: null })
    if (closed !== null) {
      play(state, { type: 'openDay' }, { nowMs: at('4:00') })
      play(state, { type: 'closeDay' }, { nowMs: at(closed) })
    }
    const nowMs = at(clock, day)
    expect(openingList(state, nowMs, rulerOf(state, nowMs, minuteToMs)) !== null).toBe(shown)
  })

  it.each([
    ['nobody opened the day an hour after the first load was due', true, null, null, '5:30'],
    ['nobody opened the day a minute later', false, null, null, '5:31'],
    ['nobody opened the day hours later', false, null, null, '7:52'],
    ['somebody opened it within the hour and it is hours later', true, '5:30', null, '7:52'],
    ['somebody opened it hours later', false, '7:52', null, '7:53'],
    ['nobody opened it and the first load is planned for later', true, null, '8:30', '7:52'],
    ['it is opened hours later and the first load is planned for later', true, '7:52', '8:30', '7:53'],
  ])(
    '[O9] given an oven ready at 4:30, when %s, then whether there is a list: %s',
    (...[, shown, opened, plan, clock]) => {
      const day = opened === null ? null : { ...OPEN, openedAtMs: at(opened) }
      const state = shop({ day, planned: plan === null ? [] : [planned({ inAt: at(plan) })] })
      expect(opening(state, clock) !== null).toBe(shown)
    },
  )

  it('[O1] given no set-up, or no steps for the opening, then there is no list', () => {
    expect(openingList(shop({ shop: null }), at('4:00'), null)).toBeNull()
    expect(opening(stateWith())).toBeNull()
  })

  it('[O2] given no day open, when the first step is done, then the day opens with it', () => {
    const state = shop({ day: null })
    play(state, doStep('oven-on'), { nowMs: at('3:31') })
    expect(state.day?.openedAtMs).toBe(at('3:31'))
    expect(statuses(state, '3:32')).toEqual(['done', 'coming'])
  })
})

const OPEN = { label: '2026-11-24', openedAtMs: at('4:00'), noonMs: at('12:00') }

describe('float tests on the list', () => {
  const rack = (id: string, of: string, stage: 'proof' | 'chill' | 'rack' | 'boards' = 'rack') =>
    batch({ id, dough: of, stage })

  it('[O3] given doughs that stand before the kettle, then one line for each whose route has the proof', () => {
    const doughs = [
      dough({ id: 'plain', order: 1 }),
      dough({ id: 'rye', order: 2 }),
      dough({ id: 'flat', order: 3, route: ['rack', 'kettle', 'boards', 'oven'] }),
      dough({ id: 'old', order: 4, retired: true }),
      dough({ id: 'none', order: 5 }),
      dough({ id: 'boarded', order: 6 }),
    ]
    const batches = [
      rack('1', 'rye', 'chill'),
      rack('2', 'plain', 'proof'),
      rack('3', 'plain'),
      rack('4', 'flat'),
      rack('5', 'old'),
      rack('6', 'boarded', 'boards'),
    ]
    const state = shop({ shop: { ...SHOP, doughs: table(doughs) }, batches })
    expect(told(opening(state)?.lines).slice(2)).toEqual([
      ['float plain', at('4:10')],
      ['float rye', at('4:10')],
    ])
  })

  it('[O4] given a test that has not passed, look again in 20 min, then the line is due then', () => {
    const state = shop({ batches: [rack('1', 'plain')] })
    play(state, test(false, 20, PLAIN, ANA), { nowMs: at('4:10') })
    expect(line(state, 'float', '4:12')).toMatchObject({
      dueAtMs: at('4:30'),
      status: 'coming',
      personId: ANA,
      doneAtMs: null,
      float: { passed: false, lookAgainAtMs: at('4:30'), dippedAnyway: false },
    })
    expect(line(state, 'float', '4:30')?.status).toBe('due')
    expect(line(state, 'float', '4:36')?.status).toBe('late')
  })

  it('[O4] given nobody says when to look again, then it is in a quarter of an hour', () => {
    const state = shop({ batches: [rack('1', 'plain')] })
    play(state, test(false, null), { nowMs: at('4:10') })
    expect(line(state, 'float', '4:12')?.dueAtMs).toBe(at('4:25'))
  })

  it('[O4] given a test that has passed, then the line is done', () => {
    const state = shop({ batches: [rack('1', 'plain')] })
    play(state, test(false, 20), { nowMs: at('4:10') })
    play(state, test(true, null, PLAIN, BEN), { nowMs: at('4:31') })
    expect(line(state, 'float', '4:32')).toMatchObject({
      status: 'done',
      personId: BEN,
      doneAtMs: at('4:31'),
      float: { passed: true, lookAgainAtMs: null },
    })
  })

  it('[O4] given a dough dipped though it was not ready, then the line is done and says so', () => {
    const state = shop({ batches: [rack('1', 'plain')] })
    play(state, test(false, 20), { nowMs: at('4:10') })
    const dip = { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 12 } as const
    play(state, dip, { nowMs: at('4:15'), id: 'dip0000001' })
    const float = { passed: false, lookAgainAtMs: null, dippedAnyway: true }
    expect(line(state, 'float', '4:16')).toMatchObject({ status: 'done', doneAtMs: at('4:10'), float })
    play(state, { type: 'takeBack', commandId: commandId('dip0000001') }, { nowMs: at('4:17') })
    expect(line(state, 'float', '4:18')).toMatchObject({ status: 'coming', dueAtMs: at('4:30') })
  })

  it('[O4] given the step done on the list, then the dough has passed; without a dough, each that stands there has', () => {
    const state = shop({ batches: [rack('1', 'plain'), rack('2', 'rye', 'chill')] })
    play(state, doStep('float', ANA), { nowMs: at('4:12') })
    const lined = opening(state, '4:13')?.lines.filter(({ kind }) => kind === 'float-test')
    expect(lined?.map(({ status, float }) => [status, float?.passed])).toEqual([
      ['done', true],
      ['done', true],
    ])
    expect(outcome(decided(shop(), doStep('float')))).toBe('taken')
  })

  it('[O2] given a float test given to Ben, then he is asked for; what was found is corrected to have been his', () => {
    const state = shop({ batches: [rack('1', 'plain')] })
    const give = (who: typeof ANA | null) => ({ ...giveStep('float', who), doughId: PLAIN })
    play(state, give(BEN), { nowMs: at('4:05') })
    expect(line(state, 'float', '4:06')).toMatchObject({ personId: BEN, float: null })
    play(state, test(false, 20, PLAIN, ANA), { nowMs: at('4:10') })
    play(state, give(BEN), { nowMs: at('4:11') })
    expect(line(state, 'float', '4:12')).toMatchObject({ personId: BEN, dueAtMs: at('4:30') })
  })
})

describe('the changeover list', () => {
  it('[X1] given an oven empty by 11:00, then each step counts from there, before and after', () => {
    expect(changeover(shop())).toMatchObject({ zeroAtMs: at('11:00') })
    expect(told(changeover(shop())?.lines)).toEqual([
      ['drain', at('10:50')],
      ['stones', at('11:05')],
    ])
  })

  it('[X1] given a changeover slipped by 15 min, then the whole list moves with it', () => {
    const state = shop()
    play(state, { type: 'slipChangeover', slipMs: 15 * MINUTE }, { nowMs: at('10:00') })
    expect(told(changeover(state)?.lines)).toEqual([
      ['drain', at('11:05')],
      ['stones', at('11:20')],
    ])
  })

  it('[X1] given a step that Ana does, then it is done, with who and when', () => {
    const state = shop()
    play(state, doStep('drain', ANA), { nowMs: at('10:52') })
    expect(changeover(state, '10:53')?.lines[0]).toMatchObject({ status: 'done', personId: ANA, doneAtMs: at('10:52') })
  })

  it('[X1] given no day open, no second menu or no steps, then there is no list', () => {
    const none = { changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null }
    expect(changeover(shop({ day: null }))).toBeNull()
    expect(changeover(shop({ shop: { ...SHOP, hours: { ...SHOP.hours, ...none } } }))).toBeNull()
    expect(changeover(stateWith())).toBeNull()
    expect(changeoverList(shop({ shop: null }), at('10:00'), null)).toBeNull()
  })
})

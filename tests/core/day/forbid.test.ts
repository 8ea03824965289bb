import { describe, expect, it } from 'vitest'
import { parseCommand } from '../../../shared-core/day/command-schema.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import { isWork } from '../../../shared-core/day/night.ts'
import type { Forbid } from '../../../shared-core/day/state.ts'
import { fromJson, toJson } from '../../../shared-core/day/state-json.ts'
import { commandId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { later, spanMs } from '../../../shared-core/units.ts'
import { at, stateWith } from '../support/make.ts'
import { decided, outcome, play } from '../support/play.ts'

const forbid = (parts: Partial<Forbid> = {}): Forbid => {
  return { shelfId: shelfId('s2'), varietyId: null, fromMs: at('6:00'), toMs: at('7:00'), ...parts }
}
const say = (...forbids: Forbid[]) => ({ type: 'forbidLoads', forbids }) as const

describe('loads that the plan must leave out', () => {
  it('[I4] given some said, then they are what is left out; said anew, only the new ones are', () => {
    const state = stateWith()
    play(state, say(forbid(), forbid({ varietyId: varietyId('sesame'), shelfId: null })))
    expect(state.forbids).toHaveLength(2)
    play(state, say(forbid({ shelfId: null })), { id: 'again00001' })
    expect(state.forbids).toEqual([forbid({ shelfId: null })])
    play(state, say(), { id: 'none000001' })
    expect(state.forbids).toEqual([])
  })

  it.each([
    ['a shelf that is none', forbid({ shelfId: shelfId('s9') }), 'unknown-shelf'],
    ['a variety that is none', forbid({ varietyId: varietyId('durian') }), 'unknown-variety'],
  ])('[I4] given %s, then it is refused and nothing changes', (_what, one, code) => {
    const state = stateWith()
    const before = hashState(state)
    expect(outcome(decided(state, say(forbid(), one)))).toBe(code)
    expect(hashState(state)).toBe(before)
  })

  it('[I4] given the same said twice, then the second is done already', () => {
    const state = stateWith()
    play(state, say(forbid()))
    expect(outcome(decided(state, say(forbid()), { id: 'twice00001' }))).toBe('already-moved')
    expect(outcome(decided(stateWith(), say()))).toBe('already-moved')
  })

  it.each([
    ['an end before its beginning', [forbid({ toMs: at('5:59') })], '/forbids/0/toMs', 'An instant after "fromMs".'],
    ['no time at all', [forbid({ toMs: at('6:00') })], '/forbids/0/toMs', 'An instant after "fromMs".'],
    ['too many', Array.from({ length: 51 }, () => forbid()), '/forbids', 'A list of 0 to 50 forbidden spans.'],
  ])('[I4] given %s, then it is said what would be right', (_what, forbids, path, right) => {
    const read = parseCommand({ id: 'k7f3m2q9xa', deviceSeq: 1, tappedAtMs: null, type: 'forbidLoads', forbids })
    expect(read.ok ? [] : read.problems).toMatchObject([{ path, right }])
  })

  it('[I5] given it is taken back, then what was said before stands again; what came after must go first', () => {
    const state = stateWith()
    play(state, say(forbid()), { id: 'first00001' })
    play(state, say(), { id: 'second0001' })
    const back = (id: string) => ({ type: 'takeBack', commandId: commandId(id) }) as const
    expect(outcome(decided(state, back('first00001')))).toBe('take-back-changed-since')
    play(state, back('second0001'), { id: 'back000001' })
    expect(state.forbids).toEqual([forbid()])
    play(state, back('first00001'), { id: 'back000002' })
    expect(state.forbids).toEqual([])
  })

  it('[I5] given the close, then what is over goes and what is for tomorrow stays; reopened, what was said since stays', () => {
    const state = stateWith()
    const tomorrow = forbid({ fromMs: at('6:00', 1), toMs: at('7:00', 1) })
    play(state, say(forbid(), tomorrow), { id: 'said000001' })
    const over = at('15:00')
    play(state, { type: 'closeDay' }, { nowMs: over, id: 'close00001' })
    expect(state.forbids).toEqual([tomorrow])
    play(state, say(tomorrow, forbid({ shelfId: null, toMs: at('7:30', 1) })), { nowMs: over, id: 'since00001' })
    const since = state.forbids
    play(state, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: later(over, spanMs(1, 'min')), id: 'reopen0001' })
    expect(since).toHaveLength(2)
    expect(state.forbids).toEqual(since)
  })

  it('[I5] given a close and nothing said since, when reopened, then all of it is back', () => {
    const state = stateWith()
    const all = [forbid(), forbid({ fromMs: at('6:00', 1), toMs: at('7:00', 1) })]
    play(state, say(...all), { id: 'said000001' })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00'), id: 'close00001' })
    play(state, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: at('15:01'), id: 'reopen0001' })
    expect(state.forbids).toEqual(all)
  })

  it('[I5] given no day, then saying it opens none and is no work that keeps one open', () => {
    const state = stateWith({ day: null })
    const events = play(state, say(forbid()))
    expect(state.day).toBeNull()
    expect(events.map(isWork)).toEqual([false])
  })

  it('[I5] given a state as JSON, then it comes back with them', () => {
    const state = stateWith()
    play(state, say(forbid()))
    expect(fromJson(JSON.parse(JSON.stringify(toJson(state)))).forbids).toEqual([forbid()])
  })
})

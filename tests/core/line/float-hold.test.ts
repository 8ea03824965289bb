import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { doughId } from '../../../shared-core/ids.ts'
import { nextActs } from '../../../shared-core/line/acts.ts'
import { kettleNow } from '../../../shared-core/line/kettle.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { at, batch, lines, planned, stateWith, until } from '../support/make.ts'
import { play } from '../support/play.ts'
import { ALL_STATIONS, shopWith, table } from '../support/shop.ts'

const FULL = shopWith({ stations: table(ALL_STATIONS) })
const PLAIN = doughId('plain')
const RYE = doughId('rye')

/** "dip:p1:plain:1" and its time. */
const told = (state: State, clock: string, act = 'dip') =>
  nextActs(state, at(clock))
    .filter((one) => one.act === act)
    .map(({ key, atMs }) => [key, atMs])

const timed = (id: string, clock: string, shelf: string, some: ReturnType<typeof lines>) =>
  planned({ id, order: Number(id.slice(1)), inAt: at(clock), shelf, lines: some })

const notReady = (state: State, of: typeof PLAIN, clock: string, minutes: number) =>
  play(
    state,
    { type: 'testFloat', doughId: of, passed: false, lookAgainMs: durationMs(minutes * 60_000), personId: null },
    { nowMs: at(clock) },
  )

/** Plain for 6:10 and rye for 6:12, all of it at hand; a dip takes 90 s. */
function morning(): State {
  return stateWith({
    shop: FULL,
    planned: [timed('p1', '6:10', 's1', lines('sesame', 36)), timed('p2', '6:12', 's2', lines('rye', 36))],
    batches: [
      batch({ id: 'r', until: until('5:50', '6:10', '7:00') }),
      batch({ id: 'c', dough: 'rye', stage: 'chill', until: until('4:00', '6:00', '9:00') }),
    ],
  })
}

describe('a float test that has not passed', () => {
  it('[L50] given plain dough to be looked at again at 6:20, then its dip waits until then, and rye is not held up', () => {
    const state = morning()
    expect(told(state, '6:00')).toEqual([
      ['dip:p1:plain:1', at('6:08:30')],
      ['dip:p2:rye:1', at('6:10:30')],
    ])
    notReady(state, PLAIN, '6:00', 20)
    expect(told(state, '6:01')).toEqual([
      ['dip:p2:rye:1', at('6:10:30')],
      ['dip:p1:plain:1', at('6:20')],
    ])
    const [, plain] = nextActs(state, at('6:01')).filter(({ act }) => act === 'dip')
    expect(plain).toMatchObject({ earliestAtMs: at('6:20'), latestAtMs: at('7:00') })
    expect(kettleNow(state, at('6:01')).next).toMatchObject({ doughId: 'rye', atMs: at('6:10:30') })
  })

  it('[L50] given a dip due later than the next look, then it stays', () => {
    const state = morning()
    notReady(state, PLAIN, '5:40', 15)
    expect(told(state, '5:41')[0]).toEqual(['dip:p1:plain:1', at('6:08:30')])
  })

  it('[L50] given the time of the look gone by and nobody has looked, then the dip is due now, and taken', () => {
    const state = morning()
    notReady(state, PLAIN, '6:00', 20)
    expect(told(state, '6:25')).toEqual([
      ['dip:p2:rye:1', at('6:10:30')],
      ['dip:p1:plain:1', at('6:25')],
    ])
    const [rye, plain] = nextActs(state, at('6:25')).filter(({ act }) => act === 'dip')
    expect([rye?.status, plain?.status]).toEqual(['due', 'due'])
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 36 }, { nowMs: at('6:25') })
    expect(state.batches.size).toBe(2)
  })

  it('[L50] given it passed, then its dip is where it was', () => {
    const state = morning()
    notReady(state, PLAIN, '6:00', 20)
    play(
      state,
      { type: 'testFloat', doughId: PLAIN, passed: true, lookAgainMs: null, personId: null },
      { nowMs: at('6:05') },
    )
    expect(told(state, '6:06')[0]).toEqual(['dip:p1:plain:1', at('6:08:30')])
  })

  it('[L50] given some of it dipped all the same, then the rest is held no longer', () => {
    const state = morning()
    notReady(state, PLAIN, '6:00', 60)
    play(state, { type: 'dip', doughId: PLAIN, varietyId: null, pieces: 12 }, { nowMs: at('6:02') })
    expect(told(state, '6:03')[0]).toEqual(['dip:p1:plain:1', at('6:08:30')])
  })

  it('[L50] given chilled dough that is not ready, then its pull stays where it was: it ferments on the rack', () => {
    const shop = FULL
    const state = stateWith({
      shop,
      planned: [timed('p1', '6:10', 's1', lines('sesame', 36))],
      batches: [batch({ id: 'c', stage: 'chill', until: until('4:00', '5:00', '9:00') })],
    })
    const before = told(state, '5:00', 'pull')
    notReady(state, PLAIN, '5:00', 120)
    expect(told(state, '5:01')).toEqual([['dip:p1:plain:1', at('7:00')]])
    expect(told(state, '5:01', 'pull')).toEqual(before)
    expect(before).toHaveLength(1)
  })

  it('[L50] given both doughs held to the same look, then one goes after the other', () => {
    const state = morning()
    notReady(state, PLAIN, '6:00', 20)
    notReady(state, RYE, '6:00', 20)
    expect(told(state, '6:01')).toEqual([
      ['dip:p1:plain:1', at('6:20')],
      ['dip:p2:rye:1', at('6:21:30')],
    ])
  })
})

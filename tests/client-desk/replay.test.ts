import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlayedDay } from '../../client/desk/past/day-record.ts'
import { playedDay } from '../../client/desk/past/day-record.ts'
import { momentOfDay } from '../../client/desk/past/moment-view.ts'
import { instantsOf, Replay } from '../../client/desk/past/replay.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import { doughId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, lines } from '../core/support/make.ts'
import { morning, Recorded, SESAME } from './played-morning.ts'

function played(): PlayedDay {
  const day = playedDay(morning().record)
  if (day === null) throw new Error('another fold version')
  return day
}

describe('a past day', () => {
  it('given its record, then the last state is what the shop had, and what was closed is known', () => {
    const { record, recorded } = morning()
    const day = playedDay(record)
    expect(day === null ? '' : hashState(day.end)).toBe(hashState(recorded.state))
    expect(day?.end.lastDay?.label).toBe('2026-11-24')
  })

  it.each([
    ['5:29', []],
    ['5:30', [['s1', 'first-side']]],
    ['5:40', [['s1', 'second-side']]],
    ['5:46', []],
    ['6:15', [['s2', 'first-side']]],
    ['8:09', [['s1', 'second-side']]],
  ])('given %s, then the oven held what it held then', (clock, expected) => {
    const day = played()
    const { oven } = momentOfDay(day.replay.stateAt(at(clock)), at(clock))
    expect(oven.flatMap(({ shelfId, loads }) => loads.map(({ phase }) => [shelfId, phase]))).toEqual(expected)
  })

  it('given the rods at two instants, then they hold what was left then', () => {
    const day = played()
    const left = (clock: string) =>
      momentOfDay(day.replay.stateAt(at(clock)), at(clock)).rods.find(({ varietyId }) => varietyId === SESAME)?.forSale
    expect(left('6:49')).toBe(36)
    expect(left('6:55')).toBe(6)
    expect(left('7:30')).toBe(0)
  })

  it('given its lanes, then each load lies from its load to its out, with its flip', () => {
    expect(
      played().loads.map(({ shelfId, fromMs, flippedAtMs, toMs, lines: some }) => [
        shelfId,
        fromMs,
        flippedAtMs,
        toMs,
        some,
      ]),
    ).toEqual([
      ['s1', at('5:30'), at('5:38'), at('5:46'), lines('sesame', 36)],
      ['s2', at('6:10'), at('6:20'), at('6:30'), lines('poppy', 24)],
      ['s1', at('8:00'), at('8:08'), at('8:16'), lines('sesame', 36)],
    ])
  })

  it('given sesame sold out at 7:00 and cool again after 8:16, then that is its only gap; the close makes none', () => {
    const { gaps } = played()
    expect(gaps.map(({ varietyId, fromMs }) => [varietyId, fromMs])).toEqual([[SESAME, at('7:00')]])
    expect(gaps[0]?.toMs).toBeGreaterThan(at('8:16'))
    expect(gaps[0]?.toMs).toBeLessThan(at('9:00'))
  })

  it('given its ruler, then it holds all that happened and the opening hours', () => {
    const day = played()
    expect([day.fromMs, day.toMs]).toEqual([at('4:00'), at('15:30')])
    expect([day.open.fromMs, day.open.toMs]).toEqual([at('6:00'), at('15:00')])
  })

  it('given a record of another fold, then it is not played', () => {
    expect(playedDay({ ...morning().record, foldVersion: -1 })).toBeNull()
  })
})

describe('going to and fro', () => {
  /** Long enough for several checkpoints. */
  function longDay(): Recorded {
    const made = new Recorded()
    made.act('4:00', { type: 'openDay' })
    for (let n = 0; n < 330; n++) {
      const clock = `${4 + Math.floor(n / 60)}:${String(n % 60).padStart(2, '0')}:30`
      if (n % 2 === 0)
        made.act(clock, {
          type: 'carryIn',
          doughId: doughId('plain'),
          varietyId: null,
          pieces: 1 + (n % 7),
          stage: 'rack',
          sinceMs: null,
        })
      else made.act(clock, { type: 'count', varietyId: SESAME, pieces: n % 40 })
    }
    return made
  }

  it('given any instants in any order, then each state is the fold of what had happened by then', () => {
    const { entries } = longDay()
    const start = fromJson(morning().record.start)
    const rest = entries.slice(1)
    const replay = new Replay(start, rest, () => undefined)
    const startHash = hashState(start)
    const state = fromJson(morning().record.start)
    const hashes = rest.map((entry) => {
      applyEntry(state, entry)
      return hashState(state)
    })
    const folded = (untilMs: number) => {
      const count = rest.filter(({ recordedAtMs }) => recordedAtMs <= untilMs).length
      return count === 0 ? startHash : hashes[count - 1]
    }
    const instant = fc.integer({ min: at('3:59'), max: at('10:00') })
    fc.assert(
      fc.property(fc.array(instant, { minLength: 1, maxLength: 6 }), (instants) => {
        for (const atMs of instants) expect(hashState(replay.stateAt(epochMs(atMs)))).toBe(folded(atMs))
        expect(hashState(start)).toBe(startHash)
      }),
      { numRuns: 12 },
    )
  })

  it('given a tap that came late into the record, then it stands where it happened, never before the one before it', () => {
    const made = new Recorded()
    made.act('4:00', { type: 'openDay' })
    made.act('7:00', { type: 'count', varietyId: SESAME, pieces: 12 }, 0, at('6:30'))
    made.act('7:01', { type: 'count', varietyId: SESAME, pieces: 10 }, 0, at('6:20'))
    made.act('7:02', { type: 'count', varietyId: SESAME, pieces: 9 })
    const instants = instantsOf(made.entries.slice(1))
    expect(instants[0]).toBe(at('4:00'))
    expect(instants[1]).toBe(at('6:30'))
    expect(instants.every((atMs, index) => atMs >= (instants[index - 1] ?? 0))).toBe(true)
    expect(instants[3]).toBe(at('7:02'))
  })
})

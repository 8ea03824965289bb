import { describe, expect, it } from 'vitest'
import { rulerOf } from '../../../shared-core/day/ruler.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { menuItemId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { lookAheadOf } from '../../../shared-core/kitchen/ahead.ts'
import { kitchenActs } from '../../../shared-core/kitchen/kitchen-acts.ts'
import { ovenCalls } from '../../../shared-core/kitchen/oven-calls.ts'
import { slotsNow } from '../../../shared-core/kitchen/slots-now.ts'
import { tasksOf } from '../../../shared-core/kitchen/tasks.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Afternoon } from '../support/kitchen-play.ts'
import { at, load, minuteToMs, until } from '../support/make.ts'

describe('the oven’s places', () => {
  it('[M81] given flatbreads in the oven, when time goes by, then the turn is due, then out, each to the millisecond', () => {
    const kitchen = dressed('41', 1).move('12:31:00.250', 'begun', [['41', 1, 1]], 's2')
    const inAtMs = at('12:31:00.250')
    const [use] = slotsNow(kitchen.state, at('12:32'))
    expect(use).toMatchObject({ mark: '41', shelfId: shelfId('s2'), inAtMs, outAtMs: inAtMs + 240_000 })
    expect(use?.turn).toEqual({ what: 'turn', atMs: inAtMs + 120_000, status: 'coming' })
    expect(slotsNow(kitchen.state, at('12:33:10'))[0]?.turn?.status).toBe('due')
    expect(slotsNow(kitchen.state, at('12:33:40'))[0]?.turn?.status).toBe('late')
    kitchen.move('12:33:40', 'turned', [['41', 1, 1]])
    expect(slotsNow(kitchen.state, at('12:33:41'))[0]?.turn).toBeNull()
    expect(slotsNow(kitchen.state, at('12:35:00'))[0]?.status).toBe('coming')
    expect(slotsNow(kitchen.state, at('12:35:01'))[0]?.status).toBe('due')
    kitchen.move('12:35:02', 'made', [['41', 1, 1]])
    expect(slotsNow(kitchen.state, at('12:35:03'))).toEqual([])
  })

  it('[M82] given dressed flatbreads of two orders, when there is room, then they go in together onto one shelf', () => {
    const kitchen = dressed('41', 2)
    dressed('42', 1, kitchen)
    kitchen.slip('12:30', '43', 'flatbread')
    const calls = callsOf(kitchen.state, at('12:31')).filter(({ act }) => act === 'in')
    expect(calls.flatMap(({ parts }) => parts.map(({ mark }) => mark)).sort()).toEqual(['41', '41', '42'])
    expect(calls[0]).toMatchObject({ atMs: at('12:31'), status: 'due' })
    expect(calls[0]?.parts.length).toBeGreaterThan(1)
    expect(calls.every(({ shelfId: shelf }) => shelf !== null)).toBe(true)
  })

  it('[M82] given a shelf full of flatbreads, when they are done, then what waits goes in behind them, and out is one act', () => {
    const kitchen = dressed('41', 10)
    const all = (no: number) => ['41', no, 1] as const
    kitchen.move('12:31', 'begun', [1, 2, 3, 4].map(all), 's1')
    kitchen.move('12:31', 'begun', [5, 6, 7, 8].map(all), 's2')
    kitchen.move('12:31', 'begun', [9, 10].map(all), 's3')
    kitchen.move(
      '12:33',
      'turned',
      Array.from({ length: 10 }, (_, no) => all(no + 1)),
    )
    dressed('42', 1, kitchen)
    const calls = callsOf(kitchen.state, at('12:34'))
    expect(
      calls.map(({ act, parts }) => [act, parts.length] as const).sort(([, one], [, other]) => other - one),
    ).toEqual([
      ['out', 4],
      ['out', 4],
      ['out', 2],
      ['in', 1],
    ])
    // Out at 12:35, a minute of handling.
    expect(calls[3]?.atMs).toBe(at('12:36'))
  })

  it('[M82] given a shelf with bagels in it, when a flatbread is dressed, then it goes elsewhere', () => {
    const bagels = ['s1', 's2'].map((id) => load({ id, shelf: id, out: until('12:50', '12:52', '12:55') }))
    const kitchen = new Afternoon({ loads: bagels })
    dressed('41', 2, kitchen)
    const [call] = callsOf(kitchen.state, at('12:31'))
    expect(call).toMatchObject({ act: 'in', shelfId: shelfId('s3') })
  })

  it('[M83] given an afternoon, when its acts are asked for, then soonest first, what burns before what waits', () => {
    const kitchen = dressed('41', 1).slip('12:30', '42', 'coffee', {
      itemId: menuItemId('lox'),
      varietyId: varietyId('sesame'),
      allergies: ['milk'],
    })
    kitchen.move('12:31', 'begun', [['41', 1, 1]], 's1')
    kitchen.slip('12:31', '43', 'tub')
    const acts = kitchenActs(kitchen.state, at('12:33'), null)
    expect(acts.map(({ act, marks, status }) => [act, marks.join(), status])).toEqual([
      ['handOver', '43', 'due'],
      ['turn', '41', 'due'],
      ['make', '42', 'due'],
      ['make', '42', 'due'],
    ])
    expect(acts.find(({ act, allergies }) => act === 'make' && allergies.length > 0)?.items[0]?.itemId).toBe('lox')
    expect(new Set(acts.map(({ key }) => key)).size).toBe(acts.length)
  })

  it('[M83] given what can come to nothing, when acts are asked for, then it is not called for', () => {
    // The oven closes at 15:00: dressing a flatbread then is for nothing, pouring coffee is not.
    const late = new Afternoon().slip('14:57', '41', 'flatbread', 'coffee')
    expect(kitchenActs(late.state, at('14:57'), null).map(({ items }) => items[0]?.itemId)).toEqual(['coffee'])
    const early = new Afternoon().slip('14:40', '41', 'flatbread')
    expect(kitchenActs(early.state, at('14:40'), null).map(({ act }) => act)).toEqual(['make'])
    // The part before is not made yet: only that is called for.
    const { shop } = late.state
    if (shop === null) throw new Error('no shop')
    const noHands = new Map([...shop.kitchenStations].map(([id, one]) => [id, { ...one, hands: 0 }]))
    early.state.shop = { ...shop, kitchenStations: noHands }
    expect(kitchenActs(early.state, at('14:40'), null)).toEqual([])
  })

  it('[M92, M83] given dough to pull, when the changeover nears, then it is an act in time, and done once it is counted', () => {
    const kitchen = new Afternoon().count('6:00', 'ball', 30)
    const acts = (clock: string) =>
      kitchenActs(kitchen.state, at(clock), rulerOf(kitchen.state, at(clock), minuteToMs)).filter(
        ({ act }) => act === 'pull',
      )
    // The second menu bakes from 12:00; balls come out 90 minutes before, in trays of 12.
    expect(acts('9:00')).toMatchObject([
      { portionId: 'ball', atMs: at('10:30'), latestAtMs: at('12:00'), trays: 3, status: 'coming' },
    ])
    expect(acts('10:31')[0]?.status).toBe('due')
    expect(acts('12:00')).toEqual([])
    kitchen.count('10:32', 'ball', 30)
    expect(acts('10:33')).toEqual([])
    expect(new Afternoon().count('6:00', 'ball', 0).state.portions.size).toBe(1)
    const none = new Afternoon().count('6:00', 'ball', 0)
    expect(kitchenActs(none.state, at('10:31'), rulerOf(none.state, at('10:31'), minuteToMs))).toEqual([])
  })
})

/** A slip of so many flatbreads, dressed and ready for the oven. */
function dressed(mark: string, count: number, kitchen = new Afternoon()): Afternoon {
  kitchen.slip('12:30', mark, { itemId: menuItemId('flatbread'), times: count })
  return kitchen.move(
    '12:30:30',
    'made',
    Array.from({ length: count }, (_, at0) => [mark, at0 + 1, 0] as const),
  )
}

function callsOf(state: State, nowMs: EpochMs) {
  const ahead = lookAheadOf(state, nowMs)
  return ahead === null ? [] : ovenCalls(state, nowMs, tasksOf(ahead))
}

import { describe, expect, it } from 'vitest'
import type { Act } from '../../../shared-core/day/commands.ts'
import { SET_UPS_MAX } from '../../../shared-core/day/decide-set-up.ts'
import { hashState } from '../../../shared-core/day/hash.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { fromJson, toJson } from '../../../shared-core/day/state-json.ts'
import { doughId, loadId, setUpId, shelfId, stationId, toppingId, varietyId } from '../../../shared-core/ids.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { Dough, Shop, Variety } from '../../../shared-core/shop/shop.ts'
import { must } from '../../../shared-core/support.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { at, lines, lot, stateWith, stock } from '../support/make.ts'
import { decided, eventsOf, outcome, play } from '../support/play.ts'
import { dough, dwell, variety } from '../support/shop.ts'

const plan = (fromMs: EpochMs, ...changes: readonly SetUpChange[]): Act => ({ type: 'changeSetUp', changes, fromMs })
const now = (...changes: readonly SetUpChange[]): Act => ({ type: 'changeSetUp', changes })
const sesame = (state: State, parts: Partial<Variety>): SetUpChange => ({
  entity: 'variety',
  value: { ...must(shopOf(state).varieties, varietyId('sesame')), ...parts },
})
const plainDough = (state: State, parts: Partial<Dough>): SetUpChange => ({
  entity: 'dough',
  value: { ...must(shopOf(state).doughs, doughId('plain')), ...parts },
})
function shopOf({ shop }: State): Shop {
  if (shop === null) throw new Error('no shop')
  return shop
}
const ofSesame = (state: State) => must(shopOf(state).varieties, varietyId('sesame'))
const planned = (state: State) => [...state.setUps.values()].map(({ fromMs }) => fromMs)
const TAKE_UP: Act = { type: 'takeUpSetUps' }

describe('a change of the set-up that takes effect later', () => {
  it('[U6] given a price from 9:00, when acts come before, at and after it, then the first at or after it finds it changed', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, { type: 'sell', lines: lines('sesame', 1) }, { nowMs: at('8:59') })
    expect(ofSesame(state).priceCents).toBe(160)
    const events = play(state, { type: 'sell', lines: lines('sesame', 1) }, { nowMs: at('9:00') })
    expect(events[0]).toMatchObject({ type: 'setUpChanged', atMs: at('9:00') })
    expect(ofSesame(state).priceCents).toBe(200)
    expect(planned(state)).toEqual([])
  })

  it('[U6] given one that is due, when the server takes it up, then it holds; given none due, then nothing-due', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    expect(outcome(decided(state, TAKE_UP, { nowMs: at('8:59') }))).toBe('nothing-due')
    play(state, TAKE_UP, { nowMs: at('9:01') })
    expect(ofSesame(state).priceCents).toBe(200)
    expect(outcome(decided(state, TAKE_UP, { nowMs: at('9:02') }))).toBe('nothing-due')
  })

  it('[U6] given a time that is past, then it changes at once', () => {
    const state = stateWith()
    play(state, plan(at('6:00'), sesame(state, { priceCents: 200 })))
    expect([ofSesame(state).priceCents, state.setUps.size]).toEqual([200, 0])
  })

  it('[U6] given several planned out of order, when all are due at once, then they hold oldest first', () => {
    const state = stateWith()
    play(state, plan(at('10:00'), sesame(state, { priceCents: 300 })))
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200, costCents: 90 })))
    const events = play(state, TAKE_UP, { nowMs: at('11:00') })
    expect(events.map(({ type }) => type)).toEqual(['setUpChanged', 'setUpDropped', 'setUpChanged', 'setUpDropped'])
    expect(ofSesame(state)).toMatchObject({ priceCents: 300, costCents: 90 })
  })

  it('[U6] given a load baking, when a planned bake window takes effect, then it keeps the times that it began with', () => {
    const state = stateWith()
    play(
      state,
      plan(at('7:00'), { entity: 'windows', value: { ...shopOf(state).windows, bake: dwell(20, 25, 30, 'min') } }),
    )
    const load: Act = { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 24) }
    play(state, load, { nowMs: at('6:50'), id: 'loadtap0001' })
    const [before] = [...state.loads.values()]
    play(state, TAKE_UP, { nowMs: at('7:00') })
    expect(must(state.loads, loadId(before?.id ?? '')).out).toEqual(before?.out)
    play(state, { ...load, shelfId: shelfId('s2') }, { nowMs: at('7:01'), id: 'loadtap0002' })
    expect([...state.loads.values()].at(-1)?.out?.targetAtMs).toBe(at('7:26'))
  })

  it('[U6] given one due in a morning after a day that nobody closed, then that day is closed first, as it was', () => {
    const state = stateWith()
    play(state, plan(at('2:00', 1), sesame(state, { priceCents: 200 })))
    const events = play(
      state,
      { type: 'sell', lines: lines('sesame', 1) },
      { nowMs: at('5:00', 1), localDate: '2026-11-25' },
    )
    expect(events.map(({ type }) => type).slice(0, 4)).toEqual([
      'dayClosed',
      'setUpChanged',
      'setUpDropped',
      'dayOpened',
    ])
    expect(state.day?.label).toBe('2026-11-25')
  })

  it('[U6] given more than there may be, then too-many', () => {
    const state = stateWith()
    for (let n = 1; n <= SET_UPS_MAX; n += 1) play(state, plan(at('9:00'), sesame(state, { priceCents: 200 + n })))
    expect(outcome(decided(state, plan(at('9:00'), sesame(state, { priceCents: 99 }))))).toBe('too-many')
  })

  it('[U6] given one planned, then the state with it survives JSON', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    expect(hashState(fromJson(JSON.parse(JSON.stringify(toJson(state)))))).toBe(hashState(state))
  })
})

describe('planned changes among others', () => {
  it('[U7] given a price planned, when something else of the same variety changes first, then only the price changes later', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, now(sesame(state, { bakedOn: 'pan', name: 'Seeded' })))
    play(state, TAKE_UP, { nowMs: at('9:00') })
    expect(ofSesame(state)).toMatchObject({ priceCents: 200, bakedOn: 'pan', name: 'Seeded' })
  })

  it('[U7] given a price planned, when the variety is retired first, then it stays retired', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, now(sesame(state, { retired: true })))
    play(state, TAKE_UP, { nowMs: at('9:00') })
    expect(ofSesame(state)).toMatchObject({ priceCents: 200, retired: true })
  })

  it('[U7] given one window planned, when another window of the dough changes first, then both hold', () => {
    const state = stateWith()
    const windows = { ...shopOf(state).windows, cool: dwell(5, 6, 7, 'min') }
    play(state, plan(at('9:00'), { entity: 'windows', value: windows }))
    play(state, now({ entity: 'windows', value: { ...shopOf(state).windows, proof: dwell(1, 2, 3, 'h') } }))
    play(state, TAKE_UP, { nowMs: at('9:00') })
    expect(shopOf(state).windows).toMatchObject({ cool: dwell(5, 6, 7, 'min'), proof: dwell(1, 2, 3, 'h') })
  })

  it('[U7] given two planned of one variety, when each is due by itself, then the second keeps what the first changed', () => {
    const state = stateWith()
    play(state, plan(at('10:00'), sesame(state, { priceCents: 200 })))
    play(state, plan(at('9:00'), sesame(state, { name: 'Seeded' })))
    play(state, TAKE_UP, { nowMs: at('9:00') })
    expect(ofSesame(state)).toMatchObject({ priceCents: 160, name: 'Seeded' })
    play(state, TAKE_UP, { nowMs: at('10:00') })
    expect(ofSesame(state)).toMatchObject({ priceCents: 200, name: 'Seeded' })
  })

  it('[U7] given a part that there was none of, when it is given at once and planned otherwise, then the plan holds in its time', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), { entity: 'cooler', value: { trays: 40, keepsAt: null } }))
    play(state, now({ entity: 'cooler', value: { trays: 20, keepsAt: null } }))
    play(state, TAKE_UP, { nowMs: at('9:00') })
    expect(shopOf(state).cooler).toEqual({ trays: 40, keepsAt: null })
  })

  it('[U7] given one that is due, when the set-up is changed by hand at that moment, then the hand has the last word', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, now(sesame(state, { priceCents: 250 })), { nowMs: at('9:30') })
    play(state, { type: 'sell', lines: lines('sesame', 1) }, { nowMs: at('9:31') })
    expect([ofSesame(state).priceCents, state.setUps.size]).toEqual([250, 0])
  })

  it('[U7] given a new dough planned, when a variety of it is planned after it, then it is taken; before it, then set-up-mismatch', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), { entity: 'dough', value: dough({ id: 'oat' }) }))
    const oat = { entity: 'variety', value: variety({ id: 'oat', doughId: doughId('oat'), topping: 'none' }) } as const
    expect(outcome(decided(state, plan(at('8:59'), oat)))).toBe('set-up-mismatch')
    expect(decided(state, plan(at('8:59'), oat))).toMatchObject({ refusal: { params: { id: 'oat' } } })
    play(state, plan(at('9:01'), oat))
    play(state, TAKE_UP, { nowMs: at('10:00') })
    expect(shopOf(state).varieties.get(varietyId('oat'))).toMatchObject({ doughId: 'oat' })
  })
})

describe('a planned change that does not fit', () => {
  it.each<readonly [string, (state: State) => SetUpChange]>([
    ['a variety of a dough that is not there', (state) => sesame(state, { doughId: doughId('oat') })],
    ['a variety that moves to another dough', (state) => sesame(state, { doughId: doughId('rye') })],
    ['a topping that is not there', (state) => sesame(state, { toppingId: toppingId('gold') })],
    ['a dough in use retired', (state) => plainDough(state, { retired: true })],
    [
      'nobody taps load',
      () => ({
        entity: 'station',
        value: { id: stationId('line'), name: 'Line', order: 1, acts: ['out'], retired: false },
      }),
    ],
  ])('[U8] given %s, when planned, then set-up-mismatch', (_what, change) => {
    const state = stateWith()
    expect(outcome(decided(state, plan(at('9:00'), change(state))))).toBe('set-up-mismatch')
  })

  it('[U8] given a variety planned on a dough, when that dough goes, then it is asked back once, and the plan is dropped', () => {
    const state = stateWith()
    play(state, now({ entity: 'dough', value: dough({ id: 'oat', order: 9 }) }))
    const oat = { entity: 'variety', value: variety({ id: 'oat', doughId: doughId('oat'), topping: 'none' }) } as const
    play(state, plan(at('9:00'), oat))
    const gone = now({ entity: 'dough', value: dough({ id: 'oat', order: 9, retired: true }) })
    expect(outcome(decided(state, gone))).toBe('ask loses-planned')
    const events = play(state, gone, { confirmed: ['loses-planned'] })
    expect(eventsOf(events, 'setUpDropped')).toHaveLength(1)
    expect(state.setUps.size).toBe(0)
  })

  it('[U8] given two planned, the second on the first, when the first is dropped, then it is asked back, and both go', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), { entity: 'dough', value: dough({ id: 'oat', order: 9 }) }), { id: 'plandough01' })
    const oat = { entity: 'variety', value: variety({ id: 'oat', doughId: doughId('oat'), topping: 'none' }) } as const
    play(state, plan(at('9:01'), oat), { id: 'planoat0001' })
    const drop: Act = { type: 'dropSetUp', setUpId: setUpId('plandough01.1') }
    expect(outcome(decided(state, drop))).toBe('ask loses-planned')
    play(state, drop, { confirmed: ['loses-planned'] })
    expect(state.setUps.size).toBe(0)
    expect(outcome(decided(state, drop))).toBe('unknown-set-up')
  })

  it('[U8] given one in the state that fits no more, when it is due, then it is dropped and the shop goes on', () => {
    const state = stateWith()
    const stray = {
      id: setUpId('stray'),
      fromMs: at('9:00'),
      changes: [sesame(state, { doughId: doughId('oat') })],
      deviceId: 'desk' as never,
    }
    state.setUps.set(stray.id, stray)
    const before = state.shop
    const events = play(state, { type: 'sell', lines: lines('sesame', 1) }, { nowMs: at('9:00') })
    expect(eventsOf(events, 'setUpDropped').map((event) => event.setUpId)).toEqual(['stray'])
    expect(eventsOf(events, 'setUpChanged')).toEqual([])
    expect(state.shop).toBe(before)
  })

  it('[U8] given pieces for sale, when their variety is to be retired later, then nothing is asked: they will be gone by then', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })] })
    const retired = sesame(state, { retired: true })
    expect(outcome(decided(state, now(retired)))).toBe('ask retires-in-use')
    expect(outcome(decided(state, plan(at('9:00', 1), retired)))).toBe('taken')
  })
})

describe('taking back and reopening around a planned change', () => {
  it('[U9] given a sale that found one due, when the sale is taken back, then the change stays and is not planned again', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, { type: 'sell', lines: lines('sesame', 1) }, { nowMs: at('9:00'), id: 'saletap0001' })
    play(state, { type: 'takeBack', commandId: 'saletap0001' as never }, { nowMs: at('9:01') })
    expect([ofSesame(state).priceCents, state.setUps.size]).toEqual([200, 0])
    expect(state.stock.has(varietyId('sesame'))).toBe(false)
  })

  it('[U9] given a close that found one due, when the day is reopened, then the change stays and is not planned again', () => {
    const state = stateWith()
    play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })))
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    play(state, { type: 'reopenDay', label: '2026-11-24' }, { nowMs: at('15:01') })
    expect([ofSesame(state).priceCents, state.setUps.size]).toEqual([200, 0])
  })

  it.each<readonly [string, Act]>([
    ['a change', now()],
    ['a drop', { type: 'dropSetUp', setUpId: setUpId('plan0000001.1') }],
  ])(
    '[U9] given %s of the set-up, when taken back, then take-back-never: it is put right by the next one',
    (_what, act) => {
      const state = stateWith()
      play(state, plan(at('9:00'), sesame(state, { priceCents: 200 })), { id: 'plan0000001' })
      const done = act.type === 'changeSetUp' ? now(sesame(state, { costCents: 50 })) : act
      play(state, done, { id: 'donetap0001' })
      expect(outcome(decided(state, { type: 'takeBack', commandId: 'donetap0001' as never }))).toBe('take-back-never')
    },
  )
})

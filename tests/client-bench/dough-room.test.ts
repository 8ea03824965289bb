import { describe, expect, it } from 'vitest'
import { actText } from '../../client/bench/dough-room/act-text.ts'
import { nextStage, stageBefore } from '../../client/bench/dough-room/mix-steps.ts'
import type { RoomItem } from '../../client/bench/dough-room/room-parts.ts'
import { stationViews } from '../../client/bench/dough-room/room-view.ts'
import { isDoughRoomTime, shiftKeyView } from '../../client/bench/shift-key.ts'
import { soundingNow } from '../../client/bench/sounding.ts'
import type { State } from '../../shared-core/day/state.ts'
import { roomActs } from '../../shared-core/dough/room-acts.ts'
import { mixId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { spanMs } from '../../shared-core/units.ts'
import { roomShop } from '../core/dough/acts-shop.ts'
import { formula, mix, sheetLine } from '../core/dough/room-mix.ts'
import { at, batch, until } from '../core/support/make.ts'
import { dwell } from '../core/support/shop.ts'
import { partsAt, roomState, TODAY } from './dough-support.ts'

const RAISIN = formula({ id: 'raisin', name: 'Raisin', mixInMs: spanMs(10, 'min') })
const SOUR = formula({
  id: 'sour',
  name: 'Sour',
  bulk: { window: dwell(60, 90, 120, 'min'), foldsMs: [spanMs(30, 'min')], chill: dwell(8, 12, 24, 'h') },
})

/** Nothing else of a shift is to be said in it. */
const CALM = roomShop({ steps: new Map() })

function shown(state: State, nowMs: EpochMs): Record<string, readonly string[]> {
  const views = stationViews(partsAt(state, nowMs))
  return Object.fromEntries(views.map(({ id, items }) => [id, items.map((item) => item.id)]))
}

function itemOf(state: State, nowMs: EpochMs, id: string): RoomItem {
  const item = stationViews(partsAt(state, nowMs))
    .flatMap(({ items }) => items)
    .find((one) => one.id === id)
  if (item === undefined) throw new Error(`${id} is not shown`)
  return item
}

describe('the way of the dough', () => {
  it('given mixes and trays of all kinds, then each stands at its station; what is ended or away from there is not shown', () => {
    const state = roomState(
      [
        mix('planned', at('5:00'), { id: 'p2', order: 2 }),
        mix('planned', at('5:00'), { id: 'p1', order: 1 }),
        mix('mixing', at('5:00'), { id: 'm' }),
        mix('rest', at('5:00'), { id: 'r' }),
        mix('bulk', at('5:00'), { id: 'b', formula: SOUR }),
        mix('bulkChill', at('5:00'), { id: 'c', formula: SOUR }),
        mix('bench', at('5:00'), { id: 'd' }),
        mix('ended', at('5:00'), { id: 'e' }),
      ],
      {
        batches: [
          batch({ id: 't', stage: 'proof' }),
          batch({ id: 'u', stage: 'chill' }),
          batch({ id: 'v', stage: 'rack' }),
        ],
      },
    )
    expect(shown(state, at('5:05'))).toEqual({
      scale: ['p1', 'p2'],
      mixer: ['m'],
      bench: ['b', 'd', 'r'],
      proof: ['t'],
      cooler: ['c', 'u'],
    })
  })

  it('given chilled trays, then those whose window ends first stand first; proofing, those that are ready first', () => {
    const state = roomState([], {
      batches: [
        batch({ id: 'late', stage: 'chill', since: at('12:00', -1), until: { ...until('4:00', '6:00', '20:00') } }),
        batch({ id: 'soon', stage: 'chill', since: at('15:00', -1), until: { ...until('4:00', '6:00', '11:00') } }),
      ],
    })
    expect(shown(state, at('5:00')).cooler).toEqual(['soon', 'late'])
  })

  it('given trays of one mix that are ready together, then they are one key, and one touch chills them all; others stand by themselves', () => {
    const tray = (id: string, ready: string, of: string) => ({
      ...batch({ id, stage: 'proof', pieces: 15, until: until(ready, ready, '9:00') }),
      mixId: mixId(of),
    })
    const plain = roomShop({ doughRoom: null })
    const batches = [tray('a', '6:00', 'm'), tray('b', '6:14', 'm'), tray('c', '6:16', 'm'), tray('d', '6:00', 'n')]
    const state = roomState([], { batches }, plain)
    expect(shown(state, at('6:05')).proof).toEqual(['a', 'd', 'c'])
    const item = itemOf(state, at('6:05'), 'a')
    expect(item).toMatchObject({ what: 'Plain 30', tone: 'act', contents: ['ready, chill by 9:00', '2 trays'] })
    expect(item.acts).toMatchObject([
      { type: 'moveBatch', batchId: 'a', to: 'chill', pieces: 15 },
      { type: 'moveBatch', batchId: 'b', to: 'chill', pieces: 15 },
    ])
    expect(item.page).toEqual({ kind: 'station', station: 'proof', batchIds: ['a', 'b'] })
    expect(itemOf(state, at('5:59'), 'a').acts).toEqual([])
  })

  it.each([
    // at, tone, act, contents
    ['5:05', 'plain', null, ['mix-ins at 5:10']],
    ['5:10', 'act', null, ['mix-ins now']],
    ['5:12', 'act', { type: 'moveMix', from: 'mixing', to: 'rest' }, ['Mixer off']],
    ['5:16', 'late', { type: 'moveMix', from: 'mixing', to: 'rest' }, ['Mixer off']],
  ] as const)(
    'given a raisin mix since 5:00, when it is %s, then its key is %s and does %j',
    (now, tone, act, contents) => {
      const lines = [sheetLine('flour'), sheetLine('raisins', { at: 'mixIn' })]
      const state = roomState([mix('mixing', at('5:00'), { formula: RAISIN, lines })])
      const item = itemOf(state, at(now), 'm1')
      expect(item).toMatchObject({ tone, contents })
      expect(item.acts).toHaveLength(act === null ? 0 : 1)
      expect(item.acts).toMatchObject(act === null ? [] : [{ ...act, mixId: 'm1' }])
    },
  )

  it('given a dough in bulk, then a touch folds it when its fold is due, and moves it into the cooler when it is over', () => {
    const state = roomState([mix('bulk', at('5:00'), { formula: SOUR })])
    expect(itemOf(state, at('5:29'), 'm1')).toMatchObject({ acts: [], contents: ['fold 1 at 5:30'] })
    expect(itemOf(state, at('5:30'), 'm1').acts).toEqual([{ type: 'foldMix', mixId: 'm1', fold: 1 }])
    expect(itemOf(state, at('6:30'), 'm1').acts).toMatchObject([{ from: 'bulk', to: 'bulkChill' }])
  })

  it('given a mix that is weighed out, then its key says how far, and calls when it should be in the mixer', () => {
    const lines = [sheetLine('flour', { weighedAtMs: at('5:00') }), sheetLine('salt')]
    const state = roomState([mix('planned', at('4:00'), { lines, startAtMs: at('6:00') })])
    expect(itemOf(state, at('5:40'), 'm1')).toMatchObject({ tone: 'plain', when: 'in 20 min', acts: [] })
    expect(itemOf(state, at('5:40'), 'm1').contents).toEqual(['1 of 2 weighed'])
    expect(itemOf(state, at('6:00'), 'm1').tone).toBe('act')
  })

  it('given several mixes of a day of one formula, then each says which it is; what comes next is said verb first', () => {
    const state = roomState([
      mix('mixing', at('5:00'), { id: 'one', order: 1 }),
      mix('planned', at('5:00'), { id: 'two', order: 2, startAtMs: at('5:30') }),
    ])
    const parts = partsAt(state, at('5:02'))
    const acts = roomActs(parts.state, parts.shop, parts.nowMs, parts.localDate, parts.noonOf)
    expect(acts.filter(({ mixId }) => mixId !== null).map((act) => actText(act, parts))).toEqual([
      'Mixer off: Plain 1 of 2',
      'Mix Plain 2 of 2',
    ])
  })

  it('given formulas with and without rest and bulk, then the steps follow the formula, on and back', () => {
    const plain = mix('mixing', at('5:00'), { formula: formula({ restMs: spanMs(0, 'min') }) })
    expect([nextStage(plain), stageBefore(plain)]).toEqual(['bench', null])
    expect(nextStage(mix('planned', at('5:00')))).toBe('mixing')
    expect(nextStage(mix('bulkChill', at('5:00'), { formula: SOUR }))).toBe('bench')
    expect(stageBefore(mix('bulk', at('5:00'), { formula: SOUR }))).toBe('rest')
    expect(nextStage(mix('bench', at('5:00')))).toBeNull()
  })
})

describe('the dough room beside the line', () => {
  const shift = (state: State, nowMs: EpochMs) => {
    const parts = partsAt(state, nowMs)
    const acts = roomActs(parts.state, parts.shop, nowMs, parts.localDate, parts.noonOf)
    return shiftKeyView({ state, ruler: null, roomActs: acts, kitchenActs: [], nowMs, words: parts.words })
  }

  it.each([
    // now, tone, details
    ['5:01', 'plain', ['in 11 min']],
    ['5:12', 'act', ['now']],
    ['5:16', 'late', ['4 min late']],
  ] as const)(
    'given a mix since 5:00, when it is %s, then the line has a %s key that leads there',
    (now, tone, details) => {
      const state = roomState([mix('mixing', at('5:00'))], {}, CALM)
      expect(shift(state, at(now))).toEqual({
        what: 'Dough room',
        details,
        tone,
        act: null,
        sheet: { kind: 'dough-room' },
      })
    },
  )

  it('given a mix that is hours away and nothing begun, then the line has no key of it', () => {
    const state = roomState([mix('planned', at('4:00'), { startAtMs: at('9:00') })], {}, CALM)
    expect(shift(state, at('7:59'))).toBeNull()
    expect(shift(state, at('8:00'))?.what).toBe('Dough room')
  })

  it.each([
    ['a mix and trays that proof and chill', ['mixing'], ['proof', 'chill'], true],
    ['nothing begun', ['planned'], ['chill'], false],
    ['a mix, and pieces on the rack', ['mixing'], ['rack'], false],
    ['a mix in the cooler', ['bulkChill'], [], false],
  ] as const)('given %s, then a tablet that is opened shows the dough room: %s, %s, %s', (_given, mixes, trays, is) => {
    const batches = trays.map((stage) => batch({ id: stage, stage }))
    const state = roomState(
      mixes.map((stage) => mix(stage, at('5:00'), { formula: SOUR })),
      { batches },
    )
    expect(isDoughRoomTime(state)).toBe(is)
  })

  it('given a mixer that should be off, then its call can be quieted like those of the line, which come first', () => {
    const state = roomState([mix('mixing', at('5:00'))])
    const parts = partsAt(state, at('5:13'))
    const view = { acts: [], kitchenActs: [], roomActs: roomActs(state, parts.shop, parts.nowMs, TODAY, parts.noonOf) }
    const now = { nowMs: parts.nowMs, coming: new Map<string, EpochMs>() }
    expect(soundingNow(view, now, parts.words)).toEqual({ key: 'mixerOff:m1', name: 'Dough room' })
    expect(soundingNow(view, { ...now, coming: new Map([['mixerOff:m1', at('5:14')]]) }, parts.words)).toBeNull()
    expect(soundingNow({ ...view, roomActs: [] }, now, parts.words)).toBeNull()
  })
})

import { describe, expect, it } from 'vitest'
import { COMING_KEY, pedalAct, soundingAct } from '../../client/parts/calls.ts'
import { tiedStations } from '../../client/wall/pedals.ts'
import { decide } from '../../shared-core/day/decide.ts'
import { commandId, deviceId, stationId } from '../../shared-core/ids.ts'
import { actCommand } from '../../shared-core/line/act-command.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import type { LineAct } from '../../shared-core/shop/shop.ts'
import { at, batch, lines, load, loadOf, planned, stateWith, until } from '../core/support/make.ts'
import { ALL_STATIONS, shopWith, table } from '../core/support/shop.ts'
import { viewOf } from './support/wall.ts'

const NOW = at('6:47')
const SHOP = shopWith({ stations: table(ALL_STATIONS) })
const KETTLE = stationId('kettle')

/** Something to do at every station. */
const state = stateWith({
  shop: SHOP,
  recordedAt: at('6:46'),
  batches: [
    batch({ id: 'k', stage: 'kettle', since: at('6:46:30'), until: until('6:47:10', '6:47:22', '6:47:50') }),
    batch({ id: 'o', stage: 'boards', pieces: 24, since: at('6:44') }),
    batch({ id: 't', stage: 'boards', variety: 'poppy', pieces: 24, since: at('6:44') }),
    batch({ id: 'c', stage: 'chill', pieces: 120 }),
  ],
  loaded: [
    loadOf({ id: 'l1', flip: until('6:47', '6:47:40', '6:49') }, lines('sesame', 48)),
    loadOf({ id: 'l2', shelf: 's2', phase: 'second-side', out: until('6:48', '6:50', '6:55') }, lines('plain', 48)),
  ],
  planned: [
    planned({ id: 'p1', lines: lines('poppy', 24) }),
    planned({ id: 'p2', order: 2, lines: lines('sesame', 72) }),
  ],
})

describe('the act that a pedal does', () => {
  const view = viewOf(state, NOW)
  const acts = nextActs(state, NOW)

  it('[G5] given a kettle’s pedal, then kettle acts only', () => {
    expect(pedalAct(KETTLE, state, { acts, onShow: new Set(view.onShow) })?.act).toBe('lift')
    expect(pedalAct(stationId('oven'), state, { acts, onShow: new Set(view.onShow) })?.act).toMatch(/^(load|flip|out)$/)
  })

  it('[G5] given its first act is not on show, then none; the next one is not done in its stead', () => {
    const first = acts.find(({ act }) => act === 'lift')
    const others = view.onShow.filter((key) => key !== first?.key)
    expect(pedalAct(KETTLE, state, { acts, onShow: new Set(others) })).toBeNull()
    expect(pedalAct(stationId('retired'), state, { acts, onShow: new Set(view.onShow) })).toBeNull()
  })

  it('given every act that is called for, then its command names what is shown and is taken', () => {
    const kinds = new Set<LineAct>()
    for (const act of acts) {
      const command = actCommand(act, state)
      expect(command, act.key).not.toBeNull()
      if (command === null) continue
      kinds.add(act.act)
      const head = { id: commandId(`t ${act.key}`), deviceSeq: 1, tappedAtMs: NOW }
      const context = { nowMs: NOW, deviceId: deviceId('wall'), localDate: '2026-11-24' }
      expect(decide(state, { ...head, ...command }, context).kind, act.key).toBe('taken')
    }
    expect([...kinds].sort()).toEqual(['board', 'dip', 'flip', 'lift', 'load', 'out', 'pull'])
  })

  it('given a load that is gone by now, or pieces of which nobody says what they become, then there is no command', () => {
    const out = acts.find(({ act }) => act === 'out')
    const boarding = acts.find(({ act }) => act === 'board')
    expect(out && actCommand(out, stateWith({ shop: SHOP, loads: [load({ id: 'other' })] }))).toBeNull()
    expect(boarding && actCommand({ ...boarding, lines: [] }, state)).toBeNull()
  })
})

describe('the key that says coming', () => {
  const at650 = at('6:50:10')
  const acts = nextActs(state, at650)

  it('given what sounds, then it quiets the first that is not quieted yet', () => {
    const first = soundingAct(acts, new Map(), at650)
    expect(first).not.toBeNull()
    const quieted = new Map([[first?.key ?? '', at('6:51')]])
    const second = soundingAct(acts, quieted, at650)
    expect(second).not.toBeNull()
    expect(second?.key).not.toBe(first?.key)
    expect(soundingAct(acts, quieted, at('6:51'))?.key).toBe(first?.key)
  })

  it('given nothing that sounds, then it quiets nothing', () => {
    expect(soundingAct(acts, new Map(), at('6:40'))).toBeNull()
  })

  it('given keys of stations and of coming, then only stations are tied', () => {
    expect(tiedStations({ keys: { F13: KETTLE, F14: COMING_KEY, F15: KETTLE } })).toEqual([KETTLE])
  })
})

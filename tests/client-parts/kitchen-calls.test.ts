import { describe, expect, it } from 'vitest'
import { kitchenPedal } from '../../client/parts/calls.ts'
import type { KitchenLook } from '../../client/parts/kitchen-calls.ts'
import {
  actsAt,
  kitchenCommand,
  kitchenPedalAct,
  kitchenSound,
  soundingKitchenAct,
} from '../../client/parts/kitchen-calls.ts'
import { kitchenLook } from '../../client/parts/kitchen-now.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import { kitchenStationId } from '../../shared-core/ids.ts'
import { Afternoon } from '../core/support/kitchen-play.ts'
import { at, minuteToMs } from '../core/support/make.ts'

const look = ({ state }: Afternoon, clock: string): KitchenLook =>
  kitchenLook(state, at(clock), rulerOf(state, at(clock), minuteToMs))

describe('calls of the kitchen', () => {
  it('given a look some seconds ago, when what bakes comes to its turn, then it is due, and late half a minute later', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread').move('12:31', 'begun', [['41', 1, 1]], 's1')
    const { acts } = look(day, '12:32')
    const turn = (clock: string) => actsAt(acts, at(clock)).find(({ act }) => act === 'turn')?.status
    expect(['12:32:59', '12:33', '12:33:31'].map(turn)).toEqual(['coming', 'due', 'late'])
  })

  it('given what bakes and a pull, then the turn sounds until it is done, the pull for five minutes, and what waits never', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread', 'coffee').move('12:31', 'begun', [['41', 1, 1]], 's1')
    const sounds = (clock: string) => look(day, clock).acts.flatMap((act) => kitchenSound(act, at(clock)) ?? [])
    expect(sounds('12:33')).toEqual(['ovenTurn'])
    expect(look(day, '12:33').acts.map(({ act }) => act)).toContain('make')
    const morning = new Afternoon().count('6:50', 'ball', 24)
    const called = (clock: string) => soundingKitchenAct(look(morning, clock).acts, new Map(), at(clock))?.act ?? null
    expect(['10:29', '10:30', '10:34:59', '10:35'].map(called)).toEqual([null, 'pull', 'pull', null])
  })

  it('[M143] given a pad of a station, when its first act can be read here, then the pad does that one, and no other station’s', () => {
    const day = new Afternoon().slip('12:30', '41', 'coffee', 'coffee').slip('12:30', '42', 'lox on sesame')
    const { acts } = look(day, '12:37')
    const pad = kitchenPedal(kitchenStationId('drinks'))
    const own = acts.filter(({ stationId }) => stationId === 'drinks').map(({ key }) => key)
    expect(kitchenPedalAct(pad, acts, new Set(acts.map(({ key }) => key)))?.key).toBe(own[0])
    // The second one of it can be read, the first cannot: a foot may not do what nobody has read.
    expect(kitchenPedalAct(pad, acts, new Set(own.slice(1)))).toBeNull()
    expect(kitchenPedalAct(kitchenPedal(kitchenStationId('oven')), acts, new Set(own))).toBeNull()
  })

  it('given that somebody is coming, then it rests', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread').move('12:31', 'begun', [['41', 1, 1]], 's1')
    const { acts } = look(day, '12:33:01')
    const [turn] = acts.filter(({ act }) => act === 'turn')
    const coming = new Map([[turn?.key ?? '', at('12:34')]])
    expect(soundingKitchenAct(acts, coming, at('12:33:30'))).toBeNull()
    expect(soundingKitchenAct(acts, coming, at('12:34'))?.key).toBe(turn?.key)
  })

  it('given an act, then its touch moves these parts on; portions that are pulled are counted, which nobody guesses', () => {
    const day = new Afternoon().slip('12:30', '41', 'flatbread').move('12:31', 'made', [['41', 1, 0]])
    const put = look(day, '12:32').acts.find(({ act }) => act === 'in')
    if (put === undefined) throw new Error('nothing to put in')
    expect(kitchenCommand(put)).toEqual({
      type: 'moveItems',
      parts: [day.part('41', 1, 1)],
      to: 'begun',
      shelfId: put.shelfId,
    })
    day.move('12:33', 'begun', [['41', 1, 1]], 's1')
    const moves = (clock: string) => look(day, clock).acts.map(kitchenCommand)
    expect(moves('12:35')).toContainEqual({
      type: 'moveItems',
      parts: [day.part('41', 1, 1)],
      to: 'turned',
      shelfId: null,
    })
    day.move('12:35', 'turned', [['41', 1, 1]])
    expect(moves('12:37')).toContainEqual({
      type: 'moveItems',
      parts: [day.part('41', 1, 1)],
      to: 'made',
      shelfId: null,
    })
    const pull = look(new Afternoon(), '10:31').acts.find(({ act }) => act === 'pull')
    expect(pull === undefined ? undefined : kitchenCommand(pull)).toBeNull()
  })
})

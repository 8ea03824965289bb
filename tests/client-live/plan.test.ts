import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { shelfId } from '../../shared-core/ids.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { leaveOut } from '../../shared-core/plan/leave-out.ts'
import { at, lines } from '../core/support/make.ts'
import { planLoad, planWith } from '../core/support/plan.ts'
import { fakeScreen } from './support/fake-screen.ts'
import { LittleShop } from './support/little-shop.ts'

const told = (basedOnSeq: number, plan: Plan | null) => ({ type: 'plan', basedOnSeq, engine: 1, plan }) as const
const [FIRST, SECOND] = [planLoad('8:20', 1), planLoad('9:00', 2, { shelfId: shelfId('s2') })]

function linked() {
  const [screen, shop] = [fakeScreen(), new LittleShop()]
  shop.does({ type: 'setLoadList', loads: [{ shelfId: null, inAtMs: at('9:30'), lines: lines('poppy', 12) }] })
  screen.link.up()
  screen.link.say(shop.welcome(null))
  const planned = (which: 'shown' | 'asSet') =>
    [...(screen.sync.view()[which]?.planned.values() ?? [])].map(({ inAtMs }) => inAtMs)
  return { screen, shop, planned }
}

describe('the plan on a screen', () => {
  it('[I50] given a plan, when told, then what is shown has its loads beside those that people set, and these alone are in asSet', () => {
    const { screen, shop, planned } = linked()
    screen.link.say(told(5, planWith([FIRST, SECOND])))
    expect(planned('shown')).toEqual([at('9:30'), at('8:20'), at('9:00')])
    expect(planned('asSet')).toEqual([at('9:30')])
    expect(screen.sync.confirmed?.planned.size).toBe(1)
    screen.link.say(shop.check())
    expect(screen.sync.view().notices).toEqual([])
    screen.link.say(told(6, null))
    expect(screen.sync.view().shown).toBe(screen.sync.view().asSet)
  })

  it('[I50] given nothing new, when looked at again, then the very same state is shown', () => {
    const { screen } = linked()
    screen.link.say(told(5, planWith([FIRST])))
    expect(screen.sync.view().shown).toBe(screen.sync.view().shown)
  })

  it('[I50] given an advised load, when this screen taps it in, then it is planned no more, before and after the answer', () => {
    const { screen, shop, planned } = linked()
    screen.link.say(told(5, planWith([FIRST, SECOND])))
    screen.link.take()
    screen.sync.send({ type: 'load', shelfId: FIRST.shelfId, plannedId: FIRST.id, lines: FIRST.lines })
    expect(planned('shown')).toEqual([at('9:30'), at('9:00')])
    screen.link.say(shop.take(screen.link.takeCommands().flat()))
    expect(screen.sync.view().pending).toEqual([])
    expect(planned('shown')).toEqual([at('9:30'), at('9:00')])
    expect([...shop.state.loads.values()].map((load) => load.plannedId)).toEqual([FIRST.id])
    expect(screen.sync.confirmed && hashState(screen.sync.confirmed)).toBe(hashState(shop.state))
  })

  it('[I51] given plans of other states, of another course or another day, when told, then only the newest of this one is followed', () => {
    const { screen, shop, planned } = linked()
    screen.link.say(told(12, planWith([SECOND])))
    screen.link.say(told(11, planWith([FIRST])))
    expect(planned('shown')).toEqual([at('9:30'), at('9:00')])
    screen.link.say(told(13, planWith([FIRST], { date: '2026-11-25' })))
    expect(planned('shown')).toEqual([at('9:30')])
    screen.link.down()
    screen.link.up()
    screen.link.say(shop.welcome(null, { course: 'another' }))
    expect(screen.sync.view().plan).toBeNull()
    screen.link.say(told(3, planWith([FIRST])))
    expect(planned('shown')).toEqual([at('9:30'), at('8:20')])
  })

  it('[I52] given an advised load, when it is left out, then its shelf takes nothing for ten minutes around, besides what was forbidden', () => {
    const { shop } = linked()
    const plan = planWith([FIRST, SECOND])
    const first = leaveOut(shop.state, plan, FIRST.id)
    if (first === null) throw new Error('the plan has it')
    shop.does(first)
    const second = leaveOut(shop.state, plan, SECOND.id)
    if (second === null) throw new Error('the plan has it')
    shop.does(second)
    expect(shop.state.forbids).toEqual([
      { shelfId: 's1', varietyId: null, fromMs: at('8:10'), toMs: at('8:30') },
      { shelfId: 's2', varietyId: null, fromMs: at('8:50'), toMs: at('9:10') },
    ])
    expect(leaveOut(shop.state, plan, planLoad('9:00', 3).id)).toBeNull()
  })
})

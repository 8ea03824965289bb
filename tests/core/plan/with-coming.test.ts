import { describe, expect, it } from 'vitest'
import type { Today, TodayItem } from '../../../shared-core/demand/today.ts'
import { openingDemand } from '../../../shared-core/dough/need-demand.ts'
import { doughId, plannedId } from '../../../shared-core/ids.ts'
import { withComing } from '../../../shared-core/plan/with-coming.ts'
import { withPlan } from '../../../shared-core/plan/with-plan.ts'
import { at, lines, stateWith } from '../support/make.ts'
import { planLoad, planWith } from '../support/plan.ts'
import { shopWith } from '../support/shop.ts'

const item = (id: string, more: TodayItem['more'] = []): TodayItem => ({
  id,
  sold: [],
  unseen: 0,
  gone: [],
  stock: { mean: 10, doubt: 0 },
  more,
  kept: 0,
})

/** Eight in the morning, open since six. */
const TODAY: Today = {
  date: '2026-11-24',
  openMinute: 360,
  closeMinute: 900,
  nowMinute: 480,
  changeoverMinute: 660,
  lastLoadInMinute: 638,
  bakingIsOver: false,
  chilled: new Map([[doughId('plain'), 100]]),
  items: [item('sesame', [{ minute: 540, pieces: 6 }])],
}

describe('today with the advised loads on the way', () => {
  const first = planLoad('8:20', 1, { lines: lines('sesame', 24, 'poppy', 12), readyAtMs: at('8:51') })
  const pinned = planLoad('8:30', 2, { id: plannedId('list00000001.1'), isPinned: true })
  const late = planLoad('14:40', 3, { readyAtMs: at('15:11') })
  const coming = withComing(TODAY, planWith([first, pinned, late]), shopWith(), at('12:00'))

  it('[I55] given advised loads, then they come when they are ready, before the close; what people set is there already', () => {
    expect(coming.items.find(({ id }) => id === 'sesame')?.more).toEqual([
      { minute: 531, pieces: 24 },
      { minute: 540, pieces: 6 },
    ])
  })

  it('[I55] given a variety that is baked for the first time today, then it is on the menu, and was not there since the opening', () => {
    expect(coming.items.find(({ id }) => id === 'poppy')).toEqual({
      ...item('poppy', [{ minute: 531, pieces: 12 }]),
      stock: { mean: 0, doubt: 0 },
      gone: [360, 480],
    })
  })

  it('[I55] given advised loads, then their dough is spoken for; without a plan today is as it was', () => {
    expect(coming.chilled).toEqual(new Map([[doughId('plain'), 40]]))
    expect(withComing(TODAY, null, shopWith(), at('12:00'))).toBe(TODAY)
  })
})

describe('dough that is asked for', () => {
  it('[I50] given advised loads alone, then as without; beside a list, as the list', () => {
    const state = stateWith({ shop: shopWith() })
    const day = state.day?.label ?? ''
    const shop = shopWith()
    const looked = { state, shop, noonOf: () => at('12:00') }
    const plan = planWith([planLoad('8:20', 1)], { date: day })
    expect(openingDemand({ ...looked, state: withPlan(state, plan) }, day, false)).toEqual(
      openingDemand(looked, day, false),
    )
    const id = plannedId('list00000001.1')
    state.planned.set(id, { id, order: 1, shelfId: null, inAtMs: null, lines: lines('sesame', 12), done: false })
    const listed = openingDemand(looked, day, false)
    expect(listed?.get(doughId('plain'))).toBe(12)
    expect(openingDemand({ ...looked, state: withPlan(state, plan) }, day, false)).toEqual(listed)
  })
})

import { describe, expect, it } from 'vitest'
import { actsAt } from '../../client/parts/kitchen-calls.ts'
import { kitchenLook } from '../../client/parts/kitchen-now.ts'
import { barView } from '../../client/wall/bar-view.ts'
import type { MadeView } from '../../client/wall/made-view.ts'
import { widthOf } from '../../client/wall/text-lines.ts'
import type { WallView } from '../../client/wall/view.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import { doughId, menuItemId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { actDue } from '../../shared-core/line/act-due.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { askedLine, takeOrder } from '../core/orders/order-makers.ts'
import { Afternoon, KITCHEN_SHOP } from '../core/support/kitchen-play.ts'
import { at, lot, minuteToMs, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { LAYOUT, setting, viewOf } from './support/wall.ts'

function madeOf(view: WallView): MadeView {
  if (view.body.kind !== 'kitchen') throw new Error(`the wall shows ${view.body.kind}`)
  return view.body.made
}

describe('[M146] the kitchen on the wall', () => {
  it('given the afternoon, when things are to be made, then they are on rods beside the oven, those with an allergy first', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'flatbread', 'coffee')
      .slip('12:31', '42', { itemId: menuItemId('melt'), varietyId: varietyId('poppy'), allergies: ['milk'] })
      .move('12:32', 'begun', [['41', 1, 1]], 's2')
    const { rods, oven } = madeOf(viewOf(day.state, at('12:33')))
    expect(rods.rods.map(({ name, allergy, total }) => [name, allergy, total])).toEqual([
      ['Melt on Poppy', ['ALLERGY: milk'], '1'],
      ['Flatbread', [], '1'],
      ['Coffee', [], '1'],
    ])
    expect(rods.rods[0]?.rings).toMatchObject([{ mark: '42', isAllergy: true }])
    expect(oven?.set.rows).toMatchObject([
      { what: 'Turn 2', when: 'in 60 s', contents: '41', ring: { fraction: 0.75 } },
    ])
    expect(oven?.note).toBe('9 places free')
  })

  it('given more kinds than fit, then names stand beside their rods, but never that of an allergy; the rest is counted', () => {
    const day = new Afternoon()
    const without = [[], ['cheese'], ['sauce'], ['ball'], ['lox']] as const
    for (const [index, left] of without.entries()) {
      for (const item of ['coffee', 'flatbread', 'long'] as const)
        day.slip('12:30', `${index}${item}`, { itemId: menuItemId(item), without: left.map((id) => id as never) })
    }
    day.slip('12:35', '99', { itemId: menuItemId('coffee'), allergies: ['soy'] })
    const { rods } = madeOf(viewOf(day.state, at('12:36')))
    expect(rods.rods[0]).toMatchObject({ form: 'above', allergy: ['ALLERGY: soy'] })
    expect(new Set(rods.rods.slice(1).map(({ form }) => form))).toEqual(new Set(['beside']))
    expect(rods.rest).toBe(`${16 - rods.rods.length} other kinds`)
    const heightPx = rods.rods.reduce((sum, rod) => sum + rod.heightPx, 0)
    expect(heightPx).toBeLessThan(rods.box.height)
  })

  it('given so many allergies that they fill a line, then all of them stand there, and what it is below them', () => {
    const allergies = ['milk', 'egg', 'fish', 'shellfish', 'treeNuts', 'peanuts', 'wheat', 'soy', 'sesame'] as const
    const day = new Afternoon().slip('12:30', '41', {
      itemId: menuItemId('melt'),
      varietyId: varietyId('poppy'),
      allergies,
    })
    const [rod] = madeOf(viewOf(day.state, at('12:33'))).rods.rods
    expect(rod?.allergy.join(' ')).toBe('ALLERGY: milk, egg, fish, shellfish, tree nuts, peanuts, wheat, soy, sesame')
    expect(rod?.allergy.length).toBeGreaterThan(1)
    expect(rod?.name).toBe('Melt on Poppy')
  })

  it('given orders that are ready, then their marks stand above the rods', () => {
    const day = new Afternoon()
      .slip('12:30', '41', 'coffee')
      .slip('12:30', '42', 'lox on sesame')
      .slip('12:30', '43', 'coffee')
    day.move('12:31', 'made', [
      ['41', 1, 0],
      ['43', 1, 0],
    ])
    expect(madeOf(viewOf(day.state, at('12:32'))).rods.note).toBe('ready: 41, 43')
  })

  it('given nothing to make, or a line that is busy, then the wall shows what it did before', () => {
    expect(viewOf(new Afternoon().state, at('12:32')).body.kind).not.toBe('kitchen')
    const day = new Afternoon().slip('10:30', '41', 'coffee')
    play(
      day.state,
      { type: 'carryIn', doughId: doughId('plain'), varietyId: null, pieces: 36, stage: 'rack', sinceMs: null },
      { nowMs: at('10:20') },
    )
    play(day.state, { type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 36 }, { nowMs: at('10:30') })
    expect(viewOf(day.state, at('10:31')).body.kind).toBe('line')
  })

  const bar = (day: Afternoon, nowMs: EpochMs, acts: readonly LineActDue[] = [], width = 6_000) => {
    const { state } = day
    if (state.shop === null) throw new Error('a shop')
    const look = kitchenLook(state, nowMs, rulerOf(state, nowMs, minuteToMs))
    const parts = { ...setting(state.shop, nowMs), shown: state, kitchenActs: actsAt(look.acts, nowMs) }
    return barView({ ...parts, acts, flash: null, box: { ...LAYOUT.bar, width } })
  }

  it('given both menus at once, then what burns stands first whosever it is, and what is made by hand waits for the line', () => {
    const day = new Afternoon()
      .count('10:40', 'ball', 24)
      .slip('11:20', '41', 'flatbread', 'coffee')
      .move('11:31', 'begun', [['41', 1, 1]], 's1')
    const now = at('11:32:10')
    const flip = (key: string, clock: string) =>
      actDue({ key, act: 'flip', shelfId: shelfId('s2'), atMs: at(clock), lines: [], pieces: 36 }, now)
    const load = actDue(
      { key: 'load', act: 'load', shelfId: shelfId('s3'), atMs: at('11:32'), lines: [], pieces: 36 },
      now,
    )
    const said = (acts: readonly LineActDue[]) => {
      const { lines, after } = bar(day, now, acts)
      return [lines[0]?.strong, ...after.split(', ')]
    }
    const [turn, hand] = ['Turn Flatbread in 1: 41', 'make Coffee: 41']
    expect(said([flip('f1', '11:32:30')])).toEqual(['Flip 2', `then ${turn.replace('T', 't')}`, `then ${hand}`])
    expect(said([flip('f2', '11:33:30')])).toEqual([turn, 'then flip 2', `then ${hand}`])
    // Who loads now is not back in half a minute; a load can wait for what is hot.
    expect(said([load])).toEqual(['Load 3', `then ${turn.replace('T', 't')}`, `then ${hand}`])
  })

  it('given more allergies than a line holds, then the bar names as many as fit and counts the others, never cut', () => {
    const allergies = ['milk', 'egg', 'fish', 'shellfish', 'treeNuts', 'peanuts', 'wheat', 'soy', 'sesame'] as const
    const day = new Afternoon().slip('12:30', '41', {
      itemId: menuItemId('melt'),
      varietyId: varietyId('poppy'),
      allergies,
    })
    const { lines, fontPx } = bar(day, at('12:37:50'), [], LAYOUT.bar.width)
    expect(lines[0]?.strong).toContain('Melt on Poppy')
    expect(lines[1]?.strong).toMatch(/^ALLERGY: milk, egg, .*\+\d$/)
    const widest = Math.max(...lines.map(({ strong, rest }) => widthOf(`${strong} ${rest}`, fontPx, 'strong')))
    expect(widest).toBeLessThan(LAYOUT.bar.width)
  })

  it('given an act with an allergy, then the bar says so, however short the rest becomes', () => {
    const day = new Afternoon().slip('12:30', '41', {
      itemId: menuItemId('melt'),
      varietyId: varietyId('poppy'),
      allergies: ['milk', 'egg'],
    })
    const { lines } = bar(day, at('12:37:50'))
    expect(lines.map(({ strong }) => strong).join(' ')).toContain('ALLERGY: milk, egg')
  })
})

describe('orders on the wall', () => {
  const ordered = (pieces: number, kept: number) => {
    const there = stock('sesame', { lots: [lot({ pieces: kept * 5 })] }, KITCHEN_SHOP)
    const day = new Afternoon(kept > 0 ? { stock: [there] } : {})
    const lines = [askedLine('sesame', { pieces })]
    play(
      day.state,
      takeOrder({ mark: 'AK', dueAtMs: at('8:30'), lines, details: { name: 'Mx Example', phone: '', note: '' } }),
      { nowMs: at('6:50') },
    )
    const [order] = day.state.orders.values()
    if (kept > 0 && order !== undefined) {
      const keep = {
        type: 'keep',
        lines: [{ varietyId: varietyId('sesame'), pieces: kept }],
        orderId: order.id,
      } as const
      play(day.state, keep, { nowMs: at('6:55') })
    }
    return day.state
  }

  it('[M147] given an order that nothing in sight will fill, then its mark, what it lacks and what saves it stand across the wall', () => {
    const view = viewOf(ordered(24, 0), at('8:00'))
    expect(view.status).toMatchObject({ isTrouble: true })
    expect(view.status?.text).toMatch(/^AK at 8:30 lacks 24 Sesame/)
    expect(JSON.stringify(view)).not.toContain('Example')
    expect(view.ruler?.orders).toMatchObject([{ text: 'AK 24', trouble: true }])
  })

  it('[M148] given nothing else to say, then orders that come next stand there with what is kept of them', () => {
    const view = viewOf(ordered(24, 12), at('8:00'))
    expect(view.status).toEqual({ text: 'AK 8:30: 12 of 24 kept', isTrouble: false })
    expect(view.ruler?.orders).toMatchObject([{ text: 'AK 24', trouble: false }])
  })
})

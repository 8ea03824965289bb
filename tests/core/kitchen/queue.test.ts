import { describe, expect, it } from 'vitest'
import { menuItemId, portionId, varietyId } from '../../../shared-core/ids.ts'
import { kitchenQueue } from '../../../shared-core/kitchen/queue.ts'
import { Afternoon } from '../support/kitchen-play.ts'
import { at } from '../support/make.ts'

const MINUTE_MS = 60_000

describe('the kitchen’s queue', () => {
  it('[M70] given a thing of three parts, when the first is in work, then the others wait at their stations', () => {
    const kitchen = new Afternoon().slip('12:30', '41', 'flatbread').move('12:31', 'begun', [['41', 1, 0]])
    const [sandwiches, oven] = kitchenQueue(kitchen.state, at('12:31')).stations
    expect(stages(sandwiches)).toEqual([
      ['41', 0, 'begun'],
      ['41', 2, 'waiting'],
    ])
    expect(stages(oven)).toEqual([['41', 1, 'waiting']])
    kitchen.move('12:32', 'made', [['41', 1, 0]])
    const after = kitchenQueue(kitchen.state, at('12:32')).stations
    expect(stages(after[1])).toEqual([['41', 1, 'next']])
  })

  it('[M70] given several slips, when one hand is free, then the soonest due is begun next, and what is begun stands first', () => {
    const kitchen = new Afternoon()
      .slip('12:30', '41', 'coffee')
      .slip('12:31', '42', 'coffee')
      .slip('12:32', '43', 'coffee')
    const drinks = () => kitchenQueue(kitchen.state, at('12:33')).stations[2]
    expect(stages(drinks()).map(([mark]) => mark)).toEqual(['41', '42', '43'])
    kitchen.move('12:33', 'begun', [['43', 1, 0]])
    expect(stages(drinks()).map(([mark]) => mark)).toEqual(['43', '41', '42'])
    const [, first, second] = drinks()?.tasks ?? []
    expect([first?.beginAtMs, second?.beginAtMs]).toEqual([at('12:33:20'), at('12:33:40')])
  })

  it('[M71] given the same thing in several orders, when it is counted, then together, and an allergy never with others', () => {
    const lox = { itemId: menuItemId('lox'), varietyId: varietyId('sesame') }
    const kitchen = new Afternoon()
      .slip('12:30', '41', 'lox on sesame', 'lox on sesame')
      .slip('12:31', '42', 'lox on sesame', 'lox on poppy')
      .slip('12:32', '43', { ...lox, without: [portionId('cheese')] }, { ...lox, toasted: true })
      .slip('12:33', '44', { ...lox, allergies: ['milk'] }, { ...lox, allergies: ['milk'] })
      .move('12:34', 'begun', [['41', 1, 0]])
    const together = kitchenQueue(kitchen.state, at('12:34')).together
    expect(together.map(({ begun, waiting, parts }) => [begun, waiting, parts.map(({ mark }) => mark).join()])).toEqual(
      [
        [1, 2, '41,41,42'],
        [0, 1, '42'],
        [0, 1, '43'],
        [0, 1, '43'],
        [0, 1, '44'],
        [0, 1, '44'],
      ],
    )
  })

  it('[M72] given an order, when its last item is made, then it is ready, with the pieces that are still on the rods', () => {
    const kitchen = new Afternoon().slip('12:30', '41', 'coffee', 'tub').slip('12:31', '42', 'coffee', 'lox on sesame')
    kitchen.move('12:32', 'made', [
      ['41', 1, 0],
      ['42', 1, 0],
    ])
    const queue = kitchenQueue(kitchen.state, at('12:33'))
    expect(queue.ready.map(({ mark, madeAtMs, piecesMissing }) => [mark, madeAtMs, piecesMissing])).toEqual([
      ['41', at('12:32'), 0],
    ])
    expect(queue.orders.map(({ mark, made, items }) => [mark, made, items])).toEqual([['42', 1, 2]])
  })

  it('[M73] given coffee beside a flatbread, when to begin it is asked, then so late that both come together', () => {
    const kitchen = new Afternoon().slip('12:30', '41', 'flatbread', 'coffee')
    const { stations, orders } = kitchenQueue(kitchen.state, at('12:30'))
    // 60 s dressed, 240 s baked, 15 s cut: complete after 5 min 15 s, and a coffee of 20 s lies for a minute at most.
    expect(orders[0]?.readyAtMs).toBe(at('12:35:15'))
    expect(stations[2]?.tasks[0]?.beginAtMs).toBe(at('12:33:55'))
    expect(stations[2]?.tasks[0]?.status).toBe('coming')
    expect(stations[0]?.tasks[0]?.status).toBe('due')
  })

  it('[M73] given one hand at the drinks, when orders end together, then each coffee has the hand to itself', () => {
    const kitchen = new Afternoon()
    for (const mark of ['41', '42', '43', '44']) kitchen.slip('12:30', mark, 'flatbread', 'coffee')
    const tasks = kitchenQueue(kitchen.state, at('12:30')).stations[2]?.tasks ?? []
    const sorted = [...tasks].sort((one, other) => one.beginAtMs - other.beginAtMs)
    expect(sorted).toHaveLength(4)
    sorted.forEach((task, index) => {
      const next = sorted[index + 1]
      if (next !== undefined) expect(next.beginAtMs).toBeGreaterThanOrEqual(task.endAtMs)
    })
  })

  it('[M74] given the shop’s promise, when orders wait, then each says whether it will be kept', () => {
    const kitchen = new Afternoon()
    for (let no = 41; no <= 46; no += 1) kitchen.slip('12:30', String(no), { itemId: menuItemId('long'), times: 4 })
    const now = kitchenQueue(kitchen.state, at('12:30')).orders
    expect(now[0]).toMatchObject({ mark: '41', status: 'due', dueAtMs: at('12:38') })
    expect(now.map(({ readyAtMs, dueAtMs }) => (readyAtMs ?? 0) > dueAtMs)).toContain(true)
    const later = kitchenQueue(kitchen.state, at('12:38:01')).orders
    expect(new Set(later.map(({ status }) => status))).toEqual(new Set(['late']))
    const quick = new Afternoon().slip('12:30', '41', 'coffee')
    expect(kitchenQueue(quick.state, at('12:30')).orders[0]?.status).toBe('coming')
  })

  it('[M95] given something that is fetched later, when it is far off, then it is not begun yet and holds nobody up', () => {
    const kitchen = new Afternoon().slip('12:30', '41', 'coffee')
    const order = [...kitchen.state.orders.values()][0]
    if (order === undefined) throw new Error('no order')
    const dueAtMs = at('13:30')
    kitchen.state.orders.set(order.id, { ...order, way: 'pickUp', dueAtMs })
    const [task] = kitchenQueue(kitchen.state, at('12:31')).stations[2]?.tasks ?? []
    expect(task?.status).toBe('coming')
    // Complete three minutes before it is fetched, with up to a minute on the counter.
    expect(dueAtMs - (task?.endAtMs ?? 0)).toBeGreaterThanOrEqual(3 * MINUTE_MS)
    expect(dueAtMs - (task?.endAtMs ?? 0)).toBeLessThanOrEqual(4 * MINUTE_MS)
  })
})

function stages(station: ReturnType<typeof kitchenQueue>['stations'][number] | undefined) {
  return (station?.tasks ?? []).map(({ mark, part, stage }) => [mark, part.step, stage] as const)
}

import { describe, expect, it } from 'vitest'
import { menuItemId, varietyId } from '../../../shared-core/ids.ts'
import { ovenPace } from '../../../shared-core/kitchen/oven-pace.ts'
import type { Quote } from '../../../shared-core/kitchen/quote.ts'
import { quoteFor } from '../../../shared-core/kitchen/quote.ts'
import { stepTimes, timeAt, timeLeftAt } from '../../../shared-core/kitchen/step-times.ts'
import { makeKey } from '../../../shared-core/orders/order.ts'
import type { AskedItem } from '../../../shared-core/orders/order-commands.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { Afternoon } from '../support/kitchen-play.ts'
import { at, lot, stock } from '../support/make.ts'

const NOW = at('12:30')

describe('the quoted wait', () => {
  it('[M85] given an empty kitchen, when a flatbread is quoted, then about its own time, the careful figure longer', () => {
    const quote = told(quoteFor(new Afternoon().state, NOW, [item('flatbread')]))
    // 60 s dressed, 240 s baked, 15 s cut.
    expect(quote.medianMs).toBeGreaterThan(5 * 60_000)
    expect(quote.medianMs).toBeLessThan(5.6 * 60_000)
    expect(quote.carefulMs).toBeGreaterThan(quote.medianMs)
    expect(quote.carefulMs).toBeLessThan(6.2 * 60_000)
  })

  it('[M85] given slips before it, when one more is quoted, then it waits behind them, and each more makes it longer', () => {
    const kitchen = new Afternoon()
    const waits: number[] = []
    for (let no = 1; no <= 12; no += 1) {
      kitchen.slip('12:30', String(no), 'coffee')
      waits.push(told(quoteFor(kitchen.state, NOW, [item('coffee')])).medianMs)
    }
    expect(waits.every((wait, no) => no === 0 || wait > (waits[no - 1] ?? 0))).toBe(true)
    // One hand, 20 s each: the 13th is there after about 13 of them, by hand a little slower than set up.
    expect(waits[11]).toBeGreaterThan(13 * 20_000)
    expect(waits[11]).toBeLessThan(13 * 23_000)
  })

  it('[M85] given what is begun, when more is quoted, then only what is left of it is waited for', () => {
    const waiting = new Afternoon().slip('12:28', '41', 'long', 'long', 'long', 'long', 'long')
    const before = told(quoteFor(waiting.state, NOW, [item('long')])).medianMs
    const dressed = [1, 2, 3, 4, 5].map((no) => ['41', no, 0] as const)
    waiting.move('12:28', 'made', dressed)
    for (const [no, shelf] of [
      [1, 's1'],
      [2, 's1'],
      [3, 's2'],
      [4, 's2'],
      [5, 's3'],
    ] as const)
      waiting.move('12:29', 'begun', [['41', no, 1]], shelf)
    const after = told(quoteFor(waiting.state, NOW, [item('long')])).medianMs
    expect(after).toBeLessThan(before)
    // All places are taken until 12:35:30 at the soonest, then it bakes 6.5 min itself.
    expect(after).toBeGreaterThan((5.5 + 1 + 6.5) * 60_000 - 30_000)
  })

  it('[M86] given how long things really took, when it is quoted, then few move it little and many take it over', () => {
    const kitchen = new Afternoon()
    const learn = (count: number) => {
      const key = makeKey('coffee', 0)
      kitchen.state.makeTimes.set(key, { key, tookMs: Array<number>(count).fill(50_000).map(durationMs) })
      return told(quoteFor(kitchen.state, NOW, [item('coffee')])).medianMs
    }
    expect(learn(0)).toBeLessThan(22_000)
    expect(learn(1)).toBeLessThan(25_000)
    expect(learn(24)).toBe(50_000)
    const forgotten = stepTimes(
      { makeTimes: new Map([['coffee 0', { key: 'coffee 0', tookMs: [durationMs(20_000), durationMs(3_600_000)] }]]) },
      { itemId: 'coffee', step: 0, takesMs: 20_000, isOven: false },
    )
    expect(timeAt(forgotten, 1)).toBeLessThan(60_000)
  })

  it('[M86] given a part that has taken long already, when what is left of it is told, then only longer ones count', () => {
    const times = stepTimes({ makeTimes: new Map() }, { itemId: 'coffee', step: 0, takesMs: 20_000, isOven: false })
    expect(timeLeftAt(times, 0, 0.5)).toBe(timeAt(times, 0.5))
    expect(timeLeftAt(times, 20_500, 0.5)).toBeLessThan(8_500)
    expect(timeLeftAt(times, 20_500, 0.5)).toBeGreaterThan(0)
    expect(timeLeftAt(times, 120_000, 0.5)).toBe(15_000)
  })

  it('[M87] given an oven that bakes slower now, when it is quoted, then longer, and one forgotten tap changes nothing', () => {
    const kitchen = new Afternoon()
    const key = makeKey('flatbread', 1)
    const bakes = (newest: readonly number[]) => {
      const tookMs = [...Array<number>(12).fill(240), ...newest].map((seconds) => durationMs(seconds * 1_000))
      kitchen.state.makeTimes.set(key, { key, tookMs })
      return told(quoteFor(kitchen.state, NOW, [item('flatbread')])).medianMs
    }
    const usual = bakes([240, 240, 240, 240])
    expect(bakes([240, 800, 240, 240])).toBe(usual)
    expect(bakes([330, 340, 330, 320]) - usual).toBeGreaterThan(80_000)
    kitchen.state.makeTimes.clear()
    // Three are in for longer than they should be: the oven is slow, though nothing has come out yet.
    kitchen.slip('12:20', '41', 'flatbread', 'flatbread', 'flatbread')
    kitchen.move('12:21', 'made', [
      ['41', 1, 0],
      ['41', 2, 0],
      ['41', 3, 0],
    ])
    kitchen.move(
      '12:24',
      'begun',
      [
        ['41', 1, 1],
        ['41', 2, 1],
        ['41', 3, 1],
      ],
      's1',
    )
    expect(ovenPace(kitchen.state, at('12:27'))).toBe(1)
    expect(ovenPace(kitchen.state, at('12:30'))).toBe(1.5)
  })

  it.each([
    ['changeover', '10:00', [item('flatbread')]],
    ['noPortions', '12:30', [item('flatbread', { times: 2 })]],
    ['noBagels', '12:30', [item('lox', { varietyId: varietyId('poppy') })]],
    ['ovenCloses', '14:58', [item('flatbread')]],
    ['closed', '15:00', [item('coffee')]],
    ['noSuchItem', '12:30', [item('soup')]],
    ['noPlace', '12:30', [item('giant')]],
    ['notNow', '12:30', [item('gone')]],
  ] as const)('[M88] given what cannot be made, when it is quoted, then %s', (cannot, clock, items) => {
    const kitchen = new Afternoon({ stock: [stock('sesame', { lots: [lot({ pieces: 3 })] })] }).count('9:00', 'ball', 1)
    const { shop } = kitchen.state
    const flatbread = shop?.menu.get(menuItemId('flatbread'))
    const [bake] = flatbread?.steps.filter(({ oven }) => oven !== null) ?? []
    if (shop === null || flatbread === undefined || bake?.oven == null) throw new Error('no flatbread')
    const giant = {
      ...flatbread,
      id: menuItemId('giant'),
      portions: [],
      steps: [{ ...bake, oven: { ...bake.oven, slots: 5 } }],
    }
    const gone = { ...flatbread, id: menuItemId('gone'), retired: true }
    kitchen.state.shop = { ...shop, menu: new Map([...shop.menu, [giant.id, giant], [gone.id, gone]]) }
    expect(quoteFor(kitchen.state, at(clock), items)).toEqual({ cannot })
  })

  it('[M88] given more ordered than can be made, when the wait is beyond an hour, then none is quoted', () => {
    const kitchen = new Afternoon()
    for (let no = 1; no <= 40; no += 1)
      kitchen.slip(`12:${String(Math.floor(no / 2)).padStart(2, '0')}`, String(no), {
        itemId: menuItemId('coffee'),
        times: 5,
      })
    expect(quoteFor(kitchen.state, at('12:20'), [item('coffee')])).toEqual({ cannot: 'queueGrows' })
    // As many, ordered long ago, are a backlog that shrinks.
    const old = new Afternoon()
    for (let no = 1; no <= 40; no += 1) old.slip('11:00', String(no), { itemId: menuItemId('coffee'), times: 5 })
    expect(quoteFor(old.state, at('12:20'), [item('coffee')])).toHaveProperty('medianMs')
  })

  it('[M89] given nothing new, when it is quoted again, then the same, and more things never wait shorter', () => {
    const kitchen = new Afternoon().slip('12:29', '41', 'flatbread', 'long', 'coffee')
    const one = told(quoteFor(kitchen.state, NOW, [item('flatbread')]))
    expect(told(quoteFor(kitchen.state, NOW, [item('flatbread')]))).toEqual(one)
    const two = told(quoteFor(kitchen.state, NOW, [item('flatbread'), item('long')]))
    expect(two.medianMs).toBeGreaterThanOrEqual(one.medianMs)
    expect(two.carefulMs).toBeGreaterThanOrEqual(one.carefulMs)
  })

  it('[M95] given nine fetched in an hour, when somebody asks now, then these take neither hands nor places from it', () => {
    const kitchen = new Afternoon()
    const empty = told(quoteFor(kitchen.state, NOW, [item('flatbread')]))
    kitchen.slip('12:20', '41', { itemId: menuItemId('flatbread'), times: 9 })
    const behind = told(quoteFor(kitchen.state, NOW, [item('flatbread')]))
    expect(behind.medianMs).toBeGreaterThan(empty.medianMs)
    const [order] = kitchen.state.orders.values()
    if (order === undefined) throw new Error('no order')
    kitchen.state.orders.set(order.id, { ...order, way: 'pickUp', dueAtMs: at('13:30') })
    expect(told(quoteFor(kitchen.state, NOW, [item('flatbread')]))).toEqual(empty)
  })
})

function item(name: string, parts: Partial<AskedItem> = {}): AskedItem {
  const plain = { varietyId: null, toasted: false, without: [], more: [], allergies: [], times: 1 }
  return { ...plain, itemId: menuItemId(name), ...parts }
}

function told(quote: Quote) {
  if ('cannot' in quote) throw new Error(`not quoted: ${quote.cannot}`)
  return quote
}

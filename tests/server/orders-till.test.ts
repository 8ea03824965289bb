import { beforeEach, describe, expect, it } from 'vitest'
import { promiseNow } from '../../server/http/order-promise.ts'
import { readOrder } from '../../server/http/read-order.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import { askedItem, askedLine, orderShop, takeOrder } from '../core/orders/order-makers.ts'
import { at, stateWith } from '../core/support/make.ts'
import type { Asked, TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

/** A shop that is open at every hour, with a kitchen, a menu and a van. */
const SHOP = orderShop({ dozenPieces: 13 })

let server: TestServer

const TILL = { 'x-device-id': 'till-1', 'x-device-role': 'counter' }
const post = (body: unknown, headers: Record<string, string> = TILL) => ask(server, '/api/v1/orders', { body, headers })
const orderIn = ({ json }: Asked) => (json as { order: Order }).order
const problemsIn = ({ json }: Asked) =>
  ((json as { errors?: { path: string; wrong: string; right: string }[] }).errors ?? []).map(({ path }) => path)
const six = { lines: [{ variety: 'Sesame', pieces: 6 }] }

describe('an order of a till', () => {
  beforeEach(async () => {
    server = await startServer({ shop: SHOP })
  })

  it('[M108] given an order with a reference, when it comes again, from wherever, then it is taken once and the first answer stands', async () => {
    const sent = { ref: 'receipt 1041', ...six, mark: 'AK', due: '23:59', name: 'Zilla Quandary' }
    const first = await post(sent)
    expect([first.status, first.json]).toMatchObject([200, { isRepeat: false, order: { mark: 'AK', way: 'pickUp' } }])
    const again = await post({ ...sent, lines: [{ variety: 'Poppy', pieces: 99 }] })
    const other = await post(sent, { ...TILL, 'x-device-id': 'till-2' })
    for (const one of [again, other])
      expect([one.status, one.json]).toMatchObject([200, { isRepeat: true, order: orderIn(first) }])
    expect(server.room.state.orders.size).toBe(1)
    const path = `/api/v1/orders/${orderIn(first).id}`
    expect((await ask(server, path, { method: 'DELETE' })).status).toBe(200)
    expect([(await post(sent)).json, server.room.state.orders.size], 'though it is cancelled').toMatchObject([
      { isRepeat: true },
      0,
    ])
    const late = { ref: 'receipt 7', ...six, due: '2099-01-01T08:00' }
    const refused = await post(late)
    expect([refused.status, refused.json]).toMatchObject([409, { answer: { refusal: { code: 'date-too-far' } } }])
    expect((await post({ ...late, due: '23:59' })).json, 'put right, it is taken').toMatchObject({ isRepeat: false })
    expect((await post(late)).json).toMatchObject({ isRepeat: true })
  })

  it('[M108] given tills that send the same reference in one moment, then it is one order for all of them', async () => {
    const sent = { ref: 'receipt 1041', ...six, due: '23:59' }
    const till = (id: string) => post(sent, { ...TILL, 'x-device-id': id })
    const all = await Promise.all(['till-1', 'till-2', 'till-3', 'till-4'].map(till))
    const [order] = server.room.state.orders.values()
    expect(all.map((one) => [one.status, orderIn(one).id])).toEqual(all.map(() => [200, order?.id]))
    expect(all.filter(({ json }) => (json as { isRepeat: boolean }).isRepeat)).toHaveLength(3)
  })

  it('[M109] given names, ids, dozens, mixed ones and things made to order, when posted, then each is what the shop has', async () => {
    const asked = await post({
      lines: [
        { variety: 'sesame', dozens: 1, pieces: 2, sliced: true },
        { variety: null, without: ['Poppy', 'RYE'], dozens: 2, bagged: true },
        { variety: 'Flatbread', pieces: 2 },
      ],
      items: [{ item: 'melt', bagel: 'Poppy', more: ['lox'], without: ['cheese'], allergies: ['egg'], times: 2 }],
      way: 'delivery',
      run: 'Van',
      stop: 2,
      due: '23:59',
      paid: true,
    })
    expect(asked.status, asked.text).toBe(200)
    const { lines, items, ...order } = orderIn(asked)
    const line = { without: [], sliced: false, bagged: false }
    expect(lines).toEqual([
      { ...line, varietyId: 'sesame', pieces: 15, dozens: 1, sliced: true },
      { ...line, varietyId: null, without: ['poppy', 'rye'], pieces: 26, dozens: 2, bagged: true },
    ])
    expect(
      items.map(({ itemId, varietyId, more, without, allergies }) => [itemId, varietyId, more, without, allergies]),
    ).toEqual([
      ['flatbread', null, [], [], []],
      ['flatbread', null, [], [], []],
      ['melt', 'poppy', ['lox'], ['cheese'], ['egg']],
      ['melt', 'poppy', ['lox'], ['cheese'], ['egg']],
    ])
    expect(order).toMatchObject({ way: 'delivery', runId: 'van', stop: 2, isPaid: true, ref: null, details: 0 })
    const tooMany = await post({ lines: [{ variety: 'Flatbread', pieces: 51 }] })
    expect([tooMany.status, problemsIn(tooMany)]).toEqual([422, ['/items/0/times']])
    expect(server.room.state.orders.size).toBe(1)
    await withTillNames()
  })

  /** What the desk has said of the till's names. */
  async function withTillNames(): Promise<void> {
    const names = [
      { name: 'HD ASST', meaning: { kind: 'unnamed', pieces: 6, among: ['sesame', 'poppy'] } },
      { name: 'DOZ SES', meaning: { kind: 'variety', varietyId: 'sesame', pieces: 12 } },
      { name: 'GIFT CARD', meaning: { kind: 'nothing' } },
    ]
    await ask(server, '/api/v1/sales/names', { method: 'PUT', body: { names } })
    const variety = (name: string, pieces: number) => ({ variety: name, pieces })
    const asked = await post({ lines: [variety('HD ASST', 3), variety('DOZ SES', 2), variety('GIFT CARD', 1)] })
    expect([asked.status, asked.json]).toMatchObject([200, { ignored: 1, order: { way: 'here' } }])
    const [mixed, sesame] = orderIn(asked).lines
    expect(mixed).toMatchObject({ varietyId: null, pieces: 18 })
    expect(mixed?.without.toSorted()).toEqual(['cheddar', 'focaccia', 'plain', 'rye'])
    expect(sesame).toMatchObject({ varietyId: 'sesame', dozens: 2, pieces: 26 })
  }

  it('[M103, M110, M111] given orders of today and of days to come, when listed, handed over and cancelled, then each is as it stands', async () => {
    const today = (await ask(server, '/api/v1/orders')).json as { date: string; orders: unknown[] }
    const tomorrow = dateAfter(today.date, 1)
    const risky = await post({ ...six, due: '23:59', mark: 'NOW' })
    const safe = await post({ ...six, due: `${tomorrow}T23:00`, mark: 'TMW' })
    const promised = [risky, safe].map(({ json }) => (json as { promise: { isPromised: boolean } }).promise.isPromised)
    expect([promised, orderIn(risky).isRisk, orderIn(safe).isRisk]).toEqual([[false, true], true, false])
    const { recurrence, ...stands } = standingFrom(today.date)
    const head = { id: 'standing0001', deviceSeq: 1, tappedAtMs: null }
    const set = await ask(server, '/api/v1/commands', { body: { ...head, ...stands, recurrence } })
    expect(set.status, set.text).toBe(200)
    const listed = (await ask(server, `/api/v1/orders?date=${tomorrow}`)).json as { orders: Listed[] }
    expect(listed.orders.map(({ mark, isToCome }) => [mark, isToCome])).toEqual([
      ['SCH', true],
      ['TMW', false],
    ])
    const path = `/api/v1/orders/${orderIn(risky).id}`
    expect((await ask(server, path)).json).toMatchObject({ mark: 'NOW', kept: [], isMade: true, isToCome: false })
    const unknown = await ask(server, `${path}/handed-over`, { body: { lines: [{ variety: 'Sesam', pieces: 1 }] } })
    expect([unknown.status, problemsIn(unknown)]).toEqual([422, ['/lines/0/variety']])
    expect((await ask(server, `${path}/handed-over`, { body: {}, headers: TILL })).status).toBe(200)
    for (const method of ['GET', 'DELETE']) expect((await ask(server, path, { method })).status).toBe(404)
    for (const date of ['soon', '0000-01-01', '2026-02-30'])
      expect((await ask(server, `/api/v1/orders?date=${date}`)).status, date).toBe(400)
    await asRoles(orderIn(await post({ ...six, name: 'Zilla Quandary', phone: '555 0100', note: 'rings' })).id)
  })

  /** Who reads whom an order is for. */
  async function asRoles(id: string): Promise<void> {
    const told = async (role: string, ids = id) => {
      const headers = { 'x-device-id': `${role}-1`, 'x-device-role': role }
      const asked = await ask(server, `/api/v1/orders/details?ids=${ids}`, { headers })
      return [asked.status, (asked.json as { details?: unknown }).details]
    }
    const all = { id, version: 1, name: 'Zilla Quandary', phone: '555 0100', note: 'rings' }
    expect(await told('counter')).toEqual([200, [all]])
    expect(await told('desk', `none.1,${id}`)).toEqual([200, [all]])
    expect(await told('bench')).toEqual([200, [{ ...all, name: '', phone: '' }]])
    expect(await told('wall')).toEqual([403, undefined])
    expect((await told('desk', 'Zilla'))[0]).toBe(400)
  }
})

interface Listed {
  readonly mark: string
  readonly isToCome: boolean
}

function standingFrom(from: string) {
  const { lines } = takeOrder({ lines: [askedLine('sesame')] })
  const rule = { freq: 'daily', interval: 1, from, until: null, weekdays: [], nth: null, except: [], also: [] }
  const who = { mark: 'SCH', way: 'pickUp', runId: null, stop: 0, dueMinute: 450, isPaid: false }
  return { type: 'setStanding', standingId: null, ...who, lines, onHolidays: true, recurrence: rule }
}

describe('what a till is promised', () => {
  const promised = (clock: string, asked: ReturnType<typeof takeOrder>) =>
    promiseNow(stateWith({ shop: SHOP }), SHOP, asked, { now: () => at(clock), outlook: () => null, plan: () => null })
  const flatbread = { items: [askedItem('flatbread')] }

  it('[M110] given things made to order, when somebody waits, then how long; when they are due, then whether they are made by then', () => {
    const waits = promised('14:00', takeOrder({ dueAtMs: null, way: 'here', ...flatbread }))
    expect(waits).toMatchObject({ isPromised: true, pieces: null })
    const { carefulMs } = waits.wait as { carefulMs: number }
    // Dressed for a minute, four in the oven, cut in 15 s.
    expect(carefulMs / 60_000).toBeGreaterThan(5.25)
    expect(carefulMs / 60_000).toBeLessThan(8)
    expect(promised('14:00', takeOrder({ dueAtMs: at('14:05'), ...flatbread })).isPromised).toBe(false)
    expect(promised('14:00', takeOrder({ dueAtMs: at('14:09'), ...flatbread })).isPromised).toBe(true)
    const melt = { items: [askedItem('melt', { varietyId: varietyId('sesame') })] }
    const none = promised('14:00', takeOrder({ dueAtMs: null, way: 'here', ...melt }))
    expect(none).toEqual({ isPromised: false, pieces: null, wait: { cannot: 'noBagels' } })
  })

  it('[M110] given pieces of which there are none, when due today, then why not; when due tomorrow or later, then yes', () => {
    const six = { lines: [askedLine('sesame')] }
    const today = promised('9:00', takeOrder({ dueAtMs: at('11:00'), ...six }))
    expect(today).toMatchObject({ isPromised: false, pieces: { atMs: null, why: { code: 'dough', doughId: 'plain' } } })
    for (const day of [1, 2, 30])
      expect(promised('9:00', takeOrder({ dueAtMs: at('11:00', day), ...six })).isPromised, `${day}`).toBe(true)
    expect(promised('9:00', takeOrder({ dueAtMs: at('2:00', 1), ...six })).isPromised, 'before it opens').toBe(false)
  })
})

describe('mistakes in an order', () => {
  it.each<readonly [string, object, readonly string[]]>([
    ['a variety that there is not', { lines: [{ variety: 'Sesam', pieces: 1 }] }, ['/lines/0/variety']],
    ['no number', { lines: [{ variety: 'Sesame' }] }, ['/lines/0']],
    ['nothing', {}, ['/lines']],
    ['a sandwich on no bagel', { items: [{ item: 'melt' }] }, ['/items/0/bagel']],
    ['what is not on the menu', { items: [{ item: 'Soup' }], run: 'Bus' }, ['/items/0/item', '/run']],
    ['a delivery at no time', { ...six, way: 'delivery' }, ['/due']],
    ['a time that is none', { ...six, due: 'noonish' }, ['/due']],
    ['a clock time that is past', { ...six, due: '8:05' }, ['/due']],
    ['a name where a mark belongs', { ...six, mark: 'Zilla Quandary' }, ['/mark']],
    ['an unknown field', { ...six, tip: 3 }, ['/tip']],
    ['coffee for a whole town', { items: Array(5).fill({ item: 'coffee', times: 41 }) }, ['/items']],
  ])('[M109] given %s, when read, then its place is told and what would be right', (_what, body, paths) => {
    const today = { zone: SHOP.profile.zone, date: '2026-11-24', nowMs: at('9:06') }
    const read = readOrder(body, { shop: SHOP, today, meanings: new Map() })
    const problems = read.ok ? [] : read.problems
    expect(problems.map(({ path }) => path)).toEqual(paths)
    for (const { wrong, right } of problems) expect([wrong, right].every((text) => text.endsWith('.'))).toBe(true)
  })
})

import ICAL from 'ical.js'
import { convertIcsCalendar } from 'ts-ics'
import { describe, expect, it } from 'vitest'
import { localInstant, shopClock } from '../../server/live/shop-clock.ts'
import type { CalendarAsked } from '../../server/orders/calendar.ts'
import { ordersCalendar } from '../../server/orders/calendar.ts'
import { CalendarRevisions } from '../../server/orders/calendar-revisions.ts'
import { emptyState } from '../../shared-core/day/apply.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { orderId, specialDayId, standingId, varietyId } from '../../shared-core/ids.ts'
import type { CalendarLink } from '../../shared-core/live/orders-import.ts'
import { dueOn } from '../../shared-core/orders/due-on.ts'
import type { Order, OrderLine, StandingOrder } from '../../shared-core/orders/order.ts'
import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { shopWith } from '../core/support/shop.ts'
import { kitchenParts } from '../core/support/shop-kitchen.ts'
import { letIn } from './support/join.ts'
import { ask, startServer } from './support/start-server.ts'

const ZONE = 'America/Chicago'
const TODAY = '2026-11-26'
const NOW = epochMs(Date.parse('2026-11-26T08:00:00-06:00'))
const CLOCK = shopClock(ZONE, NOW)
const LINE: OrderLine = {
  ...{ varietyId: varietyId('sesame'), without: [], pieces: 24, dozens: 2, sliced: true, bagged: false },
}

function order(parts: Partial<Order>): Order {
  return {
    ...{ id: orderId('o1'), mark: 'OSS', takenAtMs: NOW, dueAtMs: epochMs(Date.parse('2026-11-27T13:30:00Z')) },
    ...{ way: 'pickUp', runId: null, stop: 0, lines: [LINE], items: [], isPaid: true, details: 1, standing: null },
    ...{ ref: null, isRisk: false },
    ...parts,
  }
}

function standing(recurrence: Partial<Recurrence>, parts: Partial<StandingOrder> = {}): StandingOrder {
  return {
    ...{ id: standingId('st1'), mark: 'School', way: 'delivery', runId: null, stop: 0, dueMinute: 7 * 60 + 30 },
    ...{ lines: [LINE], isPaid: false, details: 0, onHolidays: false, takenUp: null },
    recurrence: {
      ...{ freq: 'weekly', interval: 1, from: '2026-09-01', until: null, weekdays: [], nth: null },
      ...{ except: [], also: [] },
      ...recurrence,
    },
    ...parts,
  }
}

interface Given {
  readonly orders?: readonly Order[]
  readonly standing?: readonly StandingOrder[]
  readonly shop?: Shop
  readonly revision?: CalendarAsked['revision']
}

function asked({ orders = [], standing: those = [], shop = shopWith(), revision }: Given): CalendarAsked {
  const state = { ...emptyState(), shop, seq: 7 }
  for (const one of orders) state.orders.set(one.id, one)
  for (const one of those) state.standing.set(one.id, one)
  const revisions = new CalendarRevisions()
  return {
    ...{ state, shop, nowMs: NOW, today: TODAY, clock: CLOCK, journalId: 'j1' },
    revision: revision ?? ((uid, content) => revisions.of(uid, content, { seq: state.seq, nowMs: NOW })),
  }
}

/** Instants of what a calendar shows from today on, by an expander that knows nothing of our rules. */
function shownBy(text: string): readonly number[] {
  const calendar = new ICAL.Component(ICAL.parse(text))
  const [zone] = calendar.getAllSubcomponents('vtimezone')
  const tz = new ICAL.Timezone(zone as ICAL.Component)
  const untilMs = (DAYS.at(-1)?.noonMs ?? 0) + 12 * 3_600_000
  const shown: number[] = []
  for (const component of calendar.getAllSubcomponents('vevent')) {
    for (const one of component.getAllProperties()) {
      for (const value of one.getValues()) if (value instanceof ICAL.Time && one.getParameter('tzid')) value.zone = tz
    }
    const event = new ICAL.Event(component)
    if (!event.isRecurring()) {
      shown.push(event.startDate.toUnixTime() * 1_000)
      continue
    }
    const iterator = event.iterator()
    for (let next = iterator.next(); next; next = iterator.next()) {
      const atMs = next.toUnixTime() * 1_000
      if (atMs > untilMs) break
      shown.push(atMs)
    }
  }
  return shown.sort((one, other) => one - other)
}

/** Days of a year, over both changes of the clock. */
const DAYS = Array.from({ length: 385 }, (_, day) => dateAfter(TODAY, day)).map((date) => {
  return { date, noonMs: localInstant(ZONE, date, 12 * 60) }
})

/** The same by the core. */
function dueBy({ state }: CalendarAsked): readonly number[] {
  const due = DAYS.flatMap((at) => dueOn(state, at).map(({ dueAtMs }) => dueAtMs))
  return due.sort((one, other) => one - other)
}

const closed = (id: string, kind: 'closure' | 'holiday', from: string, to = from) => {
  return { id: specialDayId(id), name: id, kind, spans: [{ from, to }], order: 1, retired: false } as never
}

describe('the calendar of orders', () => {
  it('[M124] given orders with odd marks, when written, then another reader finds each once, when it is due, with mark and pieces', () => {
    const mark = 'Ñ;,\\é'
    const orders = [order({ mark }), order({ id: orderId('o2'), mark: '17', way: 'here' })]
    const mixed: OrderLine = { ...LINE, varietyId: null, without: [varietyId('poppy')], pieces: 13, sliced: false }
    const lines = Array.from({ length: 9 }, () => mixed)
    const text = ordersCalendar(asked({ orders: [...orders, order({ id: orderId('o3'), lines, isPaid: false })] }))
    const read = convertIcsCalendar(undefined, text)
    const told = read.events?.map(({ uid, summary, start, description }) => [
      uid,
      summary,
      start.date.toISOString(),
      description,
    ])
    expect(told).toEqual([
      ['o1@j1', `${mark} · 24 pieces`, '2026-11-27T13:30:00.000Z', '24 Sesame, sliced\nPick-up\nPaid'],
      [
        'o3@j1',
        'OSS · 117 pieces',
        '2026-11-27T13:30:00.000Z',
        `${Array(9).fill('13 mixed, no Poppy').join('\n')}\nPick-up`,
      ],
    ])
  })

  it('[M124] given a long one in many letters, when written, then lines end in CRLF and none has more than 75 octets', () => {
    const text = ordersCalendar(
      asked({ orders: [order({ lines: Array.from({ length: 20 }, () => LINE), mark: 'ÑÑÑÑÑÑÑÑ' })] }),
    )
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    expect(text).toContain('\r\nREFRESH-INTERVAL;VALUE=DURATION:PT15M\r\n')
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75)
    for (const needed of [
      'VERSION:2.0',
      'PRODID:',
      'UID:o1@j1',
      'DTSTAMP:20261126T140000Z',
      'SEQUENCE:7',
      'DTSTART:20261127T133000Z',
    ])
      expect(text).toContain(needed)
    expect(new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent')).toHaveLength(1)
  })

  it.each<[string, Partial<Recurrence>, Partial<StandingOrder>]>([
    ['each week', {}, {}],
    ['each second week on two days, from the middle of one', { interval: 2, weekdays: [1, 4], from: '2026-11-18' }, {}],
    ['each third day', { freq: 'daily', interval: 3 }, {}],
    ['on weekdays until spring', { freq: 'daily', weekdays: [1, 2, 3, 4, 5], until: '2027-03-15' }, {}],
    ['on the 31st', { freq: 'monthly', from: '2026-08-31' }, {}],
    ['on the last Friday', { freq: 'monthly', nth: -1, weekdays: [5] }, {}],
    ['on the second Tuesday and Sunday', { freq: 'monthly', nth: 2, weekdays: [2, 7] }, {}],
    [
      'but not on some dates, and on others besides',
      { weekdays: [2], except: ['2026-12-01', '2027-11-30'], also: ['2026-11-28', '2026-12-24'] },
      {},
    ],
    ['on a date besides before it begins', { from: '2027-01-05', also: ['2026-12-03'] }, {}],
    ['over at last, but for a date', { until: '2026-10-01', also: ['2026-12-03'] }, {}],
    ['on holidays too', { weekdays: [5] }, { onHolidays: true }],
    ['taken up for today', { weekdays: [4] }, { takenUp: TODAY }],
    ['each day, soon after clocks change in the night', { freq: 'daily' }, { dueMinute: 4 * 60 }],
  ])(
    '[M125] given a standing order %s, when expanded by another, then it comes when the core says, over both changes of the clock',
    (_what, recurrence, parts) => {
      const shop = shopWith({
        specialDays: new Map([
          [specialDayId('xmas'), closed('xmas', 'holiday', '2026-12-25')],
          [specialDayId('rest'), closed('rest', 'closure', '2027-01-10', '2027-01-20')],
        ]),
      })
      const given = asked({ shop, standing: [standing(recurrence, parts)] })
      const text = ordersCalendar(given)
      expect(shownBy(text)).toEqual(dueBy(given))
      expect(convertIcsCalendar(undefined, text).events?.length).toBeGreaterThan(0)
    },
  )

  it('[M126] given an order that is changed, when asked again, then its number rises, and that of nobody else', () => {
    const revisions = new CalendarRevisions()
    const sequences = (seq: number, orders: readonly Order[]) => {
      const text = ordersCalendar(
        asked({ orders, revision: (uid, content) => revisions.of(uid, content, { seq, nowMs: NOW }) }),
      )
      return [...text.matchAll(/^SEQUENCE:(\d+)/gm)].map(([, sequence]) => Number(sequence))
    }
    const [one, other] = [order({}), order({ id: orderId('o2') })]
    expect(sequences(7, [one, other])).toEqual([7, 7])
    expect(sequences(9, [one, other])).toEqual([7, 7])
    expect(sequences(12, [one, { ...other, isPaid: false }])).toEqual([7, 12])
    expect(
      sequences(13, [
        { ...one, dueAtMs: epochMs(one.dueAtMs + 60_000) },
        { ...other, isPaid: false },
      ]),
    ).toEqual([13, 12])
  })
})

describe('a link to the calendar', () => {
  it('[M127] given a closed shop, when a link is made, then its key opens the calendar and nothing else, tells no name, and ends with its device', async () => {
    const shop = shopWith(kitchenParts())
    const server = await startServer({ shop, closed: { file: ':memory:', isDeskLost: false } })
    const desk = letIn(server, 'desk')
    const headers = { cookie: `boilboard_device=${desk.token}`, origin: `http://127.0.0.1:${server.port}` }
    const details = { name: 'Zebulon Quist', phone: '555 0199', note: 'side door' }
    const dueAtMs = Date.now() + 86_400_000
    const line = { ...LINE, dozens: 2, pieces: 0 }
    const take = {
      type: 'takeOrder',
      mark: 'ZQ',
      dueAtMs,
      way: 'pickUp',
      runId: null,
      stop: 0,
      lines: [line],
      items: [],
    }
    const body = { id: 'takezq000001', deviceSeq: 1, tappedAtMs: null, ...take, isPaid: false, details }
    expect((await ask(server, '/api/v1/commands', { body, headers })).status).toBe(200)
    const made = await ask(server, '/api/v1/orders/calendar', { body: { name: 'Phone' }, headers })
    const { path, deviceId } = made.json as CalendarLink
    const read = await ask(server, path)
    expect([read.status, read.type]).toEqual([200, 'text/calendar'])
    expect(read.text).toContain('SUMMARY:ZQ · 24 pieces')
    for (const secret of Object.values(details)) expect(read.text).not.toContain(secret)
    const key = path.split('=')[1] ?? ''
    const as = async (address: string, shown: Record<string, string> = {}) =>
      (await ask(server, address, { headers: shown })).status
    expect(await as('/api/v1/orders.ics')).toBe(401)
    expect(await as('/api/v1/orders.ics?key=x')).toBe(401)
    for (const address of ['/api/v1/state', '/api/v1/orders', '/api/v1/orders/details']) {
      expect(await as(`${address}?key=${key}`), address).toBe(401)
      expect(await as(address, { authorization: `Bearer ${key}` }), address).toBe(401)
      expect(await as(address, { cookie: `boilboard_device=${key}` }), address).toBe(401)
    }
    const script = server.door.membership?.makeToken({ name: 'till', role: 'desk', days: null })
    expect(await as(`/api/v1/orders.ics?key=${script?.token}`)).toBe(401)
    const renamed = { method: 'PATCH', body: { name: 'Kitchen phone', role: 'desk' }, headers }
    expect((await ask(server, `/api/v1/devices/${deviceId}`, renamed)).json).toMatchObject({ role: 'counter' })
    expect(await as(path)).toBe(200)
    await ask(server, `/api/v1/devices/${deviceId}`, { method: 'DELETE', headers })
    expect(await as(path)).toBe(401)
  })

  it('[M127] given an open shop, when a link is made, then it needs no secret', async () => {
    const server = await startServer()
    const made = await ask(server, '/api/v1/orders/calendar', { body: { name: 'Phone' } })
    expect(made.json).toEqual({ path: '/api/v1/orders.ics', deviceId: null })
    expect((await ask(server, '/api/v1/orders.ics')).text).toMatch(/^BEGIN:VCALENDAR\r\n/)
  })
})

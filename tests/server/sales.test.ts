import { describe, expect, it } from 'vitest'
import { DEFAULT_COUNTER } from '../../shared-core/shop/default-rules.ts'
import { shopWith } from '../core/support/shop.ts'
import { zoneAtHour } from '../core/support/zone-at-hour.ts'
import type { Ask, TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const { profile } = shopWith()
const TILL_SHOP = shopWith({
  counter: { ...DEFAULT_COUNTER, salesFrom: 'till' },
  profile: { ...profile, zone: zoneAtHour(12) },
})
const till = () => startServer({ shop: TILL_SHOP })
const post = (server: TestServer, body: unknown, more: Ask & { query?: string } = {}) =>
  ask(server, `/api/v1/sales${more.query ?? ''}`, { body, ...more })
const CSV = { headers: { 'content-type': 'text/csv' } }

/** Sold today by variety, whatever came of it. */
function sold({ room }: TestServer): Record<string, number> {
  return Object.fromEntries([...room.state.stock.values()].map(({ varietyId, soldToday }) => [varietyId, soldToday]))
}

interface Taken {
  readonly taken: number
  readonly rows: readonly { readonly row: number; readonly answer: { readonly kind: string } }[]
  readonly errors: readonly { readonly path: string; readonly wrong: string; readonly right: string }[]
}

describe('sales by a till', () => {
  it('[H9] given rows by name, by id and of nobody knows what, when posted, then each is a sale by the till', async () => {
    const server = await till()
    const sales = [
      { variety: 'Sesame', pieces: 6 },
      { at: '2021-11-24T08:05:00-06:00', variety: 'poppy', pieces: 1 },
      { variety: null, pieces: 12 },
    ]
    const asked = await post(server, { sales })
    // The second was sold years ago: it changes nothing on the board, and is kept as a past sale.
    expect([asked.status, asked.json]).toMatchObject([200, { taken: 2, past: 1 }])
    expect((asked.json as Taken).rows.map(({ row, answer }) => [row, answer.kind])).toEqual([
      [1, 'taken'],
      [3, 'taken'],
    ])
    const events = [...server.journal.entriesAfter(1)].flatMap((entry) => entry.events)
    const taken = events.filter((event) => event.type === 'stockTaken')
    expect(taken.every(({ from }) => from === 'till')).toBe(true)
    expect(
      taken.reduce((sum, { unnamed, found, takes }) => {
        return sum + (unnamed ? found + takes.reduce((all, { pieces }) => all + pieces, 0) : 0)
      }, 0),
    ).toBe(12)
  })

  it('[H9] given the same rows again, when posted with ids, then they count once; without, each time', async () => {
    const server = await till()
    const named = { sales: [{ variety: 'sesame', pieces: 2, id: 'receipt 17/1' }] }
    const first = await post(server, named)
    const again = await post(server, named)
    expect(again.json).toEqual(first.json)
    expect(sold(server)).toMatchObject({ sesame: 2 })
    const otherTill = { headers: { 'x-device-id': 'till-2' } }
    await post(server, named, otherTill)
    expect(sold(server)).toMatchObject({ sesame: 4 })
    for (let n = 0; n < 2; n += 1) await post(server, { sales: [{ variety: 'sesame', pieces: 1 }] })
    expect(sold(server)).toMatchObject({ sesame: 6 })
  })

  it('[H9] given names that the shop has not, when posted, then each is told with its row and what would be right, and nothing is taken', async () => {
    const server = await till()
    const csv = 'at,variety,pieces,id\n,Sesame,6,a1\n,Sesam,6,a2\n,Poppy,none,a3\nnoonish,Poppy,1,a4\n'
    const asked = await post(server, csv, CSV)
    expect([asked.status, asked.type]).toEqual([422, 'application/problem+json'])
    const { errors } = asked.json as Taken
    expect(errors.map(({ path }) => path)).toEqual(['/rows/3', '/rows/4', '/rows/5'])
    expect(errors[0]).toEqual({
      path: '/rows/3',
      wrong: 'Line 3: The shop has no variety "Sesam".',
      right: '"Sesame"? One of: Sesame, Poppy, Plain, Focaccia, Cheddar, Rye.',
    })
    expect(errors[1]?.right).toBe('A whole number from 1 to 5000.')
    expect(errors[2]?.right).toContain('"8:05"')
    expect(server.journal.lastSeq()).toBe(1)
  })

  it('[H9] given a time that is still to come, when posted, then it is told; a till’s clock may be a little ahead', async () => {
    const server = await till()
    const inMinutes = (minutes: number) => new Date(Date.now() + minutes * 60_000).toISOString()
    const asked = await post(server, { sales: [{ at: inMinutes(20), variety: 'sesame', pieces: 6 }] })
    expect([asked.status, asked.json]).toMatchObject([422, { errors: [{ path: '/sales/0/at' }] }])
    const [error] = (asked.json as Taken).errors
    expect([error?.wrong, error?.right]).toEqual([
      expect.stringContaining('is still to come'),
      expect.stringContaining('A time that is past.'),
    ])
    expect(sold(server)).toEqual({})
    const near = await post(server, { sales: [{ at: inMinutes(5), variety: 'sesame', pieces: 6 }] })
    expect([near.status, sold(server)]).toMatchObject([200, { sesame: 6 }])
  })

  it('[H9] given the same with ?partial=1, when posted, then the good row is taken and the others told', async () => {
    const server = await till()
    const csv = 'at;variety;pieces\n;Sesame;6\n;Sesam;6\n'
    const asked = await post(server, csv, { ...CSV, query: '?partial=1' })
    expect([asked.status, asked.json]).toMatchObject([
      200,
      { taken: 1, rows: [{ row: 2, answer: { kind: 'taken' } }], errors: [{ path: '/rows/3' }] },
    ])
    expect(sold(server)).toEqual({ sesame: 6 })
  })

  it.each([
    ['a header in any order, among others', 'receipt,Pieces,Variety\n1,3,Sesame\n'],
    ['no header', '8:05,Sesame,3,a1\n'],
    ['tabs and a mark at its beginning', '\ufeffvariety\tpieces\r\nSesame\t3\r\n'],
  ])('[H9] given a file with %s, when posted, then it is read', async (_what, csv) => {
    const server = await till()
    const asked = await post(server, csv, CSV)
    expect([asked.status, (asked.json as Taken).errors]).toEqual([200, []])
    expect(sold(server)).toEqual({ sesame: 3 })
  })

  it.each([
    ['nothing', {}, '/sales'],
    ['no list', { sales: 7 }, '/sales'],
    ['an empty list', { sales: [] }, '/sales'],
    ['more than at once', { sales: Array.from({ length: 501 }, () => ({ variety: null, pieces: 1 })) }, '/sales'],
    ['a key with a slip in it', { sales: [{ varety: 'Sesame', variety: 'Sesame', pieces: 1 }] }, '/sales/0/varety'],
    ['half a piece', { sales: [{ variety: 'Sesame', pieces: 0.5 }] }, '/sales/0/pieces'],
  ])('[H9] given %s, when posted, then problem details with its place', async (_what, body, path) => {
    const server = await till()
    const asked = await post(server, body, { query: path === '/sales' ? '?partial=1' : '' })
    expect([asked.status, asked.json]).toMatchObject([422, { errors: [{ path }] }])
    expect(server.journal.lastSeq()).toBe(1)
  })

  it('[H9] given a shop that counts by taps, when a till posts, then it is on record and nothing is taken off', async () => {
    const server = await startServer()
    await post(server, { sales: [{ variety: 'sesame', pieces: 2 }] })
    const events = [...server.journal.entriesAfter(1)].flatMap((entry) => entry.events)
    expect(events.map(({ type }) => type)).toEqual(['dayOpened', 'saleNoted'])
    expect(sold(server)).toEqual({})
  })

  it('[H9] given no set-up, when posted, then problem details', async () => {
    const server = await startServer({ shop: null })
    expect((await post(server, { sales: [{ variety: null, pieces: 1 }] })).status).toBe(404)
  })
})

describe('counts and oven readings', () => {
  it('[H10] given counts by name, when posted, then they are one sweep, once for one id', async () => {
    const server = await till()
    const body = {
      id: 'scale 7:00',
      counts: [
        { variety: 'Sesame', pieces: 12, within: 3 },
        { variety: 'poppy', pieces: 0 },
      ],
    }
    const first = await ask(server, '/api/v1/counts', { body })
    expect([first.status, first.json]).toMatchObject([200, { answer: { kind: 'taken' } }])
    expect((await ask(server, '/api/v1/counts', { body })).json).toEqual(first.json)
    expect(server.room.state.stock.get('sesame' as never)?.counted).toMatchObject({ pieces: 12, within: 3 })
  })

  it.each([
    ['an unknown name', { counts: [{ variety: 'Sesam', pieces: 1 }] }, '/counts/0/variety', '"Sesame"?'],
    [
      'one twice',
      {
        counts: [
          { variety: 'Sesame', pieces: 1 },
          { variety: 'sesame', pieces: 2 },
        ],
      },
      '/counts/1/variety',
      'once',
    ],
    ['a wrong time', { at: 'noonish', counts: [{ variety: 'Sesame', pieces: 1 }] }, '/at', '8:05'],
    ['nothing', {}, '/counts', 'list of 1 to 40'],
  ])(
    '[H10] given counts with %s, when posted, then it is told and nothing is done',
    async (_what, body, path, words) => {
      const server = await till()
      const asked = await ask(server, '/api/v1/counts', { body })
      expect([asked.status, asked.json]).toMatchObject([422, { errors: [{ path }] }])
      expect(asked.text).toContain(JSON.stringify(words).slice(1, -1))
      expect(server.journal.lastSeq()).toBe(1)
    },
  )

  it('[H10] given readings of the oven and of a shelf, when posted, then each is known; the unit is the shop’s own', async () => {
    const server = await till()
    const readings = [{ degrees: 480 }, { shelf: '2', degrees: 250, unit: 'C', id: 'r1' }]
    const asked = await ask(server, '/api/v1/oven-readings', { body: { readings } })
    expect([asked.status, asked.json]).toMatchObject([200, { taken: 2 }])
    const read = [...server.room.state.marks.values()].filter((mark) => mark.kind === 'oven')
    expect(read.map(({ shelfId, read: { degrees, unit } }) => [shelfId, degrees, unit])).toEqual([
      [null, 480, 'F'],
      ['s2', 250, 'C'],
    ])
  })

  it('[D79] given readings of room and cooler, when posted, then each is known once; what is none is told', async () => {
    const server = await till()
    const post = (readings: readonly object[]) => ask(server, '/api/v1/readings', { body: { readings } })
    const readings = [
      { place: 'room', degrees: 71.5 },
      { place: 'cooler', degrees: 3.25, unit: 'C', id: 'r1' },
    ]
    for (const taken of [2, 2]) expect((await post(readings)).json).toMatchObject({ taken })
    const read = [...server.room.state.readings.values()].map((one) => [one.place, one.read.thousandths, one.read.unit])
    expect(read).toEqual([
      ['room', 71_500, 'F'],
      ['cooler', 3_250, 'C'],
    ])
    // The reading with an id counted once.
    expect(server.journal.lastSeq()).toBe(4)
    const wrong = await post([
      { place: 'attic', degrees: 20 },
      { place: 'room', degrees: 900 },
    ])
    expect([wrong.status, wrong.json]).toMatchObject([
      422,
      { errors: [{ path: '/readings/0/place' }, { path: '/readings/1/degrees', right: 'A number from -40 to 220.' }] },
    ])
  })

  it('[H10] given a shelf that there is not, when its reading is posted, then it is told and nothing is done', async () => {
    const server = await till()
    const body = { readings: [{ shelf: '9', degrees: 250 }] }
    expect((await ask(server, '/api/v1/oven-readings', { body })).json).toMatchObject({
      status: 422,
      errors: [{ path: '/readings/0/shelf', right: expect.stringContaining('1, 2, 3') }],
    })
    expect(server.journal.lastSeq()).toBe(1)
  })
})

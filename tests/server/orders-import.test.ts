import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { GroupedOrder } from '../../server/orders/import-groups.ts'
import { initialsOf } from '../../server/orders/import-groups.ts'
import { isAmbiguous, ordersFile, understandOrders } from '../../server/orders/import-orders.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { OrderMapping, OrdersRead, RememberedMapping } from '../../shared-core/live/orders-import.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import { shopWith } from '../core/support/shop.ts'
import { kitchenParts } from '../core/support/shop-kitchen.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

/** Thursday in Chicago, 8:00. */
const NOW = epochMs(Date.parse('2026-11-26T08:00:00-06:00'))
const at = (text: string) => Date.parse(`${text}:00-06:00`)

interface Given {
  readonly shop?: Shop
  readonly chosen?: OrderMapping
  readonly meanings?: ReadonlyMap<string, Meaning>
  readonly known?: readonly string[]
}

async function read(text: string | Buffer, given: Given = {}): Promise<OrdersRead> {
  const bytes = typeof text === 'string' ? Buffer.from(text) : text
  const understood = await understandOrders({
    file: ordersFile(bytes),
    shop: given.shop ?? shopWith(kitchenParts()),
    nowMs: NOW,
    remembered: () => null,
    chosen: given.chosen ?? null,
    meanings: async () => given.meanings ?? new Map(),
    isKnown: ({ ref }: GroupedOrder) => given.known?.includes(ref ?? '') ?? false,
  })
  if (understood === 'too-long') throw new Error('a test’s file is short')
  return understood.told
}

const codes = ({ faults }: OrdersRead) => faults.map(({ line, fault }) => `${line} ${fault.code}`)

describe('a file of orders', () => {
  it('[M115] given a caterer’s sheet, when read, then its rows of one reference are one order with all that stands in it', async () => {
    const told = await read(
      'PO number,Customer,Phone,Needed date,Pick up time,Delivery?,Bagel,Dozens,Qty,Sliced,Paid,Notes\n' +
        'A-1,Oak Street School,555 0142,2026-11-30,7:30,deliver,Sesame,2,,yes,x,side door\n' +
        'A-1,,,,,,"mixed, no poppy",1,3,,,ring twice\n' +
        'A-2,Ann Example,,2026-11-30,8:15 am,pick up,Rye,,6,no,,\n',
    )
    expect(told.faults).toEqual([])
    const line = { without: [], dozens: 2, pieces: 0, sliced: true, bagged: false }
    expect(told.orders).toEqual([
      {
        ...{ rows: [2, 3], ref: 'A-1', mark: 'OSS', name: 'Oak Street School', phone: '555 0142' },
        ...{ note: 'side door; ring twice', dueAtMs: at('2026-11-30T07:30'), way: 'delivery', isPaid: true },
        lines: [
          { ...line, varietyId: 'sesame' },
          { ...line, varietyId: null, without: ['poppy'], dozens: 1, pieces: 3, sliced: false },
        ],
        items: [],
        guessed: [{ text: 'mixed, no poppy', meant: 'mixed, no Poppy' }],
        state: 'new',
      },
      expect.objectContaining({
        ref: 'A-2',
        mark: 'AE',
        way: 'pickUp',
        isPaid: false,
        dueAtMs: at('2026-11-30T08:15'),
      }),
    ])
  })

  it('[M116] given a Spanish sheet of another office, when read, then columns, dates, dozens and ways are understood as it writes them', async () => {
    const shop = shopWith(kitchenParts())
    const spanish = { ...shop, profile: { ...shop.profile, language: 'es', zone: 'America/Mexico_City' } as const }
    const text =
      'Folio;Cliente;Teléfono;Fecha;Hora;Entrega;Variedad;Docenas;Pagado;Nota\r\n' +
      '7;Escuela Roble;55 1234;30/11/2026;7:30 a. m.;a domicilio;Surtido sin poppy;1,5;sí;sin azúcar\r\n'
    const told = await read(Buffer.from(text, 'latin1'), { shop: spanish })
    expect([told.encoding, told.faults, told.doubts]).toEqual(['windows-1252', [], []])
    expect(told.orders).toMatchObject([
      {
        ...{ ref: '7', mark: 'ER', name: 'Escuela Roble', note: 'sin azúcar', way: 'delivery', isPaid: true },
        dueAtMs: at('2026-11-30T07:30'),
        lines: [{ varietyId: null, without: ['poppy'], dozens: 1, pieces: 6 }],
      },
    ])
  })

  it('[M117] given rows that cannot be read, when read, then each says with its line what is wrong, and only their orders stay out', async () => {
    const told = await read(
      'Order,Mark,Date,Time,Way,Bagel,Dozens,Pieces,Item,Sliced\n' +
        '1,,2026-11-30,7:30,,Sesame,1,,,\n' +
        '2,Oak Street School,2026-11-30,7:30,,Sesame,1,,,\n' +
        '3,,30th,7:30,,Sesame,1,,,\n' +
        '4,,2026-11-30,half seven,,Sesame,1,,,\n' +
        '5,,2026-11-25,7:30,,Sesame,1,,,\n' +
        '6,,2026-11-30,7:30,by owl,Sesame,1,,,\n' +
        '7,,2026-11-30,7:30,,Sesamy seedlings,1,,,\n' +
        '8,,2026-11-30,7:30,,Sesame,1.3,,,\n' +
        '9,,2026-11-30,7:30,,Sesame,,-2,,\n' +
        '10,,2026-11-30,7:30,,Sesame,1,,,perhaps\n' +
        '11,,2026-11-30,7:30,,,1,,Soup,\n' +
        '12,,2026-11-30,7:30,,,1,,,\n' +
        '13,,2026-11-30,7:30,,Sesame,1,,,\n' +
        '13,,2026-11-30,9:30,,Poppy,1,,,\n' +
        '14,,2026-11-30,7:30,,Sesame,,9000,,\n' +
        '15,,,,,Sesame,1,,,\n',
    )
    expect(codes(told)).toEqual([
      ...['3 mark-too-long', '4 no-date', '5 no-time', '6 not-to-come', '7 no-way', '8 no-variety', '9 no-dozens'],
      ...['10 no-pieces', '11 no-yes', '12 no-item', '13 nothing-ordered', '15 rows-differ', '16 too-many-pieces'],
      '17 no-time',
    ])
    expect(told.orders.map(({ ref }) => ref)).toEqual(['1'])
    for (const { fault } of told.faults) expect(fault.text).toMatch(/\. .*\.$|\?$/)
    expect(told.faults.find(({ line }) => line === 3)?.fault.text).toContain('a name has its own column')
  })

  it('[M118] given dates and times that may be read in two ways, when read, then it asks; said, it is as it was said', async () => {
    const text = 'Order,Date,Time,Bagel,Dozens\n1,12/10/2026,2:30,Sesame,1\n2,12/11/2026,9:00,Sesame,1\n'
    const told = await read(text)
    expect(told.doubts.map(({ code, params }) => [code, params])).toEqual([
      ['day-or-month', { text: '12/10/2026', one: '2026-12-10', other: '2026-10-12' }],
      ['am-or-pm', { text: '2:30' }],
    ])
    expect(isAmbiguous(told)).toBe(true)
    const chosen = { ...told.mapping, isAfternoonMeant: true }
    const said = await read(text, { chosen })
    expect(said.orders.map(({ dueAtMs }) => dueAtMs)).toEqual([at('2026-12-10T14:30'), at('2026-12-11T09:00')])
    // A day after the 12th, and an hour after noon, leave no doubt.
    const plain = await read('Order,Date,Time,Bagel,Dozens\n1,12/14/2026,14:30,Sesame,1\n2,12/11/2026,9:00,Rye,1\n')
    expect([plain.doubts, plain.orders[0]?.dueAtMs]).toEqual([[], at('2026-12-14T14:30')])
    const am = await read('Order,Date,Time,Bagel,Dozens\n1,12/14/2026,4:30 am,Sesame,1\n')
    expect(am.doubts).toEqual([])
  })

  it('[M119] given names of the till and of the menu, when read, then they mean what the desk has said, and what is made to order needs its bagel', async () => {
    const shop = shopWith(kitchenParts())
    const [onBagel] = [...shop.menu.values()].filter((item) => item.onBagel)
    const meanings = new Map<string, Meaning>([
      ['School box', { kind: 'pack', lines: [{ varietyId: varietyId('sesame'), pieces: 6 }] }],
      ['Coffee jug', { kind: 'nothing' }],
    ])
    const told = await read(
      'Order,Date,Time,Bagel,Pieces,Sandwich\n' +
        '1,2026-11-30,7:30,School box,3,\n1,,,Coffee jug,1,\n' +
        `2,2026-11-30,7:30,Sesame,4,${onBagel?.name}\n3,2026-11-30,7:30,,4,${onBagel?.name}\n4,2026-11-30,7:30,Half dozen poppy bagels,2,\n`,
      { shop, meanings },
    )
    expect(codes(told)).toEqual(['5 no-bagel'])
    expect(told.orders.map(({ lines, items }) => [lines, items])).toMatchObject([
      [[{ varietyId: 'sesame', dozens: 0, pieces: 18 }], []],
      [[], [{ itemId: onBagel?.id, varietyId: 'sesame', times: 4 }]],
      [[{ varietyId: 'poppy', dozens: 0, pieces: 12 }], []],
    ])
  })

  it.each([
    ['Oak Street School', 'OSS'],
    ['ana', 'A'],
    ['', null],
    ['Ñandú & Co. of the very long name of nine words', 'ÑCOTVLNO'],
  ])('[M120] given the name "%s" and no mark, when read, then it is called %s', (name, mark) => {
    expect(initialsOf(name)).toBe(mark)
  })
})

/** A week from now: the server's time is the real one. */
const DAY = new Date(Date.now() + 7 * 86_400_000).toISOString().slice(0, 10)
const SHEET =
  'Order,Customer,Phone,Date,Time,Bagel,Dozens\n' +
  `PO-1,Zebulon Quist,555 0199,${DAY},7:30,Sesame,2\nPO-2,,,${DAY},8:00,Poppy,1\nPO-3,,,${DAY},8:00,Nothing like it,1\n`

async function put(server: TestServer, text: string, query = ''): Promise<OrdersRead> {
  const asked = await ask(server, `/api/v1/orders/import${query}`, {
    method: 'POST',
    body: text,
    headers: { 'content-type': 'text/csv' },
  })
  expect(asked.status, asked.text).toBe(200)
  return asked.json as OrdersRead
}

const states = ({ orders }: OrdersRead) => orders.map(({ ref, state }) => `${ref} ${state}`)

describe('taking a file of orders', () => {
  it('[M121] given a file, when looked at, taken, put in again and cancelled in between, then each order is taken once for ever', async () => {
    const server = await startServer({ shop: shopWith(kitchenParts()) })
    const seq = server.journal.lastSeq()
    expect(states(await put(server, SHEET))).toEqual(['PO-1 new', 'PO-2 new'])
    expect(server.journal.lastSeq()).toBe(seq)
    const taken = await put(server, SHEET, '?take=1')
    expect([states(taken), codes(taken)]).toEqual([['PO-1 taken', 'PO-2 taken'], ['4 no-variety']])
    const open = [...server.room.state.orders.values()]
    expect(open.map(({ ref, mark }) => `${ref} ${mark}`)).toEqual(['PO-1 ZQ', 'PO-2 1'])
    expect(states(await put(server, SHEET, '?take=1'))).toEqual(['PO-1 known', 'PO-2 known'])
    const cancel = { id: 'cancelpo1000', deviceSeq: 1, tappedAtMs: null, type: 'cancelOrder', orderId: open[0]?.id }
    expect((await ask(server, '/api/v1/commands', { body: cancel })).status).toBe(200)
    expect(states(await put(server, SHEET, '?take=1'))).toEqual(['PO-1 known', 'PO-2 known'])
    expect(server.room.state.orders.size).toBe(1)
    // Rows without a reference are known by what they say.
    const text = `Date,Time,Bagel,Dozens\n${DAY},7:30,Sesame,2\n${DAY},7:30,Sesame,2\n`
    expect((await put(server, text, '?take=1')).orders.map(({ state }) => state)).toEqual(['taken', 'taken'])
    expect((await put(server, text, '?take=1')).orders.map(({ state }) => state)).toEqual(['known', 'known'])
    expect(server.room.state.orders.size).toBe(3)
  })

  it('[M121] given sheets that count from 1 each week, when the next one is put in after the first was fetched, then its orders are new', async () => {
    const server = await startServer({ shop: shopWith(kitchenParts()) })
    const week = (days: number) => `Order,Date,Time,Bagel,Dozens\n1,${dateAfter(DAY, days)},7:30,Sesame,2\n`
    expect(states(await put(server, week(0), '?take=1'))).toEqual(['1 taken'])
    const [first] = server.room.state.orders.keys()
    await ask(server, `/api/v1/orders/${first}/handed-over`, { body: {} })
    expect(states(await put(server, week(0), '?take=1'))).toEqual(['1 known'])
    expect(states(await put(server, week(7), '?take=1'))).toEqual(['1 taken'])
  })

  it('[M123] given a first row that is an order and was said to be the header, when taken, then nobody of it is remembered', async () => {
    const server = await startServer({ shop: shopWith(kitchenParts()) })
    const rows = `Name,Date,Time,Bagel,Dozens\nZilla Quandary,${DAY},7:30,Sesame,2\nA B,${DAY},8:30,Poppy,1\n`
    const { mapping } = await put(server, rows)
    const [, ...bare] = rows.split('\n')
    const said = encodeURIComponent(JSON.stringify(mapping))
    expect((await put(server, bare.join('\n'), `?take=1&mapping=${said}`)).orders).toHaveLength(1)
    expect((await ask(server, '/api/v1/orders/import/mappings')).json).toEqual([])
  })

  it('[M122] given an ambiguous file, when it is to be taken, then it is asked first; said once, its header is remembered until forgotten', async () => {
    const server = await startServer({ shop: shopWith(kitchenParts()) })
    const text = (ref: string) => `Order,Date,Time,Bagel,Dozens\n${ref},${DAY},2:30,Sesame,1\n`
    const post = (address: string, body: string) =>
      ask(server, address, { method: 'POST', body, headers: { 'content-type': 'text/csv' } })
    const asked = await post('/api/v1/orders/import?take=1', text('1'))
    expect([asked.status, server.room.state.orders.size]).toEqual([409, 0])
    const { mapping } = await put(server, text('1'))
    const said = encodeURIComponent(JSON.stringify({ ...mapping, isAfternoonMeant: true }))
    expect(states(await put(server, text('1'), `?take=1&mapping=${said}`))).toEqual(['1 taken'])
    const again = await put(server, text('2'), '?take=1')
    expect([again.isRemembered, states(again)]).toEqual([true, ['2 taken']])
    const hour = ({ dueAtMs }: { dueAtMs: number }) => new Date(dueAtMs - 6 * 3_600_000).toISOString().slice(11, 16)
    expect([...server.room.state.orders.values()].map(hour)).toEqual(['14:30', '14:30'])
    const known = (await ask(server, '/api/v1/orders/import/mappings')).json as readonly RememberedMapping[]
    expect(known.map(({ header }) => header)).toEqual([['Order', 'Date', 'Time', 'Bagel', 'Dozens']])
    const forget = { method: 'PUT', body: { header: known[0]?.header, mapping: null } }
    expect((await ask(server, '/api/v1/orders/import/mappings', forget)).json).toEqual([])
    expect((await put(server, text('3'))).isRemembered).toBe(false)
  })

  it('[M122, M123] given what is no file of orders, and names in one that is, when put in, then it says what would be right, and the names lie where details lie and nowhere else', async () => {
    const server = await startServer({ shop: shopWith(kitchenParts()) })
    const post = (query: string, body: unknown, type = 'text/csv') =>
      ask(server, `/api/v1/orders/import${query}`, { method: 'POST', body, headers: { 'content-type': type } })
    expect((await post('', '')).status).toBe(422)
    expect((await post('', 'PK\u0003\u0004')).text).toContain('save it as CSV')
    expect((await post('', { orders: [] }, 'application/json')).status).toBe(415)
    expect((await post(`?mapping=${encodeURIComponent('{"skip":-1}')}`, SHEET)).status).toBe(422)
    expect((await post('?mapping=none', SHEET)).status).toBe(422)
    const long = `Date,Time,Bagel\n${`${DAY},7:30,Sesame\n`.repeat(5_001)}`
    expect((await post('', long)).text).toContain('more than 5000 rows')
    await put(server, SHEET, '?take=1')
    const [order] = server.room.state.orders.values()
    const told = await ask(server, `/api/v1/orders/details?ids=${order?.id}`)
    expect(told.json).toMatchObject({ details: [{ name: 'Zebulon Quist', phone: '555 0199' }] })
    await server.stop()
    for (const end of ['', '-wal'])
      expect(readIfThere(server.file + end), `the journal${end}`).not.toMatch(/Zebulon|555 0199/)
  })
})

function readIfThere(file: string): string {
  try {
    return readFileSync(file, 'latin1')
  } catch {
    return ''
  }
}

import { describe, expect, it } from 'vitest'
import { readLoadList } from '../../server/http/load-list.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, lines } from '../core/support/make.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'
import { ask, startServer } from './support/start-server.ts'

const TODAY = '2026-11-24'
const shop = shopWith({
  varieties: table([
    ...shopWith().varieties.values(),
    variety({ id: 'old', order: 9, retired: true }),
    variety({ id: 'salt', name: 'Salt & Pepper', order: 10 }),
  ]),
})
const read = (raw: unknown, today = TODAY, nowMs = epochMs(0)) => readLoadList(raw, shop, { today, nowMs })
const wrongs = (raw: unknown) => {
  const result = read(raw)
  return result.ok ? [] : result.problems.map(({ path, wrong }) => `${path} ${wrong}`)
}

const TWO_LOADS = {
  ok: true,
  loads: [
    { shelfId: 's1', inAtMs: at('5:10'), lines: lines('sesame', 36, 'poppy', 12) },
    { shelfId: null, inAtMs: null, lines: lines('plain', 48) },
  ],
}

describe('a load list', () => {
  it.each([
    ['typed at 4:00 for this morning', at('4:00'), at('5:10')],
    ['typed at 5:40, half an hour late', at('5:40'), at('5:10')],
    ['typed at 20:52 for tomorrow', at('20:52'), at('5:10', 1)],
  ])('[H6] given one %s, then it counts for the day that is meant', (_when, nowMs, inAtMs) => {
    const list = { loads: [{ in: '5:10', lines: [['Sesame', 24]] }] }
    expect(read(list, TODAY, nowMs)).toMatchObject({ ok: true, loads: [{ inAtMs }] })
  })

  it.each([
    [
      'JSON',
      {
        loads: [
          {
            in: '5:10',
            shelf: '1',
            lines: [
              ['Sesame', 36],
              ['poppy', 12],
            ],
          },
          { lines: [['PLAIN', 48]] },
        ],
      },
    ],
    [
      'JSON with nulls',
      {
        loads: [
          {
            in: '05:10',
            shelf: 's1',
            lines: [
              ['sesame', 36],
              ['Poppy', 12],
            ],
          },
          { in: null, shelf: null, lines: [['plain', 48]] },
        ],
      },
    ],
    ['CSV', 'in,shelf,variety,pieces\n05:10,1,Sesame,36\n05:10,1,Poppy,12\n,,Plain,48\n'],
    ['CSV without a header', '5:10,1,Sesame,36\n5:10,1,Poppy,12\n,,Plain,48'],
    [
      'CSV of a Spanish spreadsheet',
      '\uFEFFin;shelf;variety;pieces\r\n05:10;1;Sesame;36\r\n05:10;1;Poppy;12\r\n;;Plain;48\r\n',
    ],
    ['CSV with quotes, tabs and spaces', '"05:10"\t1\t" sesame "\t36\n05:10\t1\tPoppy\t12\n\t\tPlain\t48'],
    ['CSV that says a variety twice', '5:10,1,Sesame,24\n5:10,1,Poppy,12\n5:10,1,Sesame,12\n,,Plain,48'],
  ])("[H6] given one as %s, when read, then times, shelves and varieties are the shop's", (_form, raw) => {
    expect(read(raw)).toEqual(TWO_LOADS)
  })

  it('[H6] given rows of one time and shelf, when an empty line is between, then they are two loads', () => {
    const result = read(',,Sesame,24\n,,Poppy,24\n\n,,Sesame,24')
    expect(result.ok && result.loads.map((load) => load.lines)).toEqual([
      lines('sesame', 24, 'poppy', 24),
      lines('sesame', 24),
    ])
  })

  it.each([
    ['comes twice', '2026-11-01', '1:30', '2026-11-01T06:30Z'],
    ['does not come', '2026-03-08', '2:30', '2026-03-08T08:30Z'],
  ])(
    '[H6] given a time that %s on that day, when read, then it is the first, or moves forward',
    (_what, date, clock, expected) => {
      const raw = { date, loads: [{ in: clock, lines: [['Sesame', 1]] }] }
      const result = read(raw)
      expect(result.ok && result.loads[0]?.inAtMs).toBe(Date.parse(expected))
    },
  )

  it.each([
    ['an unknown variety', '5:10,1,Sesame,36\n5:10,1,Tulip,12', ['/rows/2 Line 2: The shop has no variety "Tulip".']],
    ['a retired one', '5:10,1,Old,36', ['/rows/1 Line 1: The shop has no variety "Old".']],
    ['an unknown shelf', '5:10,9,Sesame,36', ['/rows/1 Line 1: The shop has no shelf "9".']],
    ['a time that is none', '25:10,1,Sesame,36', ['/rows/1 Line 1 cannot be read: "25:10,1,Sesame,36".']],
    ['no pieces', '5:10,1,Sesame,0', ['/rows/1 Line 1 cannot be read: "5:10,1,Sesame,0".']],
    ['half a piece', '5:10,1,Sesame,1.5', ['/rows/1 Line 1 cannot be read: "5:10,1,Sesame,1.5".']],
    ['a column too few', '5:10,Sesame,36', ['/rows/1 Line 1 cannot be read: "5:10,Sesame,36".']],
    [
      'several mistakes, after an empty line',
      'in,shelf,variety,pieces\n\n5:10,1,Tulip,3\n5:10,8,Rose,3',
      [
        '/rows/3 Line 3: The shop has no variety "Tulip".',
        '/rows/4 Line 4: The shop has no shelf "8".',
        '/rows/4 Line 4: The shop has no variety "Rose".',
      ],
    ],
    [
      'JSON: an unknown variety',
      {
        loads: [
          {
            lines: [
              ['Sesame', 1],
              ['Tulip', 1],
            ],
          },
        ],
      },
      ['/loads/0/lines/1/0 The shop has no variety "Tulip".'],
    ],
    [
      'JSON: more than one load can be',
      {
        loads: [
          {
            lines: [
              ['Sesame', 4000],
              ['Sesame', 4000],
            ],
          },
        ],
      },
      ['/loads/0/lines/1/0 8000 pieces of "Sesame" in one load.'],
    ],
  ])('[H6] given %s, when read, then it is told where, and nothing is taken', (_what, raw, expected) => {
    expect(wrongs(raw)).toEqual(expected)
  })

  it.each([
    ['nothing', undefined],
    ['no list', { loads: 'all' }],
    ['a load without lines', { loads: [{ lines: [] }] }],
    ['pieces as text', { loads: [{ lines: [['Sesame', '36']] }] }],
    ['a date that is none', { date: '2026-13-01', loads: [] }],
    ['an open quote', '"5:10,1,Sesame,36\n5:10,1'],
    ['more loads than a day has', { loads: Array.from({ length: 201 }, () => ({ lines: [['Sesame', 1]] })) }],
    ['more loads than a day has, as CSV', Array.from({ length: 201 }, () => ',,Sesame,1\n').join('\n')],
    ['more rows than a load has', Array.from({ length: 41 }, () => ',,Sesame,1').join('\n')],
  ])('[H6] given %s, when read, then it is refused with what would be right', (_what, raw) => {
    const result = read(raw)
    expect(result.ok).toBe(false)
    for (const { right } of result.ok ? [] : result.problems) expect(right.length).toBeGreaterThan(5)
  })

  it('[H6] given one over HTTP, when posted as CSV and as JSON, then the shop has it; with a mistake the old one stays', async () => {
    const server = await startServer()
    const headers = { 'content-type': 'text/csv' }
    const csv = await ask(server, '/api/v1/load-list?date=2026-11-25', { body: '5:10,1,Sesame,36', headers })
    expect([csv.status, csv.json]).toMatchObject([200, { answer: { kind: 'taken' } }])
    const planned = () => [...server.room.state.planned.values()].map((load) => load.inAtMs)
    expect(planned()).toEqual([at('5:10', 1)])
    const wrong = await ask(server, '/api/v1/load-list', { body: '5:10,1,Tulip,36', headers })
    expect([wrong.status, wrong.json]).toMatchObject([422, { errors: [{ path: '/rows/1' }] }])
    expect((await ask(server, '/api/v1/load-list?date=tomorrow', { body: '5:10,1,Sesame,36', headers })).status).toBe(
      400,
    )
    expect(planned()).toEqual([at('5:10', 1)])
    const json = await ask(server, '/api/v1/load-list', {
      body: { date: '2026-11-26', loads: [{ in: '5:20', lines: [['Sesame', 24]] }] },
    })
    expect(json.status).toBe(200)
    expect(planned()).toEqual([at('5:20', 2)])
  })
})

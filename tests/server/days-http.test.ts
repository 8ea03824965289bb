import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { applyEntry } from '../../shared-core/day/apply.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import type { StateJson } from '../../shared-core/day/state-json.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import { lines } from '../core/support/make.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const shop = shopWith({
  varieties: table([
    variety({ id: 'sesame', name: 'Sesame, "toasted"', order: 1 }),
    variety({ id: 'poppy', name: '=2+3', order: 2 }),
  ]),
})

/** Taken through the same door as a script's. */
async function act(server: TestServer, one: Act, n: number): Promise<void> {
  const body = { id: `days${String(n).padStart(8, '0')}`, deviceSeq: n, tappedAtMs: null, ...one }
  const asked = await ask(server, '/api/v1/commands', { body })
  expect([asked.status, asked.text]).toEqual([200, asked.text])
}

async function servedDay(): Promise<TestServer> {
  const server = await startServer({ shop })
  const acts: Act[] = [
    { type: 'carryIn', doughId: doughId('plain'), varietyId: null, pieces: 60, stage: 'rack', sinceMs: null },
    { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: lines('sesame', 24, 'poppy', 12) },
  ]
  for (const [n, one] of acts.entries()) await act(server, one, n + 1)
  const [load] = [...server.room.state.loads.values()]
  if (load === undefined) throw new Error('nothing was loaded')
  await act(server, { type: 'out', loadId: load.id, from: load.phase, lines: null }, 3)
  await act(server, { type: 'sell', lines: lines('sesame', 6) }, 4)
  await act(server, { type: 'remove', varietyId: varietyId('poppy'), pieces: 2, fate: 'given' }, 5)
  return server
}

const close = (server: TestServer) => act(server, { type: 'closeDay', crewMinutes: 60 }, 9)
const labelOf = async (server: TestServer) => {
  const [day] = (await ask(server, '/api/v1/days')).json as { label: string }[]
  return day?.label ?? ''
}

describe('past days over HTTP', () => {
  it('[H8] given an open day, when listed and replayed, then it is today, and leads to the state now', async () => {
    const server = await servedDay()
    expect((await ask(server, '/api/v1/days')).json).toMatchObject([{ closedAtMs: null, figures: null }])
    const { status, json } = await ask(server, '/api/v1/days/today')
    const day = json as { foldVersion: number; start: StateJson; entries: Entry[]; clock: { zone: string } }
    expect([status, day.foldVersion, day.clock.zone]).toEqual([200, FOLD_VERSION, 'America/Chicago'])
    const state = fromJson(day.start)
    for (const entry of day.entries) applyEntry(state, entry)
    expect(hashState(state)).toBe(hashState(server.room.state))
    expect((await ask(server, '/api/v1/days/today/figures')).json).toMatchObject({
      figures: { baked: { pieces: 36, crewMinutes: null }, left: null },
    })
  })

  it('[H8] given a closed day, when asked by its label, then its record and figures, and today there is none', async () => {
    const server = await servedDay()
    await close(server)
    const label = await labelOf(server)
    const figures = (await ask(server, `/api/v1/days/${label}/figures`)).json
    expect(figures).toMatchObject({
      label,
      closedAtMs: expect.any(Number),
      figures: { left: { dayOld: { pieces: 28 }, given: { pieces: 2 } }, baked: { dozensPerCrewHour: 3 } },
    })
    expect((await ask(server, '/api/v1/days')).json).toMatchObject([figures])
    const today = await ask(server, '/api/v1/days/today')
    expect([today.status, today.type]).toEqual([404, 'application/problem+json'])
    expect(today.text).toContain('No day is open now.')
  })

  it.each([
    ['/api/v1/days/monday', 400, '2026-11-24'],
    ['/api/v1/days/2026-1-4/figures', 400, '2026-11-24'],
    ['/api/v1/days/1999-01-01', 404, '/api/v1/days'],
    ['/api/v1/days/1999-01-01/account.csv', 404, '/api/v1/days'],
    ['/api/v1/days/today?opened=then', 400, '?opened='],
    ['/api/v1/days?limit=0', 400, '"limit"'],
    ['/api/v1/days?before=x', 400, '"before"'],
  ])('[H8] given %s, when asked, then problem details with what would be right', async (path, status, words) => {
    const asked = await ask(await startServer(), path)
    expect([asked.status, asked.type]).toEqual([status, 'application/problem+json'])
    expect((asked.json as { detail: string }).detail).toContain(words)
  })

  it('[F9] given a closed day, when its account is fetched, then a CSV that reads back with every piece', async () => {
    const server = await servedDay()
    await close(server)
    const label = await labelOf(server)
    const asked = await ask(server, `/api/v1/days/${label}/account.csv`)
    expect([asked.status, asked.type]).toEqual([200, 'text/csv'])
    expect(asked.headers['content-type']).toContain('charset=utf-8')
    expect(asked.headers['content-disposition']).toBe(`attachment; filename=account-${label}.csv`)
    // RFC 4180: every line ends in CRLF, quotes in a cell are doubled.
    expect(asked.text.split('\r\n').at(-1)).toBe('')
    expect(asked.text).toContain('"Sesame, ""toasted"""')
    const rows = parse(asked.text, { columns: true }) as Record<string, string>[]
    expect(rows.map(({ row, dough, variety: name }) => [row, dough, name])).toEqual([
      ['dough', 'Plain', ''],
      ['variety', 'Plain', 'Sesame, "toasted"'],
      // A spreadsheet would reckon with it.
      ['variety', 'Plain', "'=2+3"],
    ])
    const [plain, sesame, poppy] = rows
    expect(plain).toMatchObject({ carried_in: '60', sold: '6', given: '2', left_day_old: '28', still_there: '24' })
    expect(sesame).toMatchObject({ baked: '24', sold: '6', left_day_old: '18', price: '1.60', sales: '9.60' })
    expect(poppy).toMatchObject({ baked: '12', given: '2', left_day_old: '10', sales: '0.00' })
  })

  it('[F9] given a day, when its entries are fetched, then a JSON on each line, the day whole', async () => {
    const server = await servedDay()
    const asked = await ask(server, '/api/v1/days/today/entries.jsonl')
    expect([asked.status, asked.type]).toEqual([200, 'application/jsonl'])
    const read = asked.text
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Entry)
    expect(read).toEqual([...server.journal.entriesAfter(1)])
  })

  it('[H8] given a journal of which no days are made yet, when asked, then 503 with how many entries are to go, then the days', async () => {
    const server = await startServer()
    const truth = server.journal.lastSeq
    server.journal.lastSeq = () => 20_000
    const early = await ask(server, '/api/v1/days')
    server.journal.lastSeq = truth
    expect([early.status, early.headers['retry-after']]).toEqual([503, '2'])
    expect(early.text).toMatch(/\d{5} entries are to go/)
    expect((await ask(server, '/api/v1/days')).status).toBe(200)
  })
})

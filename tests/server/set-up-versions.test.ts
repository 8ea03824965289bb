import { describe, expect, it } from 'vitest'
import type { Version } from '../../server/shop/versions.ts'
import { setUpAfter, versionsOf } from '../../server/shop/versions.ts'
import { emptyState } from '../../shared-core/day/apply.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import type { SetUpFile } from '../../shared-core/shop/set-up-schema.ts'
import { must } from '../../shared-core/support.ts'
import { at } from '../core/support/make.ts'
import { record } from '../core/support/record.ts'
import { shopWith } from '../core/support/shop.ts'
import { setUpEntries } from './support/made-entries.ts'
import type { Asked, TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const FILE = toSetUpFile(shopWith())
const withSesameAt = (priceCents: number): SetUpFile => ({
  ...FILE,
  varieties: FILE.varieties.map((one) => (one.id === 'sesame' ? { ...one, priceCents } : one)),
})
const without = (id: string): SetUpFile => ({ ...FILE, varieties: FILE.varieties.filter((one) => one.id !== id) })
const post = (server: TestServer, body: SetUpFile, query = '') => ask(server, `/api/v1/set-up${query}`, { body })
const versions = async (server: TestServer, query = '') =>
  (await ask(server, `/api/v1/set-up/versions${query}`)).json as (Version & { device: string | null })[]
const restore = (server: TestServer, seq: number | string, query = '') =>
  ask(server, `/api/v1/set-up/versions/${seq}/restore${query}`, { body: {} })
const priceNow = async (server: TestServer) =>
  server.room.read(({ shop }) => shop?.varieties.get(varietyId('sesame'))?.priceCents)
const count = { id: 'count000001', deviceSeq: 1, tappedAtMs: null, type: 'count', varietyId: 'sesame', pieces: 12 }

describe('the versions of a set-up', () => {
  it('[U10] given the first set-up and two changes, then each is told, newest first, with who and what', async () => {
    const server = await startServer()
    await post(server, withSesameAt(200))
    await ask(server, '/api/v1/commands', { body: count })
    await post(server, without('poppy'))
    const [newest, priced, first, ...more] = await versions(server)
    expect(more).toEqual([])
    expect(newest).toMatchObject({ seq: 4, deviceId: 'http', device: null, isPlanned: false, lost: 0 })
    expect(newest?.told).toEqual([
      { entity: 'variety', id: 'sesame', name: 'Sesame', what: 'changed', fields: ['priceCents'] },
      ...['plain', 'focaccia', 'cheddar', 'rye'].map((id) =>
        expect.objectContaining({ id, what: 'moved', fields: ['order'] }),
      ),
      { entity: 'variety', id: 'poppy', name: 'Poppy', what: 'retired', fields: ['order', 'retired'] },
    ])
    expect(priced?.told).toContainEqual(expect.objectContaining({ id: 'sesame', what: 'changed' }))
    expect(first).toMatchObject({ seq: 1, deviceId: 'terminal' })
    expect(first?.told).toContainEqual({ entity: 'hours', id: null, name: null, what: 'added', fields: [] })
    expect((await versions(server, '?before=4')).map(({ seq }) => seq)).toEqual([2, 1])
    expect((await ask(server, '/api/v1/set-up/versions?before=soon')).status).toBe(400)
  })

  it('[U10] given a change planned and taken up by a sale, and one dropped, then the first is a version of who planned it', () => {
    const made = versionsOf(setUpEntries())
    expect(made.map(({ seq, isPlanned, told }) => [seq, isPlanned, told.length > 0])).toEqual([
      [1, false, true],
      [5, true, true],
    ])
    expect(made[1]?.told).toEqual([
      { entity: 'variety', id: 'sesame', name: 'Sesame', what: 'changed', fields: ['priceCents'] },
    ])
  })

  it('[U10] given one that no longer fitted when it was due, then the version tells that it was lost', () => {
    const entries = setUpEntries()
    const lost = entries.map((entry) =>
      entry.seq === 5 ? { ...entry, events: entry.events.filter(({ type }) => type !== 'setUpChanged') } : entry,
    )
    expect(versionsOf(lost).map(({ seq, told, lost: count }) => [seq, told.length, count])).toContainEqual([5, 0, 1])
  })

  it('[U10] given a change that a planned one does not outlive, then it is of who made it, and one is lost', () => {
    const shop = shopWith()
    const rye = must(shop.doughs, doughId('rye'))
    const ryeVariety = must(shop.varieties, varietyId('rye'))
    const seeded = { ...ryeVariety, id: varietyId('seeded'), name: 'Seeded', order: 9 }
    const day = record(emptyState())
    day.at('4:00', { type: 'changeSetUp', changes: setUpChanges(null, shop) })
    const planned = [{ entity: 'variety', value: seeded }] as const
    day.at('4:10', { type: 'changeSetUp', changes: planned, fromMs: at('12:00') }, { device: 'desk-1' })
    const changes = [
      { entity: 'dough', value: { ...rye, retired: true } },
      { entity: 'variety', value: { ...ryeVariety, retired: true } },
    ] as const
    day.at('4:20', { type: 'changeSetUp', changes }, { device: 'desk-2', confirmed: ['loses-planned'] })
    expect(versionsOf(day.entries).at(-1)).toMatchObject({ seq: 3, deviceId: 'desk-2', isPlanned: false, lost: 1 })
  })

  it('[U11] given entries, then the set-up after one of them is as it was then', () => {
    const price = (seq: number) => setUpAfter(setUpEntries(), seq)?.varieties.get(varietyId('sesame'))?.priceCents
    expect([1, 5].map(price)).toEqual([160, 200])
    expect(
      setUpAfter(
        [...setUpEntries()].filter(({ seq }) => seq !== 2),
        2,
      ),
    ).toBeNull()
    expect(setUpAfter(setUpEntries(), 99)).toBeNull()
  })
})

describe('the way back to a version', () => {
  it('[U11] given a changed price, when the version before is restored, then it is that again, as a new version', async () => {
    const server = await startServer()
    await post(server, FILE)
    await post(server, withSesameAt(200))
    const [changed] = await versions(server)
    await post(server, withSesameAt(250))
    const asked = await restore(server, changed?.seq ?? 0)
    expect(asked.json).toMatchObject({ answer: { kind: 'taken' } })
    expect(await priceNow(server)).toBe(200)
    expect((await versions(server))[0]?.told).toEqual([
      { entity: 'variety', id: 'sesame', name: 'Sesame', what: 'changed', fields: ['priceCents'] },
    ])
    // It is so already: nothing more is written.
    const { seq } = server.room.state
    await restore(server, changed?.seq ?? 0)
    expect(server.room.state.seq).toBe(seq)
  })

  it('[U11] given a variety made since and baked, when the version before is restored, then it asks, and ?confirm= says yes', async () => {
    const server = await startServer()
    await post(server, without('sesame'))
    const [before] = await versions(server)
    await post(server, FILE)
    await ask(server, '/api/v1/commands', { body: count })
    const asked = await restore(server, before?.seq ?? 0)
    expect([asked.status, asked.type]).toEqual([409, 'application/problem+json'])
    expect(asked.json).toMatchObject({ answer: { kind: 'ask', asks: [{ code: 'retires-in-use' }] } })
    expect((await restore(server, before?.seq ?? 0, '?confirm=retires-in-use')).status).toBe(200)
    expect(server.room.state.shop?.varieties.get(varietyId('sesame'))?.retired).toBe(true)
  })

  it.each([['99'], ['2'], ['soon'], ['-1']])('[U11] given no version %s, then 404', async (seq) => {
    const server = await startServer()
    await ask(server, '/api/v1/commands', { body: count })
    expectProblem(await restore(server, seq), 404)
  })

  it('[U11] given a counter, when it restores, then 403: it may not change the set-up', async () => {
    const server = await startServer()
    await post(server, withSesameAt(200))
    const headers = { 'x-device-role': 'counter', 'x-device-id': 'till', 'x-device-name': 'Till' }
    const asked = await ask(server, '/api/v1/set-up/versions/1/restore', { body: {}, headers })
    expectProblem(asked, 403)
  })
})

describe('a dry run', () => {
  it('[U12] given a changed file, when tried, then it tells the changes and what would be asked, and nothing is written', async () => {
    const server = await startServer()
    await post(server, FILE)
    await ask(server, '/api/v1/commands', { body: count })
    const { seq } = server.room.state
    expect((await post(server, withSesameAt(200), '?dryRun=1')).json).toMatchObject({
      dryRun: true,
      command: { type: 'changeSetUp', changes: [{ entity: 'variety', value: { id: 'sesame', priceCents: 200 } }] },
      changes: [{ entity: 'variety', id: 'sesame', name: 'Sesame', what: 'changed', fields: ['priceCents'] }],
      answer: { kind: 'taken' },
    })
    expect((await post(server, without('sesame'), '?dryRun=1')).json).toMatchObject({
      answer: { kind: 'ask', asks: [{ code: 'retires-in-use', params: { id: 'sesame', pieces: 12 } }] },
    })
    expect((await post(server, FILE, '?dryRun=1')).json).toMatchObject({
      dryRun: true,
      command: { changes: [] },
      changes: [],
      answer: { kind: 'taken' },
    })
    expect((await restore(server, 1, '?dryRun=1')).json).toMatchObject({ dryRun: true })
    expect(server.room.state.seq).toBe(seq)
    expect(await priceNow(server)).toBe(160)
  })

  it('[U12] given mistakes, when tried, then they are told as always; given another word for yes, then 400', async () => {
    const server = await startServer()
    expectProblem(await ask(server, '/api/v1/set-up?dryRun=1', { body: { ...FILE, kettle: 7 } }), 422)
    expectProblem(await post(server, FILE, '?dryRun=yes'), 400)
    expectProblem(await post(server, FILE, '?fromMs=tomorrow'), 400)
    expectProblem(await post(server, FILE, '?fromMs=999999999999999'), 400)
  })

  it('[U6] given a file that holds from later on, when posted, then it is planned, and the shop is as it was', async () => {
    const server = await startServer()
    await post(server, FILE)
    const fromMs = server.room.state.recordedAtMs + 3_600_000
    expect((await post(server, withSesameAt(200), `?fromMs=${fromMs}`)).status).toBe(200)
    expect([...server.room.state.setUps.values()].map((one) => one.fromMs)).toEqual([fromMs])
    expect(await priceNow(server)).toBe(160)
  })
})

function expectProblem(asked: Asked, status: number): void {
  expect([asked.status, asked.type]).toEqual([status, 'application/problem+json'])
}

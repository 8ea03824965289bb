import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../fixed-seed.ts'
import { Door } from '../../server/devices/door.ts'
import { makeApp } from '../../server/http/app.ts'
import { pages } from '../../server/http/pages.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { parseSetUpFile } from '../../shared-core/shop/set-up-file.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import type { Asked } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

const sell = (id: string, pieces = 1) => ({
  id,
  deviceSeq: 1,
  tappedAtMs: null,
  type: 'sell',
  lines: lines('sesame', pieces),
})
const flip = (id: string) => ({ id, deviceSeq: 1, tappedAtMs: null, type: 'flip', loadId: 'none' })

/** Problem details, RFC 9457: the type, and the status in the body as on the wire. */
function expectProblem(asked: Asked, status: number): void {
  expect([asked.status, asked.type]).toEqual([status, 'application/problem+json'])
  expect(asked.json).toMatchObject({
    type: 'about:blank',
    status,
    title: expect.any(String),
    detail: expect.any(String),
  })
}

describe('commands over HTTP', () => {
  it('[H1] given one command, when posted, then its answer; twice, then the first answer and one entry', async () => {
    const server = await startServer()
    const first = await ask(server, '/api/v1/commands', { body: sell('sell0000001') })
    const again = await ask(server, '/api/v1/commands', { body: sell('sell0000001') })
    expect(first.status).toBe(200)
    expect(first.json).toEqual({ commandId: 'sell0000001', answer: { kind: 'taken', seq: 2 } })
    expect(again.json).toEqual(first.json)
    expect(server.journal.lastSeq()).toBe(2)
  })

  it('[H1] given a list, when posted, then the answers in its order, bad ones by name', async () => {
    const server = await startServer()
    const bad = { ...sell('sell0000002'), lines: [] }
    const body = [{ ...flip('flip0000001'), deviceSeq: 9 }, bad, sell('sell0000001')]
    const asked = await ask(server, '/api/v1/commands', { body })
    expect(asked.status).toBe(200)
    expect(asked.json).toMatchObject([
      { commandId: 'flip0000001', answer: { kind: 'refused', refusal: { code: 'unknown-load' } } },
      {
        commandId: 'sell0000002',
        answer: { kind: 'refused', refusal: { code: 'bad-command', params: { path: '/lines' } } },
      },
      { commandId: 'sell0000001', answer: { kind: 'taken' } },
    ])
  })

  it.each([
    ['is refused', flip('flip0000001'), 409, 'unknown-load'],
    ['cannot be read', { ...sell('sell0000001'), lines: 'all' }, 400, 'bad-command'],
    ['is not for the role', sell('sell0000001'), 403, 'not-your-role'],
  ])(
    '[H2] given a command that %s, when posted, then problem details that carry the answer',
    async (what, body, status, code) => {
      const server = await startServer()
      const headers: Record<string, string> = what.endsWith('role') ? { 'x-device-role': 'wall' } : {}
      const asked = await ask(server, '/api/v1/commands', { body, headers })
      expectProblem(asked, status)
      expect(asked.json).toMatchObject({ commandId: body.id, answer: { kind: 'refused', refusal: { code } } })
    },
  )

  it('[H2] given a question, when confirmed, then it is taken', async () => {
    const server = await startServer()
    const load = {
      id: 'load0000001',
      deviceSeq: 1,
      tappedAtMs: null,
      type: 'load',
      shelfId: 's1',
      plannedId: null,
      lines: lines('sesame', 12),
    }
    await ask(server, '/api/v1/commands', { body: load })
    const close = { id: 'close000001', deviceSeq: 2, tappedAtMs: null, type: 'closeDay' }
    const asked = await ask(server, '/api/v1/commands', { body: close })
    expectProblem(asked, 409)
    expect(asked.json).toMatchObject({ answer: { kind: 'ask', asks: [{ code: 'line-not-empty' }] } })
    const yes = await ask(server, '/api/v1/commands', { body: { ...close, confirmed: ['line-not-empty'] } })
    expect(yes.status).toBe(200)
  })

  it.each([
    ['no JSON', '{"id":'],
    ['no command', 'null'],
    ['a number', '7'],
    ['no id', { type: 'openDay' }],
    ['an id that is none', sell('NOT AN ID')],
    ['a list with something nameless', [sell('sell0000001'), null]],
    [
      'more than at once',
      Array.from({ length: COMMANDS_PER_MESSAGE_MAX + 1 }, (_, n) => sell(`sell${String(n).padStart(8, '0')}`)),
    ],
  ])('[H2] given %s, when posted, then problem details and nothing is done', async (_what, body) => {
    const server = await startServer()
    expectProblem(await ask(server, '/api/v1/commands', { body }), 400)
    expect(server.journal.lastSeq()).toBe(1)
  })

  it.each([
    ['X-Device-Role', { 'x-device-role': 'owner' }],
    ['X-Device-Name', { 'x-device-name': 'n'.repeat(41) }],
    ['X-Device-Id', { 'x-device-id': 'No id!' }],
  ])('[V7] given a wrong %s, when posted, then it is told and nothing is done', async (header, headers) => {
    const server = await startServer()
    const asked = await ask(server, '/api/v1/commands', { body: sell('sell0000001'), headers })
    expectProblem(asked, 400)
    expect(asked.text).toContain(header)
    expect(server.journal.lastSeq()).toBe(1)
  })

  it("[V7] given a device's name in headers, when it does something, then the entry names the device", async () => {
    const server = await startServer()
    await ask(server, '/api/v1/commands', {
      body: sell('sell0000001'),
      headers: { 'x-device-id': 'till-1', 'x-device-role': 'counter' },
    })
    expect([...server.journal.entriesAfter(1)].map(({ deviceId }) => deviceId)).toEqual(['till-1'])
  })

  it('[H2] given a disk that is full, when posted, then 503 and health says why', async () => {
    const server = await startServer()
    const { journal } = server
    const append = journal.append.bind(journal)
    journal.append = () => Promise.reject(new Error('database or disk is full'))
    expectProblem(await ask(server, '/api/v1/commands', { body: sell('sell0000001') }), 503)
    const sick = await ask(server, '/api/health')
    expect([sick.status, sick.json]).toMatchObject([
      503,
      {
        status: 'failing',
        reasons: [{ code: 'disk-failing', level: 'failing', text: expect.stringContaining('disk') }],
      },
    ])
    journal.append = append
    expect((await ask(server, '/api/v1/commands', { body: sell('sell0000001') })).status).toBe(200)
    expect((await ask(server, '/api/health')).json).toMatchObject({ status: 'ok', seq: 2, reasons: [] })
  })

  it("[V3] given a server's clock that was set back, when health is asked, then it warns in words and the shop goes on", async () => {
    const server = await startServer()
    const truth = Date.now
    const ahead = Date.now() + 3_600_000
    Date.now = () => ahead
    await ask(server, '/api/v1/commands', { body: sell('sell0000000') })
    Date.now = truth
    const asked = await ask(server, '/api/health')
    expect([asked.status, asked.json]).toMatchObject([
      200,
      {
        status: 'warning',
        reasons: [{ code: 'clock-set-back', params: { minutes: 60 }, text: expect.stringContaining('60 min behind') }],
      },
    ])
    expect((await ask(server, '/api/v1/commands', { body: sell('sell0000001') })).status).toBe(200)
    const recorded = [...server.journal.entriesAfter(1)].map(({ recordedAtMs }) => recordedAtMs)
    expect(recorded[1]).toBeGreaterThanOrEqual(ahead)
  })

  it('[H2] given more requests than a minute may have, when asked, then problem details, and pages still load', async () => {
    const server = await startServer()
    const many = Array.from({ length: 601 }, () => ask(server, '/api/v1/events?limit=1'))
    const asked = await Promise.all(many)
    const refused = asked.filter(({ status }) => status !== 200)
    expect(refused).toHaveLength(1)
    for (const one of refused) expectProblem(one, 429)
    expect((await ask(server, '/wall')).status).not.toBe(429)
  })

  it('[H2] given anything at all, when posted anywhere, then the answer is JSON below 500 and the shop goes on', async () => {
    const server = await startServer()
    const posted = [
      'commands',
      'set-up',
      'load-list',
      'events',
      'sales',
      'counts',
      'oven-readings',
      'readings',
      'nowhere',
    ]
    const paths = posted.map((path) => `/api/v1/${path}`)
    const types = ['application/json', 'text/csv', 'text/plain']
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...paths),
        fc.constantFrom(...types),
        fc.oneof(fc.json(), fc.string(), fc.constant('"unclosed,1,\n"a,b')),
        async (path, type, body) => {
          const asked = await ask(server, path, { body, headers: { 'content-type': type } })
          expect(asked.status).toBeGreaterThanOrEqual(200)
          expect(asked.status).toBeLessThan(500)
          expect(asked.json).not.toBeNull()
        },
      ),
      { numRuns: 150 },
    )
    expect((await ask(server, '/api/health')).status).toBe(200)
  })
})

describe('what can be read', () => {
  it('[H3] given a shop, when its state is read, then it folds on from there, and its hash is right', async () => {
    const server = await startServer()
    const { json } = await ask(server, '/api/v1/state')
    const body = json as { hash: string; state: never; journalId: string }
    expect(hashState(fromJson(body.state))).toBe(body.hash)
    expect(body.journalId).toBe(server.journal.journalId)
  })

  it('[H3] given ten entries, when read by fours, then all come once and the end is empty', async () => {
    const server = await startServer()
    for (let n = 0; n < 9; n += 1) await ask(server, '/api/v1/commands', { body: sell(`sell000000${n}`) })
    const seqs: number[] = []
    for (let after = 0; ; ) {
      const { json } = await ask(server, `/api/v1/events?after=${after}&limit=4`)
      const { entries, lastSeq } = json as { entries: { seq: number }[]; lastSeq: number }
      expect(lastSeq).toBe(10)
      if (entries.length === 0) break
      seqs.push(...entries.map(({ seq }) => seq))
      after = seqs.at(-1) ?? 0
    }
    expect(seqs).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
  })

  it.each(['after=-1', 'after=x', 'limit=0', 'limit=1001', 'after=1&after=2', 'after=1e3', 'limit='])(
    '[H2] given events?%s, when asked, then problem details',
    async (query) => {
      expectProblem(await ask(await startServer(), `/api/v1/events?${query}`), 400)
    },
  )

  it('[H2] given an address that there is not, when asked, then problem details', async () => {
    const server = await startServer()
    expectProblem(await ask(server, '/api/v1/nothing'), 404)
    expectProblem(await ask(server, '/api/v1/commands', { method: 'DELETE' }), 404)
    const page = await ask(server, '/nothing')
    expect([page.status, page.type]).toEqual([404, 'text/html'])
    expect(page.text).toContain('/wall')
  })

  it('[H2] given a body that is too large, when posted, then problem details', async () => {
    const server = await startServer()
    expectProblem(await ask(server, '/api/v1/commands', { body: `"${'x'.repeat(600 * 1024)}"` }), 413)
  })
})

describe('the set-up over HTTP', () => {
  it("[H4] given no set-up, when a file is posted, then it is the shop's, and comes back as it was", async () => {
    const server = await startServer({ shop: null })
    expectProblem(await ask(server, '/api/v1/set-up'), 404)
    expectProblem(await ask(server, '/api/v1/load-list', { body: { loads: [] } }), 404)
    const file = toSetUpFile(shopWith())
    expect((await ask(server, '/api/v1/set-up', { body: file })).status).toBe(200)
    const back = await ask(server, '/api/v1/set-up')
    expect(back.json).toEqual(file)
    expect(back.headers['content-disposition']).toContain('set-up.json')
    expect((await ask(server, '/api/v1/set-up', { body: file })).json).toMatchObject({
      answer: { kind: 'taken', seq: 1 },
    })
    expect(server.journal.lastSeq()).toBe(1)
  })

  it('[H4] given mistakes, when posted, then each is told with its path and what would be right, and nothing is taken', async () => {
    const server = await startServer()
    const file = toSetUpFile(shopWith())
    const broken = { ...file, shop: { ...file.shop, zone: 'Moon/Base' }, kettle: { ...file.kettle, pieces: -1 } }
    const asked = await ask(server, '/api/v1/set-up', { body: broken })
    expectProblem(asked, 422)
    const { errors } = asked.json as { errors: { path: string; wrong: string; right: string }[] }
    expect(errors.map(({ path }) => path).sort()).toEqual(['/kettle/pieces', '/shop/zone'])
    for (const { wrong, right } of errors) expect([wrong.length > 5, right.length > 5]).toEqual([true, true])
    expect(server.journal.lastSeq()).toBe(1)
  })

  it('[H4] given a file that retires what is in use, when posted, then it asks, and ?confirm= says yes', async () => {
    const server = await startServer()
    const sesame = { id: 'count000001', deviceSeq: 1, tappedAtMs: null, type: 'count', varietyId: 'sesame', pieces: 12 }
    await ask(server, '/api/v1/commands', { body: sesame })
    const file = toSetUpFile(shopWith())
    const without = { ...file, varieties: file.varieties.filter(({ id }) => id !== 'sesame') }
    const asked = await ask(server, '/api/v1/set-up', { body: without })
    expectProblem(asked, 409)
    expect(asked.json).toMatchObject({ answer: { kind: 'ask', asks: [{ code: 'retires-in-use' }] } })
    expect((await ask(server, '/api/v1/set-up?confirm=retires-in-use', { body: without })).status).toBe(200)
  })

  it('[H4] given the schema, when fetched, then it is one of draft 2020-12', async () => {
    const asked = await ask(await startServer(), '/api/v1/set-up.schema.json')
    expect([asked.status, asked.type]).toEqual([200, 'application/schema+json'])
    expect(asked.json).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' })
  })

  it('[H4] given the file of the form that is told, when parsed here, then it is read', () => {
    expect(parseSetUpFile(toSetUpFile(shopWith()), { isZone: () => true }).ok).toBe(true)
  })
})

describe('pages', () => {
  it('[H5] given built files, when screens load, then pages are asked for anew, files with a hash are kept, and a new build changes neither', async () => {
    const folder = tempFolder()
    mkdirSync(join(folder, 'assets'))
    for (const page of ['index', 'wall', 'bench', 'counter', 'desk'])
      writeFileSync(join(folder, `${page}.html`), `<!doctype html>${page}`)
    writeFileSync(join(folder, 'assets', 'wall-a1b2c3.js'), 'export const a = 1')
    const http = createServer(
      makeApp({ names: [], door: new Door(null, () => epochMs(Date.now())) }, (app) => pages(app, folder)),
    )
    await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve))
    const server = { port: (http.address() as AddressInfo).port }
    for (const [path, page] of [
      ['/', 'index'],
      ['/wall', 'wall'],
      ['/bench', 'bench'],
      ['/counter', 'counter'],
      ['/desk', 'desk'],
    ] as const) {
      const asked = await ask(server, path)
      expect([asked.text, asked.type]).toEqual([`<!doctype html>${page}`, 'text/html'])
      expect(asked.headers['cache-control']).toContain('max-age=0')
      const policy = String(asked.headers['content-security-policy'])
      expect(policy).not.toContain('upgrade-insecure-requests')
      expect(policy).toContain("default-src 'self'")
      expect(asked.headers['strict-transport-security']).toBeUndefined()
    }
    const file = await ask(server, '/assets/wall-a1b2c3.js')
    expect(file.headers['cache-control']).toContain('immutable')
    const known = { 'if-none-match': String(file.headers.etag) }
    expect((await ask(server, '/assets/wall-a1b2c3.js', { headers: known })).status).toBe(304)
    expect((await ask(server, '/assets/gone-000000.js')).status).toBe(404)
    rmSync(folder, { recursive: true })
    expect((await ask(server, '/wall')).text).toBe('<!doctype html>wall')
    expect((await ask(server, '/%2e%2e/%2e%2e/package.json')).status).toBe(404)
    await new Promise((resolve) => http.close(resolve))
  })
})

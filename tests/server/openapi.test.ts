import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Validator } from '@seriousme/openapi-schema-validator'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { OPERATIONS, openApiDocument } from '../../server/http/openapi/document.ts'
import { FORMULA_EXAMPLE } from '../../server/http/openapi/formula-example.ts'
import type { Body, Operation } from '../../server/http/openapi/operation.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { shopWith } from '../core/support/shop.ts'
import { codesFrom, joinedAt } from './support/join.ts'
import { putIn, takenFile } from './support/sales-file.ts'
import type { Asked, TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const HTTP_FOLDER = join(import.meta.dirname, '../../server/http')
const document = openApiDocument('0.0.0') as never as OpenApi

interface OpenApi {
  readonly paths: Readonly<Record<string, Readonly<Record<string, unknown>>>>
  readonly components: { readonly schemas: Readonly<Record<string, object>> }
}

/** Formats are told to people; what holds here is the form. */
const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: true })
ajv.addSchema({ ...document, $id: 'api' })

/** What is wrong with a value, by a named schema of the document; empty when nothing is. */
function faults(schema: string, value: unknown): readonly string[] {
  const validate = ajv.getSchema(`api#/components/schemas/${schema}`)
  if (validate === undefined) return [`no schema ${schema}`]
  validate(value)
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`)
}

/** A shop in which all that the examples name is there, on an open day. */
async function exampleShop({ path }: Operation): Promise<TestServer> {
  const server = await startServer(path.startsWith('/api/v1/plan/') ? { shop: guessed(shopWith()) } : {})
  if (path.startsWith('/api/v1/sales/')) await putInFiles(server)
  const carryIn = { type: 'carryIn', doughId: 'plain', varietyId: null, pieces: 60, stage: 'rack', sinceMs: null }
  await ask(server, '/api/v1/commands', { body: { id: 'carry000001', deviceSeq: 1, tappedAtMs: null, ...carryIn } })
  await ask(server, '/api/v1/formulas', { body: FORMULA_EXAMPLE })
  if (path.startsWith('/api/v1/orders')) await takeAnOrder(server)
  return server
}

/** Somebody waits at the counter; a name is written beside the journal. */
async function takeAnOrder(server: TestServer): Promise<void> {
  const line = { varietyId: 'sesame', without: [], dozens: 0, pieces: 2, sliced: false, bagged: true }
  const who = { mark: null, dueAtMs: null, way: 'here', runId: null, stop: 0, isPaid: true }
  const order = { ...who, lines: [line], items: [], details: { name: 'A. Guest', phone: '', note: 'toasted well' } }
  await ask(server, '/api/v1/commands', {
    body: { id: 'order00000001', deviceSeq: 1, tappedAtMs: null, type: 'takeOrder', ...order },
  })
}

/** Somebody has said what sells on a usual day. */
function guessed(shop: Shop): Shop {
  return { ...shop, varieties: new Map([...shop.varieties].map(([id, one]) => [id, { ...one, usual: 60 }])) }
}

/** Two files of past sales: one taken, with a bad row in its third line, one that waits. */
async function putInFiles(server: TestServer): Promise<void> {
  await takenFile(server, 'Date,Time,Receipt,Item,Qty\n2015-11-20,7:05,1041,Sesame,2\n2015-11-20,,1042,Half dozen,1\n')
  await putIn(server, 'Date,Time,Receipt,Item,Qty\n2015-11-21,7:05,1043,Sesame,2\n')
}

const bodyOf = ({ id }: Operation, body: Body) => (id === 'postSetUp' ? toSetUpFile(shopWith()) : body.example)

function addressOf({ path, parameters = [] }: Operation): string {
  const given = parameters.filter(({ isLeftOut }) => isLeftOut !== true)
  const inPath = given.filter((one) => one.in === 'path')
  const query = given
    .filter((one) => one.in === 'query')
    .map(({ name, example }) => `${name}=${encodeURIComponent(example)}`)
  const filled = inPath.reduce((so, { name, example }) => so.replace(`{${name}}`, encodeURIComponent(example)), path)
  return query.length === 0 ? filled : `${filled}?${query.join('&')}`
}

/** One that lets in who has joined: with a bench, and an open code, that the examples name. */
async function closedShop() {
  const closed = { file: ':memory:', isDeskLost: false, drawCode: codesFrom(123_455) }
  const server = await startServer({ closed })
  const desk = await joinedAt(server, '123455')
  const made = await ask(server, '/api/v1/devices/codes', { body: { role: 'bench' }, headers: desk.headers })
  const bench = await joinedAt(server, String((made.json as { code: string }).code))
  await ask(server, '/api/v1/devices/codes', { body: { role: 'bench' }, headers: desk.headers })
  return {
    server,
    desk,
    fill: (address: string) => address.replace('a1b2c3d4e5f60718', bench.id).replace('123456', '123457'),
  }
}

/** The same example, of a shop that lets in who has joined. */
async function callClosed(operation: Operation, body: Body | null): Promise<Asked> {
  const { server, desk, fill } = await closedShop()
  const example = body === null ? undefined : JSON.parse(fill(JSON.stringify(body.example)))
  const method = operation.method.toUpperCase()
  return ask(server, fill(addressOf(operation)), { method, headers: desk.headers, ...(body && { body: example }) })
}

function call(server: TestServer, operation: Operation, body: Body | null): Promise<Asked> {
  if (body === null) return ask(server, addressOf(operation), { method: operation.method.toUpperCase() })
  return ask(server, addressOf(operation), {
    method: operation.method.toUpperCase(),
    body: bodyOf(operation, body),
    headers: { 'content-type': body.type, 'x-device-id': 'till-1', 'x-device-role': 'desk' },
  })
}

const CALLS = OPERATIONS.flatMap((operation) =>
  (operation.bodies ?? [null]).map((body) => ({ what: `${operation.id} ${body?.type ?? ''}`, operation, body })),
)

describe('the API’s document', () => {
  it('[H12] given it, when read by a validator of OpenAPI, then it is one of 3.1', async () => {
    const validator = new Validator()
    const read = await validator.validate(JSON.parse(JSON.stringify(document)))
    expect([read.valid, read.valid ? [] : read.errors]).toEqual([true, []])
    expect(validator.version).toBe('3.1')
    const spoilt = { ...(document as object), paths: { '/x': { get: { responses: { 200: {} } } } } }
    expect((await new Validator().validate(spoilt)).valid, 'a spoilt one is found').toBe(false)
  })

  it('[H12] given the routes of the server, then each is in it, and no other is', () => {
    const sources = readdirSync(HTTP_FOLDER, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => readFileSync(join(HTTP_FOLDER, file), 'utf8'))
    const routes = sources.flatMap((text) => [
      ...text.matchAll(/\bapp\.(get|post|put|patch|delete)\(\s*'(\/api[^']*)'/g),
    ])
    const served = routes.map(([, method, path]) => `${method} ${path?.replaceAll(/:(\w+)/g, '{$1}')}`)
    const told = Object.entries(document.paths).flatMap(([path, all]) =>
      Object.keys(all).map((method) => `${method} ${path}`),
    )
    expect(told.sort()).toEqual(served.sort())
    expect(served.length).toBeGreaterThan(15)
  })

  it('[H12] given the served one, then it is this one, with the server’s version', async () => {
    const { json } = await ask(await startServer(), '/api/openapi.json')
    expect({ ...(json as object), info: null }).toEqual({ ...JSON.parse(JSON.stringify(document)), info: null })
  })
})

describe('its examples', () => {
  it.each(CALLS)(
    '[H12] given the example of $what, when called, then its answer is of the form that is told',
    async (one) => {
      const { operation, body } = one
      if (body?.schema != null) expect(faults(body.schema, bodyOf(operation, body))).toEqual([])
      const asked =
        operation.isClosed === true
          ? await callClosed(operation, body)
          : await call(await exampleShop(operation), operation, body)
      expect([asked.status, asked.type, asked.status === 200 ? '' : asked.text]).toEqual([
        200,
        operation.answer.type,
        '',
      ])
      const { schema } = operation.answer
      if (schema !== null) expect(faults(schema, asked.json)).toEqual([])
      else expect(asked.text.length).toBeGreaterThan(0)
      if (operation.bodies !== undefined && schema === 'RowAnswers') {
        const { taken, rows } = asked.json as { taken: number; rows: unknown[] }
        expect(taken, 'every row of an example is taken').toBe(rows.length)
      }
    },
  )

  it.each([
    ['/api/v1/days/1999-01-01', 404],
    ['/api/v1/events?after=x', 400],
    ['/api/v1/nothing', 404],
  ])(
    '[H12] given a mistake as in %s, when called, then the problem is of the form that is told',
    async (path, status) => {
      const asked = await ask(await startServer(), path)
      expect([asked.status, faults('Problem', asked.json)]).toEqual([status, []])
    },
  )

  it('[H12] given mistakes in a body, or a refusal, when posted, then the problem is of the form that is told', async () => {
    const one = await startServer()
    const bad = await ask(one, '/api/v1/sales', { body: { sales: [{ variety: 'Sesam', pieces: 1 }] } })
    expect([bad.status, faults('Problem', bad.json)]).toEqual([422, []])
    const flip = { id: 'flip0000001', deviceSeq: 1, tappedAtMs: null, type: 'flip', loadId: 'none' }
    const refused = await ask(one, '/api/v1/commands', { body: flip })
    expect([refused.status, faults('Problem', refused.json)]).toEqual([409, []])
  })

  it('[H12] given answers that are not of the form, then they are found', () => {
    expect(faults('Days', [{ label: '2026-11-24', openedAtMs: 1, closedAtMs: null }])).not.toEqual([])
    expect(faults('RowAnswers', { taken: '2', rows: [] })).not.toEqual([])
    expect(faults('Command', { id: 'flip0000001', deviceSeq: 1, tappedAtMs: null, type: 'flip' })).not.toEqual([])
  })
})

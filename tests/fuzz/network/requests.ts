import { deflateSync, gzipSync } from 'node:zlib'
import fc from 'fast-check'
import { OPERATIONS } from '../../../server/http/openapi/document.ts'
import type { Operation } from '../../../server/http/openapi/operation.ts'
import { anyText, mutated, nested, textOf } from '../mutate.ts'

/** A request before it is bytes: what a case says when it is told. */
export interface Request {
  readonly method: string
  readonly path: string
  readonly headers: readonly (readonly [name: string, value: string])[]
  readonly body: string
  readonly coding:
    | 'plain'
    | 'chunked'
    | 'broken chunks'
    | 'gzip'
    | 'deflate'
    | 'gzip that is none'
    | 'cut short'
    | 'no length'
}

const METHODS = ['GET', 'POST', 'PATCH', 'DELETE', 'PUT', 'HEAD', 'OPTIONS', 'TRACE', 'CONNECT', 'BREW', 'get', 'PRI']
const TYPES = [
  'application/json',
  'application/json; charset=utf-16',
  'application/json; charset=nothing',
  'text/csv',
  'text/csv; charset=latin1',
  'text/plain',
  'multipart/form-data; boundary=x',
  'application/x-www-form-urlencoded',
  '',
  'application/json;;;=',
]
const HEADERS = [
  'host',
  'origin',
  'cookie',
  'authorization',
  'content-type',
  'content-encoding',
  'transfer-encoding',
  'expect',
  'x-device-id',
  'x-device-name',
  'x-device-role',
  'if-none-match',
  'range',
  'accept',
  'sec-fetch-site',
  'upgrade',
  'x-forwarded-for',
]
const VALUES = [
  '',
  '*',
  'gzip',
  'chunked',
  'chunked, chunked',
  '100-continue',
  'desk',
  'boss',
  'bytes=0-999999999',
  'websocket',
]
const PATH_PIECES = [
  '/',
  '..',
  '%2e%2e',
  '%',
  '%zz',
  '%00',
  '?',
  '&',
  '=',
  '[]',
  'limit',
  'after',
  '999',
  '-1',
  '__proto__',
  '1e9',
]

/** Values of headers are one line of latin letters; others are broken HTTP, which has a target of its own. */
const headerText = fc.oneof(
  fc.constantFrom(...VALUES),
  anyText.map((text) => text.replaceAll(/[^\x20-\x7e\xa0-\xff]/g, '?')),
)

/** Requests of the API's own examples with something changed: never quite right, seldom quite wrong. */
export function requests(setUpFile: unknown): fc.Arbitrary<Request> {
  const examples = OPERATIONS.filter(({ path }) => !path.includes('/join') && !path.includes('/leave')).flatMap(
    (operation) => {
      const bodies = operation.bodies ?? []
      const all = bodies.length === 0 ? [null] : bodies
      return all.map((body) => ({
        method: operation.method.toUpperCase(),
        path: addressOf(operation),
        type: body?.type ?? '',
        value: body === null ? null : operation.id === 'postSetUp' ? setUpFile : body.example,
      }))
    },
  )
  const paths = examples.map(({ path }) => path)
  return fc.constantFrom(...examples).chain((example) => {
    const text = typeof example.value === 'string' ? example.value : JSON.stringify(example.value ?? '')
    const bodies = [
      { weight: 6, arbitrary: mutated([example.value]).map(asText) },
      { weight: 2, arbitrary: textOf(['{', '}', '[', ']', '"', ':', ',', '\\', '\\u', '1', 'e', '-', '\0'], [text]) },
      { weight: 1, arbitrary: fc.constantFrom('['.repeat(50_000), asText(nested(600)), 'x'.repeat(600_000), '') },
    ]
    return fc.record({
      method: fc.oneof({ weight: 12, arbitrary: fc.constant(example.method) }, fc.constantFrom(...METHODS)),
      path: fc.oneof({ weight: 8, arbitrary: fc.constant(example.path) }, { weight: 2, arbitrary: pathOf(paths) }),
      headers: fc
        .tuple(
          fc.oneof({ weight: 9, arbitrary: fc.constant(example.type) }, fc.constantFrom(...TYPES)),
          fc.array(fc.tuple(fc.constantFrom(...HEADERS), headerText), { maxLength: 2 }),
        )
        .map(([type, more]) => [...(type === '' ? [] : [['content-type', type] as const]), ...more]),
      body: example.value === null ? fc.oneof(fc.constant(''), anyText) : fc.oneof(...bodies),
      coding: fc.oneof(
        { weight: 12, arbitrary: fc.constant<Request['coding']>('plain') },
        fc.constantFrom<Request['coding']>(
          'chunked',
          'broken chunks',
          'gzip',
          'deflate',
          'gzip that is none',
          'cut short',
          'no length',
        ),
      ),
    })
  })
}

function pathOf(paths: readonly string[]): fc.Arbitrary<string> {
  // A line of a request is printable; spaces would end the path.
  return textOf(PATH_PIECES, paths).map((path) => `/${path.replaceAll(/[^\x21-\x7e]/g, '%20').replace(/^\/+/, '')}`)
}

function asText(value: unknown): string {
  try {
    return JSON.stringify(value) ?? ''
  } catch {
    return '[]'
  }
}

function addressOf({ path, parameters = [] }: Operation): string {
  const given = parameters.filter((one) => one.isLeftOut !== true)
  const filled = given
    .filter((one) => one.in === 'path')
    .reduce((so, { name, example }) => so.replace(`{${name}}`, encodeURIComponent(example)), path)
  const query = given
    .filter((one) => one.in === 'query')
    .map(({ name, example }) => `${name}=${encodeURIComponent(example)}`)
  return query.length === 0 ? filled : `${filled}?${query.join('&')}`
}

/** The request's bytes. */
export function bytesOf({ method, path, headers, body, coding }: Request, port: number): Buffer {
  const plain = Buffer.from(body)
  const coded = coding === 'gzip' ? gzipSync(plain) : coding === 'deflate' ? deflateSync(plain) : plain
  const own = headers.some(([name]) => name === 'host') ? [] : [['host', `127.0.0.1:${port}`]]
  const lines = [...own, ['connection', 'close'], ...headers].map(([name, value]) => `${name}: ${value}`)
  if (coding === 'gzip' || coding === 'deflate') lines.push(`content-encoding: ${coding}`)
  if (coding === 'gzip that is none') lines.push('content-encoding: gzip')
  const isChunked = coding === 'chunked' || coding === 'broken chunks'
  if (isChunked) lines.push('transfer-encoding: chunked')
  else if (coding !== 'no length') lines.push(`content-length: ${coded.length + (coding === 'cut short' ? 40 : 0)}`)
  const head = Buffer.from(`${method} ${path} HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`, 'latin1')
  const size = coding === 'broken chunks' ? 'zz' : coded.length.toString(16)
  const chunks = [Buffer.from(`${size}\r\n`), coded, Buffer.from(coded.length === 0 ? '\r\n' : '\r\n0\r\n\r\n')]
  return Buffer.concat([head, ...(isChunked ? chunks : [coded])])
}

/** What is no HTTP at all, or nearly. */
export const brokenRequests: fc.Arbitrary<string> = textOf(
  [
    'GET',
    ' ',
    '/',
    ' HTTP/1.1',
    'HTTP/9.9',
    '\r\n',
    '\n',
    '\r',
    ':',
    'host: 127.0.0.1',
    'content-length: -1',
    '\0',
    'x'.repeat(20_000),
  ],
  [
    'GET /api/health HTTP/1.1\r\nhost: 127.0.0.1\r\nconnection: close\r\n\r\n',
    'POST /api/v1/sales HTTP/1.1\r\nhost: 127.0.0.1\r\ncontent-length: 3\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n',
    'POST /api/v1/sales HTTP/1.1\r\nhost: 127.0.0.1\r\ntransfer-encoding: chunked\r\n\r\nffffffffff\r\nx',
  ],
)

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { COOKIE, setCookie, shownBy } from '../../server/devices/credentials.ts'
import { newToken } from '../../server/devices/token.ts'
import { browserHeaders, codesFrom, joinedAt, letIn } from '../server/support/join.ts'
import type { Asked, TestServer } from '../server/support/start-server.ts'
import { ask, startServer } from '../server/support/start-server.ts'

/** What the standards of the web say, by their sections; wordings are quoted from memory. */

const CLIENT_FOLDER = join(import.meta.dirname, '../../client')

function closedShop(): Promise<TestServer> {
  return startServer({ shop: null, closed: { file: ':memory:', isDeskLost: false, drawCode: codesFrom(0) } })
}

/** Set-Cookie read by the grammar of RFC 6265, section 4.1.1, not by the library that wrote it. */
function readSetCookie(header: string) {
  const [pair = '', ...attributes] = header.split('; ')
  const [, name = '', value = ''] =
    /^([!#$%&'*+\-.^_`|~0-9A-Za-z]+)=([\x21\x23-\x2B\x2D-\x3A\x3C-\x5B\x5D-\x7E]*)$/.exec(pair) ?? []
  const read = attributes.map((attribute) => attribute.split('=') as [string, string?])
  return { name, value, attributes: new Map(read.map(([key, said]) => [key.toLowerCase(), said ?? ''])) }
}

describe('the cookie (RFC 6265)', () => {
  it('[E11] given a browser that joins, then its cookie has the attributes of sections 4.1.2.2 to 4.1.2.6, and SameSite', async () => {
    const server = await closedShop()
    const asked = await ask(server, '/api/v1/join', { body: { code: '000000' } })
    const headers = asked.headers['set-cookie'] ?? []
    expect(headers).toHaveLength(1)
    const { name, value, attributes } = readSetCookie(headers[0] ?? '')
    expect([name, value.length]).toEqual([COOKIE, 43])
    // No Domain: the host alone, and not those below it (4.1.2.3). 34,560,000 s are 400 days: RFC 6265bis, 5.5.
    expect([...attributes].sort()).toEqual([
      ['httponly', ''],
      ['max-age', '34560000'],
      ['path', '/'],
      ['samesite', 'Strict'],
    ])
    expect(readSetCookie(setCookie('t', true)).attributes.has('secure'), 'where the shop speaks https (4.1.2.5)').toBe(
      true,
    )
    expect(asked.text, 'the body holds no token').not.toContain(value)
  })

  it('[E11] given a cookie that was set, when anything but joining is asked, then none is set', async () => {
    const server = await closedShop()
    const desk = await joinedAt(server, '000000')
    for (const path of ['/', '/api/v1/me', '/api/v1/devices']) {
      expect((await ask(server, path, { headers: desk.headers })).headers['set-cookie'], path).toBeUndefined()
    }
  })

  const token = 'A'.repeat(43)
  it.each([
    ['alone', `${COOKIE}=${token}`, token],
    ['after others', `a=1; b=2; ${COOKIE}=${token}`, token],
    ['before others', `${COOKIE}=${token}; a=1`, token],
    ['without a blank after the semicolon (5.2: leading white space is removed)', `a=1;${COOKIE}=${token};b=2`, token],
    ['with more blanks', `a=1;  ${COOKIE} = ${token}  `, token],
    ['among empty pairs', `;; ;=; ${COOKIE}=${token};;`, token],
    ['among pairs without a sign', `junk; ${COOKIE}=${token}`, token],
    ['in double quotes: browsers keep them as a part of it (5.2)', `${COOKIE}="${token}"`, `"${token}"`],
    ['with a sign in another', `a=b=c; ${COOKIE}=${token}`, token],
    ['beside what is no percent encoding', `a=%E0%A4%A; ${COOKIE}=${token}`, token],
    ['beside names of objects', `__proto__=x; constructor=y; ${COOKIE}=${token}`, token],
    ['twice: the first, which browsers send for the longer path (5.4)', `${COOKIE}=${token}; ${COOKIE}=b`, token],
    ['with a capital letter: another name', `${COOKIE.toUpperCase()}=${token}`, null],
    ['as the end of another name', `x${COOKIE}=${token}`, null],
    ['inside another value', `a=${COOKIE}=${token}`, null],
    ['empty', `${COOKIE}=`, null],
    ['not there', 'a=1', null],
    ['no cookie at all', '', null],
  ])(
    '[E11] given the Cookie header with it %s, when read, then the token is the one that is meant',
    (_what, cookie, expected) => {
      expect(shownBy({ cookie })?.token ?? null).toBe(expected)
    },
  )

  it('[E11] given any odd Cookie header, when a stranger sends it, then it is a stranger, and the server goes on', async () => {
    const server = await closedShop()
    const odd = [
      '=',
      ';',
      '%',
      `${COOKIE}`,
      `${COOKIE}=%`,
      `${COOKIE}=\xff`,
      `${COOKIE}=${'x'.repeat(8_000)}`,
      'a'.repeat(8_000),
    ]
    for (const cookie of odd) expect((await ask(server, '/api/v1/state', { headers: { cookie } })).status).toBe(401)
    // More than Node reads of headers: 431, RFC 6585, section 5.
    const huge = await ask(server, '/api/v1/state', { headers: { cookie: 'x'.repeat(20_000) } })
    expect(huge.status).toBe(431)
  })
})

/** Challenges by the grammar of RFC 9110, section 11.6.1: a scheme and name="value" pairs. */
function readChallenge(header: unknown) {
  const [, scheme = '', rest = ''] = /^([\w-]+) (.*)$/.exec(String(header)) ?? []
  const params = [...rest.matchAll(/([\w-]+)="([^"]*)"(?:, |$)/g)].map(([, key, value]) => [key, value])
  return { scheme, params: Object.fromEntries(params) as Record<string, string> }
}

describe('who is not let in (RFC 9110, RFC 6750)', () => {
  it('[E1] given no token, then 401 has a challenge (9110, 15.5.2) without an error (6750, 3.1); with one, "invalid_token"', async () => {
    const server = await closedShop()
    const none = await ask(server, '/api/v1/state')
    const bad = await ask(server, '/api/v1/state', { headers: { authorization: `Bearer ${newToken()}` } })
    expect([none.status, readChallenge(none.headers['www-authenticate'])]).toEqual([
      401,
      { scheme: 'Bearer', params: { realm: 'Boilboard' } },
    ])
    expect([bad.status, readChallenge(bad.headers['www-authenticate'])]).toEqual([
      401,
      { scheme: 'Bearer', params: { realm: 'Boilboard', error: 'invalid_token' } },
    ])
  })

  it('[E1] given HEAD for GET, then the same status and challenge and no content (9110, 9.3.2)', async () => {
    const asked = await ask(await closedShop(), '/api/v1/state', { method: 'HEAD' })
    expect([asked.status, asked.text]).toEqual([401, ''])
    expect(readChallenge(asked.headers['www-authenticate']).scheme).toBe('Bearer')
  })

  it('[E1] given the scheme in other letters or more blanks, then it is the same (9110, 11.1)', async () => {
    const server = await closedShop()
    letIn(server, 'desk')
    const made = server.door.membership?.makeToken({ name: 'Till', role: 'counter', days: 1 })
    for (const scheme of ['Bearer', 'bearer', 'BEARER', 'Bearer  ']) {
      const headers = { authorization: `${scheme} ${made?.token}` }
      expect((await ask(server, '/api/v1/state', { headers })).status, scheme).toBe(200)
    }
  })
})

/** Problem details: RFC 9457, sections 3 and 3.1. */
function expectProblem({ status, type, json }: Asked, expected: number): void {
  const { type: kind, status: told, title, detail } = json as Record<string, unknown>
  expect([status, type, kind, told]).toEqual([expected, 'application/problem+json', 'about:blank', expected])
  expect([typeof title, typeof detail]).toEqual(['string', 'string'])
}

describe('errors at the door (RFC 9457)', () => {
  it('[E1, E5, E12] given each way to be refused, then problem details, with the status in them as on the wire', async () => {
    const server = await closedShop()
    const wall = letIn(server, 'desk') && letIn(server, 'wall')
    const { cookie = '', host = '' } = browserHeaders(server, wall.token)
    expectProblem(await ask(server, '/api/v1/state'), 401)
    expectProblem(await ask(server, '/api/v1/devices', { headers: { cookie } }), 403)
    expectProblem(await ask(server, '/api/v1/leave', { method: 'POST', headers: { cookie } }), 403)
    expectProblem(await ask(server, '/api/v1/state', { headers: { cookie, host, origin: 'http://evil.example' } }), 403)
    expectProblem(await ask(server, '/', { headers: { host: 'evil.example' } }), 403)
    expectProblem(await ask(server, '/api/v1/join', { body: { code: 'abc' } }), 400)
    for (let n = 0; n < 5; n += 1) expectProblem(await ask(server, '/api/v1/join', { body: { code: '999999' } }), 403)
    const often = await ask(server, '/api/v1/join', { body: { code: '999999' } })
    expectProblem(often, 429)
    // RFC 6585, section 4: a 429 may say when to come again; in seconds (RFC 9110, section 10.2.3).
    expect(often.headers['retry-after']).toMatch(/^[1-9]\d*$/)
  })
})

/** A policy by the grammar of CSP Level 3, section 2.2: directives by name; of two of a name the first counts. */
function readPolicy(header: unknown): ReadonlyMap<string, readonly string[]> {
  const directives = new Map<string, readonly string[]>()
  for (const part of String(header).split(';')) {
    const [name = '', ...sources] = part.trim().split(/\s+/)
    if (!directives.has(name.toLowerCase())) directives.set(name.toLowerCase(), sources)
  }
  return directives
}

describe('the content security policy (CSP Level 3)', () => {
  it('[E14] given every kind of answer, then scripts and styles come from files of the server alone, and nobody frames it', async () => {
    const server = await closedShop()
    for (const path of ['/', '/nothing', '/api/v1/me', '/api/v1/state']) {
      const { headers } = await ask(server, path)
      const policy = readPolicy(headers['content-security-policy'])
      for (const directive of ['default-src', 'script-src', 'style-src']) {
        expect([path, directive, policy.get(directive)]).toEqual([path, directive, ["'self'"]])
      }
      const nothing = ['object-src', 'frame-ancestors', 'script-src-attr'].map((name) => policy.get(name)?.join())
      expect(nothing).toEqual(["'none'", "'none'", "'none'"])
      expect([policy.get('base-uri'), policy.get('form-action')]).toEqual([["'none'"], ["'self'"]])
      expect([...policy.values()].flat().filter((source) => /unsafe|^\*|^https?:/.test(source))).toEqual([])
      expect([headers['x-content-type-options'], headers['referrer-policy']]).toEqual(['nosniff', 'no-referrer'])
      expect(headers['permissions-policy']).toContain('camera=()')
      expect(headers['x-powered-by']).toBeUndefined()
      if (path.startsWith('/api')) expect(headers['cache-control']).toBe('no-store')
    }
  })

  it('[E14] given the pages, then none has a script, a style or a handler in it', async () => {
    const server = await closedShop()
    const pages = readdirSync(CLIENT_FOLDER).filter((name) => name.endsWith('.html'))
    const texts = pages.map((name) => readFileSync(join(CLIENT_FOLDER, name), 'utf8'))
    expect(pages.length).toBeGreaterThanOrEqual(5)
    for (const text of [...texts, (await ask(server, '/nothing')).text]) {
      expect(text).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=|javascript:/i)
    }
  })

  it('[E14] given the sources of pages and server, then none makes a page or a program out of text', () => {
    const root = join(CLIENT_FOLDER, '..')
    const sources = ['client', 'server', 'shared-core'].flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
        .map((name) => join(folder, name)),
    )
    const found = sources.filter((name) => {
      const text = readFileSync(join(root, name), 'utf8')
      const isStart = name.startsWith(join('server', 'start'))
      return MADE_OF_TEXT.test(text) || (!isStart && text.includes('node:child_process'))
    })
    expect([sources.length > 300, found]).toEqual([true, []])
  })
})

const MADE_OF_TEXT =
  /dangerouslySetInnerHTML|innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function\(/

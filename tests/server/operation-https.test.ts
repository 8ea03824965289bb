import { X509Certificate } from 'node:crypto'
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import type { OutgoingHttpHeaders } from 'node:http'
import { request as plainRequest } from 'node:http'
import { request } from 'node:https'
import { connect } from 'node:net'
import { join } from 'node:path'
import { io } from 'socket.io-client'
import { afterEach, describe, expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { daysLeft, ownCertificate } from '../../server/operation/certificate.ts'
import type { CertificateSource } from '../../server/operation/certificate-keeper.ts'
import { CertificateKeeper } from '../../server/operation/certificate-keeper.ts'
import type { Serving } from '../../server/serve.ts'
import { serve } from '../../server/serve.ts'
import { tempFolder } from './support/temp-folder.ts'

const DAY_MS = 86_400_000
const NOW_MS = Date.UTC(2026, 10, 26)
const HOSTS = ['corner.local', 'localhost', '192.168.1.7', '127.0.0.1']

const running: Serving[] = []
afterEach(async () => {
  for (const one of running.splice(0)) await one.stop()
})

async function serveBy(certificate: CertificateSource): Promise<Serving> {
  const journal = new SqliteJournal(await loadSqlite(), join(tempFolder(), 'journal.sqlite'), 'shop')
  const options = { port: 0, bind: '127.0.0.1', names: [] }
  const serving = await serve({
    journal,
    closed: null,
    historyFile: ':memory:',
    certificate,
    options,
    demo: null,
    say: () => {},
  })
  running.push(serving)
  return serving
}

interface Answer {
  readonly status: number
  readonly headers: OutgoingHttpHeaders
  readonly text: string
}

function ask(port: number, path: string, ca: string | null, method = 'GET'): Promise<Answer> {
  const where = { port, host: 'localhost', path, method, agent: false as const }
  return new Promise((resolve, reject) => {
    const outgoing = ca === null ? plainRequest(where) : request({ ...where, ca })
    outgoing.once('error', reject)
    outgoing.once('response', (answer) => {
      const parts: Buffer[] = []
      answer.on('data', (part: Buffer) => parts.push(part))
      answer.once('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString() }),
      )
    })
    outgoing.end()
  })
}

describe('a certificate of its own', () => {
  it('[N10] given none, when asked for, then one that its authority signed for each host and for no other, for its owner only', async () => {
    const folder = join(tempFolder(), 'https')
    const { cert, authority } = await ownCertificate({ folder, hosts: HOSTS, nowMs: NOW_MS })
    const [server, signer] = [new X509Certificate(cert), new X509Certificate(authority ?? '')]
    expect([server.ca, signer.ca, server.verify(signer.publicKey)]).toEqual([false, true, true])
    expect([server.checkHost('corner.local'), server.checkIP('192.168.1.7')]).toEqual(['corner.local', '192.168.1.7'])
    expect([server.checkHost('other.local'), server.checkIP('192.168.1.8')]).toEqual([undefined, undefined])
    // What several systems ask of a server's certificate: at most 398 days, and an end to that use in it.
    expect(daysLeft(cert, NOW_MS)).toBeLessThan(398)
    expect(server.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1'])
    const modes = ['authority-key.pem', 'server-key.pem'].map((file) => statSync(join(folder, file)).mode & 0o777)
    if (process.platform !== 'win32') expect(modes).toEqual([0o600, 0o600])
  })

  it('[N10] given one, when asked for again, then it is kept; a new address or its end near makes a new one by the same authority', async () => {
    const folder = tempFolder()
    const first = await ownCertificate({ folder, hosts: HOSTS, nowMs: NOW_MS })
    expect(await ownCertificate({ folder, hosts: ['corner.local'], nowMs: NOW_MS + 200 * DAY_MS })).toEqual(first)
    const moved = await ownCertificate({ folder, hosts: ['192.168.1.8'], nowMs: NOW_MS })
    const later = await ownCertificate({ folder, hosts: ['192.168.1.8'], nowMs: NOW_MS + 320 * DAY_MS })
    expect(new Set([first.cert, moved.cert, later.cert]).size).toBe(3)
    expect([moved.authority, later.authority]).toEqual([first.authority, first.authority])
    expect(new X509Certificate(later.cert).verify(new X509Certificate(first.authority ?? '').publicKey)).toBe(true)
  })

  it('[N10] given a clock that was years ahead when it was made, when it is right again, then all is made anew', async () => {
    const folder = tempFolder()
    const ahead = await ownCertificate({ folder, hosts: HOSTS, nowMs: NOW_MS + 3_000 * DAY_MS })
    const right = await ownCertificate({ folder, hosts: HOSTS, nowMs: NOW_MS })
    expect(right.authority).not.toBe(ahead.authority)
    expect(Date.parse(new X509Certificate(right.cert).validFrom)).toBeLessThan(NOW_MS)
  })

  it('[N10] given a server that runs, when its address changes, then it hands out a new one once', async () => {
    const seen = { hosts: HOSTS, nowMs: NOW_MS }
    const keeper = await CertificateKeeper.open({ kind: 'own', folder: tempFolder() }, seen)
    expect(await keeper.tick({ ...seen, nowMs: NOW_MS + 1_000 })).toBeNull()
    const moved = { hosts: [...HOSTS, '192.168.1.9'], nowMs: NOW_MS + 2_000 }
    const next = await keeper.tick(moved)
    expect(new X509Certificate(next?.cert ?? '').checkIP('192.168.1.9')).toBe('192.168.1.9')
    expect(await keeper.tick(moved)).toBeNull()
    expect(keeper.current).toBe(next)
  })
})

describe('a shop that speaks https', () => {
  it('[N11] given its authority is trusted, when a browser comes, then pages, API and socket are there over TLS', async () => {
    const folder = tempFolder()
    const { port, addresses } = await serveBy({ kind: 'own', folder })
    const ca = readFileSync(join(folder, 'authority.pem'), 'utf8')
    expect(await ask(port, '/api/health', ca)).toMatchObject({ status: 200 })
    await expect(ask(port, '/api/health', '')).rejects.toThrow(/self.signed|unable to/)
    expect(addresses().map(({ url }) => url)).toEqual([`https://127.0.0.1:${port}`])
    const socket = io(`https://localhost:${port}`, { transports: ['websocket'], reconnection: false, ca } as object)
    const linked = await new Promise((resolve) => {
      socket.once('connect', () => resolve(true))
      socket.once('connect_error', resolve)
    })
    socket.close()
    expect(linked).toBe(true)
  })

  it('[N11] given plain http on its port, when asked, then pages are sent to https, nothing else is answered', async () => {
    const folder = tempFolder()
    const { port, room } = await serveBy({ kind: 'own', folder })
    const page = await ask(port, '/bench?name=Oven', null)
    expect([page.status, page.headers.location]).toEqual([307, `https://localhost:${port}/bench?name=Oven`])
    for (const [path, method] of [
      ['/api/v1/state', 'GET'],
      ['/api/v1/commands', 'POST'],
      ['/bench', 'POST'],
    ] as const) {
      const answer = await ask(port, path, null, method)
      expect([answer.status, answer.headers['content-type']]).toEqual([403, 'application/problem+json'])
      expect(answer.text).toContain(`https://localhost:${port}`)
    }
    expect(room.state.seq).toBe(0)
    const file = await ask(port, '/authority.crt', null)
    expect(file.headers['content-type']).toBe('application/x-x509-ca-cert')
    expect(file.text).toBe(readFileSync(join(folder, 'authority.pem'), 'utf8'))
    expect(await ask(port, '/authority.crt', file.text)).toMatchObject({ status: 200, text: file.text })
  })

  it.each([
    ['no TLS, though it begins like it', Buffer.from([0x16, 0xff, 0xff, 0xff, 0xff, 0xff])],
    ['no HTTP', Buffer.from('hello\r\n\r\n')],
  ])(
    '[N11] given a link that speaks %s, when it does, then it is closed and the shop goes on',
    async (_what, bytes) => {
      const folder = tempFolder()
      const { port } = await serveBy({ kind: 'own', folder })
      const socket = connect({ port, host: '127.0.0.1' }, () => socket.write(bytes))
      socket.on('error', () => undefined)
      socket.resume()
      await new Promise((resolve) => socket.once('close', resolve))
      const ca = readFileSync(join(folder, 'authority.pem'), 'utf8')
      expect(await ask(port, '/api/health', ca)).toMatchObject({ status: 200 })
    },
  )
})

describe('a certificate that the shop brings', () => {
  it('[N12] given its files, when served, then it is the one; its end near is a warning', async () => {
    const folder = tempFolder()
    const { key, cert, authority } = await ownCertificate({ folder, hosts: HOSTS, nowMs: Date.now() - 350 * DAY_MS })
    const files = { cert: join(folder, 'server.pem'), key: join(folder, 'server-key.pem') }
    expect([readFileSync(files.cert, 'utf8'), readFileSync(files.key, 'utf8')]).toEqual([cert, key])
    const { port } = await serveBy({ kind: 'files', ...files })
    const health = await ask(port, '/api/health', authority)
    expect(JSON.parse(health.text)).toMatchObject({
      status: 'warning',
      reasons: [{ code: 'certificate-ends', params: { days: 14 } }],
    })
    expect(await ask(port, '/authority.crt', authority)).toMatchObject({ status: 404 })
  })

  it.each([
    ['no such file', null, 'cannot be read'],
    ['a text', 'hello', 'must be a certificate and its key'],
    ['the key of another', 'other', 'is not that of the certificate'],
  ])('[N12] given %s as its key, when opened, then a sentence says so', async (_what, key, told) => {
    const folder = tempFolder()
    await ownCertificate({ folder, hosts: HOSTS, nowMs: NOW_MS })
    const file = join(folder, 'given.pem')
    mkdirSync(join(folder, 'other'))
    const other = await ownCertificate({ folder: join(folder, 'other'), hosts: HOSTS, nowMs: NOW_MS })
    if (key !== null) writeFileSync(file, key === 'other' ? other.key : key)
    const source = { kind: 'files', cert: join(folder, 'server.pem'), key: file } as const
    await expect(CertificateKeeper.open(source, { hosts: HOSTS, nowMs: NOW_MS })).rejects.toThrow(told)
  })
})

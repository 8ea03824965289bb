import { connect as link } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { Front } from '../../server/http/front.ts'
import { LINE_LIMITS } from '../../server/http/line-limits.ts'
import { FloodGuard, MESSAGES_A_SECOND_MAX, MESSAGES_AT_ONCE_MAX } from '../../server/live/flood-guard.ts'
import { connect } from './support/screen-socket.ts'
import { startServer } from './support/start-server.ts'

const fronts: Front[] = []
afterEach(() => {
  for (const front of fronts.splice(0)) front.http.close()
})

async function frontWith(limits: Partial<typeof LINE_LIMITS>): Promise<number> {
  const front = new Front(null, { ...LINE_LIMITS, ...limits })
  fronts.push(front)
  front.handOver((_request, response) => response.end('the shop'))
  return await front.listen(0, '127.0.0.1')
}

/** Sends what is given, goes on waiting, and resolves with all that was heard when the server ends the link. */
function heardAfter(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let heard = ''
    const socket = link(port, '127.0.0.1', () => socket.write(text))
    socket.setEncoding('utf8').on('data', (chunk) => {
      heard += chunk
    })
    socket.on('error', () => undefined).on('close', () => resolve(heard))
  })
}

describe('the line', () => {
  it.each([
    ['headers that do not come to an end', 'GET / HTTP/1.1\r\nhost: localhost\r\n'],
    ['a body that does not', 'POST / HTTP/1.1\r\nhost: localhost\r\ncontent-length: 9\r\n\r\n{'],
    ['nothing at all', 'G'],
  ])('[H15] given %s, when its time is over, then it is told so and ended', async (_what, text) => {
    const port = await frontWith({ headersTimeout: 200, requestTimeout: 300, connectionsCheckingInterval: 20 })
    // What has been answered already is ended without more words.
    expect(await heardAfter(port, text)).toMatch(/^HTTP\/1\.1 (408 [\s\S]*came too slowly|200 OK)/)
  })

  it.each([
    ['what is no HTTP', 'HELLO THERE\r\n\r\n', 400, 'no HTTP/1.1 request'],
    ['headers without end', `GET / HTTP/1.1\r\nx: ${'x'.repeat(20_000)}\r\n\r\n`, 431, 'larger than 16 kB'],
    ['no name of a server', 'GET / HTTP/1.1\r\nconnection: close\r\n\r\n', 400, 'Host header'],
    ['another Expect', 'GET / HTTP/1.1\r\nhost: a\r\nexpect: cake\r\n\r\n', 417, '100-continue'],
  ])(
    '[H15] given %s, when it comes, then problem details say what would be right',
    async (_what, text, status, detail) => {
      const heard = await heardAfter(await frontWith({}), text)
      expect(heard).toMatch(new RegExp(`^HTTP/1.1 ${status} `))
      expect(heard.toLowerCase()).toContain('content-type: application/problem+json')
      expect(heard).toContain(detail)
    },
  )

  it('[H15] given the limits that hold, when asked, then the server has them', () => {
    const front = new Front()
    const { headersTimeout, requestTimeout, maxConnections } = front.http
    expect({ headersTimeout, requestTimeout, maxConnections }).toEqual({
      headersTimeout: LINE_LIMITS.headersTimeout,
      requestTimeout: LINE_LIMITS.requestTimeout,
      maxConnections: LINE_LIMITS.connectionsMax,
    })
  })
})

describe('a link that sends too much', () => {
  it('[H16] given a queue after hours without contact, when sent at once, then all of it may come; a flood may not', () => {
    let nowMs = 0
    const guard = new FloodGuard(() => nowMs)
    const may = (many: number) => Array.from({ length: many }, () => guard.mayCome()).filter(Boolean).length
    expect(may(MESSAGES_AT_ONCE_MAX + 50)).toBe(MESSAGES_AT_ONCE_MAX)
    nowMs += 500
    expect(may(MESSAGES_A_SECOND_MAX)).toBe(MESSAGES_A_SECOND_MAX / 2)
    nowMs += 3_600_000
    expect(may(MESSAGES_AT_ONCE_MAX + 1)).toBe(MESSAGES_AT_ONCE_MAX)
  })

  it('[H16] given a screen that floods, when it has sent more than it may, then it hears why and its link ends; others go on', async () => {
    const server = await startServer()
    const [flooding, other] = [await connect(server, 'one'), await connect(server, 'two')]
    for (let n = 0; n < 2 * MESSAGES_AT_ONCE_MAX; n += 1) flooding.sendRaw({ type: 'probe', t0: n })
    await flooding.until(() => flooding.isClosed)
    expect(flooding.messages.at(-1)).toEqual({ type: 'refusedHello', reason: 'flooding' })
    expect(server.door.refused.attempts()).toMatchObject([{ kind: 'flooding', times: 1 }])
    other.sendRaw({ type: 'probe', t0: 7 })
    await other.until(() => other.messages.at(-1)?.type === 'probed')
    await other.close()
  })
})

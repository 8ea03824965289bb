import { request } from 'node:http'
import { join } from 'node:path'
import { afterEach } from 'vitest'
import { loadSqlite } from '../../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../../server/journal/sqlite-journal.ts'
import type { Serving } from '../../../server/serve.ts'
import { serve } from '../../../server/serve.ts'
import { takeSetUp } from '../../../server/shop/take-set-up.ts'
import type { WorkDesk } from '../../../server/work/work-desk.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { shopWith } from '../../core/support/shop.ts'
import { tempFolder } from './temp-folder.ts'

// Faults that a test plants are no news for the terminal.
process.env.LOG_LEVEL ??= 'silent'

const running: Serving[] = []

afterEach(async () => {
  for (const one of running.splice(0)) await one.stop()
})

export interface TestServer extends Serving {
  readonly address: string
  readonly file: string
}

export interface Asked {
  readonly status: number
  readonly type: string
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly text: string
  /** Null when it is no JSON. */
  readonly json: unknown
}

/**
 * The whole server but its terminal, in this process: a new journal on disk, a free port on loopback. It is stopped after
 * the test.
 * @param shop null: no set-up yet
 */
export async function startServer(
  parts: {
    shop?: Shop | null
    names?: string[]
    file?: string
    historyFile?: string
    detailsFile?: string
    /** Left out: everybody may choose a screen. */
    closed?: Parameters<typeof serve>[0]['closed']
    /** Left out: advice and past sales without a thread, gone with the server. */
    work?: WorkDesk
  } = {},
): Promise<TestServer> {
  const file = parts.file ?? join(tempFolder(), 'journal.sqlite')
  const journal = new SqliteJournal(await loadSqlite(), file, 'shop')
  const options = { port: 0, bind: '127.0.0.1', names: parts.names ?? [] }
  const historyFile = parts.historyFile ?? ':memory:'
  const closed = parts.closed ?? null
  const work = parts.work === undefined ? {} : { work: parts.work }
  const details = parts.detailsFile === undefined ? {} : { detailsFile: parts.detailsFile }
  const serving = await serve({ journal, closed, historyFile, options, demo: null, say: () => {}, ...work, ...details })
  running.push(serving)
  const shop = parts.shop === undefined ? shopWith() : parts.shop
  if (shop !== null) await takeSetUp(serving.room, shop, [])
  return { ...serving, file, address: `http://127.0.0.1:${serving.port}` }
}

/** Stops it within the test; what is acknowledged is on disk. */
export async function stopServer(server: TestServer): Promise<void> {
  running.splice(0, running.length, ...running.filter((one) => one.port !== server.port))
  await server.stop()
}

export interface Ask {
  readonly method?: string
  readonly headers?: Record<string, string>
  /** Sent as it is when it is a text, else as JSON. */
  readonly body?: unknown
}

/** One request, with whatever headers: `fetch` would set Host and Origin as it likes. */
export function ask(
  server: { readonly port: number },
  path: string,
  { method, headers, body }: Ask = {},
): Promise<Asked> {
  const text = body === undefined ? null : typeof body === 'string' ? body : JSON.stringify(body)
  return new Promise((resolve, reject) => {
    const outgoing = request(
      {
        port: server.port,
        host: '127.0.0.1',
        path,
        method: method ?? (text === null ? 'GET' : 'POST'),
        agent: false,
        headers: { ...(text === null ? {} : { 'content-type': 'application/json' }), ...headers },
      },
      (answer) => {
        let received = ''
        answer.setEncoding('utf8')
        answer.on('data', (chunk: string) => {
          received += chunk
        })
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            type: String(answer.headers['content-type'] ?? '').split(';')[0] ?? '',
            headers: answer.headers,
            text: received,
            json: parsed(received),
          }),
        )
      },
    )
    outgoing.once('error', reject)
    outgoing.end(text ?? undefined)
  })
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

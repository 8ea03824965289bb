import { mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import type { LogParts } from '../../server/operation/log.ts'
import { openLog } from '../../server/operation/log.ts'
import { serve } from '../../server/serve.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

async function logIn(folder: string | null, parts: Partial<LogParts> = {}) {
  const complaints: string[] = []
  const opened = await openLog({ folder, level: 'info', complain: (line) => complaints.push(line), ...parts })
  return { ...opened, complaints }
}

function lines(folder: string): string[] {
  const files = readdirSync(join(folder, 'log')).map((file) => readFileSync(join(folder, 'log', file), 'utf8'))
  return files.join('').split('\n').slice(0, -1)
}

const CODE = '482913'

/** A shop that lets nobody in unasked, with a log of everything in its folder. */
async function closedShop() {
  const folder = tempFolder()
  const { log, close } = await logIn(folder, { level: 'trace' })
  const journal = new SqliteJournal(await loadSqlite(), join(folder, 'journal.sqlite'), 'shop')
  const serving = await serve({
    journal,
    closed: { file: join(folder, 'devices.sqlite'), isDeskLost: false, drawCode: () => CODE },
    historyFile: ':memory:',
    folder,
    log,
    options: { port: 0, bind: '127.0.0.1', names: [] },
    demo: null,
    say: () => undefined,
  })
  return { ...serving, folder, end: () => serving.stop().then(close) }
}

describe('the log of a shop', () => {
  it('[N2] given a device that joins, makes a token and fails, when the log of everything is read, then no code, token, cookie or name is in it', async () => {
    const shop = await closedShop()
    await ask(shop, '/api/v1/join', { body: { code: '000000' } })
    const joined = await ask(shop, '/api/v1/join', { body: { code: CODE, name: 'Office of Rosalind' } })
    const cookie = String(joined.headers['set-cookie']).split(';')[0] ?? ''
    const headers = { cookie, 'sec-fetch-site': 'same-origin' }
    const made = await ask(shop, '/api/v1/devices/tokens', {
      body: { name: 'Till', role: 'counter', days: null },
      headers,
    })
    const { token } = made.json as { token: string }
    await ask(shop, '/api/v1/state', { headers: { authorization: `Bearer ${token}x` } })
    shop.room.read = () => Promise.reject(new Error(`failed for Bearer ${token}`))
    const failed = await ask(shop, '/api/v1/state', { headers: { authorization: `Bearer ${token}` } })
    Reflect.deleteProperty(shop.room, 'read')
    await shop.end()
    expect([joined.status, made.status, failed.status]).toEqual([200, expect.any(Number), 500])
    const text = lines(shop.folder).join('\n')
    expect(text).toContain('a request failed')
    const secrets = [CODE, '000000', token, cookie.split('=')[1], 'Rosalind']
    for (const secret of secrets) expect(text, secret).not.toContain(secret)
    expect(secrets.every((secret) => (secret ?? '').length >= 6)).toBe(true)
  })
})

describe('the log', () => {
  it('[N1] given a line, when logged, then it is in the file at once; a warning stands at the terminal in words, too', async () => {
    const folder = tempFolder()
    const { log, close, complaints } = await logIn(folder)
    log.debug('not asked for')
    log.info({ seq: 4 }, 'serving')
    log.error({ error: new Error('no space') }, 'a chore failed')
    const read = lines(folder).map((line) => JSON.parse(line))
    expect(read).toMatchObject([
      { level: 30, seq: 4, msg: 'serving' },
      { level: 50, msg: 'a chore failed', error: { message: 'no space' } },
    ])
    expect(new Date(read[0].time).toISOString()).toBe(read[0].time)
    expect(complaints).toEqual([`Error, ${read[1].time}: a chore failed: no space`])
    if (process.platform !== 'win32') expect(statSync(join(folder, 'log', 'server.1.log')).mode & 0o077).toBe(0)
    close()
  })

  it.each([
    ['warn', 1],
    ['silent', 0],
    [undefined, 2],
    ['loud', 2],
  ])('[N1] given LOG_LEVEL %s, when an info and a warning are logged, then %i lines', async (level, count) => {
    const folder = tempFolder()
    const { log, close } = await logIn(folder, { level })
    log.info('one')
    log.warn('two')
    expect(level === 'silent' ? [] : lines(folder)).toHaveLength(count)
    close()
  })

  it('[N1] given more than its files may hold, when logged, then the oldest go and the newest line is there', async () => {
    const folder = tempFolder()
    const { log, close } = await logIn(folder, { bytesMax: 2_048 })
    for (let n = 0; n < 2_000; n += 1) {
      log.info({ n }, 'filled with some text so that a line has a hundred bytes')
      // A new file is begun between two turns.
      if (n % 10 === 0) await nextTurn()
    }
    const isThere = () => readdirSync(join(folder, 'log')).length <= 6 && lines(folder).at(-1)?.includes('1999')
    await expect.poll(isThere, { timeout: 5_000 }).toBe(true)
    const bytes = readdirSync(join(folder, 'log')).map((file) => statSync(join(folder, 'log', file)).size)
    expect(Math.max(...bytes)).toBeLessThan(2 * 2_048)
    close()
  })

  it('[N2] given a secret or what somebody typed, when logged by whatever way, then it is left out; an error’s code stays', async () => {
    const folder = tempFolder()
    const { log, close } = await logIn(folder)
    const token = 'Zm9vYmFyYmF6cXV4Zm9vYmFyYmF6cXV4Zm9vYmFyYmE'
    expect(token).toHaveLength(43)
    const error = Object.assign(new Error(`bad ${token}`), { code: 'ENOSPC' })
    log.info({ token, code: '123456', command: { text: 'call Rosa', code: '654321' }, a: { b: { cookie: 'c00kie' } } })
    log.info({ request: { headers: { authorization: 'Bearer secret' } }, error }, `GET /x?token=${token}`)
    const text = lines(folder).join('\n')
    for (const secret of [token, '123456', '654321', 'Rosa', 'c00kie', 'Bearer']) expect(text).not.toContain(secret)
    expect(text).toContain('ENOSPC')
    close()
  })

  it('[N3] given a disk that is full, when logged, then it is said once and nothing is thrown', async () => {
    const folder = tempFolder()
    mkdirSync(join(folder, 'log'))
    symlinkSync('/dev/full', join(folder, 'log', 'server.1.log'))
    const { log, close, complaints } = await logIn(folder)
    for (let n = 0; n < 10; n += 1) log.info({ n }, 'line')
    expect(complaints).toEqual([expect.stringMatching(/^The log cannot be written: ENOSPC.*goes on without it/)])
    close()
  })

  it('[N3] given a folder that cannot be made, when opened, then it is said and warnings still stand at the terminal', async () => {
    const folder = tempFolder()
    writeFileSync(join(folder, 'log'), 'a file is in its place')
    const { log, close, complaints } = await logIn(folder)
    log.warn('look')
    expect(complaints).toEqual([
      expect.stringMatching(/^The log cannot be written/),
      expect.stringMatching(/^Warning, .*: look$/),
    ])
    close()
  })
})

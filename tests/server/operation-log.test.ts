import { mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import type { LogParts } from '../../server/operation/log.ts'
import { openLog } from '../../server/operation/log.ts'
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

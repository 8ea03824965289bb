import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { command } from './support/room-world.ts'
import { connect } from './support/screen-socket.ts'
import { ServerProcess, withServerProcesses } from './support/server-process.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

withServerProcesses()
const sqlite = await loadSqlite()

const sell = (n: number, seq = 1) =>
  command({ type: 'sell', lines: lines('sesame', 1) }, { id: `sell${String(n).padStart(8, '0')}`, seq })

/** A folder with a set-up file in it, to start a shop from. */
function shopFolder() {
  const folder = tempFolder()
  const setUp = join(folder, 'set-up.json')
  writeFileSync(setUp, JSON.stringify(toSetUpFile(shopWith())))
  const shop = join(folder, 'shop')
  return { setUp, shop, file: join(shop, 'journal.sqlite'), args: ['--shop', shop, '--setup', setUp] }
}

const openJournal = (file: string) => new SqliteJournal(sqlite, file, 'shop')

describe('a server that is killed', () => {
  it('[W5] given a tap that was answered, when the server is killed at once, then it is on disk', async () => {
    const { args, file } = shopFolder()
    const server = new ServerProcess(args)
    const port = await server.port()
    const asked = await ask({ port }, '/api/v1/commands', { body: sell(1) })
    await server.kill('SIGKILL')
    expect(asked.json).toMatchObject({ answer: { kind: 'taken', seq: 2 } })
    const journal = openJournal(file)
    expect([...journal.entriesAfter(1)].map(({ commandId }) => commandId)).toEqual([sell(1).id])
    journal.close()
  })
})

describe('one shop, one folder, one server', () => {
  it('[W6] given a running server, when a second is started on its folder, then it says so and ends; the first goes on', async () => {
    const { args, shop, setUp } = shopFolder()
    const first = new ServerProcess(args)
    const port = await first.port()
    const second = new ServerProcess(['--shop', shop, '--setup', setUp])
    expect(await second.ended()).toBe(1)
    expect(second.output).toContain(`Another server is running on ${shop}`)
    expect((await ask({ port }, '/api/v1/commands', { body: sell(1) })).status).toBe(200)
    await first.kill('SIGKILL')
    const third = new ServerProcess(args)
    expect((await ask({ port: await third.port() }, '/api/health')).json).toMatchObject({ status: 'ok', seq: 2 })
  })

  it('[W6] given a folder that is a file, when a server is started on it, then it says what to do', async () => {
    const file = join(tempFolder(), 'not-a-folder')
    writeFileSync(file, '')
    const server = new ServerProcess(['--shop', file])
    expect(await server.ended()).toBe(1)
    expect(server.output).toContain(`The folder ${file} cannot be used`)
  })

  it('[W6] given a lock that is no lock, when a server is started, then the folder is not called busy', async () => {
    const { args, shop } = shopFolder()
    mkdirSync(shop)
    writeFileSync(join(shop, 'in-use.sqlite'), 'a note somebody left here, longer than any header '.repeat(40))
    const server = new ServerProcess(args)
    expect(await server.ended()).toBe(1)
    expect(server.output).toContain(`The folder ${shop} cannot be used`)
  })

  it("[J10] given a real shop in the demo's folder, when the demo is started there, then the shop is left alone", async () => {
    const cwd = tempFolder()
    const shop = new ServerProcess(['--shop', '.shop-demo'], {}, cwd)
    await ask({ port: await shop.port() }, '/api/v1/commands', { body: sell(1) })
    await shop.kill('SIGTERM')
    const demo = new ServerProcess([], {}, cwd)
    expect(await demo.ended()).toBe(1)
    expect(demo.output).toContain("is a real shop's journal")
    const again = new ServerProcess(['--shop', '.shop-demo'], {}, cwd)
    expect((await ask({ port: await again.port() }, '/api/health')).json).toMatchObject({ seq: 2 })
  })

  it("[J10] given a demo's folder, when opened as a shop, then it is refused", async () => {
    const { shop, file, args } = shopFolder()
    mkdirSync(shop)
    new SqliteJournal(sqlite, file, 'demo').close()
    const server = new ServerProcess(args)
    expect(await server.ended()).toBe(1)
    expect(server.output).toContain("is a demo's journal")
  })

  it('[W3] given a row that cannot be read, when a server is started, then it names the row and ends', async () => {
    const { args, file } = shopFolder()
    const first = new ServerProcess(args)
    const port = await first.port()
    for (let n = 1; n <= 3; n += 1) await ask({ port }, '/api/v1/commands', { body: sell(n) })
    await first.kill('SIGKILL')
    const db = new sqlite.DatabaseSync(file)
    db.exec("UPDATE entries SET entry = 'torn' WHERE seq = 3")
    db.close()
    const server = new ServerProcess(args)
    expect(await server.ended()).toBe(1)
    expect(server.output).toContain('Entry 3 of the journal cannot be read')
    expect(server.output).not.toContain('    at ')
  })
})

describe('a journal that another program holds', () => {
  it('[W7] given one that does not let go, when started, then it is told in words and nothing is called damaged', async () => {
    const { args, file } = shopFolder()
    const first = new ServerProcess(args)
    await first.port()
    await first.kill('SIGKILL')
    // Another connection of this process: the lock is between connections.
    const other = new sqlite.DatabaseSync(file)
    other.exec('PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE')
    const server = new ServerProcess(args)
    expect(await server.ended()).toBe(1)
    other.exec('ROLLBACK')
    other.close()
    expect(server.output).toContain('Another program holds the journal')
    expect(server.output).not.toContain('    at ')
  })
})

describe('a server that is stopped', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)(
    '[W4] given %s, when stopped, then it ends well and the next start reads no entry',
    async (signal) => {
      const { args, file } = shopFolder()
      const server = new ServerProcess(args)
      const port = await server.port()
      const screen = await connect({ port }, 'bench-1')
      screen.tap(sell(1, 1), sell(2, 2))
      await screen.until(() => screen.answers.length === 2)
      expect(await server.kill(signal)).toBe(0)
      expect(server.output).not.toContain('    at ')
      const journal = openJournal(file)
      expect(journal.newestSnapshot(FOLD_VERSION)).toMatchObject({ seq: 3, hash: hashState(screen.state) })
      journal.close()
      await screen.until(() => screen.isClosed)
    },
  )

  it('[W4] given a server that was killed, when the next is stopped without a tap, then it left a snapshot of what it folded', async () => {
    const { args, file } = shopFolder()
    const first = new ServerProcess(args)
    await ask({ port: await first.port() }, '/api/v1/commands', { body: sell(1) })
    await first.kill('SIGKILL')
    const second = new ServerProcess(args)
    await second.port()
    expect(await second.kill('SIGTERM')).toBe(0)
    const journal = openJournal(file)
    expect(journal.newestSnapshot(FOLD_VERSION)?.seq).toBe(2)
    journal.close()
  })
})

describe('the command line', () => {
  it.each([
    ['an unknown option', ['--shpo', 'x'], {}, '--shpo'],
    ['a stray word', ['shop'], {}, 'shop'],
    ['a port that is none', [], { PORT: '80a' }, 'PORT is "80a"; it must be a number from 0 to 65535'],
    ['a port too high', [], { PORT: '70000' }, 'PORT is "70000"'],
    ['a set-up without a shop', ['--setup', 'x.json'], {}, '--setup needs --shop FOLDER'],
    [
      'a set-up file that is not there',
      ['--shop', 'never', '--setup', 'gone.json'],
      {},
      'gone.json: It cannot be read',
    ],
  ])('[W7] given %s, when started, then it says what is wrong and ends with 1', async (_what, args, env, words) => {
    const server = new ServerProcess(args, env)
    expect(await server.ended()).toBe(1)
    expect(server.output).toContain(words)
    expect(server.output).not.toContain('    at ')
  })

  it('[W7] given a set-up file with mistakes, when started, then each stands on a line of its own and nothing is made', async () => {
    const { setUp, shop, args } = shopFolder()
    const file = toSetUpFile(shopWith())
    writeFileSync(
      setUp,
      JSON.stringify({ ...file, kettle: { ...file.kettle, pieces: 0 }, shop: { ...file.shop, zone: 'Moon/Base' } }),
    )
    const server = new ServerProcess(args)
    expect(await server.ended()).toBe(1)
    const told = server.output.trim().split('\n')
    expect(told.filter((line) => /^\/(kettle\/pieces|shop\/zone): .+\. .+\.$/.test(line))).toHaveLength(2)
    expect(() => rmSync(shop, { recursive: true })).toThrow('ENOENT')
  })

  it('[W7] given a port in use, when started, then it says how to choose another', async () => {
    const first = new ServerProcess(shopFolder().args)
    const port = await first.port()
    const second = new ServerProcess(shopFolder().args, { PORT: String(port) })
    expect(await second.ended()).toBe(1)
    expect(second.output).toContain(`PORT=`)
    expect(second.output).not.toContain('    at ')
  })
})

import { chmodSync, chownSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { Chance } from '../days/chance.ts'
import { KillsScreen } from '../kills/screen.ts'
import type { Disk } from './support/disk.ts'
import { limitedDisk, mountedDisk } from './support/disk.ts'
import { ServerProcess, withServerProcesses } from './support/server-process.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

withServerProcesses()

const SELL = { type: 'sell', lines: lines('sesame', 1) } as const
/** A loaded machine may be slow; every wait here is for something that happens by itself. */
const PATIENCE = { timeout: 25_000, interval: 20 }
const HUNG_MS = 90_000

const ending: (() => unknown)[] = []
afterEach(async () => {
  for (const end of ending.splice(0).toReversed()) await end()
})

/** A disk of each kind that this user may have. */
const DISKS = [
  ['whose files may grow no more', limitedDisk],
  ['that is full', (folder: string) => mountedDisk(folder) ?? limitedDisk(folder)],
] as const

function shopOn({ folder }: Pick<Disk, 'folder'>) {
  const setUp = join(folder, 'set-up.json')
  writeFileSync(setUp, JSON.stringify(toSetUpFile(shopWith())))
  const shop = join(folder, 'shop')
  return { shop, args: ['--shop', shop, '--setup', setUp] }
}

function screenAt(port: number, answered: (commandId: string) => void) {
  const parts = { who: 'counter', role: 'counter', buildId: 'process-test', chance: new Chance(1) } as const
  const address = `http://127.0.0.1:${port}`
  const screen = new KillsScreen({ ...parts, address, told: ({ commandId }) => answered(commandId) })
  ending.push(() => screen.stop())
  return screen
}

const healthOf = async (port: number) =>
  (await ask({ port }, '/api/health')).json as { status: string; seq: number; reasons: unknown[] }

describe('a disk that takes nothing', { timeout: HUNG_MS }, () => {
  it.each(DISKS)(
    '[W14] given one %s while people tap, then nothing is acknowledged, health says it, and with space again all goes on by itself',
    async (_what, make) => {
      const disk = make(tempFolder())
      ending.push(disk.release)
      const { args } = shopOn(disk)
      const server = new ServerProcess(args, { LOG_LEVEL: 'error' })
      const port = await server.port()
      ending.push(() => server.kill('SIGKILL'))
      const answered: string[] = []
      const screen = screenAt(port, (id) => answered.push(id))
      await vi.waitFor(() => expect(screen.isLive).toBe(true), PATIENCE)
      screen.send(SELL)
      await vi.waitFor(() => expect(answered).toHaveLength(1), PATIENCE)
      disk.fill(server.pid)
      // A page may still have had room for one or two.
      await vi.waitFor(async () => {
        screen.send(SELL)
        expect((await healthOf(port)).status).toBe('failing')
      }, PATIENCE)
      const { seq, reasons } = await healthOf(port)
      expect(JSON.stringify(reasons)).toMatch(/disk/i)
      const posted = await ask({ port }, '/api/v1/commands', {
        body: { id: 'onafulldisk', deviceSeq: 1, tappedAtMs: null, ...SELL },
      })
      expect(posted.status).toBeGreaterThanOrEqual(500)
      expect(screen.pending).toBeGreaterThan(0)
      expect((await healthOf(port)).seq).toBe(seq)
      disk.empty(server.pid)
      await vi.waitFor(() => expect(screen.pending).toBe(0), PATIENCE)
      expect([...screen.tapped].sort()).toEqual([...new Set(answered)].sort())
      expect((await healthOf(port)).seq).toBe(screen.tapped.size + 1)
      expect(JSON.stringify((await healthOf(port)).reasons)).not.toMatch(/could not be written/)
      expect(server.hasEnded).toBe(false)
      expect(await server.kill('SIGTERM')).toBe(0)
    },
  )

  it.each(DISKS.slice(1))(
    '[W14] given one %s at the start, then the start is refused in words, and with space again nothing is missing',
    async (_what, make) => {
      const disk = make(tempFolder())
      ending.push(disk.release)
      const { args } = shopOn(disk)
      const first = new ServerProcess(args)
      const port = await first.port()
      expect(
        (
          await ask({ port }, '/api/v1/commands', {
            body: { id: 'beforeitisfull', deviceSeq: 1, tappedAtMs: null, ...SELL },
          })
        ).status,
      ).toBe(200)
      await first.kill('SIGKILL')
      disk.fill(0)
      const full = new ServerProcess(args, {}, undefined, { through: disk.throughFull })
      await full.until(() => full.hasEnded || /localhost:/.test(full.output))
      // Where nothing has to be written it may start; taps are then not acknowledged, as above.
      if (full.hasEnded) {
        expect(full.code).toBe(1)
        expect(full.output).toMatch(/full|read or write/)
        expect(full.output).not.toContain('    at ')
      }
      await full.kill('SIGKILL')
      disk.empty(0)
      const again = new ServerProcess(args)
      expect(await healthOf(await again.port())).toMatchObject({ seq: 2 })
      await again.kill('SIGKILL')
    },
  )
})

describe('a disk that takes no new device', { timeout: HUNG_MS }, () => {
  it('[W14] given a full disk, when the desk makes a token, then it is told that nothing of it was done; with space again it is made', async () => {
    const disk = DISKS[1][1](tempFolder())
    ending.push(disk.release)
    const server = new ServerProcess([...shopOn(disk).args, '--closed'])
    const port = await server.port()
    ending.push(() => server.kill('SIGKILL'))
    const code = () => /type (\d{3}) (\d{3})/.exec(server.output)
    await server.until(() => code() !== null)
    const origin = `http://127.0.0.1:${port}`
    const joining = { headers: { origin }, body: { code: code()?.slice(1).join('') } }
    const joined = await ask({ port }, '/api/v1/join', joining)
    const cookie = String(joined.headers['set-cookie']).split(';')[0] ?? ''
    const till = { headers: { origin, cookie }, body: { name: 'Till', role: 'counter', days: null } }
    disk.fill(server.pid)
    const refused = await ask({ port }, '/api/v1/devices/tokens', till)
    expect([refused.status, refused.text]).toEqual([503, expect.stringContaining('disk')])
    disk.empty(server.pid)
    expect((await ask({ port }, '/api/v1/devices/tokens', till)).status).toBe(200)
    const { json } = await ask({ port }, '/api/v1/devices', { headers: { cookie } })
    expect((json as { devices: { kind: string }[] }).devices.map(({ kind }) => kind).sort()).toEqual([
      'screen',
      'script',
    ])
  })
})

describe('a folder that may only be read', { timeout: HUNG_MS }, () => {
  const NOBODY = 65_534
  /** Root may write everywhere: then the server runs as nobody. */
  const asNobody =
    process.getuid?.() === 0 ? ['setpriv', `--reuid=${NOBODY}`, `--regid=${NOBODY}`, '--clear-groups'] : []

  it.each([
    ['folder', 0o555, 0o644],
    ['file', 0o755, 0o444],
  ])(
    '[W14] given a shop whose %s may only be read, when started, then it is refused in words and nothing is changed',
    async (_what, folderMode, fileMode) => {
      const folder = tempFolder()
      chmodSync(folder, 0o755)
      const { args, shop } = shopOn({ folder })
      const first = new ServerProcess(args)
      await first.port()
      expect(await first.kill('SIGTERM')).toBe(0)
      for (const name of readdirSync(shop)) {
        chmodSync(join(shop, name), fileMode)
        if (asNobody.length > 0) chownSync(join(shop, name), NOBODY, NOBODY)
      }
      if (asNobody.length > 0) chownSync(shop, NOBODY, NOBODY)
      chmodSync(shop, folderMode)
      const server = new ServerProcess(args, {}, undefined, { through: asNobody })
      expect(await server.ended()).toBe(1)
      expect(server.output).toContain(shop)
      expect(server.output).toMatch(/may write|may not be written to/)
      expect(server.output).not.toContain('    at ')
      chmodSync(shop, 0o755)
      for (const name of readdirSync(shop)) chmodSync(join(shop, name), 0o644)
    },
  )
})

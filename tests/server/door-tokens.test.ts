import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { COOKIE } from '../../server/devices/credentials.ts'
import { UNUSED_MS_MAX } from '../../server/devices/device-record.ts'
import { DEVICES_MAX, DeviceRegister } from '../../server/devices/device-register.ts'
import { newToken, tokenHash } from '../../server/devices/token.ts'
import { JournalError } from '../../server/journal/journal.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { stationId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { DoorWorld } from './support/door-world.ts'
import { tempFolder } from './support/temp-folder.ts'

const A_MINUTE = 60_000
const A_DAY = 86_400_000
const BENCH = { role: 'bench', name: 'Bench left', stationId: stationId('line') } as const
const sqlite = await loadSqlite()

describe('tokens', () => {
  it('[E3] given a device that joined, then its file holds no token, and the hash of one lets nobody in', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    const world = new DoorWorld(file)
    const { token } = world.letIn('desk')
    const script = world.membership.makeToken({ name: 'Till', role: 'counter', days: 1 })
    world.door.close()
    // SHA-256 of "abc": FIPS 180-4, as in NIST's examples (from memory).
    expect(tokenHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    const onDisk = readFileSync(file, 'latin1')
    for (const secret of [token, script?.token ?? '?']) {
      expect(secret).toMatch(/^[\w-]{43}$/)
      expect([onDisk.includes(secret), onDisk.includes(tokenHash(secret))]).toEqual([false, true])
      expect(new DoorWorld(file).standing({ cookie: `${COOKIE}=${tokenHash(secret)}` })).toBe('forged')
    }
    expect(existsSync(`${file}-wal`) && readFileSync(`${file}-wal`, 'latin1').includes(token)).toBe(false)
    expect(newToken()).not.toBe(newToken())
  })

  it('[E3] given a browser’s token as a header, or a script’s as a cookie, then it is none of ours', () => {
    const world = new DoorWorld()
    const desk = world.letIn('desk')
    const { token = '' } = world.membership.makeToken({ name: 'Till', role: 'counter', days: 1 }) ?? {}
    expect(world.standing({ authorization: `Bearer ${token}` })).toBe('joined')
    expect(world.standing({ authorization: `bearer ${token}` })).toBe('joined')
    expect(world.standing({ cookie: `${COOKIE}=${token}` })).toBe('forged')
    expect(world.standing({ authorization: `Bearer ${desk.token}` })).toBe('forged')
    expect(world.standing({ authorization: 'Basic eA==', ...desk.headers })).toBe('forged')
  })

  it('[E10] given a screen, when unused for 180 days, then it has expired; use renews it, over a restart as well', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    const world = new DoorWorld(file)
    const desk = world.letIn('desk')
    world.pass(UNUSED_MS_MAX - 1)
    expect(world.standing(desk.headers)).toBe('joined')
    world.pass(UNUSED_MS_MAX - 1)
    expect(world.standing(desk.headers)).toBe('joined')
    world.door.close()
    const again = new DoorWorld(file)
    again.nowMs = epochMs(world.nowMs + UNUSED_MS_MAX - 1)
    expect(again.standing(desk.headers)).toBe('joined')
    again.pass(UNUSED_MS_MAX)
    again.membership.open(true)
    expect(again.standing(desk.headers)).toBe('unclaimed')
    again.letIn('desk')
    expect(again.standing(desk.headers)).toBe('expired')
  })

  it('[E10] given a link that stays for years, when time passes, then it is in use; a script’s token ends when the desk said', () => {
    const world = new DoorWorld()
    const wall = world.letIn('desk')
    const { token = '', device } = world.membership.makeToken({ name: 'Sensor', role: 'wall', days: 30 }) ?? {}
    const script = { authorization: `Bearer ${token}` }
    for (let day = 0; day < 29; day += 1) {
      world.pass(A_DAY)
      world.door.tick([wall.id, device?.id ?? ''])
    }
    expect([world.standing(script), world.changed]).toEqual(['joined', []])
    world.pass(A_DAY)
    expect(world.standing(script)).toBe('expired')
    world.door.tick([wall.id, device?.id ?? ''])
    expect(world.changed, 'its link must end').toEqual([device?.id])
    const forEver = world.membership.makeToken({ name: 'Till', role: 'counter', days: null })
    world.pass(10 * UNUSED_MS_MAX)
    expect([forEver?.device.expiresAtMs, world.standing({ authorization: `Bearer ${forEver?.token}` })]).toEqual([
      null,
      'joined',
    ])
  })

  it('[E10] given a device that asks again and again, when it was last seen is written every five minutes at most', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    const world = new DoorWorld(file)
    const desk = world.letIn('desk')
    const onDisk = () => {
      const db = new sqlite.DatabaseSync(file)
      const seenAtMs = Number(db.prepare('SELECT seen_at_ms FROM devices').get()?.seen_at_ms)
      db.close()
      return seenAtMs
    }
    const joinedAtMs = onDisk()
    world.pass(4 * A_MINUTE)
    world.door.identify(desk.headers)
    world.door.tick([])
    expect([onDisk(), world.register.byId(desk.id)?.seenAtMs]).toEqual([joinedAtMs, world.nowMs])
    world.pass(A_MINUTE)
    world.door.identify(desk.headers)
    expect(onDisk(), 'not while somebody waits').toBe(joinedAtMs)
    world.door.tick([])
    expect(onDisk()).toBe(world.nowMs)
    world.door.close()
  })

  it('[E17] given a browser that joins again, then it is the same device with another token, and the old one is none', () => {
    const world = new DoorWorld()
    const desk = world.letIn('desk')
    const bench = world.letIn('bench')
    world.membership.showOut(bench.id)
    expect(world.standing(bench.headers)).toBe('revoked')
    const again = world.letIn('counter', bench.token)
    expect([again.id, world.membership.devices().length]).toEqual([bench.id, 2])
    expect([world.standing(bench.headers), world.standing(again.headers)]).toEqual(['forged', 'joined'])
    expect(world.door.deviceOf(world.door.identify(again.headers))?.role).toBe('counter')
    const script = world.membership.makeToken({ name: 'Till', role: 'counter', days: null })
    expect(world.letIn('wall', script?.token ?? '').id, 'a script stays what it is').not.toBe(script?.device.id)
    expect(world.letIn('desk', desk.token).id).toBe(desk.id)
  })

  it('[E17] given the only desk, when its browser joins as a wall, then the terminal has a code for another', () => {
    const world = new DoorWorld()
    const desk = world.letIn('desk')
    world.letIn('wall', desk.token)
    expect(world.told).toEqual([world.membership.codes.terminalCode])
  })

  it('[E1] given the register on disk, when opened again, then who may come in may, and who was shown out may not', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    const world = new DoorWorld(file)
    const [desk, bench, gone] = [world.letIn('desk'), world.letIn('bench'), world.letIn('wall')]
    world.membership.showOut(gone.id)
    world.membership.change(bench.id, { name: 'Left', role: 'counter', stationId: stationId('line') })
    world.door.close()
    const again = new DoorWorld(file)
    expect([desk, bench, gone].map(({ headers }) => again.standing(headers))).toEqual(['joined', 'joined', 'revoked'])
    expect(again.membership.devices()).toEqual(world.membership.devices())
    again.door.close()
    const later = new DoorWorld(file)
    later.nowMs = epochMs(world.nowMs + 401 * A_DAY)
    const file2 = new DeviceRegister(sqlite, file, () => later.nowMs)
    expect(file2.byId(gone.id), 'what no browser can show any more is forgotten').toBeNull()
  })

  it('[E1] given a disk that once did not take when devices were seen, when one is shown out, then that is on disk', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    const world = new DoorWorld(file)
    const [desk, gone] = [world.letIn('desk'), world.letIn('wall')]
    world.pass(A_DAY)
    world.door.identify(desk.headers)
    const other = new sqlite.DatabaseSync(file)
    other.exec('BEGIN IMMEDIATE')
    expect(() => world.door.tick([gone.id])).toThrow()
    other.exec('ROLLBACK')
    world.membership.showOut(gone.id)
    // As after a kill: what is on disk, and no more.
    expect(other.prepare('SELECT ended_by FROM devices WHERE id = ?').get(gone.id)).toMatchObject({ ended_by: 'desk' })
    world.door.tick([])
    expect(other.prepare('SELECT seen_at_ms FROM devices WHERE id = ?').get(desk.id)).toMatchObject({
      seen_at_ms: world.nowMs,
    })
    other.close()
    world.door.close()
  })

  it('[E1] given a register that cannot be read or is of a newer release, when opened, then a sentence that names it', () => {
    const file = join(tempFolder(), 'devices.sqlite')
    writeFileSync(file, 'no database at all, but long enough to be taken for one'.repeat(20))
    expect(() => new DoorWorld(file)).toThrow(JournalError)
    const newer = join(tempFolder(), 'devices.sqlite')
    const db = new sqlite.DatabaseSync(newer)
    db.exec('PRAGMA user_version = 99')
    db.close()
    expect(() => new DoorWorld(newer)).toThrow(/devices\.sqlite.*newer release/)
  })

  it('[E4] given as many devices as there may be, when one more would join, then it is told so and its code stays', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    for (let n = 1; n < DEVICES_MAX; n += 1) world.membership.makeToken({ name: `t${n}`, role: 'wall', days: null })
    const code = world.membership.codes.make(BENCH)?.code ?? ''
    expect([world.type(code).kind, world.membership.makeToken({ name: 'x', role: 'wall', days: 1 })]).toEqual([
      'full',
      null,
    ])
    world.membership.showOut(world.membership.devices().at(-1)?.id ?? '')
    expect(world.type(code).kind).toBe('joined')
  })
})

import { EventEmitter } from 'node:events'
import { describe, expect, it, vi } from 'vitest'
import { expiryOf, UNUSED_MS_MAX } from '../../server/devices/device-record.ts'
import { DeviceRegister } from '../../server/devices/device-register.ts'
import { WRONG_A_MINUTE_MAX, WRONG_IN_ALL_MAX } from '../../server/devices/join-codes.ts'
import { Membership } from '../../server/devices/membership.ts'
import { RefusedLog } from '../../server/devices/refused-log.ts'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Strangers } from '../../server/live/strangers.ts'
import { deviceId, stationId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import { DoorWorld } from './support/door-world.ts'

const A_MINUTE = 60_000
const sqlite = await loadSqlite()

describe('codes', () => {
  it('[E4] given a code, when it is used, then once; when it is older than 10 minutes or the server began anew, not at all', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const { codes } = world.membership
    const [used, late] = [codes.make(BENCH), codes.make(BENCH)]
    expect(used?.code).toMatch(/^\d{6}$/)
    expect([world.type(used?.code ?? '').kind, world.type(used?.code ?? '').kind]).toEqual(['joined', 'wrong'])
    world.pass(10 * A_MINUTE - 1)
    expect(codes.open().map(({ code }) => code)).toEqual([late?.code])
    world.pass(1)
    expect([codes.open(), world.type(late?.code ?? '').kind]).toEqual([[], 'wrong'])
    const before = codes.make(BENCH)
    const again = new DoorWorld()
    again.letIn('desk')
    expect(again.type(before?.code ?? '').kind).toBe('wrong')
  })

  it('[E4] given a disk that is full when a device joins, when there is room again, then its code still holds', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const code = world.membership.codes.make(BENCH)?.code ?? ''
    const save = vi.spyOn(world.register, 'save').mockImplementationOnce(() => {
      throw new Error('database or disk is full')
    })
    expect(() => world.type(code)).toThrow('full')
    save.mockRestore()
    expect([world.type(code).kind, world.type(code).kind]).toEqual(['joined', 'wrong'])
  })

  it('[E4] given twenty open codes, when one more is asked for, then none, until one is cancelled or over', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const { codes } = world.membership
    const made = Array.from({ length: 21 }, () => codes.make(BENCH))
    expect(made.map((code) => code !== null)).toEqual([...Array(20).fill(true), false])
    expect(codes.cancel(made[0]?.code ?? '')?.code).toBe(made[0]?.code)
    expect([codes.cancel(made[0]?.code ?? ''), codes.make(BENCH) === null]).toEqual([null, false])
  })

  it('[E4] given codes that are drawn, then they are six digits, and not always the same', async () => {
    const register = new DeviceRegister(sqlite, ':memory:', () => epochMs(0))
    const membership = new Membership({ register, now: () => epochMs(0), tellTerminal: () => undefined })
    const drawn = Array.from({ length: 20 }, () => membership.codes.make(BENCH)?.code ?? '')
    expect(drawn.filter((code) => /^\d{6}$/.test(code))).toHaveLength(20)
    expect(new Set(drawn).size).toBe(20)
  })

  it('[E5] given wrong codes of one address, when it sends the sixth in a minute, then it waits even with the right one', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const right = world.membership.codes.make(BENCH)?.code ?? ''
    const from = '10.0.0.99'
    for (let n = 0; n < WRONG_A_MINUTE_MAX; n += 1) {
      expect(world.type('999999', { from }).kind).toBe('wrong')
      world.pass(1_000)
    }
    expect(world.type(right, { from })).toEqual({ kind: 'too-many', retryAfterMs: 55_000, hasVoided: false })
    expect(world.type('888888').kind, 'another address goes on').toBe('wrong')
    world.pass(55_000)
    expect(world.type(right, { from }).kind).toBe('joined')
  })

  it('[E5] given open codes of the desk, when thirty wrong ones came, then they are void', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const code = world.membership.codes.make(BENCH)?.code ?? ''
    for (let n = 0; n < WRONG_IN_ALL_MAX; n += 1) world.type('999999')
    world.pass(9 * A_MINUTE + 59_000)
    expect([world.membership.codes.open(), world.type(code, { from: 'own' }).kind]).toEqual([[], 'wrong'])
  })

  it('[E5] given thirty wrong codes of many addresses, then all open codes are void and right ones wait, but not those of this machine', () => {
    const world = new DoorWorld()
    const terminal = world.membership.codes.terminalCode
    const tried = Array.from({ length: WRONG_IN_ALL_MAX }, () => world.type('999999'))
    expect(tried.map(({ kind }) => kind)).toEqual([...Array(WRONG_IN_ALL_MAX - 1).fill('wrong'), 'too-many'])
    expect(tried.at(-1)).toMatchObject({ hasVoided: true })
    const next = world.membership.codes.terminalCode ?? ''
    expect([next === terminal, world.told]).toEqual([false, [next]])
    expect(world.type(next)).toMatchObject({ kind: 'too-many', hasVoided: false })
    expect(world.type(terminal ?? '', { from: 'own' }).kind).toBe('wrong')
    expect(world.type(next, { from: 'own' }).kind).toBe('joined')
    const code = world.membership.codes.make(BENCH)?.code ?? ''
    expect(world.type(code).kind).toBe('too-many')
    world.pass(10 * A_MINUTE)
    expect(world.type(world.membership.codes.make(BENCH)?.code ?? '').kind).toBe('joined')
  })
})

const BENCH = { role: 'bench', name: 'Bench left', stationId: stationId('line') } as const

describe('the first desk', () => {
  it('[E6] given a new shop, when the terminal’s code is typed, then it makes a desk, once', () => {
    const world = new DoorWorld()
    expect([world.standing({}), world.membership.codes.terminalCode]).toEqual(['unclaimed', '000000'])
    const joined = world.type('000000')
    expect(joined).toMatchObject({ kind: 'joined', device: { role: 'desk', kind: 'screen' } })
    expect([world.standing({}), world.type('000000').kind, world.membership.codes.terminalCode]).toEqual([
      'no-token',
      'wrong',
      null,
    ])
  })

  it('[E6] given the last desk, when it is shown out or moved, then not; when it leaves, then the terminal has a new code', () => {
    const world = new DoorWorld()
    const desk = world.letIn('desk')
    world.membership.makeToken({ name: 'Script', role: 'desk', days: null })
    expect(world.membership.showOut(desk.id)).toBe('last-desk')
    expect(world.membership.change(desk.id, { role: 'wall' })).toBe('last-desk')
    expect(world.membership.change(desk.id, { role: 'desk', name: 'Office' })).toMatchObject({ name: 'Office' })
    world.membership.leave(desk.id)
    const code = world.membership.codes.terminalCode
    expect([world.standing(desk.headers), world.told]).toEqual(['unclaimed', [code]])
    expect(world.type(code ?? '').kind).toBe('joined')
  })

  it('[E6] given a shop with desks, when it starts, then no code; with --new-desk one for an hour', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    world.membership.open(false)
    expect(world.membership.codes.terminalCode).toBeNull()
    world.membership.open(true)
    const code = world.membership.codes.terminalCode ?? ''
    world.pass(60 * A_MINUTE)
    expect([world.membership.codes.terminalCode, world.type(code).kind]).toEqual([null, 'wrong'])
    world.membership.open(true)
    expect(world.type(world.membership.codes.terminalCode ?? '')).toMatchObject({ device: { role: 'desk' } })
  })

  it('[E6] given a desk that nobody used for half a year, when time passes, then the terminal has a code', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    world.pass(UNUSED_MS_MAX)
    world.door.tick([])
    expect(world.told).toEqual([world.membership.codes.terminalCode])
  })
})

describe('names and ids', () => {
  const hello = (id: string, name: string, { role = 'bench' as Role, isRenamed = false } = {}) => ({
    device: { deviceId: deviceId(id), name, role, stationId: null },
    isRenamed,
  })

  it('[E8] given the id of a device, when another uses it, then it is forged, until its owner has gone', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const [one, other] = [world.letIn('bench'), world.letIn('bench')]
    const [first, second] = [world.door.identify(one.headers), world.door.identify(other.headers)]
    expect(world.door.greet(first, hello('tablet-1', 'Left')).ok).toBe(true)
    expect(world.door.greet(second, hello('tablet-1', 'Left'))).toEqual({
      ok: false,
      refusal: { type: 'refusedHello', reason: 'forged' },
    })
    expect(world.door.greet(second, hello('server', 'Left')).ok, 'the server’s own').toBe(false)
    expect(world.door.greet(second, hello('tablet-2', 'Right')).ok).toBe(true)
    world.membership.showOut(one.id)
    expect(world.door.greet(second, hello('tablet-1', 'Left')).ok).toBe(true)
  })

  it('[E8] given a device that makes up one id after the other, then it comes to an end', () => {
    const world = new DoorWorld()
    const grant = world.door.identify(world.letIn('desk').headers)
    const taken = Array.from({ length: 100 }, (_, n) => world.door.greet(grant, hello(`id-${n}`, 'x')).ok)
    expect([taken.indexOf(false), taken.filter(Boolean).length]).toEqual([64, 64])
  })

  it('[E9] given a name in the register, when the device says another, then the register’s holds, unless it was renamed at itself', () => {
    const world = new DoorWorld()
    world.letIn('desk')
    const bench = world.letIn('bench')
    const grant = world.door.identify(bench.headers)
    const known = (told: ReturnType<typeof hello>) => {
      const greeted = world.door.greet(grant, told)
      return greeted.ok ? [greeted.known?.name, greeted.device.name, world.door.deviceOf(grant)?.name] : null
    }
    expect(known(hello('b1', 'bench b1')), 'without a name').toEqual(['bench b1', 'bench b1', 'bench b1'])
    world.membership.change(bench.id, { name: 'Left', stationId: stationId('line') })
    expect(known(hello('b1', 'bench b1'))).toEqual(['Left', 'Left', 'Left'])
    expect(known(hello('b1', 'Right', { isRenamed: true }))).toEqual(['Right', 'Right', 'Right'])
    expect(world.register.byId(bench.id)?.stationId, 'with the station that it said').toBeNull()
  })

  it('[E9] given a desk without a name that opens the bench, then it does not become its name', () => {
    const world = new DoorWorld()
    const grant = world.door.identify(world.letIn('desk').headers)
    expect(world.door.greet(grant, hello('b1', 'bench b1'))).toMatchObject({ known: { name: 'bench b1' } })
    expect(world.door.deviceOf(grant)?.name).toBe('')
  })
})

describe('strangers', () => {
  class FakeSocket extends EventEmitter {
    isDestroyed = false
    destroy(): void {
      this.isDestroyed = true
      this.emit('close')
    }
  }

  it('[E16] given those who open a socket and never speak, when seconds have passed, then they are gone and others may come', () => {
    vi.useFakeTimers()
    const strangers = new Strangers()
    const sockets = Array.from({ length: 51 }, () => new FakeSocket())
    const letWait = (socket: FakeSocket) => strangers.letWait(socket as never)
    expect(sockets.map(letWait)).toEqual([...Array(50).fill(true), false])
    sockets[0]?.emit('close')
    expect([letWait(new FakeSocket()), letWait(new FakeSocket())]).toEqual([true, false])
    vi.advanceTimersByTime(10_000)
    expect(sockets.map(({ isDestroyed }) => isDestroyed)).toEqual([false, ...Array(49).fill(true), false])
    expect([letWait(new FakeSocket()), vi.getTimerCount()]).toEqual([true, 1])
    vi.useRealTimers()
  })
})

describe('refused attempts', () => {
  it('[E13] given a thousand of them, when counted, then by kind, the latest first, in a few lines', () => {
    let nowMs = 1
    const log = new RefusedLog(() => epochMs(nowMs))
    for (; nowMs <= 1_000; nowMs += 1) log.count(nowMs % 2 === 0 ? 'forged' : 'wrong-code', `::ffff:10.0.0.${nowMs}`)
    log.count('too-many', 'x'.repeat(10_000))
    expect(log.attempts().map(({ kind, times }) => [kind, times])).toEqual([
      ['too-many', 1],
      ['forged', 500],
      ['wrong-code', 500],
    ])
    expect(log.attempts()[1]).toEqual({ kind: 'forged', times: 500, lastAtMs: 1_000, lastFrom: '10.0.0.1000' })
    expect(JSON.stringify(log.attempts()).length).toBeLessThan(500)
    expect(log.sinceMs).toBe(1)
  })
})

describe('a record', () => {
  it('[E10] given a screen seen before it joined, then it ends 180 days after it joined', () => {
    const world = new DoorWorld()
    const record = world.register.byId(world.letIn('desk').id)
    if (record === null) throw new Error('it has joined')
    expect(expiryOf({ ...record, seenAtMs: epochMs(5) })).toBe(record.joinedAtMs + UNUSED_MS_MAX)
  })
})

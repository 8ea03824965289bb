import { describe, expect, it } from 'vitest'
import { WAITING_COMMANDS_MAX } from '../../server/live/room.ts'
import { applyEntry } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'
import { command, FakeScreen, RoomWorld, stateOf } from './support/room-world.ts'

const OPEN = { type: 'openDay' } as const
const LOAD_1 = { type: 'load', shelfId: 's1' as never, plannedId: null, lines: lines('sesame', 24) } as const

describe('catching up', () => {
  it('[V8] given a screen that missed entries, when it greets, then it gets just these and folds to the same state', async () => {
    const world = await RoomWorld.started()
    const [screen] = [new FakeScreen('bench-1', 'bench')]
    world.hello(screen)
    await world.turn()
    const [welcome] = screen.takeOnly('welcome')
    if (welcome === undefined) throw new Error('a hello is answered')
    const known = stateOf(welcome)
    await world.submit(LOAD_1)
    await world.submit({ type: 'sell', lines: lines('sesame', 2) })
    screen.take()
    world.hello(screen, known.seq)
    await world.turn()
    const [again] = screen.takeOnly('welcome')
    if (again === undefined) throw new Error('a hello is answered')
    expect(again.state).toBeNull()
    expect(again.entries.map((entry) => entry.seq)).toEqual([2, 3])
    expect(hashState(stateOf(again, known))).toBe(hashState(world.state))
  })

  it.each([
    ['knows nothing', null, {}],
    ['knows another journal', 1, { journalId: 'another' }],
    ['knows more than the server', 99, {}],
    ['missed more than is worth folding', 0, {}],
  ])('[V8] given a screen that %s, when it greets, then it gets the state whole', async (what, afterSeq, change) => {
    const world = await RoomWorld.started()
    if (what.startsWith('missed')) {
      for (let n = 0; n < 600; n += 1) await world.submit({ type: 'sell', lines: lines('sesame', 1) })
    }
    const screen = new FakeScreen('bench-1', 'bench')
    world.hello(screen, afterSeq, change)
    await world.turn()
    const [welcome] = screen.takeOnly('welcome')
    if (welcome === undefined) throw new Error('a hello is answered')
    expect(welcome.entries).toEqual([])
    expect(hashState(stateOf(welcome))).toBe(hashState(world.state))
  })

  it.each([
    ['protocol', { protocol: 99 }],
    ['fold', { foldVersion: 99 }],
  ])(
    '[V8] given a screen of another %s, when it greets, then it is told ours and gets nothing to fold',
    async (_what, change) => {
      const world = await RoomWorld.started()
      const screen = new FakeScreen('bench-1', 'bench')
      world.hello(screen, null, change)
      await world.turn()
      expect(screen.takeOnly('welcome')[0]).toMatchObject({ state: null, entries: [], buildId: 'build-1' })
    },
  )

  it('[V8] given a screen that joins in the turn of a tap, when both are done, then it misses nothing and hears nothing twice', async () => {
    const world = await RoomWorld.started()
    const tapping = await world.joined('bench-1')
    const joining = new FakeScreen('wall-1', 'wall')
    world.tap(tapping, command(LOAD_1, { id: 'load0000001' }))
    world.hello(joining)
    await world.turn()
    world.tap(tapping, command({ type: 'sell', lines: lines('sesame', 1) }, { id: 'sell0000001', seq: 2 }))
    await world.turn()
    const messages = joining.take()
    const [welcome, ...rest] = messages
    if (welcome?.type !== 'welcome') throw new Error('the welcome comes first')
    const state = stateOf(welcome)
    for (const message of rest)
      if (message.type === 'turn') for (const entry of message.entries) applyEntry(state, entry)
    expect(hashState(state)).toBe(hashState(world.state))
  })

  it('[V9] given a screen with the same entries, when checked, then the hash is the one it has', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('wall-1', 'wall')
    world.room.check(hashState)
    await world.turn()
    expect(screen.take()).toEqual([{ type: 'check', seq: 1, hash: hashState(world.state) }])
  })

  it('[V10] given "coming" from one screen, when passed on, then every screen has it for 45 s and nothing is recorded', async () => {
    const world = await RoomWorld.started()
    const [one, other] = [await world.joined('bench-1'), await world.joined('wall-1', 'wall')]
    one.take()
    world.room.handle(one, { type: 'coming', actKey: 'flip s1' })
    await world.turn()
    const said = { type: 'coming', actKey: 'flip s1', untilMs: epochMs(world.nowMs + 45_000) }
    expect([one.take(), other.take()]).toEqual([[said], [said]])
    expect(world.state.seq).toBe(1)
    expect(world.journal.appends).toBe(1)
  })

  it('[V10] given screens that come and go, when someone looks, then all are told who is there', async () => {
    const world = await RoomWorld.started()
    const [one, other] = [await world.joined('bench-1'), await world.joined('wall-1', 'wall')]
    one.take()
    world.room.leave(other)
    await world.turn()
    expect(one.take()).toMatchObject([
      {
        type: 'screens',
        screens: [
          { device: { name: 'bench-1' }, connected: true },
          { device: { name: 'wall-1' }, connected: false },
        ],
      },
    ])
  })

  it('[V10] given a device that is back before its old link is found lost, when that goes, then it counts as there', async () => {
    const world = await RoomWorld.started()
    const [watching, old] = [await world.joined('wall-1', 'wall'), await world.joined('bench-1')]
    await world.joined('bench-1')
    watching.take()
    world.room.leave(old)
    await world.turn()
    const [told] = watching.takeOnly('screens')
    expect(told?.screens.map(({ device, connected }) => [device.name, connected])).toEqual([
      ['wall-1', true],
      ['bench-1', true],
    ])
  })

  it("[V10] given a probe, when answered, then at once, with the server's time", async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    world.room.handle(screen, { type: 'probe', t0: 12 })
    expect(screen.take()).toEqual([{ type: 'probed', t0: 12, t1: world.nowMs, t2: world.nowMs }])
  })
})

describe('what does not make sense', () => {
  it('[V12] given commands before a hello, when handled, then the link is closed and nothing is done', async () => {
    const world = await RoomWorld.started()
    const stranger = new FakeScreen('bench-1', 'bench')
    world.tap(stranger, command(OPEN, { id: 'open0000001' }))
    await world.turn()
    expect([stranger.isClosed, world.state.seq]).toEqual([true, 1])
  })

  it('[V12] given more commands than one message may have, when handled, then the link is closed and nothing is done', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    const many = Array.from({ length: COMMANDS_PER_MESSAGE_MAX + 1 }, (_, n) =>
      command({ type: 'sell', lines: lines('sesame', 1) }, { id: `sell${String(n).padStart(8, '0')}`, seq: n + 1 }),
    )
    world.tap(screen, ...many)
    await world.turn()
    expect([screen.isClosed, world.state.seq]).toEqual([true, 1])
  })

  it('[V12] given more than may wait, when submitted, then the last are thrown back and the others are done', async () => {
    const world = await RoomWorld.started()
    const { device } = new FakeScreen('desk-1', 'desk')
    const open = (id: string) => world.room.submit(device, [command(OPEN, { id })])
    const all = Array.from({ length: WAITING_COMMANDS_MAX + 2 }, (_, n) => open(`open${String(n).padStart(8, '0')}`))
    const settled = Promise.allSettled(all)
    await world.turn()
    const outcomes = (await settled).map(({ status }) => status)
    expect(outcomes.filter((status) => status === 'rejected')).toHaveLength(2)
    expect(outcomes.slice(-2)).toEqual(['rejected', 'rejected'])
    expect(world.state.seq).toBe(2)
  })

  it.each([
    ['an unknown type', { type: 'giveFree' }],
    ['no pieces', { type: 'sell', lines: [{ varietyId: 'sesame' }] }],
    [
      'a time zone that there is not',
      {
        type: 'changeSetUp',
        changes: [
          {
            entity: 'profile',
            value: { name: 'X', zone: 'Moon/Base', language: 'en', temperature: 'C', weight: 'g', clock: 24 },
          },
        ],
      },
    ],
  ])(
    '[V12] given a command with %s, when handled, then it is refused by name and stored nowhere',
    async (_what, act) => {
      const world = await RoomWorld.started()
      const screen = await world.joined('desk-1', 'desk')
      const good = command({ type: 'sell', lines: lines('sesame', 1) }, { id: 'good0000001', seq: 2 })
      world.tap(screen, { id: 'wrong000001', deviceSeq: 1, tappedAtMs: null, ...act } as never, good)
      await world.turn()
      const answers = screen.takeAnswers()
      expect(answers.map(({ answer }) => (answer.kind === 'refused' ? answer.refusal.code : answer.kind))).toEqual([
        'bad-command',
        'taken',
      ])
      expect(world.disk.refusals.size).toBe(0)
    },
  )

  it('[V12] given a command without an id, when handled, then the link is closed', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    world.tap(screen, { type: 'openDay' } as never)
    await world.turn()
    expect([screen.isClosed, world.state.seq]).toEqual([true, 1])
  })
})

import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { at, lines } from '../core/support/make.ts'
import { command, FakeScreen, RoomWorld } from './support/room-world.ts'

const OPEN = { type: 'openDay' } as const
const LOAD_1 = { type: 'load', shelfId: 's1' as never, plannedId: null, lines: lines('sesame', 24) } as const

describe('one turn', () => {
  it('[V1] given taps of three screens in one turn, when it ends, then one commit and one message a screen', async () => {
    const world = await RoomWorld.started()
    const screens = await Promise.all(['bench-1', 'bench-2', 'wall-1', 'wall-2'].map((name) => world.joined(name)))
    const [first, second, third] = screens
    if (first === undefined || second === undefined || third === undefined) throw new Error('four screens joined')
    world.journal.appends = 0
    world.broadcasts = 0
    world.tap(first, command(OPEN, { id: 'first000001' }))
    world.tap(second, command(LOAD_1, { id: 'second00001' }))
    world.tap(third, command({ type: 'flip', loadId: 'nothing' as never }, { id: 'third000001' }))
    await world.turn()
    expect(world.journal.appends).toBe(1)
    expect(world.broadcasts).toBe(1)
    expect(world.journal.snapshots).toBe(0)
    const heard = screens.map((screen) => screen.take())
    for (const messages of heard) {
      expect(messages).toHaveLength(1)
      expect(messages[0]).toMatchObject({ type: 'turn', entries: [{ seq: 2 }, { seq: 3 }] })
    }
    expect(heard.map(([turn]) => turn?.type === 'turn' && turn.answers.map(({ answer }) => answer.kind))).toEqual([
      ['taken'],
      ['taken'],
      ['refused'],
      [],
    ])
  })

  it('[V1] given a turn that was only refused, when it ends, then only who asked hears of it', async () => {
    const world = await RoomWorld.started()
    const [asking, other] = [await world.joined('bench-1'), await world.joined('bench-2')]
    world.tap(asking, command({ type: 'flip', loadId: 'nothing' as never }, { id: 'flip0000001' }))
    await world.turn()
    expect(asking.takeAnswers()).toHaveLength(1)
    expect(other.take()).toEqual([])
  })

  it('[V2] given an append under way, when it has not ended, then nobody has been told and nothing reads the state', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    const append = world.journal.append.bind(world.journal)
    let finish = () => {}
    world.journal.append = async (group) => {
      await new Promise<void>((resolve) => {
        finish = resolve
      })
      return append(group)
    }
    world.tap(screen, command(OPEN, { id: 'open0000001' }))
    await world.turn()
    const late = new FakeScreen('late-1', 'wall')
    world.hello(late)
    let seen: number | null = null
    void world.room.read((state) => {
      seen = state.seq
    })
    await world.turn()
    expect([screen.take(), late.take(), seen]).toEqual([[], [], null])
    finish()
    await new Promise((resolve) => setImmediate(resolve))
    await world.turn()
    expect(screen.takeAnswers()).toHaveLength(1)
    expect(late.takeOnly('welcome')[0]?.seq).toBe(2)
    expect(seen).toBe(2)
  })

  it('[V3] given a clock set back, when taps are recorded, then recorded time does not go back, over a restart too', async () => {
    const world = await RoomWorld.started()
    world.nowMs = at('7:00')
    await world.submit(OPEN)
    world.nowMs = at('5:00')
    await world.submit(LOAD_1)
    const restarted = new RoomWorld(world.disk)
    restarted.nowMs = at('4:00')
    await restarted.submit({ type: 'sell', lines: lines('sesame', 1) }, 'after000001')
    const recorded = [...restarted.journal.entriesAfter(0)].map((entry) => entry.recordedAtMs)
    expect(recorded.slice(1)).toEqual([at('7:00'), at('7:00'), at('7:00')])
  })
})

describe('answers', () => {
  it.each([
    ['in the same turn', false, false],
    ['in a later turn', true, false],
    ['after a restart', true, true],
  ])(
    '[V4] given a command sent twice, the second %s, then both get the first answer and it happens once',
    async (_when, apart, restart) => {
      let world = await RoomWorld.started()
      const one = command(LOAD_1, { id: 'load0000001' })
      const wrong = command({ type: 'flip', loadId: 'nothing' as never }, { id: 'flip0000001' })
      let screen = await world.joined('bench-1')
      world.tap(screen, one, wrong)
      if (apart) await world.turn()
      const first = apart ? screen.takeAnswers() : []
      if (restart) {
        world = new RoomWorld(world.disk)
        screen = await world.joined('bench-1')
      }
      // The flip would be taken by now, had it come for the first time.
      world.tap(screen, one, wrong)
      await world.turn()
      const all = [...first, ...screen.takeAnswers()]
      expect(all).toHaveLength(4)
      expect(all.slice(2)).toEqual(all.slice(0, 2))
      expect(all.map(({ answer }) => answer.kind)).toEqual(['taken', 'refused', 'taken', 'refused'])
      expect(world.state.loads.size).toBe(1)
      expect(world.state.seq).toBe(2)
    },
  )

  it('[V4] given a question answered with yes, when the same command comes again, then it is decided anew', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('desk-1', 'desk')
    const close = command({ type: 'closeDay' }, { id: 'close000001' })
    world.tap(screen, command(LOAD_1, { id: 'load0000001' }), close)
    await world.turn()
    expect(screen.takeAnswers().map(({ answer }) => answer.kind)).toEqual(['taken', 'ask'])
    world.tap(screen, close, { ...close, confirmed: ['line-not-empty'] })
    await world.turn()
    expect(screen.takeAnswers().map(({ answer }) => answer.kind)).toEqual(['ask', 'taken'])
  })

  it('[V5] given two devices on one load, when both tap in one turn, then it is one move and one kind word', async () => {
    const world = await RoomWorld.started()
    const [left, right] = [await world.joined('bench-1'), await world.joined('bench-2')]
    world.tap(left, command(LOAD_1, { id: 'load0000001' }))
    await world.turn()
    const [loadId] = world.state.loads.keys()
    if (loadId === undefined) throw new Error('the load is in')
    left.take()
    right.take()
    world.tap(left, command({ type: 'flip', loadId }, { id: 'flipleft001' }))
    world.tap(right, command({ type: 'flip', loadId }, { id: 'flipright01' }))
    await world.turn()
    expect(left.takeAnswers()[0]?.answer.kind).toBe('taken')
    expect(right.takeAnswers()[0]?.answer).toMatchObject({ kind: 'refused', refusal: { code: 'already-flipped' } })
    expect(world.state.loads.get(loadId)?.phase).toBe('second-side')
  })

  it('[V5] given two devices that pulled the same before a copy was put back, when they send it after, then it is one pull', async () => {
    const world = await RoomWorld.started()
    const [left, right] = [await world.joined('bench-1'), await world.joined('bench-2')]
    const pull = { type: 'pull', doughId: 'plain' as never, varietyId: null, pieces: 48 } as const
    // What the screens saw went up to 9; the copy only to the set-up.
    world.disk.course = 'put-back'
    world.disk.courseFromSeq = 1
    world.tap(left, { ...command(pull, { id: 'pullleft001' }), seenSeq: 9 })
    await world.turn()
    world.tap(right, { ...command(pull, { id: 'pullright01' }), seenSeq: 9 })
    await world.turn()
    expect(left.takeAnswers()[0]?.answer.kind).toBe('taken')
    expect(right.takeAnswers()[0]?.answer).toMatchObject({ kind: 'refused', refusal: { code: 'already-moved' } })
    const seen = { seenSeq: world.state.seq, seenCourse: 'put-back' }
    world.tap(right, { ...command(pull, { id: 'pullagain01' }), ...seen })
    await world.turn()
    expect(right.takeAnswers()[0]?.answer.kind).toBe('taken')
  })

  it('[V5] given taps that arrive out of order in one message, when decided, then in the order of the taps', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    const sell = (seq: number) =>
      command({ type: 'sell', lines: lines('sesame', seq) }, { id: `sell000000${seq}`, seq })
    world.tap(screen, sell(3), sell(1), sell(2))
    await world.turn()
    expect([...world.journal.entriesAfter(1)].map((entry) => entry.commandId)).toEqual([1, 2, 3].map((n) => sell(n).id))
  })

  it('[V6] given one command that breaks a rule of ours, when decided, then it alone is refused and the rest go on', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    // A parsed command cannot be like this: our own fault is what is simulated.
    const broken = { device: screen.device, act: { type: 'sell', lines: null as never } as const }
    const before = hashState(world.state)
    const answers = world.room.submit(broken.device, [
      command(broken.act, { id: 'broken00001' }),
      command({ type: 'sell', lines: lines('sesame', 2) }, { id: 'good0000001' }),
    ])
    await world.turn()
    const [first, second] = await answers
    expect(first?.answer).toMatchObject({ kind: 'refused', refusal: { code: 'internal' } })
    expect(second?.answer).toEqual({ kind: 'taken', seq: 2 })
    expect(world.errors).toEqual(['a command broke a rule'])
    expect(hashState(world.state)).not.toBe(before)
  })

  it.each([
    ['wall', 'sell', 'not-your-role'],
    ['wall', 'load', 'taken'],
    ['bench', 'sell', 'taken'],
    ['counter', 'load', 'not-your-role'],
    ['counter', 'sell', 'taken'],
    ['desk', 'load', 'taken'],
  ] as const)('[V7] given a %s, when it asks for %s, then %s', async (role, type, outcome) => {
    const world = await RoomWorld.started()
    const screen = await world.joined('some-1', role)
    world.tap(screen, command(type === 'load' ? LOAD_1 : { type, lines: lines('sesame', 1) }, { id: 'asked000001' }))
    await world.turn()
    const [answered] = screen.takeAnswers()
    expect(answered?.answer.kind === 'refused' ? answered.answer.refusal.code : answered?.answer.kind).toBe(outcome)
  })
})

import { describe, expect, it } from 'vitest'
import { hashState } from '../../shared-core/day/hash.ts'
import { lines } from '../core/support/make.ts'
import { command, FakeScreen, RoomWorld } from './support/room-world.ts'

const OPEN = { type: 'openDay' } as const
const LOAD_1 = { type: 'load', shelfId: 's1' as never, plannedId: null, lines: lines('sesame', 24) } as const

describe('a disk that fails', () => {
  it.each([
    ['fails-before', 'nothing of it', 1],
    ['stops-after', 'all of it', 2],
  ] as const)(
    '[V11] given an append that %s, when it is over, then %s is in the state and nobody was told',
    async (fault, _what, seq) => {
      const world = await RoomWorld.started()
      const [tapping, watching] = [await world.joined('bench-1'), await world.joined('wall-1', 'wall')]
      const before = hashState(world.state)
      tapping.take()
      world.fault = fault
      world.tap(tapping, command(LOAD_1, { id: 'load0000001' }))
      const script = world.room.submit(tapping.device, [
        command({ type: 'flip', loadId: 'no' as never }, { id: 'flip0000001' }),
      ])
      const failed = expect(script).rejects.toThrow('could not be written')
      await world.turn()
      await failed
      expect([tapping.take(), watching.take()]).toEqual([[], []])
      expect(tapping.isClosed).toBe(true)
      expect(world.state.seq).toBe(seq)
      expect(world.journal.lastSeq()).toBe(seq)
      if (fault === 'fails-before') expect(hashState(world.state)).toBe(before)
      expect(hashState(world.state)).toBe(hashState(new RoomWorld(world.disk).state))
      expect(world.room.trouble).not.toBeNull()

      world.fault = null
      const back = await world.joined('bench-1')
      world.tap(back, command(LOAD_1, { id: 'load0000001' }))
      await world.turn()
      expect(back.takeAnswers()).toEqual([{ commandId: 'load0000001', answer: { kind: 'taken', seq: 2 } }])
      expect(world.state.loads.size).toBe(1)
      if (fault === 'fails-before') expect(world.room.trouble).toBeNull()
    },
  )

  it('[V11] given a journal that cannot be read either, when taps come, then none is answered and the reason is told', async () => {
    const world = await RoomWorld.started()
    const screen = await world.joined('bench-1')
    world.fault = 'fails-before'
    world.journal.entriesAfter = () => {
      throw new Error('gone')
    }
    world.tap(screen, command(LOAD_1, { id: 'load0000001' }))
    await world.turn()
    expect(world.room.failure).toContain('Restart the server')
    world.fault = null
    await expect(world.submit(OPEN, 'open0000001')).rejects.toThrow('Restart the server')
    expect(world.disk.entries).toHaveLength(1)
  })

  it('[V11] given a welcome that cannot be read from disk, when it fails, then the link is closed and the room goes on', async () => {
    const world = await RoomWorld.started()
    await world.submit(OPEN)
    const { entriesAfter } = world.journal
    world.journal.entriesAfter = () => {
      throw new Error('gone')
    }
    const screen = new FakeScreen('bench-1', 'bench')
    world.hello(screen, 1)
    const look = world.room.read(() => {
      throw new Error('a fault in what looks')
    })
    const thrown = expect(look).rejects.toThrow('a fault in what looks')
    await world.turn()
    await thrown
    expect(screen.isClosed).toBe(true)
    expect(screen.takeOnly('welcome')).toEqual([])
    world.journal.entriesAfter = entriesAfter
    expect((await world.submit(LOAD_1))?.answer.kind).toBe('taken')
  })
})

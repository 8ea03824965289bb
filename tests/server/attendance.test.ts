import { describe, expect, it } from 'vitest'
import { Attendance } from '../../server/live/attendance.ts'
import type { ToScreen } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at } from '../core/support/make.ts'
import { FakeScreen } from './support/room-world.ts'

const HOUR_MS = 3_600_000

function hall() {
  const world = { nowMs: at('6:00'), told: [] as ToScreen[] }
  const attendance = new Attendance({
    now: () => world.nowMs,
    broadcast: (_links, message) => world.told.push(message),
  })
  const listed = () =>
    attendance.presence().screens.map(({ device, connected, seenAtMs }) => [device.name, connected, seenAtMs])
  const comes = (name: string) => {
    const screen = new FakeScreen(name, 'bench')
    attendance.join(screen, screen.device)
    return screen
  }
  const pass = (ms: number) => {
    world.nowMs = epochMs(world.nowMs + ms)
  }
  return { world, attendance, listed, comes, pass }
}

describe('who is there', () => {
  it('[V14] given a screen that leaves, when listed, then it stays with when it was last seen, and one that is back is there', () => {
    const { attendance, listed, comes, pass } = hall()
    const wall = comes('wall')
    const bench = comes('bench')
    pass(HOUR_MS)
    attendance.leave(bench)
    expect(listed()).toEqual([
      ['wall', true, at('6:00')],
      ['bench', false, at('7:00')],
    ])
    pass(HOUR_MS)
    attendance.leave(wall)
    attendance.join(bench, bench.device)
    expect(listed()).toEqual([
      ['wall', false, at('8:00')],
      ['bench', true, at('8:00')],
    ])
  })

  it('[V14] given a tablet whose store was cleared, when it comes with its old name, then it is listed once', () => {
    const { attendance, listed, comes } = hall()
    const before = comes('tablet')
    attendance.leave(before)
    const after = new FakeScreen('tablet-2', 'bench')
    attendance.join(after, { ...after.device, name: 'tablet' })
    expect(listed()).toEqual([['tablet', true, at('6:00')]])
  })

  it('[V14] given screens of yesterday, when listed, then only those still linked', () => {
    const { attendance, listed, comes, pass } = hall()
    comes('wall')
    attendance.leave(comes('bench'))
    pass(21 * HOUR_MS)
    expect(listed()).toEqual([['wall', true, at('6:00')]])
  })

  it('[V14] given more that left than a list shows, when listed, then the newest three dozen, and all that are linked', () => {
    const { attendance, listed, comes, pass } = hall()
    for (let n = 0; n < 5; n += 1) comes(`linked-${n}`)
    for (let n = 0; n < 60; n += 1) {
      pass(1_000)
      attendance.leave(comes(`left-${n}`))
    }
    const all = listed()
    expect(all).toHaveLength(36)
    expect(all.filter(([, connected]) => connected)).toHaveLength(5)
    expect(all.at(-1)?.[0]).toBe('left-59')
  })
})

import { describe, expect, it } from 'vitest'
import { Chores } from '../../server/live/chores.ts'
import { ClockDesk } from '../../server/live/clock-desk.ts'
import { emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { commandId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { RoomWorld } from './support/room-world.ts'

const SELL = { type: 'sell', lines: lines('sesame', 1) } as const
const DAY_MS = 86_400_000

async function worldWithChores() {
  const world = await RoomWorld.started()
  const chores = new Chores({ room: world.room, journal: world.journal, now: () => world.nowMs, snapshotSeq: 1 })
  const tick = async (passMs: number) => {
    world.nowMs = epochMs(world.nowMs + passMs)
    await Promise.all([chores.tick(), world.turn()])
    await world.turn()
  }
  const sell = async (count: number) => {
    for (let n = 0; n < count; n += 1) await world.submit(SELL)
  }
  return { world, chores, tick, sell }
}

describe('what is done when nobody taps', () => {
  it('[W4] given a thousand new entries, when a lull comes, then one snapshot; none before, none for less', async () => {
    const { world, tick, sell } = await worldWithChores()
    await sell(999)
    for (let second = 0; second < 5; second += 1) await tick(1_000)
    expect(world.journal.snapshots).toBe(0)
    await sell(1)
    await tick(1_000)
    await sell(1)
    await tick(1_000)
    expect(world.journal.snapshots).toBe(0)
    await tick(2_000)
    await tick(1_000)
    expect(world.journal.snapshots).toBe(1)
    expect(world.disk.snapshots[0]).toMatchObject({ seq: 1_002, hash: hashState(world.state) })
  })

  it('[V9] given new entries, when a lull comes, then each screen hears one fingerprint', async () => {
    const { world, tick, sell } = await worldWithChores()
    const screen = await world.joined('wall-1', 'wall')
    await sell(2)
    screen.take()
    await tick(1_000)
    expect(screen.take()).toEqual([])
    for (let second = 0; second < 4; second += 1) await tick(1_000)
    expect(screen.take()).toEqual([{ type: 'check', seq: 3, hash: hashState(world.state) }])
  })

  it('[J5] given a refusal, when two weeks have passed, then it is forgotten; what was taken is not', async () => {
    const { world, tick } = await worldWithChores()
    const refused = await world.submit({ type: 'flip', loadId: 'none' as never })
    expect(refused?.answer.kind).toBe('refused')
    await tick(13 * DAY_MS)
    expect(world.disk.refusals.size).toBe(1)
    await tick(2 * DAY_MS)
    expect(world.disk.refusals.size).toBe(0)
    expect(world.journal.answerOf(commandId('world0000001'))).toEqual({ kind: 'taken', seq: 1 })
  })

  it('[W4] given a clean stop, when a snapshot was written already, then no other is', async () => {
    const { world, chores, sell } = await worldWithChores()
    await sell(3)
    await Promise.all([chores.snapshot(), world.turn()])
    await Promise.all([chores.snapshot(), world.turn()])
    expect(world.journal.snapshots).toBe(1)
  })
})

describe("the shop's clock table", () => {
  it('[V13] given a shop that moves to another zone, when a screen joined before anybody looked, then the others are told', () => {
    const state = emptyState()
    const desk = new ClockDesk(state, () => at('6:47'))
    expect([desk.zone, desk.isNew()]).toEqual(['UTC', false])
    state.shop = shopWith()
    expect(desk.table().zone).toBe('America/Chicago')
    expect([desk.isNew(), desk.isNew()]).toEqual([true, false])
  })

  it('[V13] given a table of yesterday, when a day has passed, then it is made anew and told', () => {
    const state = { ...emptyState(), shop: shopWith() }
    let nowMs = at('6:47')
    const desk = new ClockDesk(state, () => nowMs)
    nowMs = epochMs(nowMs + DAY_MS - 1)
    expect(desk.isNew()).toBe(false)
    nowMs = epochMs(nowMs + 1)
    expect([desk.isNew(), desk.isNew()]).toEqual([true, false])
  })

  it("[V13] given midnight in the shop, when dates are asked, then they are the shop's", () => {
    const desk = new ClockDesk({ ...emptyState(), shop: shopWith() }, () => at('6:47'))
    expect([desk.date(epochMs(at('0:00') - 1)), desk.date(at('0:00'))]).toEqual(['2026-11-23', '2026-11-24'])
  })
})

describe('a change of the set-up that is planned', () => {
  it('[W9] given a change for six, when nobody taps, then it holds from six on, taken up by the server, once', async () => {
    const { world, tick } = await worldWithChores()
    const name = world.state.shop?.profile.name
    const profile = { ...shopWith().profile, name: 'Six O’Clock Bagels' }
    const fromMs = epochMs(world.nowMs + 60_000)
    await world.submit({ type: 'changeSetUp', changes: [{ entity: 'profile', value: profile }], fromMs })
    const seq = world.state.seq
    await tick(59_000)
    expect([world.state.shop?.profile.name, world.state.setUps.size]).toEqual([name, 1])
    await tick(1_000)
    await tick(1_000)
    await tick(1_000)
    expect([world.state.shop?.profile.name, world.state.setUps.size]).toEqual(['Six O’Clock Bagels', 0])
    expect([...world.journal.entriesAfter(seq)].map(({ deviceId, told }) => [deviceId, told.type])).toEqual([
      ['server', 'takeUpSetUps'],
    ])
  })
})

describe('further work for a lull', () => {
  it('[W10] given a start, when nobody taps, then it is done once the screens have come, and rests while somebody taps', async () => {
    const world = await RoomWorld.started()
    const done: number[] = []
    const { room, journal } = world
    const inLull = () => done.push(world.nowMs)
    const chores = new Chores({ room, journal, now: () => world.nowMs, snapshotSeq: 1, inLull })
    const startMs = world.nowMs
    const tick = async () => {
      world.nowMs = epochMs(world.nowMs + 1_000)
      await Promise.all([chores.tick(), world.turn()])
    }
    for (let second = 0; second < 6; second += 1) await tick()
    expect(done.map((atMs) => atMs - startMs)).toEqual([5_000, 6_000])
    await world.submit(SELL)
    await tick()
    await tick()
    await tick()
    expect(done.map((atMs) => atMs - startMs)).toEqual([5_000, 6_000, 9_000])
  })
})

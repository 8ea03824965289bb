import { describe, expect, it } from 'vitest'
import { Chores } from '../../server/live/chores.ts'
import { epochMs, spanMs } from '../../shared-core/units.ts'
import { askedLine, takeOrder } from '../core/orders/order-makers.ts'
import { RoomWorld } from './support/room-world.ts'

const HOUR_MS = 3_600_000
const TODAY = '2026-11-24'

async function worldWithChores() {
  const world = await RoomWorld.started()
  const chores = new Chores({ room: world.room, journal: world.journal, now: () => world.nowMs, snapshotSeq: 1 })
  const tick = async (passMs: number) => {
    world.nowMs = epochMs(world.nowMs + passMs)
    await Promise.all([chores.tick(), world.turn()])
    await world.turn()
  }
  const tapped = (after: number) =>
    [...world.journal.entriesAfter(after)].map(({ deviceId, told }) => `${deviceId} ${told.type}`)
  return { world, tick, tapped }
}

describe('orders that nobody taps', () => {
  it('[M112] given a standing order that is said on an open day, when nobody taps, then its order is there, taken up once', async () => {
    const { world, tick, tapped } = await worldWithChores()
    await world.submit({ type: 'openDay' })
    const recurrence = { freq: 'daily', interval: 1, from: TODAY, until: null, weekdays: [], nth: null } as const
    await world.submit({
      type: 'setStanding',
      standingId: null,
      ...{ mark: 'SCH', way: 'pickUp', runId: null, stop: 0, dueMinute: 9 * 60, isPaid: false, onHolidays: true },
      lines: [askedLine('poppy')],
      recurrence: { ...recurrence, except: [], also: [] },
    })
    const { seq } = world.state
    await tick(1_000)
    await tick(1_000)
    await tick(1_000)
    expect(tapped(seq)).toEqual(['server takeUpOrders'])
    expect([...world.state.orders.values()].map(({ mark, standing }) => [mark, standing?.date])).toEqual([
      ['SCH', TODAY],
    ])
  })

  it('[M112] given an order that nobody fetches, when the shop has waited, then it ends, and not before', async () => {
    const { world, tick, tapped } = await worldWithChores()
    const { shop } = world.state
    if (shop !== null) world.state.shop = { ...shop, orders: { ...shop.orders, noShowMs: spanMs(2, 'h') } }
    await world.submit({ type: 'openDay' })
    const dueAtMs = epochMs(world.nowMs + HOUR_MS)
    await world.submit(takeOrder({ lines: [askedLine('sesame')], dueAtMs }))
    const { seq } = world.state
    await tick(3 * HOUR_MS)
    expect([world.state.orders.size, tapped(seq)]).toEqual([1, []])
    await tick(1_000)
    await tick(1_000)
    expect([world.state.orders.size, tapped(seq)]).toEqual([0, ['server takeUpOrders']])
  })
})

import { beforeAll, describe, expect, it } from 'vitest'
import type { LivingMorning } from '../../server/demo/living-morning.ts'
import { livingMorning, withoutList } from '../../server/demo/living-morning.ts'
import type { RefusalCode } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { shelfId, varietyId } from '../../shared-core/ids.ts'
import type { PlanLoad } from '../../shared-core/live/plan.ts'
import { epochMs } from '../../shared-core/units.ts'
import { planLoad, planWith } from '../core/support/plan.ts'
import type { Tapped } from './support/demo-world.ts'
import { DemoWorld } from './support/demo-world.ts'

const NOW = epochMs(Date.parse('2026-11-24T12:15:00Z'))
const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS

let morning: LivingMorning
beforeAll(() => {
  morning = livingMorning({ nowMs: NOW, seed: 1 })
})
const world = () => new DemoWorld(morning.entries, NOW)

/** What two people who tap the same thing are told; anything else would be a fault of the demo's. */
const KIND_WORDS: readonly RefusalCode[] = ['already-loaded', 'already-flipped', 'already-out', 'already-moved']
const isKnown = ({ answer }: Tapped) =>
  answer.kind === 'taken' || (answer.kind === 'refused' && KIND_WORDS.includes(answer.refusal.code))

describe('the demo’s people', () => {
  it('given three hours of a morning, then loads, sales and counts go on, and the rules take what they do', async () => {
    const shop = world()
    shop.start()
    const soldBefore = soldIn(shop)
    await shop.run(3 * HOUR_MS)
    expect(shop.tapped.filter((tap) => !isKnown(tap))).toEqual([])
    expect(shop.tapped.length).toBeGreaterThan(400)
    expect(shop.errors).toEqual([])
    expect(shop.gapsSeen).toBe(0)
    expect(soldIn(shop) - soldBefore).toBeGreaterThan(400)
    for (const act of [
      'pull',
      'dip',
      'lift',
      'board',
      'load',
      'flip',
      'out',
      'shape',
      'count',
      'keep',
      'handOver',
      'sweep',
      'sellUnnamed',
    ]) {
      expect(
        shop.tapped.some(({ command }) => command.type === act),
        act,
      ).toBe(true)
    }
  })

  it('given the time until the last loads, then there is a load in every half hour', async () => {
    const shop = world()
    shop.start()
    await shop.run(3 * HOUR_MS)
    const loadsAt = shop.tapped.filter(({ command }) => command.type === 'load').map(({ nowMs }) => nowMs)
    const halfHours = Array.from({ length: 6 }, (_, n) => NOW + n * 30 * MINUTE_MS)
    const without = halfHours.filter((from) => !loadsAt.some((at) => at >= from && at < from + 30 * MINUTE_MS))
    expect(without).toEqual([])
  })

  it('[M128] given the whole day and the next morning, then it closes once, rests at night and bakes again; what is made to order is made and handed over', async () => {
    const shop = world()
    // Looks every ten seconds of the shop's time: a day has many.
    shop.start({ lookEveryMs: 10_000 })
    await shop.run(24 * HOUR_MS)
    const acts = (type: string) => shop.tapped.filter(({ command }) => command.type === type)
    expect(acts('closeDay')).toHaveLength(1)
    expect(acts('openDay')).toHaveLength(1)
    const made = ['takeOrder', 'handOverOrder', 'countPortions', 'moveItems']
    expect(made.filter((type) => acts(type).length < 10)).toEqual([])
    const baked = acts('moveItems').filter(({ command }) => command.type === 'moveItems' && command.shelfId !== null)
    expect(baked.length, 'flatbreads go through the oven').toBeGreaterThan(30)
    const waiting = [...shop.state.orders.values()].filter(
      ({ way, takenAtMs }) => way === 'here' && takenAtMs < NOW + 12 * HOUR_MS,
    )
    expect(waiting, 'nobody waits over night').toEqual([])
    expect(acts('setLoadList')).toHaveLength(1)
    expect(shop.state.lastDay?.label).toBe('2026-11-24')
    expect(shop.state.day?.label).toBe('2026-11-25')
    const night = shop.tapped.filter(({ nowMs }) => nowMs > NOW + 8 * HOUR_MS && nowMs < NOW + 20 * HOUR_MS)
    expect(night).toEqual([])
    const bakedAfterNight = acts('load').filter(({ nowMs }) => nowMs > NOW + 20 * HOUR_MS)
    expect(bakedAfterNight.length).toBeGreaterThan(8)
    const lineAfterClose = [...shop.state.loads.values()].filter(({ loadedAtMs }) => loadedAtMs < NOW + 20 * HOUR_MS)
    expect(lineAfterClose).toEqual([])
    expect(shop.tapped.filter((tap) => !isKnown(tap))).toEqual([])
  })

  it('[P1] given an hour with the same seed twice, then the journals are the same, and replay to the same hash', async () => {
    const [one, other] = [world(), world()]
    one.start()
    other.start()
    await one.run(HOUR_MS)
    await other.run(HOUR_MS)
    expect(one.entries()).toEqual(other.entries())
    const replayed = emptyState()
    for (const entry of one.entries()) applyEntry(replayed, entry)
    expect(hashState(replayed)).toBe(hashState(one.state))
  })

  it('given hands off, then nobody taps and nobody waits to', async () => {
    const shop = world()
    shop.start({ handsOff: true })
    expect(shop.isWaiting).toBe(false)
    await shop.run(HOUR_MS)
    expect(shop.tapped).toEqual([])
    expect(shop.entries()).toHaveLength(morning.entries.length)
  })

  it('[I59] given advised loads, then the crew bakes these and nobody types a list', async () => {
    const advised = withoutList(morning, NOW)
    expect([...advised.state.planned.values()].filter(({ done }) => !done)).toEqual([])
    const shop = new DemoWorld(advised.entries, NOW)
    const load = (n: number, minutes: number): PlanLoad => {
      const inAtMs = epochMs(NOW + minutes * MINUTE_MS)
      const lines = [{ varietyId: varietyId('plain'), pieces: 24 }]
      return planLoad('8:00', n, { inAtMs, shelfId: shelfId('3'), lines })
    }
    const loads = [load(1, 8), load(2, 20)]
    const loaded = () => shop.tapped.flatMap(({ command }) => (command.type === 'load' ? [command.plannedId] : []))
    // What is in is not advised again.
    const plan = () =>
      planWith(
        loads.filter(({ id }) => !loaded().includes(id)),
        { date: advised.state.day?.label ?? '' },
      )
    shop.start({ plan })
    await shop.run(32 * MINUTE_MS)
    expect(loaded()).toEqual(loads.map(({ id }) => id))
    expect(shop.tapped.some(({ command }) => command.type === 'setLoadList')).toBe(false)
    expect(shop.tapped.filter((tap) => !isKnown(tap))).toEqual([])
  })

  it('given they are stopped, then they tap no more', async () => {
    const shop = world()
    const people = shop.start()
    await shop.run(5 * MINUTE_MS)
    expect(shop.tapped.length).toBeGreaterThan(0)
    people.stop()
    const before = shop.tapped.length
    await shop.run(30 * MINUTE_MS)
    expect(shop.tapped).toHaveLength(before)
  })

  it('given a machine that slept for two hours, then nobody makes up for the customers, and the line goes on', async () => {
    const shop = world()
    shop.start()
    await shop.run(MINUTE_MS)
    const before = shop.tapped.length
    shop.nowMs = epochMs(shop.nowMs + 2 * HOUR_MS)
    await shop.run(MINUTE_MS)
    const sales = shop.tapped.slice(before).filter(({ command }) => command.type === 'sell')
    expect(sales.length).toBeLessThan(8)
    await shop.run(30 * MINUTE_MS)
    expect(shop.tapped.slice(before).some(({ command }) => command.type === 'load')).toBe(true)
    expect(shop.tapped.filter((tap) => !isKnown(tap))).toEqual([])
  })

  it('given submitting fails now and then, then it is told and they go on', async () => {
    const shop = world()
    let calls = 0
    shop.start({
      submit: async (device, commands) => {
        calls += 1
        if (calls % 3 === 0) throw new Error('no disk')
        return shop.room.submit(device, commands)
      },
    })
    await shop.run(20 * MINUTE_MS)
    expect(shop.errors).toContain('Error: no disk')
    expect(calls).toBeGreaterThan(10)
    expect(shop.entries().length).toBeGreaterThan(morning.entries.length + 5)
  })

  it('given what they tap, then each command stands under a device whose name says demo', async () => {
    const shop = world()
    shop.start()
    await shop.run(15 * MINUTE_MS)
    const names = new Set(shop.tapped.map(({ device }) => device.name))
    expect([...names].filter((name) => !name.startsWith('demo '))).toEqual([])
    expect(names).toContain('demo crew')
    expect(names).toContain('demo counter')
  })
})

function soldIn(shop: DemoWorld): number {
  return [...shop.state.account.values()].reduce((sum, { sold }) => sum + sold, 0)
}

import { describe, expect, it } from 'vitest'
import { demoZone } from '../../server/demo/demo-shop.ts'
import { livingMorning } from '../../server/demo/living-morning.ts'
import { readOptions } from '../../server/options.ts'
import { accountGaps } from '../../shared-core/day/account.ts'
import { slotsNow } from '../../shared-core/kitchen/slots-now.ts'
import { epochMs } from '../../shared-core/units.ts'

const NOW = epochMs(Date.parse('2026-11-24T16:30:00Z'))
const minuteIn = (zone: string, atMs: number) => {
  const [hour = 0, minute = 0] = new Date(atMs)
    .toLocaleTimeString('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' })
    .split(':')
    .map(Number)
  return hour * 60 + minute
}

describe('the demo later in the day', () => {
  it('[M129] given any minute, when opened in the changeover or after it, then it is there: 11:00 to 11:59, 12:08 to 13:07', () => {
    for (let minute = 0; minute < 1_440; minute += 7) {
      const atMs = epochMs(Date.parse('2026-11-24T00:00Z') + minute * 60_000)
      const [over, after] = (['changeover', 'afternoon'] as const).map((at) => minuteIn(demoZone(atMs, at), atMs))
      expect([over, Number(over) >= 660 && Number(over) < 720]).toEqual([over, true])
      expect([after, Number(after) >= 728 && Number(after) < 788]).toEqual([after, true])
    }
  })

  it('[M129] given the afternoon, when opened, then flatbreads bake on the oven’s places, others wait, and what they are made of is counted', () => {
    const { state, entries } = livingMorning({ nowMs: NOW, seed: 1, at: 'afternoon', days: 1 })
    expect(slotsNow(state, NOW).length).toBeGreaterThanOrEqual(2)
    expect([...state.orders.values()].filter(({ way }) => way === 'here').length).toBeGreaterThan(2)
    expect([...state.orders.values()].some(({ way }) => way !== 'here')).toBe(true)
    expect(state.portions.size).toBe(state.shop?.portions.size)
    expect(state.makeTimes.size).toBeGreaterThan(8)
    expect([...state.loads.values()]).toEqual([])
    expect(accountGaps(state)).toEqual(new Map())
    expect(entries.at(-1)?.recordedAtMs).toBeGreaterThan(NOW - 60_000)
  })

  it.each([
    [['--at', 'afternoon'], 'afternoon'],
    [[], 'morning'],
    [['--at', 'noon'], '--at is "noon"; it must be one of morning, changeover, afternoon.'],
    [['--shop', 'x', '--at', 'afternoon'], '--at is for the demo: in a real shop it is as late as it is.'],
  ])('[M129] given %j, when read, then it is %s', (args, wanted) => {
    const read = readOptions(args, {})
    expect(read.ok ? read.options.at : read.why).toBe(wanted)
  })
})

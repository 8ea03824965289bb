import { describe, expect, it } from 'vitest'
import type { LearntTimesTold } from '../../server/work/oven-questions.ts'
import type { OvenHeat } from '../../shared-core/live/oven-heat.ts'
import { shopWith } from '../core/support/shop.ts'
import { ask, startServer } from './support/start-server.ts'

async function startShop() {
  const shop = shopWith()
  const oven = {
    ...shop.oven,
    bakeAt: { degrees: 495, unit: 'F' as const },
    secondAt: { degrees: 600, unit: 'F' as const },
  }
  const server = await startServer({ shop: { ...shop, oven } })
  const act = async (deviceSeq: number, more: object) => {
    const body = { id: `act00000000${deviceSeq}`, deviceSeq, tappedAtMs: null, ...more }
    expect((await ask(server, '/api/v1/commands', { body })).status).toBe(200)
  }
  return { server, act }
}

describe('GET /api/v1/oven/heat', () => {
  it('[I98] given a reading posted on an open day, when the oven is asked about, then it stands there and speaks of the next load', async () => {
    const { server, act } = await startShop()
    const none = (await ask(server, '/api/v1/oven/heat')).json as OvenHeat
    expect(none).toMatchObject({ readings: [], basis: 'kind', next: null, course: null })
    expect(none.turnOn?.byMs).toBeLessThan(none.turnOn?.readyAtMs ?? 0)
    await act(1, { type: 'openDay' })
    const body = { readings: [{ degrees: 430, unit: 'F' }] }
    expect((await ask(server, '/api/v1/oven-readings', { body })).status).toBe(200)
    const heat = (await ask(server, '/api/v1/oven/heat')).json as OvenHeat
    expect(heat.readings.map(({ milliCelsius }) => milliCelsius)).toEqual([221_111])
    expect(heat.next).toMatchObject({ milliCelsius: 221_111, wanted: 257_222 })
    expect(heat.next?.waitUntilMs).toBeGreaterThan(0)
  })
})

describe('GET /api/v1/learnt-times', () => {
  it('[I99] given a new shop, when asked, then no day and no time; with a day open, that day counts', async () => {
    const { server, act } = await startShop()
    expect((await ask(server, '/api/v1/learnt-times')).json).toEqual({ days: 0, times: [] })
    await act(1, { type: 'openDay' })
    const told = (await ask(server, '/api/v1/learnt-times')).json as LearntTimesTold
    expect(told).toEqual({ days: 1, times: [] })
  })
})

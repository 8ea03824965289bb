import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { ComingDay } from '../../shared-core/plan/coming-day.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'
import { ask, startServer } from './support/start-server.ts'

/** The server runs by the machine's clock: its own words say which date it takes for today. */
async function startShop() {
  const varieties = table([
    variety({ id: 'sesame', order: 1, usual: 80 }),
    variety({ id: 'poppy', order: 2, usual: 40 }),
  ])
  const server = await startServer({ shop: shopWith({ varieties }) })
  const { json } = await ask(server, '/api/v1/coming')
  return { server, tomorrow: json as ComingDay }
}

describe('GET /api/v1/coming', () => {
  it('[Q52] given a new shop with typed guesses, when tomorrow is asked, then advice by them, said to be guesses', async () => {
    const { tomorrow } = await startShop()
    const [plain] = tomorrow.doughs
    expect(plain).toMatchObject({ doughId: 'plain', basis: 'guess', ordered: 0 })
    expect(plain?.likely).toBeGreaterThan(90)
    expect(plain?.likely).toBeLessThan(plain?.careful ?? 0)
    expect(plain?.careful).toBeLessThan(plain?.plenty ?? 0)
    expect(plain?.varieties.map(({ varietyId }) => varietyId)).toEqual(['sesame', 'poppy'])
  })

  it('[Q50] given orders of the day after, when it is asked, then they are in it', async () => {
    const { server, tomorrow } = await startShop()
    const date = dateAfter(tomorrow.date, 1)
    const line = { doughId: 'plain', varietyId: 'sesame', pieces: 0, ordered: 30 }
    const body = { id: 'wanted000001', deviceSeq: 1, tappedAtMs: null, type: 'setWanted', date, lines: [line] }
    expect((await ask(server, '/api/v1/commands', { body })).status).toBe(200)
    const { doughs } = (await ask(server, `/api/v1/coming?date=${date}`)).json as ComingDay
    expect(doughs[0]?.ordered).toBe(30)
    expect(doughs[0]?.varieties[0]).toMatchObject({ ordered: 30, bake: (doughs[0]?.varieties[0]?.counter ?? 0) + 30 })
  })

  it('[Q50] given a date that is none, is past or far ahead, when it is asked, then it is told which would do', async () => {
    const { server, tomorrow } = await startShop()
    for (const date of ['soon', '2026-02-30', dateAfter(tomorrow.date, -2), dateAfter(tomorrow.date, 14)]) {
      const asked = await ask(server, `/api/v1/coming?date=${date}`)
      expect([date, asked.status]).toEqual([date, 400])
      expect(asked.text).toContain(`/api/v1/coming?date=${tomorrow.date}`)
    }
  })
})

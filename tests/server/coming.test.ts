import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { ComingDay } from '../../shared-core/plan/coming-day.ts'
import { shopWith, table, variety } from '../core/support/shop.ts'
import { takenFile } from './support/sales-file.ts'
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

  it('[Q110] given a till’s file with rows of today and of a year to come, when tomorrow is asked, then there is advice, by the days before', async () => {
    const { server, tomorrow } = await startShop()
    const today = dateAfter(tomorrow.date, -1)
    const rows = (dates: readonly string[]) => ['Date,Item,Qty', ...dates.map((date) => `${date} 8:00,sesame,9`)]
    const known = async (dates: readonly string[]) => {
      await takenFile(server, rows(dates).join('\r\n'))
      return (await ask(server, '/api/v1/history/sales')).json as { known: unknown }
    }
    const before = [dateAfter(today, -2), dateAfter(today, -1)]
    const said = { known: { from: before[0], to: before[1], days: 2 } }
    expect(await known(before)).toMatchObject(said)
    expect(await known([today, dateAfter(today, 365)])).toMatchObject(said)
    for (const date of [today, tomorrow.date])
      expect([date, (await ask(server, `/api/v1/coming?date=${date}`)).json]).toMatchObject([date, { isClosed: false }])
  })

  it('[Q53] given that today is sold and closed, when it is asked, then nothing is advised; of tomorrow something is', async () => {
    const { server, tomorrow } = await startShop()
    const today = dateAfter(tomorrow.date, -1)
    const act = (deviceSeq: number, more: object) =>
      ask(server, '/api/v1/commands', { body: { id: `act00000000${deviceSeq}`, deviceSeq, tappedAtMs: null, ...more } })
    expect((await act(1, { type: 'sell', lines: [{ varietyId: 'sesame', pieces: 6 }] })).status).toBe(200)
    expect((await act(2, { type: 'closeDay' })).status).toBe(200)
    const coming = async (date: string) => (await ask(server, `/api/v1/coming?date=${date}`)).json
    await expect.poll(() => coming(today)).toMatchObject({ isClosed: true, doughs: [] })
    expect(await coming(tomorrow.date)).toMatchObject({ isClosed: false })
  })
})

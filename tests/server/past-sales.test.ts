import { describe, expect, it } from 'vitest'
import { WalkedDays } from '../../server/work/walked-days.ts'
import type { Work } from '../../server/work/work.ts'
import type { SalesDay } from '../../shared-core/demand/sales-day.ts'
import type { HistoryOfDayJson, SalesHistoryJson } from '../../shared-core/live/sales-history.ts'
import type { TrustJson } from '../../shared-core/live/trust.ts'
import { madeDays } from '../core/demand/made-days.ts'
import { tillCsv } from '../core/demand/till-csv.ts'
import { takenFile } from './support/sales-file.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const DAYS = madeDays({ from: '2015-01-05', days: 49, customers: { sesame: 24, poppy: 7 } })

/** A shop whose till wrote seven weeks. */
async function shopWithSales(): Promise<TestServer> {
  const server = await startServer()
  await takenFile(server, tillCsv(DAYS))
  const names = ['sesame', 'poppy'].map((name) => {
    return { name, meaning: { kind: 'variety', varietyId: name, pieces: 1 } }
  })
  const put = await ask(server, '/api/v1/sales/names', { method: 'PUT', body: { names } })
  if (put.status !== 200) throw new Error(put.text)
  return server
}

function soldOf(day: SalesDay, ids = ['sesame', 'poppy']): number {
  return ids.flatMap((id) => day.items.get(id)?.sold ?? []).reduce((sum, { pieces }) => sum + pieces, 0)
}

describe('past sales over HTTP', () => {
  it('[Q126] given seven weeks of a till, when they are asked for, then each day’s sum, one variety’s, the spreadsheet and one day all tell the same', async () => {
    const server = await shopWithSales()
    const got = async <Json>(path: string) => (await ask(server, path)).json as Json
    const all = await got<SalesHistoryJson>('/api/v1/history/sales')
    expect(all.known).toEqual({ from: '2015-01-05', to: '2015-02-22', days: 49 })
    expect(all.days.map(({ date, sold }) => [date, sold])).toEqual(DAYS.map((day) => [day.date, soldOf(day)]))
    expect(all.days[48]).toMatchObject({ lost: 0, soldOut: 0, specials: [], said: null })

    const poppy = await got<SalesHistoryJson>('/api/v1/history/sales?of=variety:poppy&from=2015-02-01&to=2015-02-07')
    const week = DAYS.filter(({ date }) => date >= '2015-02-01' && date <= '2015-02-07')
    expect(poppy.days.map(({ sold }) => sold)).toEqual(week.map((day) => soldOf(day, ['poppy'])))
    expect(poppy.days.every(({ said }) => said !== null && said.q10 <= said.q50 && said.q50 <= said.q90)).toBe(true)
    expect(poppy.learnt?.weekdays[5]).toBeGreaterThan(1.1)

    const csv = await ask(server, '/api/v1/history/sales.csv?of=dough:plain')
    expect(csv.text.split('\r\n').slice(0, 2)).toEqual([
      'date,weekday,sold,lost_estimated,sold_out,special',
      `2015-01-05,1,${soldOf(DAYS[0] ?? fail())},0,0,`,
    ])
    const day = await got<HistoryOfDayJson>('/api/v1/history/sales/2015-02-21')
    expect(day).toMatchObject({ isRecorded: false })
    expect(day.items.map(({ varietyId }) => varietyId)).toEqual(['sesame', 'poppy'])
    expect((await got<HistoryOfDayJson>('/api/v1/history/sales/2015-03-01')).items).toEqual([])
  })

  it('[Q120, Q126] given them, when the forecasts are held against them, then as many days as were asked for, and named days are learnt of', async () => {
    const server = await shopWithSales()
    const trust = (await ask(server, '/api/v1/trust?days=14')).json as TrustJson
    expect(trust).toMatchObject({ from: '2015-02-09', to: '2015-02-22', days: 14, daysKnown: 49 })
    expect(trust.each.off?.rows).toBe(28)
    expect(trust.cost).toMatchObject({ days: 14, baked: null })

    const fair = { id: 'fair', name: 'Fair', kind: 'event', order: 0, retired: false }
    const value = { ...fair, spans: [{ from: '2015-02-10', to: '2015-02-11' }] }
    const change = { type: 'changeSetUp', changes: [{ entity: 'specialDay', value }] }
    const command = { id: 'special00001', deviceSeq: 1, tappedAtMs: null, ...change }
    expect((await ask(server, '/api/v1/commands', { body: command })).status).toBe(200)
    const { days, learnt } = (await ask(server, '/api/v1/history/sales')).json as SalesHistoryJson
    expect(days.filter(({ specials }) => specials.includes('fair')).map(({ date }) => date)).toEqual([
      '2015-02-10',
      '2015-02-11',
    ])
    expect(learnt?.specials).toMatchObject([{ id: 'fair', days: 2 }])
  })

  it('[Q130] given a shop without a day, when its past is asked for, then there is none; what cannot be asked is told with what would be right', async () => {
    const server = await startServer()
    expect((await ask(server, '/api/v1/history/sales')).json).toMatchObject({ known: null, days: [], learnt: null })
    expect((await ask(server, '/api/v1/trust')).json).toMatchObject({ days: 0, daysKnown: 0, each: { off: null } })
    for (const [path, status, detail] of WRONG) {
      const asked = await ask(server, `/api/v1/${path}`)
      expect([path, asked.status]).toEqual([path, status])
      expect(asked.json).toMatchObject({ detail: expect.stringContaining(detail) })
    }
  })
})

const WRONG = [
  ['history/sales?of=variety:nothing', 404, 'The set-up has no'],
  ['history/sales?from=2015-02-30', 400, 'are dates'],
  ['history/sales?from=2015-03-02&to=2015-03-01', 400, 'not after'],
  ['history/sales?from=2020-01-01&to=2026-03-01', 400, '1100 days'],
  ['history/sales/yesterday', 400, 'named by its date'],
  ['trust?days=0', 400, 'from 1 to 365'],
] as const

describe('days walked forward', () => {
  it('[Q131] given days that do not change, when they are asked for twice, then they are walked once; changed ones anew, and others have a turn meanwhile', async () => {
    const book = { version: 1, days: async () => DAYS, guesses: () => [], asked: () => DAYS[0] }
    let breaths = 0
    const breathe = async () => {
      breaths += 1
    }
    const walked = new WalkedDays({ book, breathe } as unknown as Work)
    const [first, second] = await Promise.all([walked.days(), walked.days()])
    expect(second).toBe(first)
    expect(first).toHaveLength(49)
    expect(breaths).toBeGreaterThan(0)
    book.version = 2
    const third = await walked.days()
    expect(third).not.toBe(first)
    expect(third).toEqual(first)
  })
})

function fail(): never {
  throw new Error('no day')
}

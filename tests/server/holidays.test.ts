import { describe, expect, it } from 'vitest'
import { holidayRegions, holidaysOf } from '../../server/work/holidays-of.ts'
import { ask, startServer } from './support/start-server.ts'

describe('public holidays of a region', () => {
  // 5 U.S.C. 6103(a): the fourth Thursday in November, the third Monday in January, the first Monday in September.
  // Easter Sundays by the US Naval Observatory's table (from memory).
  it.each([
    ['thanksgiving-day', ['2024-11-28', '2025-11-27', '2026-11-26']],
    ['martin-luther-king-jr-day', ['2024-01-15', '2025-01-20', '2026-01-19']],
    ['labor-day', ['2024-09-02', '2025-09-01', '2026-09-07']],
    ['easter-sunday', ['2024-03-31', '2025-04-20', '2026-04-05']],
  ])('[Q90] given three years, when asked for, then %s is one holiday with its dates', async (id, dates) => {
    const found = await holidaysOf({ region: 'US-IL', from: '2024-01-01', to: '2026-12-31' })
    const spans = found?.holidays.find((one) => one.id === id)?.spans
    expect(spans).toEqual(dates.map((date) => ({ from: date, to: date })))
  })

  it('[Q90] given two dates, then nothing lies outside them, names come in both languages, and what is public is said', async () => {
    const found = await holidaysOf({ region: 'US-IL', from: '2026-12-25', to: '2027-01-01' })
    expect(found?.holidays.map(({ id, en, es, isPublic }) => [id, en, es, isPublic])).toEqual([
      ['christmas-day', 'Christmas Day', 'Navidad', true],
      ['new-years-eve', "New Year's Eve", 'Fin del Año', false],
      ['new-years-day', "New Year's Day", 'Año Nuevo', true],
    ])
  })

  it.each([
    ['begins in the evening', 'US', 'halloween', '2026-10-31', '2026-10-31'],
    // Clocks go back there on that morning.
    ['has a day of 25 hours', 'AU-NSW', 'easter-sunday', '2026-04-05', '2026-04-05'],
    // 10 Tishri 5787, by the Hebrew calendar (from memory).
    ['goes by another calendar', 'IL', 'day-of-atonement-yom-kippur', '2026-09-21', '2026-09-21'],
    ['lasts two days', 'AM', 'new-years-day', '2026-01-01', '2026-01-02'],
  ])('[Q90] given one that %s, then it is on the days that it fills', async (_what, region, id, first, last) => {
    const found = await holidaysOf({ region, from: '2026-01-01', to: '2026-12-31' })
    expect(found?.holidays.find((one) => one.id === id)?.spans).toEqual([{ from: first, to: last }])
  })

  it('[Q90] given a part that is not known by itself, then its country’s; given no such country, then null', async () => {
    expect((await holidaysOf({ region: 'MX-CMX', from: '2026-01-01', to: '2026-12-31' }))?.region).toBe('MX')
    expect(await holidaysOf({ region: 'XX', from: '2026-01-01', to: '2026-12-31' })).toBeNull()
  })

  it('[Q90] given the regions, then each is named in both languages and those that differ have parts', async () => {
    const regions = await holidayRegions()
    expect(regions.length).toBeGreaterThan(150)
    expect(regions.find(({ code }) => code === 'ES')).toMatchObject({ en: 'Spain', es: 'España' })
    expect(regions.find(({ code }) => code === 'US')?.parts).toContainEqual({
      code: 'US-IL',
      en: 'Illinois',
      es: 'Illinois',
    })
  })

  it.each([
    ['region=usa&from=2026-01-01&to=2026-12-31', 400, 'region'],
    ['region=US&from=2026-02-30&to=2026-12-31', 400, 'YYYY-MM-DD'],
    ['region=US&from=2026-12-31&to=2026-01-01', 400, 'not after'],
    ['region=US&from=2001-01-01&to=2026-12-31', 400, '10 years'],
    ['region=XX&from=2026-01-01&to=2026-12-31', 404, 'regions'],
  ])('[Q90] given ?%s, then %i and what would be right', async (query, status, word) => {
    const server = await startServer()
    const asked = await ask(server, `/api/v1/holidays?${query}`)
    expect(asked.status).toBe(status)
    expect(asked.text).toContain(word)
    expect(asked.json).toMatchObject({ detail: expect.stringMatching(/^.{10,}\.$/) })
  })
})
